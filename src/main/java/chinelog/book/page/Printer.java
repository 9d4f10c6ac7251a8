package chinelog.book.page;

import chinelog.book.setting.Faces;
import chinelog.book.setting.Hyphens;
import chinelog.book.setting.LineBreaks;
import chinelog.book.setting.Typesetter;
import chinelog.markup.Theme;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.function.Predicate;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jspecify.annotations.Nullable;

/** Turns the written pages of an edition into a PDF that meets PDF/UA-1 and PDF/A-2a. */
public final class Printer implements Closeable {

  /** Addresses in the pages are never looked up: all that they name comes from the edition. */
  private static final String NOWHERE = "about:blank";

  /** Printed for a character that no font has. */
  private static final String MISSING = "\uFFFD";

  private final List<Theme.Font> fonts;
  private final double bleedMm;

  /** Not in use at the moment: fonts take longer to read than some pages to lay out. */
  private final Deque<Trial> trials = new ConcurrentLinkedDeque<>();

  private @Nullable Hyphens hyphens;

  public Printer(List<Theme.Font> fonts, double bleedMm) {
    this.fonts = fonts;
    this.bleedMm = bleedMm;
  }

  /**
   * Measures pages that were written to be laid out on one without end.
   *
   * @throws UncheckedIOException if a picture or a font cannot be read
   */
  Galley measure(Manuscript manuscript) {
    Trial idle = trials.poll();
    Trial trial = idle == null ? Trial.with(fonts) : idle;
    try (PdfBoxRenderer renderer =
        renderer(manuscript.small(), trial.document, trial.faces, hyphens(manuscript), false)) {
      renderer.layout();
      return GalleyReader.read(renderer, manuscript.trim(), bleedMm);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      trials.push(trial);
    }
  }

  /** A document that pages are laid out in and that is never saved. */
  private record Trial(PDDocument document, Faces faces) {

    static Trial with(List<Theme.Font> fonts) {
      PDDocument document = new PDDocument(IOUtils.createTempFileOnlyStreamCache());
      return new Trial(document, new Faces(document, fonts));
    }
  }

  @Override
  public void close() throws IOException {
    for (Trial trial : trials) {
      trial.faces.close();
      trial.document.close();
    }
  }

  private synchronized Hyphens hyphens(Manuscript manuscript) throws IOException {
    Hyphens known = hyphens;
    if (known == null) {
      known = Hyphens.of(manuscript.locale());
      hyphens = known;
    }
    return known;
  }

  /**
   * How pages came out.
   *
   * @param isPrinted whether they were to be printed as they came out
   */
  record Tried(Layout.Look look, boolean isPrinted) {}

  /** How many pages a PDF has. */
  public static int pages(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return document.getNumberOfPages();
    }
  }

  /** Prints the pages as they come. */
  public void print(Manuscript manuscript, Path pdf) throws IOException {
    attempt(manuscript, look -> true, pdf);
  }

  /** Lays the pages out, and prints them if they look as they should. */
  Tried attempt(Manuscript manuscript, Predicate<Layout.Look> isRight, Path pdf)
      throws IOException {
    try (PDDocument document = new PDDocument(IOUtils.createTempFileOnlyStreamCache());
        Faces faces = new Faces(document, fonts);
        PdfBoxRenderer renderer =
            renderer(manuscript, document, faces, hyphens(manuscript), true)) {
      renderer.layout();
      Layout.Look look = look(renderer);
      if (!isRight.test(look)) {
        return new Tried(look, false);
      }
      renderer.createPDFKeepOpen();
      ReadingOrder.mend(renderer);
      PageNumbers.label(document, look.pages());
      PagePlace place = new PagePlace(manuscript.trim(), bleedMm);
      Hatching.draw(renderer, faces.sans(), place);
      PartNumbers.draw(renderer, faces.sans(), place);
      Marks.stamp(renderer, faces.sans(), manuscript, place);
      if (bleedMm > 0) {
        BlackText.set(document);
      }
      Finish.apply(document, manuscript, bleedMm, faces.sans());
      try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(pdf))) {
        document.save(out);
      }
      return new Tried(look, true);
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static Layout.Look look(PdfBoxRenderer renderer) {
    int before = GalleyReader.pagesBefore(renderer);
    return new Layout.Look(
        PageNumbers.find(renderer),
        PageNumbers.places(renderer, before),
        before,
        Fitting.white(renderer),
        Measures.of(renderer));
  }

  private static PdfBoxRenderer renderer(
      Manuscript manuscript, PDDocument document, Faces faces, Hyphens hyphens, boolean isPainted)
      throws IOException {
    XRLog.setLoggingEnabled(false);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.withHtmlContent(manuscript.html(), NOWHERE);
    builder.usePDDocument(document);
    builder.useSVGDrawer(new BatikSVGDrawer());
    builder.useHyphenation(hyphens);
    builder.useUnicodeLineBreaker(new LineBreaks());
    builder.useProtocolsStreamImplementation(manuscript.pictures(), PictureStore.SCHEME);
    builder.useUriResolver((base, address) -> isOurs(address) ? address : null);
    builder.useReplacementText(MISSING);
    builder.withProducer("chinelog");
    builder.usePdfUaAccessibility(true);
    builder.usePdfAConformance(PdfAConformance.PDFA_2_A);
    builder.useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
    faces.offerTo(builder);
    if (isPainted && manuscript.html().contains("<svg")) {
      faces.offerToCharts(builder);
    }
    PdfBoxRenderer renderer = builder.buildPdfRenderer();
    renderer.getSharedContext().setTextRenderer(new Typesetter());
    return renderer;
  }

  private static boolean isOurs(String address) {
    return address.startsWith(PictureStore.SCHEME + ":") || address.startsWith("#");
  }
}
