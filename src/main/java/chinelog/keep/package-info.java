/**
 * Verified copies of a log: {@link chinelog.keep.Keep}.
 *
 * <p>A copy is a bag as RFC 8493 (The BagIt File Packaging Format, version 1.0) has it, so that
 * other programs can verify it, too. Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.keep;

import org.jspecify.annotations.NullMarked;
