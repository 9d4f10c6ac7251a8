package chinelog.reckon.trade;

import chinelog.quantity.Quantity;

/**
 * One figure that a reckoning yields, such as {@code displacement}, "Displacement", 2377 g.
 *
 * @param name what follows the request's prefix and a dot; lower case, {@code _} for spaces
 * @param title in words
 * @param value unrounded
 * @param method how it was worked out and where the formula comes from, in a reader's words
 */
public record Yield(String name, String title, Quantity value, String method) {}
