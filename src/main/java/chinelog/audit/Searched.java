package chinelog.audit;

import java.util.Set;

/**
 * In which files an audit found nothing, and what it looked for in them. All of it is told by
 * digests, so that nothing can be read from where it is kept.
 *
 * @param lookedFor every text, figure and piece of an original that was looked for
 * @param allowed all that files might name or show: files, addresses, pictures, credits
 * @param clean every file in which nothing was found, with its name, and every such part of a
 *     document, with the document's
 */
public record Searched(Set<String> lookedFor, Set<String> allowed, Set<String> clean) {

  /** Nothing was ever searched. */
  public static final Searched NOTHING = new Searched(Set.of(), Set.of(), Set.of());
}
