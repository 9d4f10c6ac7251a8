package chinelog.log.records;

/** What the chapters of the build book follow. */
public enum BookChapters {
  STAGES,
  POSTS
}
