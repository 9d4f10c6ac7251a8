package chinelog.photo.likeness;

import boofcv.abst.feature.detdesc.DetectDescribePoint;
import boofcv.abst.feature.detect.interest.ConfigFastHessian;
import boofcv.concurrency.BoofConcurrency;
import boofcv.factory.feature.detdesc.FactoryDetectDescribe;
import boofcv.struct.feature.TupleDesc_F64;
import boofcv.struct.image.GrayF32;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Local features of a picture: the places of blobs and, for each, what its surroundings look like,
 * whatever their scale and turn (SURF: Bay, Ess, Tuytelaars, Van Gool, "Speeded-up robust
 * features", 2008, as BoofCV computes it).
 */
final class Features {

  static final int LENGTH = 64;

  /** The descriptors' length as vectors. */
  static final int UNIT = 127;

  /** Turns are kept in parts of a full one. */
  static final int TURN = 256;

  /** Sizes are kept as logarithms, in parts of a doubling. */
  static final int DOUBLING = 16;

  private static final int BYTES = 4 + 4 + 3 + LENGTH;

  /** One blob for each square of this many pixels, so that no place has all of them. */
  private static final int APART_PX = 2;

  private final float[] x;
  private final float[] y;
  private final byte[] turns;
  private final byte[] sizes;
  private final boolean[] white;
  private final byte[][] descriptors;
  private final long[] signs;
  private final int[][] byColour;
  private @Nullable Features mirrored;

  /**
   * @param x of each, in pixels of the picture
   * @param y of each
   * @param turns in which direction each lies, clockwise from the right, in parts of {@link #TURN}
   * @param sizes of each, in pixels of the picture, as logarithms in parts of {@link #DOUBLING}
   * @param white whether it is a light blob on dark; only blobs of one kind are compared
   * @param descriptors of each, 64 numbers of length 127 together
   */
  private Features(
      float[] x, float[] y, byte[] turns, byte[] sizes, boolean[] white, byte[][] descriptors) {
    this.x = x;
    this.y = y;
    this.turns = turns;
    this.sizes = sizes;
    this.white = white;
    this.descriptors = descriptors;
    this.signs = Arrays.stream(descriptors).mapToLong(Features::signs).toArray();
    this.byColour =
        new int[][] {
          IntStream.range(0, x.length).filter(i -> !white[i]).toArray(),
          IntStream.range(0, x.length).filter(i -> white[i]).toArray()
        };
  }

  static {
    // The order of what is found must not depend on how many cores there are.
    BoofConcurrency.USE_CONCURRENT = false;
  }

  /**
   * @param most how many to keep, the strongest of them
   */
  static Features of(GrayF32 picture, int most) {
    ConfigFastHessian how = new ConfigFastHessian();
    how.extract.threshold = 1;
    how.extract.radius = APART_PX;
    how.maxFeaturesPerScale = -1;
    how.maxFeaturesAll = most;
    how.initialSampleStep = 1;
    how.initialSize = 9;
    how.numberScalesPerOctave = 4;
    how.numberOfOctaves = 4;
    DetectDescribePoint<GrayF32, TupleDesc_F64> detector =
        FactoryDetectDescribe.surfFast(how, null, null, GrayF32.class);
    detector.detect(picture);
    int n = detector.getNumberOfFeatures();
    ByteBuffer found = ByteBuffer.allocate(4 + BYTES * n).putInt(n);
    for (int i = 0; i < n; i++) {
      found.putFloat((float) detector.getLocation(i).x);
      found.putFloat((float) detector.getLocation(i).y);
      found.put((byte) Math.round(detector.getOrientation(i) / (2 * Math.PI) * TURN));
      found.put((byte) doublings(detector.getRadius(i)));
      found.put((byte) (detector.getSet(i) == 0 ? 1 : 0));
      for (double exact : detector.getDescription(i).data) {
        found.put((byte) Math.round(UNIT * exact));
      }
    }
    return read(found.flip());
  }

  private static int doublings(double size) {
    return (int) Math.round(DOUBLING * Math.log(size) / Math.log(2));
  }

  int count() {
    return x.length;
  }

  float x(int i) {
    return x[i];
  }

  float y(int i) {
    return y[i];
  }

  /** How far a feature of another picture is turned against one of this, 0 to 255. */
  int turn(int i, Features other, int j) {
    return other.turns[j] - turns[i] & TURN - 1;
  }

  /** How much larger a feature of another picture is than one of this, as a logarithm. */
  int growth(int i, Features other, int j) {
    return other.sizes[j] - sizes[i];
  }

  byte[] descriptor(int i) {
    return descriptors[i];
  }

  /** A bit for each number of the descriptor that is negative. */
  long signs(int i) {
    return signs[i];
  }

  /** Numbers of those that may be compared with one of another picture. */
  int[] like(Features other, int i) {
    return byColour[other.white[i] ? 1 : 0];
  }

  private static long signs(byte[] descriptor) {
    long signs = 0;
    for (byte v : descriptor) {
      signs = signs << 1 | (v < 0 ? 1 : 0);
    }
    return signs;
  }

  /**
   * The same features at the places they have in another picture.
   *
   * @param growth how many times larger they are there
   */
  Features at(float[] otherX, float[] otherY, double growth) {
    byte[] grown = sizes.clone();
    byte more = (byte) doublings(growth);
    for (int i = 0; i < grown.length; i++) {
      grown[i] += more;
    }
    return new Features(otherX, otherY, turns, grown, white, descriptors);
  }

  /**
   * The features of the mirrored picture, at the places they have in this one: along a feature's
   * own direction nothing changes, and across it rows change places and slopes their sign.
   */
  synchronized Features mirrored() {
    Features known = mirrored;
    if (known == null) {
      byte[][] other = new byte[count()][LENGTH];
      byte[] turned = new byte[count()];
      for (int i = 0; i < count(); i++) {
        turned[i] = (byte) (TURN / 2 - turns[i]);
        for (int row = 0; row < 4; row++) {
          for (int column = 0; column < 4; column++) {
            for (int k = 0; k < 4; k++) {
              byte v = descriptors[i][4 * (4 * (3 - row) + column) + k];
              other[i][4 * (4 * row + column) + k] = (byte) (k == ACROSS ? -v : v);
            }
          }
        }
      }
      known = new Features(x, y, turned, sizes, white, other);
      mirrored = known;
    }
    return known;
  }

  /** Which of a square's four sums is that of slopes across the feature's direction. */
  private static final int ACROSS = 2;

  byte[] bytes() {
    ByteBuffer bytes = ByteBuffer.allocate(4 + BYTES * count());
    bytes.putInt(count());
    for (int i = 0; i < count(); i++) {
      bytes.putFloat(x[i]).putFloat(y[i]).put(turns[i]).put(sizes[i]);
      bytes.put((byte) (white[i] ? 1 : 0)).put(descriptors[i]);
    }
    return bytes.array();
  }

  static Features read(ByteBuffer bytes) {
    int n = bytes.getInt();
    float[] x = new float[n];
    float[] y = new float[n];
    byte[] turns = new byte[n];
    byte[] sizes = new byte[n];
    boolean[] white = new boolean[n];
    byte[][] descriptors = new byte[n][LENGTH];
    for (int i = 0; i < n; i++) {
      x[i] = bytes.getFloat();
      y[i] = bytes.getFloat();
      turns[i] = bytes.get();
      sizes[i] = bytes.get();
      white[i] = bytes.get() == 1;
      bytes.get(descriptors[i]);
    }
    return new Features(x, y, turns, sizes, white, descriptors);
  }
}
