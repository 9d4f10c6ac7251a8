/**
 * SHA-256 of bytes, of files, and of everything that records hold.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.digest;

import org.jspecify.annotations.NullMarked;
