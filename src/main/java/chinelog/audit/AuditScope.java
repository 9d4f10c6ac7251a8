package chinelog.audit;

import chinelog.digest.Sha256;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What one audit looks for, and what it lets pass, each thing by a digest of it.
 *
 * @param originals those of {@code lookedFor} that are pieces of the maker's own files
 */
record AuditScope(Set<String> lookedFor, Set<String> originals, Set<String> allowed) {

  /** Half of a SHA-256: enough to tell things apart that nobody makes up to collide. */
  private static final int LETTERS = 32;

  static AuditScope of(
      Search search,
      Originals originals,
      KnownAddresses addresses,
      List<AllowedPicture> pictures,
      CreditLine credit) {
    Set<String> pieces = originals.digests();
    Set<String> lookedFor = digests(search.pieces());
    lookedFor.addAll(pieces);
    Stream<String> names =
        Stream.concat(
            addresses.files().stream().map(file -> "file " + file),
            addresses.links().stream().map(link -> "link " + link));
    Stream<String> shown =
        pictures.stream()
            .flatMap(p -> p.sha256().stream().map(sha -> "picture " + sha + " " + p.filled()));
    Stream<String> credits = credit.texts().stream().map(text -> "credit " + text);
    return new AuditScope(
        lookedFor,
        pieces,
        digests(
            Stream.of(names, shown, credits, Stream.of("site " + addresses.site()))
                .flatMap(all -> all)));
  }

  private static Set<String> digests(Stream<String> things) {
    return things.map(AuditScope::digest).collect(Collectors.toCollection(TreeSet::new));
  }

  static String digest(String thing) {
    return Sha256.of(thing).substring(0, LETTERS);
  }

  /**
   * Whether what an earlier audit found clean would be found clean now, but for pieces of originals
   * that were not known then.
   */
  boolean isWithin(Searched before) {
    return allowed.containsAll(before.allowed())
        && lookedFor.stream()
            .allMatch(piece -> before.lookedFor().contains(piece) || originals.contains(piece));
  }
}
