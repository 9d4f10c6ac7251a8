package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.book.PageMarks.Kind;
import chinelog.book.PageMarks.Mark;
import chinelog.book.page.Trim;
import chinelog.edition.TableEdition;
import chinelog.markup.Theme;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/** Tables of all shapes: whatever their width, all of them is printed and in place. */
@Order(2)
class WideTablesTest {

  private static final int TABLES = Integer.getInteger("chinelog.tables", 80);

  /** What rounding to whole dots may add, in millimetres. */
  private static final double SPARE_MM = 0.6;

  private static final TableEdition TABLES_OF_ALL_SHAPES = TableEdition.of(TABLES);

  private static Path pdf;

  @BeforeAll
  static void print() throws IOException {
    pdf = Files.createTempFile("tables", ".pdf");
    Press.printBuildBook(
        TABLES_OF_ALL_SHAPES.edition(),
        Theme.load(Theme.USUAL, null),
        Press.Options.of(TABLES_OF_ALL_SHAPES.edition(), false),
        pdf);
  }

  @AfterAll
  static void delete() throws IOException {
    Files.delete(pdf);
  }

  @Test
  void nothingStandsOutsideTheText() throws IOException {
    List<String> outside = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      new PDFTextStripper() {
        @Override
        protected void processTextPosition(TextPosition text) {
          boolean isRight = getCurrentPageNo() % 2 == 1;
          double left = isRight ? Trim.A4.margins.innerMm() : Trim.A4.margins.outerMm();
          double from = text.getXDirAdj() / PageMarks.POINTS_PER_MM - left;
          double to = from + text.getWidthDirAdj() / PageMarks.POINTS_PER_MM;
          boolean isBlank = text.getUnicode().isBlank();
          if (!isBlank && (from < -SPARE_MM || to > Trim.A4.textWidthMm() + SPARE_MM)) {
            outside.add("page %d: %s".formatted(getCurrentPageNo(), text));
          }
        }
      }.writeText(document, Writer.nullWriter());
    }
    // The cover has its own field.
    outside.removeIf(found -> found.startsWith("page 1:"));
    assertThat(outside).isEmpty();
  }

  @Test
  void noCharacterIsPrintedOverAnother() throws IOException {
    List<String> over = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      for (int i = 0; i < document.getNumberOfPages(); i++) {
        List<Mark> glyphs =
            PageMarks.of(document.getPage(i)).stream()
                .filter(m -> m.kind() == Kind.GLYPH)
                .sorted(Comparator.comparingDouble(Mark::bottom))
                .toList();
        for (int k = 0; k < glyphs.size(); k++) {
          // Those of other lines are not over it.
          double line = glyphs.get(k).bottom() + 1;
          for (int n = k + 1; n < glyphs.size() && glyphs.get(n).bottom() < line; n++) {
            if (isOver(glyphs.get(k), glyphs.get(n))) {
              over.add("page %d: %s, %s".formatted(i + 1, glyphs.get(k), glyphs.get(n)));
            }
          }
        }
      }
    }
    assertThat(over).isEmpty();
  }

  /** Whether the middles of two characters are nearer than kerned letters ever come. */
  private static boolean isOver(Mark one, Mark other) {
    double apart = Math.abs(one.left() + one.right() - other.left() - other.right()) / 2;
    double width = Math.min(one.right() - one.left(), other.right() - other.left());
    double lower = Math.abs(one.bottom() - other.bottom());
    return lower < 1 && apart < width / 3;
  }

  /** A number of a cell stays in one piece; a table that was cut would lack some. */
  @Test
  void everyCellIsPrinted() throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(true);
      Set<String> printed =
          Pattern.compile("[0-9]{6}")
              .matcher(stripper.getText(document))
              .results()
              .map(MatchResult::group)
              .collect(Collectors.toSet());
      assertThat(printed).containsAll(TABLES_OF_ALL_SHAPES.words());
    }
  }
}
