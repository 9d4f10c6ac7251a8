package chinelog.photo;

import chinelog.photo.pixels.Box;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadataNode;

/** Small pictures made for the tests: invented, and the same on every run. */
public final class Shots {

  private Shots() {}

  /** A busy picture: gradients, bars and noise. */
  public static BufferedImage scene(int w, int h, long seed) {
    BufferedImage image = new BufferedImage(w, h, BufferedImage.TYPE_3BYTE_BGR);
    Random random = new Random(seed);
    int[] colours = random.ints(9, 0, 0x1000000).toArray();
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        int cell = colours[3 * (3 * y / h) + 3 * x / w];
        int shade = 40 * x / w + 30 * y / h + random.nextInt(12);
        image.setRGB(x, y, (cell >> 1 & 0x7F7F7F) + shade * 0x010101);
      }
    }
    return image;
  }

  public static BufferedImage with(BufferedImage image, Box box, long seed) {
    BufferedImage copy = copy(image);
    Random random = new Random(seed);
    for (int y = box.top(); y < box.bottom(); y++) {
      for (int x = box.left(); x < box.right(); x++) {
        copy.setRGB(x, y, random.nextInt(0x1000000));
      }
    }
    return copy;
  }

  public static BufferedImage painted(BufferedImage image, Box box, Color colour) {
    BufferedImage copy = copy(image);
    Graphics2D g = copy.createGraphics();
    g.setColor(colour);
    g.fillRect(box.left(), box.top(), box.right() - box.left(), box.bottom() - box.top());
    g.dispose();
    return copy;
  }

  private static BufferedImage copy(BufferedImage image) {
    BufferedImage copy = new BufferedImage(image.getWidth(), image.getHeight(), image.getType());
    image.copyData(copy.getRaster());
    return copy;
  }

  public static byte[] jpeg(BufferedImage image, double quality) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality((float) quality);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), how);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  /** A JPEG whose blocks are {@code 8 h} by {@code 8 v} pixels, as its colours are thinned out. */
  public static byte[] jpegInBlocks(BufferedImage image, int h, int v) {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      String format = "javax_imageio_jpeg_image_1.0";
      var metadata =
          writer.getDefaultImageMetadata(
              new ImageTypeSpecifier(image), writer.getDefaultWriteParam());
      IIOMetadataNode root = (IIOMetadataNode) metadata.getAsTree(format);
      IIOMetadataNode light = (IIOMetadataNode) root.getElementsByTagName("componentSpec").item(0);
      light.setAttribute("HsamplingFactor", Integer.toString(h));
      light.setAttribute("VsamplingFactor", Integer.toString(v));
      metadata.setFromTree(format, root);
      writer.setOutput(out);
      writer.write(metadata, new IIOImage(image, null, metadata), null);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  /** With an XMP packet in an APP1 segment (XMP Specification Part 3, 1.1.3). */
  public static byte[] withXmp(byte[] jpeg, String description) {
    String packet =
        "http://ns.adobe.com/xap/1.0/\0<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">"
            + "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">"
            + "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
            + " xmlns:Iptc4xmpCore=\"http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/\">"
            + description
            + "</rdf:Description></rdf:RDF></x:xmpmeta>";
    return withSegment(jpeg, 0xFFE1, packet.getBytes(StandardCharsets.UTF_8));
  }

  /** With one text dataset of IPTC IIM record 2 in UTF-8, in a Photoshop resource 0x0404. */
  public static byte[] withIptc(byte[] jpeg, int dataset, String text) {
    byte[] value = text.getBytes(StandardCharsets.UTF_8);
    ByteBuffer iptc = ByteBuffer.allocate(value.length + 13);
    iptc.put(new byte[] {0x1C, 1, 90, 0, 3, 0x1B, '%', 'G'});
    iptc.put((byte) 0x1C)
        .put((byte) 2)
        .put((byte) dataset)
        .putShort((short) value.length)
        .put(value);
    int even = iptc.capacity() + iptc.capacity() % 2;
    ByteBuffer all = ByteBuffer.allocate(even + 26);
    all.put("Photoshop 3.0\0".getBytes(StandardCharsets.US_ASCII));
    all.put("8BIM".getBytes(StandardCharsets.US_ASCII))
        .putShort((short) 0x0404)
        .putShort((short) 0);
    all.putInt(iptc.capacity()).put(iptc.array());
    return withSegment(jpeg, 0xFFED, all.array());
  }

  private static byte[] withSegment(byte[] jpeg, int marker, byte[] content) {
    ByteBuffer all = ByteBuffer.allocate(jpeg.length + content.length + 4);
    all.put(jpeg, 0, 2).putShort((short) marker).putShort((short) (content.length + 2));
    return all.put(content).put(jpeg, 2, jpeg.length - 2).array();
  }

  public static byte[] png(BufferedImage image) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  /** A JPEG with camera data in an APP1 segment; empty texts are left out. */
  public static byte[] withExif(
      byte[] jpeg, int orientation, String model, String time, String offset) {
    ByteBuffer tiff = ByteBuffer.allocate(400);
    tiff.put("MM".getBytes(StandardCharsets.US_ASCII)).putShort((short) 42).putInt(8);
    int texts = 200;
    tiff.putShort((short) (model.isEmpty() ? 2 : 3));
    if (!model.isEmpty()) {
      texts = text(tiff, 272, model, texts);
    }
    field(tiff, 274, 3, 1).putShort((short) orientation).putShort((short) 0);
    field(tiff, 34665, 4, 1).putInt(100);
    tiff.putInt(0);
    tiff.position(100);
    tiff.putShort((short) ((time.isEmpty() ? 0 : 1) + (offset.isEmpty() ? 0 : 1)));
    if (!time.isEmpty()) {
      texts = text(tiff, 36867, time, texts);
    }
    if (!offset.isEmpty()) {
      texts = text(tiff, 36881, offset, texts);
    }
    tiff.putInt(0);
    ByteBuffer all = ByteBuffer.allocate(jpeg.length + 10 + texts);
    all.put(jpeg, 0, 2).putShort((short) 0xFFE1).putShort((short) (8 + texts));
    all.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII)).put(tiff.array(), 0, texts);
    return all.put(jpeg, 2, jpeg.length - 2).array();
  }

  private static ByteBuffer field(ByteBuffer tiff, int tag, int type, int count) {
    return tiff.putShort((short) tag).putShort((short) type).putInt(count);
  }

  private static int text(ByteBuffer tiff, int tag, String text, int at) {
    byte[] bytes = (text + "\0").getBytes(StandardCharsets.US_ASCII);
    field(tiff, tag, 2, bytes.length);
    if (bytes.length <= 4) {
      tiff.put(bytes).put(new byte[4 - bytes.length]);
      return at;
    }
    tiff.putInt(at);
    System.arraycopy(bytes, 0, tiff.array(), at, bytes.length);
    return at + bytes.length;
  }
}
