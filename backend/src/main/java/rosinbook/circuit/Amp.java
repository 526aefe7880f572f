package rosinbook.circuit;

/** A preamp of a route, from its input point to its output point. */
record Amp(String route, String from, String to, Via.Preamp preamp) {}
