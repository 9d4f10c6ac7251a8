/**
 * An edition's series made ready to be filmed: for each post a script to read, frames to show,
 * captions, chapters and a description.
 */
@NullMarked
package chinelog.talk;

import org.jspecify.annotations.NullMarked;
