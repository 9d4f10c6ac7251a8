package chinelog.photo.derivatives;

import chinelog.digest.Sha256;
import chinelog.photo.album.Exif;
import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.Orientation;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.PhotoLoader;
import chinelog.photo.pixels.Pixels;
import chinelog.photo.pixels.UnusablePhoto;
import chinelog.problem.Place;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/**
 * Makes fresh pixels of released sheets: page 1 of {@code sheets/lines.pdf}, or a scan. Nothing of
 * the sheet's file itself, such as hidden text, layers or remarks, comes along.
 */
public final class SheetPrinter {

  private static final int DPI = 150;
  private static final int POINTS_PER_INCH = 72;
  private static final double MM_PER_INCH = 25.4;

  /** An A0 sheet at 150 dpi has 35 million. */
  private static final double MOST_PIXELS = 80e6;

  private final Path folder;
  private final PrintStore store;

  /**
   * @param folder the log's folder
   */
  public SheetPrinter(Path folder) {
    this.folder = folder;
    this.store = new PrintStore(folder);
  }

  /**
   * How many pages a sheet has; 1 for a scan.
   *
   * @throws ProblemException if it is no sheet that can be shown
   * @throws IOException if it cannot be read
   */
  public int pages(String sheet) throws IOException {
    try {
      byte[] bytes = bytes(sheet);
      return isPdf(bytes) ? withPdf(bytes, PDDocument::getNumberOfPages) : 1;
    } catch (UnusablePhoto e) {
      throw new ProblemException(e.at(Place.of(sheet)), e);
    }
  }

  /**
   * How long the longer side of a page is on its paper, in millimetres. A scan does not tell for
   * certain: it is taken to have been made at 150 dots to the inch, which is out for all lengths on
   * it alike.
   *
   * @param page from 1
   * @throws ProblemException if there is no such page or it cannot be read
   * @throws IOException if it cannot be read
   */
  public double longEdgeMm(String sheet, int page) throws IOException {
    try {
      byte[] bytes = bytes(sheet);
      if (isPdf(bytes)) {
        return withPdf(
            bytes,
            document -> {
              requirePage(page, document.getNumberOfPages());
              PDRectangle box = document.getPage(page - 1).getCropBox();
              return Math.max(box.getWidth(), box.getHeight()) * MM_PER_INCH / POINTS_PER_INCH;
            });
      }
      requirePage(page, 1);
      PhotoLoader.Loaded loaded = PhotoLoader.load(folder, sheet);
      Decoder.Size size = Decoder.size(loaded.decodable(), loaded.bytes());
      return Math.max(size.widthPx(), size.heightPx()) * MM_PER_INCH / DPI;
    } catch (UnusablePhoto e) {
      throw new ProblemException(e.at(Place.of(sheet)), e);
    }
  }

  private byte[] bytes(String sheet) throws IOException {
    byte[] bytes = PhotoLoader.bytes(folder, sheet);
    if (!isPdf(bytes)) {
      try {
        PhotoKind.of(sheet, bytes);
      } catch (UnusablePhoto e) {
        throw new UnusablePhoto(
            "This sheet is neither a PDF nor a picture that can be shown.",
            "Save it afresh as PDF, PNG or TIFF.");
      }
    }
    return bytes;
  }

  /**
   * Derivatives of one page.
   *
   * @param sheet path below the log's folder
   * @param page from 1
   * @throws ProblemException if there is no such page or it cannot be drawn
   * @throws IOException if it cannot be read
   */
  public Darkroom.Prints print(String sheet, int page) throws IOException {
    try {
      return printed(sheet, page);
    } catch (UnusablePhoto e) {
      throw new ProblemException(e.at(Place.of(sheet)), e);
    }
  }

  private Darkroom.Prints printed(String sheet, int page) throws IOException {
    byte[] bytes = bytes(sheet);
    String key = Darkroom.key("sheet " + DPI + " " + page + " " + Sha256.of(bytes));
    PrintStore.Kept found = store.find(key);
    if (found != null) {
      return found.prints();
    }
    return store.keep(key, isPdf(bytes) ? page(bytes, page) : scan(sheet, page)).prints();
  }

  private Derivatives scan(String sheet, int page) throws IOException {
    requirePage(page, 1);
    PhotoLoader.Loaded loaded = PhotoLoader.load(folder, sheet);
    Pixels pixels = Decoder.decode(loaded.decodable(), loaded.bytes());
    return Derivatives.of(pixels, Exif.of(loaded).orientation());
  }

  private static Derivatives page(byte[] pdf, int page) throws IOException {
    return withPdf(
        pdf,
        document -> {
          requirePage(page, document.getNumberOfPages());
          PDPage sheet = document.getPage(page - 1);
          double inches =
              (double) sheet.getCropBox().getWidth()
                  * sheet.getCropBox().getHeight()
                  / (POINTS_PER_INCH * POINTS_PER_INCH);
          if (inches * DPI * DPI > MOST_PIXELS) {
            throw new UnusablePhoto(
                "The page is larger than any sheet of paper.", "Save a smaller copy of it.");
          }
          PDFRenderer renderer = new PDFRenderer(document);
          // Remarks stuck onto a drawing are not part of it.
          renderer.setAnnotationsFilter(annotation -> false);
          BufferedImage image = renderer.renderImageWithDPI(page - 1, DPI, ImageType.RGB);
          return Derivatives.of(Pixels.of(image), Orientation.AS_STORED);
        });
  }

  private interface Use<R> {
    R of(PDDocument document) throws IOException;
  }

  private static <R> R withPdf(byte[] bytes, Use<R> use) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes)) {
      return use.of(document);
    } catch (UnusablePhoto e) {
      throw e;
    } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError e) {
      UnusablePhoto damaged =
          new UnusablePhoto(
              "The sheet cannot be drawn; it is damaged or locked.",
              "Open it in a PDF reader and save it afresh.");
      damaged.initCause(e);
      throw damaged;
    }
  }

  private static void requirePage(int page, int pages) throws UnusablePhoto {
    if (page < 1 || page > pages) {
      throw new UnusablePhoto(
          Sentence.of("There is no page {0} in the sheet.", page),
          Sentence.of("Write a page from 1 to {0}.", pages));
    }
  }

  private static boolean isPdf(byte[] bytes) {
    return bytes.length > 4
        && bytes[0] == '%'
        && bytes[1] == 'P'
        && bytes[2] == 'D'
        && bytes[3] == 'F';
  }
}
