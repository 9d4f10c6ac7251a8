/** Writes JSON (RFC 8259): {@link chinelog.json.Json}. Nothing here reads any. */
@NullMarked
package chinelog.json;

import org.jspecify.annotations.NullMarked;
