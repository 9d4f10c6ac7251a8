package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.book.PageMarks.Kind;
import chinelog.book.PageMarks.Mark;
import chinelog.book.page.Trim;
import chinelog.edition.Edition;
import chinelog.publish.Demo;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.PDFTextStripperByArea;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo's printed matter, measured: where on its page is all that is printed? */
@ExtendWith(OncePerRun.class)
@Order(2)
class DemoGeometryTest {

  /** Cover, imprint and half-title are meant to have little on them. */
  private static final int BARE_PAGES = 3;

  /**
   * A page that is filled to less looks forgotten rather than ended; from there on it is the usual
   * end of a chapter. Common practice, no source.
   */
  private static final double LEAST_FILLED = 0.4;

  /** What comes before the record to be signed, which has a page of its own, may end sooner. */
  private static final double LEAST_OF_BOOKLET = 1 / 3.0;

  /** What rounding to whole dots and hairlines drawn on an edge may add, in millimetres. */
  private static final double SPARE_MM = 0.6;

  /** Nothing but a picture that runs off the page comes nearer to where it is cut. */
  private static final double EDGE_MM = 10;

  /** So much below the text is white on every page, before the page number. */
  private static final double WHITE_MM = 4;

  /** Two captions have fewer letters. */
  private static final int CAPTIONS = 500;

  private static final double BAR_MM = 2 / PageMarks.POINTS_PER_MM;

  private static final double LINE_MM = 3;

  private static Demo demo;

  @BeforeAll
  static void take(Demo one) {
    demo = one;
  }

  /** Print of the demo for some readers. */
  private interface Printed {
    Path of(String theme, Edition.Paper paper, String readers) throws IOException;
  }

  static List<Path> books() throws IOException {
    return printed(demo::book);
  }

  static List<Path> booklets() throws IOException {
    return printed(demo::booklet);
  }

  private static List<Path> printed(Printed print) throws IOException {
    List<Path> all = new ArrayList<>();
    for (String readers : List.of("public", "client", "workshop")) {
      all.add(print.of("slipway", Edition.Paper.A4, readers));
    }
    all.add(print.of("chartroom", Edition.Paper.LETTER, "client"));
    return all;
  }

  private static boolean isLetter(Path pdf) {
    return pdf.getFileName().toString().startsWith("LETTER");
  }

  @ParameterizedTest
  @MethodSource("books")
  void noPageOfABookIsNearlyEmpty(Path book) throws IOException {
    assertThat(measured(book).nearlyEmpty()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("booklets")
  void noPageOfABookletIsNearlyEmpty(Path booklet) throws IOException {
    assertThat(measured(booklet).nearlyEmpty()).isEmpty();
  }

  /** On a page of the story; an appendix has rows that cannot be parted. */
  @ParameterizedTest
  @MethodSource("books")
  void noPageOfTheStoryIsMoreThanAQuarterEmptyButWhereAChapterEnds(Path book) throws IOException {
    assertThat(measured(book).white()).isEmpty();
  }

  /**
   * What is wrong with a print, page by page.
   *
   * @param white pages that are white at the foot, though what follows is of the same chapter
   * @param stubs bars at whose end nothing stands
   * @param bars how many there are
   */
  private record Measured(
      List<String> nearlyEmpty,
      List<String> white,
      List<String> outside,
      List<String> stubs,
      int bars) {}

  private static final Map<Path, Measured> MEASURED = new HashMap<>();

  /** Of each print every page is taken apart but once. */
  private static Measured measured(Path pdf) throws IOException {
    Measured known = MEASURED.get(pdf);
    if (known == null) {
      known = measure(pdf);
      MEASURED.put(pdf, known);
    }
    return known;
  }

  private static Measured measure(Path pdf) throws IOException {
    boolean isBook = pdf.getFileName().toString().endsWith("-book.pdf");
    Trim trim = isLetter(pdf) ? Trim.HALF_LETTER : Trim.A5;
    if (isBook) {
      trim = isLetter(pdf) ? Trim.LETTER : Trim.A4;
    }
    int bare = isBook ? BARE_PAGES : 1;
    double least = isBook ? LEAST_FILLED : LEAST_OF_BOOKLET;
    List<String> empty = new ArrayList<>();
    List<String> white = new ArrayList<>();
    List<String> outside = new ArrayList<>();
    List<String> stubs = new ArrayList<>();
    int bars = 0;
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      List<Integer> begins = chapters(document);
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        List<Mark> marks = PageMarks.of(document.getPage(i));
        String page = "page %d of the file: ".formatted(i + 1);
        double filled = PageMarks.filledMm(marks, trim.margins.topMm(), trim.textHeightMm());
        // Before the body, so that it begins on a right page, a left one may be blank.
        if (i >= bare && !marks.isEmpty() && filled < least * trim.textHeightMm()) {
          empty.add(page + Math.round(filled) + " mm");
        }
        double bottom = trim.margins.topMm() + trim.textHeightMm();
        double lowest =
            marks.stream()
                .mapToDouble(Mark::bottom)
                .filter(b -> b <= bottom + SPARE_MM)
                .max()
                .orElse(0);
        boolean isStory = isBook && i >= begins.get(0) && i < begins.get(begins.size() - 1);
        boolean isEnd = begins.contains(i + 1) || isSpread(document, i + 1);
        if (isStory && !isEnd && bottom - lowest > trim.textHeightMm() / 4) {
          white.add(page + Math.round(bottom - lowest) + " mm");
        }
        marks.stream().filter(isOut(trim, i)).findFirst().ifPresent(m -> outside.add(page + m));
        for (Mark bar : i == 0 ? List.<Mark>of() : marks) {
          if (isBar(bar)) {
            bars++;
            if (!isBesideAnything(bar, marks)) {
              stubs.add(page + bar);
            }
          }
        }
      }
    }
    return new Measured(empty, white, outside, stubs, bars);
  }

