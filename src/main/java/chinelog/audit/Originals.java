package chinelog.audit;

import chinelog.label.Clearance;
import chinelog.log.Log;
import chinelog.log.PhotoFile;
import chinelog.log.Sheet;
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
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
  private static final VarHandle HEAD =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  /** The tables that most encoders write (ITU-T T.81, annex K). */
  private static final Set<ByteBuffer> STANDARD = pieces(standard());

  /** By their first eight bytes. */
  private final Map<Long, List<Piece>> byHead = new HashMap<>();

  private final HashSieve sieve = new HashSieve();
  private int known;

  private record Piece(byte[] bytes, String original) {}

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
    Originals originals = new Originals();
    for (PhotoFile photo : log.photos()) {
      originals.add(log.folder(), photo.path());
    }
    for (Sheet sheet : log.sheets()) {
      if (!clearance.allows(sheet.label())) {
        originals.add(log.folder(), sheet.path());
      }
    }
    return originals;
  }

  int known() {
    return known;
  }

  private void add(Path folder, String path) throws IOException {
    Path file = folder.resolve(path);
    if (!Files.isRegularFile(file)) {
      return;
    }
    known++;
    try (FileChannel channel = FileChannel.open(file)) {
      // The tail of a file is its own; at its head stand tables that many cameras share.
      long size = channel.size();
      for (int i = 0; i < PIECES; i++) {
        long at = size - PIECE - i * (size / (PIECES + PIECES / 4));
        ByteBuffer piece = ByteBuffer.allocate(PIECE);
        if (at < 0 || channel.read(piece, at) < PIECE) {
          break;
        }
        add(piece.array(), path);
      }
    }
  }

  private void add(byte[] piece, String path) {
    if (different(piece) >= LEAST_DIFFERENT && !STANDARD.contains(ByteBuffer.wrap(piece))) {
      long head = (long) HEAD.get(piece, 0);
      sieve.add(head);
      byHead.computeIfAbsent(head, h -> new ArrayList<>(1)).add(new Piece(piece, path));
    }
  }

  private static long different(byte[] bytes) {
    BitSet seen = new BitSet(256);
    for (byte b : bytes) {
      seen.set(b & 0xFF);
    }
    return seen.cardinality();
  }

  void find(byte[] bytes, Findings findings, String where) {
    for (int i = next(bytes, 0); i + PIECE <= bytes.length; i = next(bytes, i + 1)) {
      for (Piece piece : byHead.getOrDefault((long) HEAD.get(bytes, i), List.of())) {
        if (Arrays.equals(bytes, i, i + PIECE, piece.bytes, 0, PIECE)) {
          findings.add(where, "It holds bytes of " + piece.original + " as they are in the log.");
        }
      }
    }
  }

  /** Where a piece may begin, or where none can any more. */
  private int next(byte[] bytes, int from) {
    int i = from;
    while (i + PIECE <= bytes.length && !sieve.mayHold((long) HEAD.get(bytes, i))) {
      i++;
    }
    return i;
  }
}
