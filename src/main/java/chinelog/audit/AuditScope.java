package chinelog.audit;

import chinelog.digest.Sha256;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What one audit looks for, and what it lets pass, each thing by a digest of it.
 *
 * @param originals those of {@code lookedFor} that are pieces of the maker's own files
 * @param pictures those of {@code allowed} that are pictures, by the SHA-256 of their files
 * @param credit what pictures may say of who made them
 */
record AuditScope(
    Set<String> lookedFor,
    Set<String> originals,
    Set<String> allowed,
    Map<String, Set<String>> pictures,
    String credit) {

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
    Map<String, Set<String>> shown = new TreeMap<>();
    for (AllowedPicture picture : pictures) {
      for (String sha256 : picture.sha256()) {
        shown
            .computeIfAbsent(sha256, sha -> new TreeSet<>())
            .add(digest("picture " + sha256 + " " + picture.filled()));
      }
    }
    Set<String> allowed =
        digests(
            Stream.of(
                    addresses.files().stream().map(file -> "file " + file),
                    addresses.links().stream().map(link -> "link " + link),
                    credit.texts().stream().map(text -> "credit " + text),
                    Stream.of("site " + addresses.site()))
                .flatMap(all -> all));
    shown.values().forEach(allowed::addAll);
    return new AuditScope(
        lookedFor, pieces, allowed, shown, digest(String.join("\f", credit.texts())));
  }

  private static Set<String> digests(Stream<String> things) {
    return things.map(AuditScope::digest).collect(Collectors.toCollection(TreeSet::new));
  }

  static String digest(String thing) {
    return Sha256.of(thing).substring(0, LETTERS);
  }

  /** Whether all that an earlier audit let pass is let pass now. */
  boolean allowsAsMuchAs(Searched before) {
    return allowed.containsAll(before.allowed());
  }

  /** Whether an earlier audit held a picture against all that it is held against now. */
  boolean wasShown(String sha256, Searched before) {
    Set<String> now = pictures.getOrDefault(sha256, Set.of());
    return !now.isEmpty() && before.allowed().containsAll(now);
  }

  /** Whether an earlier audit looked for all of it, but for pieces of originals. */
  boolean wasLookedFor(Searched before) {
    return lookedFor.stream()
        .allMatch(piece -> before.lookedFor().contains(piece) || originals.contains(piece));
  }
}
