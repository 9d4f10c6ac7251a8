package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.book.PageMarks.Kind;
import chinelog.book.PageMarks.Mark;
import chinelog.publish.DemoPrints;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo's printed matter, measured: where on its page is all that is printed? */
class DemoGeometryTest {

  private static final List<String> READERS = List.of("public", "client", "workshop");

  private static final String LETTER = "letter";

  /** Cover, imprint and half-title are meant to have little on them. */
  private static final int BARE_PAGES = 3;

  /**
   * A page that is filled to less than a third looks forgotten rather than ended; from there on it
   * is the usual end of a chapter. Common practice, no source.
   */
  private static final double LEAST_FILLED = 1 / 3.0;

  /** What rounding to whole dots and hairlines drawn on an edge may add, in millimetres. */
  private static final double SPARE_MM = 0.6;

  /** Nothing but a picture that runs off the page comes nearer to where it is cut. */
  private static final double EDGE_MM = 10;

  /** So much below the text is white on every page, before the page number. */
  private static final double WHITE_MM = 4;

  @TempDir static Path folder;

  @BeforeAll
  static void print() throws IOException {
    Path log = Path.of("sample-log");
    DemoPrints.print(log, READERS, "slipway", Press.Options.DEFAULT, folder);
    Press.Options letter = new Press.Options(Press.Options.Paper.LETTER, false);
    DemoPrints.print(log, List.of("client"), "chartroom", letter, folder.resolve(LETTER));
  }

  static Stream<Path> books() {
    return folders().map(f -> f.resolve("build-book.pdf"));
  }

  static Stream<Path> booklets() {
    return folders().map(f -> f.resolve("handover.pdf"));
  }

  private static Stream<Path> folders() {
    return Stream.concat(
        READERS.stream().map(folder::resolve), Stream.of(folder.resolve(LETTER).resolve("client")));
  }

  private static boolean isLetter(Path pdf) {
    return pdf.startsWith(folder.resolve(LETTER));
  }

  @ParameterizedTest
  @MethodSource("books")
  void noPageOfABookIsNearlyEmpty(Path book) throws IOException {
    assertThat(nearlyEmpty(book, isLetter(book) ? Trim.LETTER : Trim.A4, BARE_PAGES)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("booklets")
  void noPageOfABookletIsNearlyEmpty(Path booklet) throws IOException {
    assertThat(nearlyEmpty(booklet, isLetter(booklet) ? Trim.HALF_LETTER : Trim.A5, 1)).isEmpty();
  }

  private static List<String> nearlyEmpty(Path pdf, Trim trim, int bare) throws IOException {
    List<String> empty = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (int i = bare; i < document.getNumberOfPages(); i++) {
        List<Mark> marks = PageMarks.of(document.getPage(i));
        double filled = PageMarks.filledMm(marks, trim.topMm, trim.textHeightMm());
        // Before the body, so that it begins on a right page, a left one may be blank.
        if (!marks.isEmpty() && filled < LEAST_FILLED * trim.textHeightMm()) {
          empty.add("page %d of the file: %.0f mm".formatted(i + 1, filled));
        }
      }
    }
    return empty;
  }

  @ParameterizedTest
  @MethodSource("books")
  void nothingInABookLeavesTheFieldOfItsText(Path book) throws IOException {
    assertThat(outside(book, isLetter(book) ? Trim.LETTER : Trim.A4)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("booklets")
  void nothingInABookletLeavesTheFieldOfItsText(Path booklet) throws IOException {
    assertThat(outside(booklet, isLetter(booklet) ? Trim.HALF_LETTER : Trim.A5)).isEmpty();
  }

  private static List<String> outside(Path pdf, Trim trim) throws IOException {
    List<String> outside = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        for (Mark mark : PageMarks.of(document.getPage(i))) {
          boolean isIn = i == 0 ? isOnPage(mark, trim) : isInPlace(mark, trim, i % 2 == 0);
          if (!isIn) {
            outside.add("page %d of the file: %s".formatted(i + 1, mark));
            break;
          }
        }
      }
    }
    return outside;
  }

  /** The cover: pictures run off it, text does not. */
  private static boolean isOnPage(Mark mark, Trim trim) {
    double edge = mark.kind() == Kind.GLYPH ? EDGE_MM : -SPARE_MM;
    return mark.left() >= edge
        && mark.top() >= edge
        && mark.right() <= trim.widthMm - edge
        && mark.bottom() <= trim.heightMm - edge;
  }

  private static boolean isInPlace(Mark mark, Trim trim, boolean isRight) {
    double left = isRight ? trim.innerMm : trim.outerMm;
    boolean isBetweenMargins =
        mark.left() >= left - SPARE_MM && mark.right() <= left + trim.textWidthMm() + SPARE_MM;
    double bottom = trim.heightMm - trim.bottomMm;
    boolean isText = mark.top() >= trim.topMm - SPARE_MM && mark.bottom() <= bottom + SPARE_MM;
    boolean isHead = mark.top() >= EDGE_MM && mark.bottom() < trim.topMm - WHITE_MM;
    boolean isFoot = mark.top() > bottom + WHITE_MM && mark.bottom() < trim.heightMm - EDGE_MM;
    return isBetweenMargins && (isText || mark.kind() == Kind.GLYPH && (isHead || isFoot));
  }
}
