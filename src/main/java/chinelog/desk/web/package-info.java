/**
 * A small web server for one maker's browser on this machine: requests in, replies out, and nobody
 * else let in. {@link Server} listens; {@link Routes} say who answers.
 *
 * <p>Paths are those of the address, decoded, and begin with {@code /}. Nothing here is ever null
 * unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.desk.web;

import org.jspecify.annotations.NullMarked;
