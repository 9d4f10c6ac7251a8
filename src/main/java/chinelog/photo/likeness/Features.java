package chinelog.photo.likeness;

import boofcv.abst.feature.detdesc.DetectDescribePoint;
import boofcv.abst.feature.detect.interest.ConfigFastHessian;
import boofcv.concurrency.BoofConcurrency;
import boofcv.factory.feature.detdesc.FactoryDetectDescribe;
import boofcv.struct.feature.TupleDesc_F64;
import boofcv.struct.image.GrayF32;
import java.nio.ByteBuffer;

/**
 * Local features of a picture: the places of blobs and, for each, what its surroundings look like,
 * whatever their scale and turn (SURF: Bay, Ess, Tuytelaars, Van Gool, "Speeded-up robust
 * features", 2008, as BoofCV computes it).
 *
 * @param x of each, in pixels of the picture
 * @param y of each
 * @param white whether it is a light blob on dark; only blobs of one kind are compared
 * @param descriptors of each, 64 numbers of length 127 together
 */
record Features(float[] x, float[] y, boolean[] white, byte[][] descriptors) {

  static final int LENGTH = 64;

  /** The descriptors' length as vectors. */
  static final int UNIT = 127;

  private static final int BYTES = 4 + 4 + 1 + LENGTH;

  /** One blob for each square of this many pixels, so that no place has all of them. */
  private static final int APART_PX = 2;

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
    Features features = empty(n);
    for (int i = 0; i < n; i++) {
      features.x[i] = (float) detector.getLocation(i).x;
      features.y[i] = (float) detector.getLocation(i).y;
      features.white[i] = detector.getSet(i) == 0;
      double[] exact = detector.getDescription(i).data;
      for (int k = 0; k < LENGTH; k++) {
        features.descriptors[i][k] = (byte) Math.round(UNIT * exact[k]);
      }
    }
    return features;
  }

  private static Features empty(int n) {
    return new Features(new float[n], new float[n], new boolean[n], new byte[n][LENGTH]);
  }

  int count() {
    return x.length;
  }

  /** The same features at the places they have in another picture. */
  Features at(float[] otherX, float[] otherY) {
    return new Features(otherX, otherY, white, descriptors);
  }

  /**
   * The features of the mirrored picture, at the places they have in this one: along a feature's
   * own direction nothing changes, and across it rows change places and slopes their sign.
   */
  Features mirrored() {
    Features mirrored = empty(count());
    for (int i = 0; i < count(); i++) {
      for (int row = 0; row < 4; row++) {
        for (int column = 0; column < 4; column++) {
          for (int k = 0; k < 4; k++) {
            byte v = descriptors[i][4 * (4 * (3 - row) + column) + k];
            mirrored.descriptors[i][4 * (4 * row + column) + k] = (byte) (k == ACROSS ? -v : v);
          }
        }
      }
    }
    return new Features(x, y, white, mirrored.descriptors);
  }

  /** Which of a square's four sums is that of slopes across the feature's direction. */
  private static final int ACROSS = 2;

  byte[] bytes() {
    ByteBuffer bytes = ByteBuffer.allocate(4 + BYTES * count());
    bytes.putInt(count());
    for (int i = 0; i < count(); i++) {
      bytes.putFloat(x[i]).putFloat(y[i]).put((byte) (white[i] ? 1 : 0)).put(descriptors[i]);
    }
    return bytes.array();
  }

  static Features read(ByteBuffer bytes) {
    Features features = empty(bytes.getInt());
    for (int i = 0; i < features.count(); i++) {
      features.x[i] = bytes.getFloat();
      features.y[i] = bytes.getFloat();
      features.white[i] = bytes.get() == 1;
      bytes.get(features.descriptors[i]);
    }
    return features;
  }
}
