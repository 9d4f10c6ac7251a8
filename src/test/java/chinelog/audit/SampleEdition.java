package chinelog.audit;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;

/** The written files of a small clean edition, by name, for tests to spoil. */
final class SampleEdition {

  static final String PAGE = "site/posts/the-drawings-come-out.html";
  static final String PLATE = "site/plates/plate-001-800.jpg";
  static final String BOOK = "build-book.pdf";

  /** Left, top, right and bottom of the part of the plate that is filled, in pixels. */
  static final int[] FILLED = {64, 48, 192, 144};

  private SampleEdition() {}

  static Map<String, byte[]> files() {
    Map<String, byte[]> files = new TreeMap<>();
    files.put("site/index.html", utf8(page("", "<p>One post so far.</p>")));
    files.put(PAGE, utf8(page("../", body())));
    files.put("site/style.css", utf8("body { color: #222; background: url(paper.png); }\n"));
    files.put("site/search.js", utf8("const posts = [\"The drawings come out\"];\n"));
    files.put("site/feed.xml", utf8(feed()));
    files.put("site/paper.png", encode(picture(8, 8, 1), "png"));
    files.put(PLATE, encode(plate(), "jpeg"));
    files.put(BOOK, pdf("The drawings come out. We set the moulds up on the board."));
    return files;
  }

  /** The pictures of these files, as the audit is told of them. */
  static List<AllowedPicture> pictures() {
    Map<String, byte[]> files = files();
    return List.of(
        told(files.get("site/paper.png")),
        told(
            files.get(PLATE),
            new FilledArea(
                FILLED[0] / 256.0,
                FILLED[1] / 192.0,
                FILLED[2] / 256.0,
                FILLED[3] / 192.0,
                0x8a8a8a)));
  }

  static AllowedPicture told(byte[] bytes, FilledArea... filled) {
    return new AllowedPicture(Set.of(sha256(bytes)), List.of(filled));
  }

  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  static String body() {
    return """
        <article><h1>The drawings come out</h1>
        <p>We set the moulds up on the board, <span class="gap">withheld</span>, and went home.
        See the <a href="https://tides.example/tables">tide tables</a>. The mast is 184 mm high.</p>
        <figure id="plate-1"><img src="../plates/plate-001-800.jpg" width="256" height="192"
        srcset="../plates/plate-001-800.jpg 256w" alt="The moulds stand on the board.">
        <figcaption>The moulds stand on the board.</figcaption></figure>
        <svg viewBox="0 0 100 10" role="img"><title>Hours</title><rect width="61" height="8"/>
        <text x="62" y="8">12.25 h</text></svg>
        <p><a href="#plate-1">Plate 1</a> <a href="../">Home</a></p></article>
        """;
  }

  static String page(String up, String body) {
    return """
        <!DOCTYPE html>
        <html lang="en-GB"><head><meta charset="utf-8"><title>Building Merrow</title>
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src 'self'">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <link rel="stylesheet" href="%1$sstyle.css"><script src="%1$ssearch.js" defer></script>
        <link rel="alternate" type="application/atom+xml" href="%1$sfeed.xml">
        <link rel="canonical" href="https://merrow.example/">
        <script type="application/ld+json">{"@context":"https://schema.org"}</script></head>
        <body><main>%2$s</main></body></html>
        """
        .formatted(up, body);
  }

  static String feed() {
    return """
        <?xml version="1.0" encoding="utf-8"?>
        <feed xmlns="http://www.w3.org/2005/Atom"><title>Building Merrow</title>
        <id>https://merrow.example/</id><updated>2026-03-14T00:00:00Z</updated>
        <entry><title>The drawings come out</title>
        <link href="https://merrow.example/posts/the-drawings-come-out.html"/>
        <content type="html">&lt;p&gt;We set the moulds up on the board.&lt;/p&gt;</content></entry>
        </feed>
        """;
  }

  static BufferedImage picture(int width, int height, long seed) {
    BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Random random = new Random(seed);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        image.setRGB(x, y, random.nextInt(0x1000000));
      }
    }
    return image;
  }

  static BufferedImage plate() {
    BufferedImage image = picture(256, 192, 7);
    Graphics2D g = image.createGraphics();
    g.setColor(new Color(0x8a8a8a));
    g.fillRect(FILLED[0], FILLED[1], FILLED[2] - FILLED[0], FILLED[3] - FILLED[1]);
    g.dispose();
    return image;
  }

  static byte[] encode(BufferedImage image, String format) {
    try (ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      ImageIO.write(image, format, out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Changes a document before it is saved. */
  interface Change {
    void apply(PDDocument pdf, PDFont font) throws IOException;
  }

  static byte[] pdf(String text) {
    return pdf(text, (pdf, font) -> {});
  }

  static byte[] pdf(String text, Change change) {
    try (PDDocument pdf = new PDDocument();
        InputStream letters =
            PDDocument.class.getResourceAsStream(
                "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf");
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      PDFont font = PDType0Font.load(pdf, letters);
      PDPage page = new PDPage(PDRectangle.A4);
      pdf.addPage(page);
      try (PDPageContentStream content = new PDPageContentStream(pdf, page)) {
        write(content, font, text, 60, 700);
        content.drawImage(JPEGFactory.createFromByteArray(pdf, encode(plate(), "jpeg")), 60, 400);
      }
      pdf.getDocumentInformation().setTitle("Building Merrow");
      PDMarkInfo marks = new PDMarkInfo();
      marks.setMarked(true);
      pdf.getDocumentCatalog().setMarkInfo(marks);
      pdf.getDocumentCatalog().setStructureTreeRoot(new PDStructureTreeRoot());
      pdf.getDocumentCatalog()
          .setMetadata(new PDMetadata(pdf, new ByteArrayInputStream(utf8(metadata("")))));
      change.apply(pdf, font);
      pdf.save(out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A document's metadata with more of them. */
  static String metadata(String more) {
    return "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><pdfaid:part"
        + " xmlns:pdfaid=\"http://www.aiim.org/pdfa/ns/id/\">2</pdfaid:part>"
        + "<pdfuaid:part xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">1</pdfuaid:part>"
        + more
        + "</x:xmpmeta>";
  }

  static void write(PDPageContentStream content, PDFont font, String text, float x, float y)
      throws IOException {
    content.beginText();
    content.setFont(font, 10);
    content.newLineAtOffset(x, y);
    content.showText(text);
    content.endText();
  }

  static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