  /** The pages, from 0, on which a chapter of the story begins, and the first after it. */
  private static List<Integer> chapters(PDDocument document) throws IOException {
    List<Integer> pages = new ArrayList<>();
    for (PDOutlineItem item : document.getDocumentCatalog().getDocumentOutline().children()) {
      boolean isStory = item.hasChildren();
      if (isStory || !pages.isEmpty()) {
        pages.add(document.getPages().indexOf(item.findDestinationPage(document)));
      }
      if (!isStory && !pages.isEmpty()) {
        break;
      }
    }
    return pages.isEmpty() ? List.of(0, 0) : pages;
  }

  /** The two pages of plates after the last entry have no words but captions. */
  private static boolean isSpread(PDDocument document, int page) throws IOException {
    return page < document.getNumberOfPages()
        && field(document, page + 1).startsWith("Plate ")
        && PageMarks.of(document.getPage(page)).stream().filter(m -> m.kind() == Kind.GLYPH).count()
            < CAPTIONS;
  }

  private static Predicate<Mark> isOut(Trim trim, int page) {
    return mark -> page == 0 ? !isOnPage(mark, trim) : !isInPlace(mark, trim, page % 2 == 0);
  }

  @ParameterizedTest
  @MethodSource("books")
  void nothingInABookLeavesTheFieldOfItsText(Path book) throws IOException {
    assertThat(measured(book).outside()).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("booklets")
  void nothingInABookletLeavesTheFieldOfItsText(Path booklet) throws IOException {
    assertThat(measured(booklet).outside()).isEmpty();
  }

  /** A bar at the side of what is under an agreement is no longer than that. */
  @ParameterizedTest
  @MethodSource("books")
  void aBarEndsWithTheLastThatStandsBesideIt(Path book) throws IOException {
    assertThat(measured(book).stubs()).isEmpty();
    boolean isOpen = book.getParent().endsWith("public");
    assertThat(measured(book).bars()).isGreaterThanOrEqualTo(isOpen ? 0 : 2);
  }

  private static boolean isBesideAnything(Mark bar, List<Mark> marks) {
    return marks.stream()
        .filter(m -> m.kind() != Kind.PATH && m.left() > bar.right())
        .anyMatch(m -> Math.abs(m.bottom() - bar.bottom()) < LINE_MM);
  }

  private static boolean isBar(Mark mark) {
    double width = mark.right() - mark.left();
    return mark.kind() == Kind.PATH
        && Math.abs(width - BAR_MM) < 0.1
        && mark.bottom() - mark.top() > LINE_MM;
  }

  @ParameterizedTest
  @MethodSource("books")
  void noLineBeginsWithAMarkThatClosesTheOneBefore(Path book) throws IOException {
    try (PDDocument document = Loader.loadPDF(book.toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(true);
      assertThat(stripper.getText(document).lines().map(String::strip))
          .isNotEmpty()
          .noneMatch(line -> line.matches("[.,;:!?)\\]].*"));
    }
  }

  @ParameterizedTest
  @MethodSource("books")
  void noPageEndsWithWordsThatLeadToAListOnTheNext(Path book) throws IOException {
    try (PDDocument document = Loader.loadPDF(book.toFile())) {
      String before = "";
      int lists = 0;
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        String text = field(document, page);
        lists += text.contains("\u2022") || text.contains("\n1. ") ? 1 : 0;
        boolean isList = text.startsWith("1. ") || text.startsWith("\u2022");
        assertThat(isList && before.endsWith(":")).as("page %d of the file", page).isFalse();
        before = text;
      }
      assertThat(lists).isPositive();
    }
  }

  /** What is set between the heads and the numbers at the foot. */
  private static String field(PDDocument document, int page) throws IOException {
    PDFTextStripperByArea stripper = new PDFTextStripperByArea();
    stripper.setSortByPosition(true);
    PDRectangle crop = document.getPage(page - 1).getCropBox();
    stripper.addRegion(
        "field", new Rectangle2D.Double(0, 66, crop.getWidth(), crop.getHeight() - 66 - 76));
    stripper.extractRegions(document.getPage(page - 1));
    return stripper.getTextForRegion("field").strip();
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
    double left = isRight ? trim.margins.innerMm() : trim.margins.outerMm();
    boolean isBetweenMargins =
        mark.left() >= left - SPARE_MM && mark.right() <= left + trim.textWidthMm() + SPARE_MM;
    double bottom = trim.heightMm - trim.margins.bottomMm();
    boolean isText =
        mark.top() >= trim.margins.topMm() - SPARE_MM && mark.bottom() <= bottom + SPARE_MM;
    boolean isHead = mark.top() >= EDGE_MM && mark.bottom() < trim.margins.topMm() - WHITE_MM;
    boolean isFoot = mark.top() > bottom + WHITE_MM && mark.bottom() < trim.heightMm - EDGE_MM;
    return isBetweenMargins && (isText || mark.kind() == Kind.GLYPH && (isHead || isFoot));
  }
}
