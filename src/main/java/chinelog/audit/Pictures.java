package chinelog.audit;

import chinelog.digest.Sha256;
import chinelog.problem.Sentence;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Opens every picture, be it a file or a part of a document, and holds it against the pictures that
 * the edition is made of: its bytes must be those of one of them, whatever it is called and
 * wherever it stands, and what is filled in that one must be of one colour in this.
 */
final class Pictures {

  private final Map<String, List<AllowedPicture>> byHash = new TreeMap<>();
  private final Decoded decoded;
  private final CreditLine credit;
  private final Originals originals;
  private final Search search;

  /** Hashes of pictures in which nothing was found: the same is shown in many places. */
  private final Set<String> clean = ConcurrentHashMap.newKeySet();

  private final Map<String, Integer> filled = new ConcurrentHashMap<>();

  /**
   * @param decoded known to decode without a fault; those found clean are added
   */
  Pictures(
      List<AllowedPicture> pictures,
      Decoded decoded,
      CreditLine credit,
      Originals originals,
      Search search) {
    for (AllowedPicture picture : pictures) {
      picture
          .sha256()
          .forEach(hash -> byHash.computeIfAbsent(hash, h -> new ArrayList<>()).add(picture));
    }
    this.decoded = decoded;
    this.credit = credit;
    this.originals = originals;
    this.search = search;
  }

  /**
   * Opens a JPEG picture of a document, unless it is a part of it that was found clean before.
   *
   * @param hash its SHA-256
   */
  void jpeg(byte[] bytes, String hash, CleanParts parts, Findings findings, Sentence where) {
    List<AllowedPicture> known = byHash.getOrDefault(hash, List.of());
    boolean isPlain = !known.isEmpty() && known.stream().allMatch(p -> p.filled().isEmpty());
    if (parts.has(hash) && isPlain) {
      parts.findFresh(bytes, findings, where);
    } else {
      jpeg(bytes, hash, findings, where);
    }
  }

  /**
   * Opens a JPEG picture.
   *
   * @param hash its SHA-256
   */
  void jpeg(byte[] bytes, String hash, Findings findings, Sentence where) {
    inspect(
        bytes,
        hash,
        findings,
        where,
        (own, decode) -> JpegFile.inspect(bytes, credit, decode, own, where));
  }

  void png(byte[] bytes, Findings findings, Sentence where) {
    inspect(
        bytes,
        Sha256.of(bytes),
        findings,
        where,
        (own, decode) -> PngFile.inspect(bytes, own, where));
  }

  private interface Opening {
    /** Null for what cannot be read, or need not be decoded. */
    @Nullable BufferedImage open(Findings findings, boolean decode);
  }

  private void inspect(
      byte[] bytes, String hash, Findings findings, Sentence where, Opening opening) {
    if (clean.contains(hash)) {
      return;
    }
    Findings own = new Findings(findings.file());
    originals.find(bytes, own, where);
    search.bytes(bytes, own, where);
    List<AllowedPicture> known = byHash.getOrDefault(hash, List.of());
    boolean isFilled = known.stream().anyMatch(p -> !p.filled().isEmpty());
    BufferedImage image = opening.open(own, isFilled || !decoded.has(hash));
    if (known.isEmpty()) {
      own.add(where, Sentence.of("It is none of the pictures that the log gives these readers."));
    }
    if (image != null) {
      for (AllowedPicture picture : known) {
        picture.filled().forEach(part -> FilledPart.inspect(image, part, own, where));
        filled.put(hash, picture.filled().size());
      }
    }
    if (own.list().isEmpty()) {
      clean.add(hash);
      decoded.add(hash);
    }
    own.list().forEach(f -> findings.add(f.where(), f.what()));
  }

  /** Hashes of all pictures in which nothing was found. */
  Set<String> clean() {
    return Set.copyOf(clean);
  }

  /** How many filled parts were looked at, a picture that stands in many places counted once. */
  int filledParts() {
    return filled.values().stream().mapToInt(n -> n).sum();
  }

  /** How many pictures were opened that have filled parts, each size by itself. */
  long filledPictures() {
    return filled.values().stream().filter(n -> n > 0).count();
  }
}
