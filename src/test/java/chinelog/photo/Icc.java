package chinelog.photo;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * Colour profiles made from a colour space's published primaries (ICC.1:2010, clauses 7 to 10), and
 * pictures that carry them.
 */
public final class Icc {

  /** Chromaticities of white, red, green and blue. */
  private static final double[][] P3 = {
    {0.3127, 0.3290}, {0.680, 0.320}, {0.265, 0.690}, {0.150, 0.060}
  };

  private static final double[][] ADOBE = {
    {0.3127, 0.3290}, {0.64, 0.33}, {0.21, 0.71}, {0.15, 0.06}
  };

  /** D50 of the profile connection space, and the Bradford matrix (ICC.1:2010, annex E). */
  private static final double[] D50 = {0.9642, 1, 0.8249};

  private static final double[][] BRADFORD = {
    {0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}
  };

  private Icc() {}

  /** Display P3: the primaries of SMPTE RP 431-2, white D65, the curve of IEC 61966-2-1. */
  public static byte[] displayP3() {
    double[] srgb = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
    ByteBuffer curve = ByteBuffer.allocate(32);
    curve.put(ascii("para")).putInt(0).putShort((short) 3).putShort((short) 0);
    for (double v : srgb) {
      curve.putInt(fixed(v));
    }
    return profile(P3, curve.array());
  }

  /** Adobe RGB (1998), 4.3.1: its primaries, white D65, and a gamma of 2 51/256. */
  public static byte[] adobeRgb() {
    ByteBuffer curve = ByteBuffer.allocate(16);
    curve.put(ascii("curv")).putInt(0).putInt(1).putShort((short) (2 * 256 + 51));
    return profile(ADOBE, curve.array());
  }

  private static byte[] profile(double[][] space, byte[] curve) {
    double[][] colorants = colorants(space);
    List<byte[]> tags = new ArrayList<>();
    tags.add(xyz(D50));
    for (int i = 0; i < 3; i++) {
      tags.add(xyz(new double[] {colorants[0][i], colorants[1][i], colorants[2][i]}));
    }
    tags.add(curve);
    ByteBuffer description = ByteBuffer.allocate(32);
    description.put(ascii("mluc")).putInt(0).putInt(1).putInt(12).put(ascii("enGB"));
    description.putInt(4).putInt(28).putShort((short) 'x').putShort((short) 'x');
    tags.add(description.array());
    String[] names = {"wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC", "desc", "cprt"};
    int[] which = {0, 1, 2, 3, 4, 4, 4, 5, 5};
    int start = 128 + 4 + 12 * names.length;
    int[] offsets = new int[tags.size()];
    int size = start;
    for (int i = 0; i < offsets.length; i++) {
      offsets[i] = size;
      size += tags.get(i).length;
    }
    ByteBuffer all = ByteBuffer.allocate(size);
    all.putInt(size).putInt(0).putInt(0x04200000).put(ascii("mntrRGB XYZ "));
    all.position(36);
    all.put(ascii("acsp"));
    all.position(68);
    for (double v : D50) {
      all.putInt(fixed(v));
    }
    all.position(128);
    all.putInt(names.length);
    for (int i = 0; i < names.length; i++) {
      all.put(ascii(names[i])).putInt(offsets[which[i]]).putInt(tags.get(which[i]).length);
    }
    tags.forEach(all::put);
    return all.array();
  }

  /** Columns are the primaries' XYZ, adapted to D50. */
  private static double[][] colorants(double[][] space) {
    double[][] primaries = new double[3][3];
    for (int i = 0; i < 3; i++) {
      double[] xyz = xyzOf(space[i + 1]);
      for (int row = 0; row < 3; row++) {
        primaries[row][i] = xyz[row];
      }
    }
    double[] white = xyzOf(space[0]);
    double[] amounts = times(inverse(primaries), white);
    double[] from = times(BRADFORD, white);
    double[] to = times(BRADFORD, D50);
    double[][] scaled = new double[3][3];
    for (int row = 0; row < 3; row++) {
      for (int i = 0; i < 3; i++) {
        primaries[row][i] *= amounts[i];
        scaled[row][i] = BRADFORD[row][i] * to[row] / from[row];
      }
    }
    return times(times(inverse(BRADFORD), scaled), primaries);
  }

  private static double[] xyzOf(double[] xy) {
    return new double[] {xy[0] / xy[1], 1, (1 - xy[0] - xy[1]) / xy[1]};
  }

  private static double[] times(double[][] m, double[] v) {
    double[] product = new double[3];
    for (int row = 0; row < 3; row++) {
      product[row] = m[row][0] * v[0] + m[row][1] * v[1] + m[row][2] * v[2];
    }
    return product;
  }

  private static double[][] times(double[][] a, double[][] b) {
    double[][] product = new double[3][3];
    for (int i = 0; i < 3; i++) {
      double[] column = times(a, new double[] {b[0][i], b[1][i], b[2][i]});
      for (int row = 0; row < 3; row++) {
        product[row][i] = column[row];
      }
    }
    return product;
  }

  private static double[][] inverse(double[][] m) {
    double[][] inverse = new double[3][3];
    double determinant = 0;
    for (int i = 0; i < 3; i++) {
      for (int k = 0; k < 3; k++) {
        inverse[k][i] =
            m[(i + 1) % 3][(k + 1) % 3] * m[(i + 2) % 3][(k + 2) % 3]
                - m[(i + 1) % 3][(k + 2) % 3] * m[(i + 2) % 3][(k + 1) % 3];
      }
    }
    for (int i = 0; i < 3; i++) {
      determinant += m[0][i] * inverse[i][0];
    }
    for (double[] row : inverse) {
      for (int i = 0; i < 3; i++) {
        row[i] /= determinant;
      }
    }
    return inverse;
  }

  private static byte[] xyz(double[] values) {
    ByteBuffer tag = ByteBuffer.allocate(20).put(ascii("XYZ ")).putInt(0);
    for (double v : values) {
      tag.putInt(fixed(v));
    }
    return tag.array();
  }

  private static int fixed(double v) {
    return (int) Math.round(v * 65536);
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  /** In an APP2 segment behind the JFIF header (ICC.1:2010, annex B.4). */
  public static byte[] inJpeg(byte[] jpeg, byte[] profile) {
    ByteBuffer all = ByteBuffer.allocate(jpeg.length + profile.length + 18);
    all.put(jpeg, 0, 20).putShort((short) 0xFFE2).putShort((short) (profile.length + 16));
    all.put(ascii("ICC_PROFILE\0")).put((byte) 1).put((byte) 1).put(profile);
    return all.put(jpeg, 20, jpeg.length - 20).array();
  }

  /** In an iCCP chunk behind the header (PNG, 3rd edition, 11.3.2.3). */
  public static byte[] inPng(byte[] png, byte[] profile) {
    Deflater deflater = new Deflater();
    deflater.setInput(profile);
    deflater.finish();
    byte[] packed = new byte[profile.length + 100];
    int length = deflater.deflate(packed);
    deflater.end();
    ByteArrayOutputStream chunk = new ByteArrayOutputStream();
    chunk.writeBytes(ascii("iCCPx\0\0"));
    chunk.write(packed, 0, length);
    CRC32 sum = new CRC32();
    sum.update(chunk.toByteArray());
    ByteBuffer all = ByteBuffer.allocate(png.length + chunk.size() + 8);
    all.put(png, 0, 33).putInt(chunk.size() - 4).put(chunk.toByteArray());
    return all.putInt((int) sum.getValue()).put(png, 33, png.length - 33).array();
  }
}
