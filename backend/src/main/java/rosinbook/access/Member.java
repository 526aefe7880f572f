package rosinbook.access;

/** A player with a right on a notebook. */
public record Member(Player player, Right may) {}
