package chinelog.site;

import chinelog.digest.ContentHash;
import org.jspecify.annotations.Nullable;

/**
 * The site of the same readers that stood before: a file of it may stay as it is where nothing that
 * it was made of has changed.
 */
public interface Earlier {

  /** What was noted of a file when it was made, or null if it is not known how it was made. */
  @Nullable String find(String path);

  /** Puts a file, as it stood, into the new site; false if that cannot be done. */
  boolean keep(String path);

  /**
   * Notes of what a file of the new site was made.
   *
   * @param made one line of text; given back by {@link #find} when the next site is written
   */
  void note(String path, String made);

  /** Digests of what pages are made of. */
  ContentHash hashes();
}
