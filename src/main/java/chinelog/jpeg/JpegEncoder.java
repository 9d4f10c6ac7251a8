package chinelog.jpeg;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Encodes afresh, by the JDK's own writer, whichever others are registered. */
public final class JpegEncoder {

  private JpegEncoder() {}

  /**
   * With the standard's own tables for every picture, so that size tells nothing.
   *
   * @param quality from 0 to 1, as the library of the Independent JPEG Group counts hundredths
   */
  public static byte[] encode(BufferedImage image, float quality) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageWriter writer = writer();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(quality);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), how);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  private static ImageWriter writer() {
    Iterator<ImageWriter> writers = ImageIO.getImageWritersByFormatName("jpeg");
    while (writers.hasNext()) {
      ImageWriter writer = writers.next();
      if (writer.getClass().getName().startsWith("com.sun.imageio.")) {
        return writer;
      }
      writer.dispose();
    }
    throw new IllegalStateException("this Java has no JPEG writer");
  }
}
