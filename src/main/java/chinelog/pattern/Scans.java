package chinelog.pattern;

import chinelog.edition.Picture;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/** Drawings as they go into the file: each once, however many sheets it is printed on. */
final class Scans {

  private final PDDocument pdf;
  private final Map<String, PDImageXObject> images = new HashMap<>();

  Scans(PDDocument pdf) {
    this.pdf = pdf;
  }

  /** The picture, byte for byte as the edition has it. */
  PDImageXObject image(Picture picture) throws IOException {
    PDImageXObject known = images.get(picture.id());
    if (known != null) {
      return known;
    }
    try (InputStream jpeg = picture.largest().jpeg().open()) {
      PDImageXObject image = JPEGFactory.createFromStream(pdf, jpeg);
      images.put(picture.id(), image);
      return image;
    }
  }
}
