/**
 * Pictures as pixels: reading files whole or not at all, turning, sizing, filling and encoding.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.photo.pixels;

import org.jspecify.annotations.NullMarked;
