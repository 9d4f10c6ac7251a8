package chinelog.audit;

/**
 * A part of a picture that must be of one colour, as fractions (0 to 1) of its width and height
 * from its left top corner.
 *
 * @param rgb such as {@code 0x8a8a8a}
 */
public record FilledArea(double left, double top, double right, double bottom, int rgb) {}
