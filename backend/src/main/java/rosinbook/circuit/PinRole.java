package rosinbook.circuit;

public interface PinRole {
    String describe();
}
