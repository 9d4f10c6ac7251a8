package chinelog.audit;

import chinelog.digest.Sha256;
import chinelog.label.Clearance;
import chinelog.log.records.Log;
import chinelog.log.records.Sheet;
import chinelog.problem.Sentence;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import javax.imageio.ImageIO;

/**
 * The maker's own photographs and sheets: no written file may hold a piece of one.
 *
 * <p>Of each original a few pieces of 48 bytes are known, taken where pictures and streams hold
 * their content, not where many files are alike.
 */
final class Originals {

  private static final int PIECE = 48;
  private static final int PIECES = 24;
  private static final int LEAST_DIFFERENT = 24;
  private static final int WINDOW = Long.BYTES;

  /** Windows of so many pieces are kept at most; more of them would not stay in the cache. */
  private static final int MOST_WINDOWS = 1 << 18;

  private static final int SIEVE_BITS = 22;

  private static final VarHandle HEAD =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  /** The tables that most encoders write (ITU-T T.81, annex K). */
  private static final Set<ByteBuffer> STANDARD = pieces(standard());

  private final List<Piece> pieces;

  /**
   * Every so many bytes a file is looked at: of each piece so many windows are known, beginning at
   * its first bytes, that one of them stands at such a place wherever the piece stands.
   */
  private final int stride;

  private final Map<Long, List<Window>> byWindow = new HashMap<>();
  private final BloomFilter sieve = new BloomFilter(SIEVE_BITS);

  /** Digests of the originals, each of all of its pieces. */
  private final SortedMap<String, List<Piece>> byDigest;

  private final int known;

  private record Piece(byte[] bytes, String original) {}

  /** Eight bytes of a piece, and where in it they stand. */
  private record Window(Piece piece, int at) {}

  private Originals(SortedMap<String, List<Piece>> byDigest, int known) {
    this.byDigest = byDigest;
    this.known = known;
    this.pieces = byDigest.values().stream().flatMap(List::stream).toList();
    this.stride =
        Math.max(1, Math.min(PIECE - WINDOW + 1, MOST_WINDOWS / Math.max(1, pieces.size())));
    for (Piece piece : pieces) {
      for (int at = 0; at < stride; at++) {
        long window = (long) HEAD.get(piece.bytes, at);
        sieve.add(window);
        byWindow.computeIfAbsent(window, w -> new ArrayList<>(1)).add(new Window(piece, at));
      }
    }
  }

  private static byte[] standard() {
    try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      ImageIO.write(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB), "jpeg", out);
      // Many cameras write the same colour profile that every book holds.
      out.write(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Set<ByteBuffer> pieces(byte[] whole) {
    Set<ByteBuffer> pieces = new HashSet<>();
    for (int i = 0; i + PIECE <= whole.length; i++) {
      pieces.add(ByteBuffer.wrap(whole, i, PIECE).slice());
    }
    return pieces;
  }

  /**
   * @param clearance of the readers: a sheet that they may see may be in their edition as it is
   */
  static Originals of(Log log, Clearance clearance) throws IOException {
    SortedMap<String, List<Piece>> byDigest = new TreeMap<>();
    int known = 0;
    List<String> paths = new ArrayList<>();
    log.photos().forEach(photo -> paths.add(photo.path()));
    for (Sheet sheet : log.sheets()) {
      if (!clearance.allows(sheet.label())) {
        paths.add(sheet.path());
      }
    }
    for (String path : paths) {
      Path file = log.folder().resolve(path);
      if (Files.isRegularFile(file)) {
        known++;
        List<Piece> pieces = pieces(file, path);
        if (!pieces.isEmpty()) {
          byDigest.computeIfAbsent(digest(pieces), d -> new ArrayList<>()).addAll(pieces);
        }
      }
    }
    return new Originals(byDigest, known);
  }

  private static List<Piece> pieces(Path file, String path) throws IOException {
    List<Piece> pieces = new ArrayList<>();
    try (FileChannel channel = FileChannel.open(file)) {
      // The tail of a file is its own; at its head stand tables that many cameras share.
      long size = channel.size();
      for (int i = 0; i < PIECES; i++) {
        long at = size - PIECE - i * (size / (PIECES + PIECES / 4));
        ByteBuffer piece = ByteBuffer.allocate(PIECE);
        if (at < 0 || channel.read(piece, at) < PIECE) {
          break;
        }
        byte[] bytes = piece.array();
        if (different(bytes) >= LEAST_DIFFERENT && !STANDARD.contains(ByteBuffer.wrap(bytes))) {
          pieces.add(new Piece(bytes, path));
        }
      }
    }
    return pieces;
  }

  private static String digest(List<Piece> pieces) {
    MessageDigest digest = Sha256.digest();
    pieces.forEach(piece -> digest.update(piece.bytes));
    return AuditScope.digest("original " + Sha256.hex(digest.digest()));
  }

  /** A digest of each original of which there are pieces. */
  Set<String> digests() {
    return byDigest.keySet();
  }

  /** Those whose digests are not among these. */
  Originals without(Set<String> digests) {
    SortedMap<String, List<Piece>> rest = new TreeMap<>(byDigest);
    rest.keySet().removeAll(digests);
    return rest.size() == byDigest.size() ? this : new Originals(rest, rest.size());
  }

  /** How many files were looked at. */
  int known() {
    return known;
  }

  private static long different(byte[] bytes) {
    BitSet seen = new BitSet(256);
    for (byte b : bytes) {
      seen.set(b & 0xFF);
    }
    return seen.cardinality();
  }

  void find(byte[] bytes, Findings findings, Sentence where) {
    for (int i = next(bytes, 0); i + WINDOW <= bytes.length; i = next(bytes, i + stride)) {
      for (Window window : byWindow.getOrDefault((long) HEAD.get(bytes, i), List.of())) {
        int from = i - window.at;
        if (from >= 0
            && from + PIECE <= bytes.length
            && Arrays.equals(bytes, from, from + PIECE, window.piece.bytes, 0, PIECE)) {
          findings.add(
              where,
              Sentence.of("It holds bytes of {0} as they are in the log.", window.piece.original));
        }
      }
    }
  }

  /** Where a window of a piece may stand, or where none can any more. */
  private int next(byte[] bytes, int from) {
    int i = from;
    while (i + WINDOW <= bytes.length && !sieve.mayHold((long) HEAD.get(bytes, i))) {
      i += stride;
    }
    return i;
  }
}
