package chinelog.book;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.OncePerRun;
import chinelog.edition.Edition.Paper;
import chinelog.publish.Demo;
import chinelog.reckon.Calculator;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** From the printed book alone, a reader with a calculator gets the last digit of every figure. */
@ExtendWith(OncePerRun.class)
class RecomputedBookTest {

  private static final String NUMBER = "\u2212?[0-9][0-9,]*(?:\\.[0-9]+)?";

  /** A line of numbers put in, such as "Station 8 2 × (3 mm + 4 mm) = 14 mm". */
  private static final Pattern ROW =
      Pattern.compile(
          "(?:Station [0-9]+|In the same way:) ((?:[^.:]|\\.(?=[0-9])){3,600}?) = ("
              + NUMBER
              + ")( ?[^ 0-9±.]+)?(?= ± |\\. | [A-Z])");

  private static final Pattern COLUMNS =
      Pattern.compile(
          "with a column for each number: ([^=]*?)\\. [^\u2460]*?((?:[\u2460-\u2473] (?:\\(mm\\) )?)+)Value"
              + "( \\(mm\\))? ");

  private final List<String> wrong = new ArrayList<>();

  @Test
  void theNumbersOfFiguresWorkedOutAlikeGiveEachOfThem(Demo demo) throws IOException {
    String text = text(demo);
    assertThat(inRows(text)).isGreaterThanOrEqualTo(60);
    assertThat(inColumns(text)).isGreaterThan(70);
    assertThat(wrong).isEmpty();
  }

  /** The book by its tags, and so without heads and numbers of pages. */
  private static String text(Demo demo) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(demo.book("slipway", Paper.A4, "workshop").toFile())) {
      return Pdf.byTags(pdf).stream()
          .map(Pdf.Piece::text)
          .collect(Collectors.joining(" "))
          .replaceAll("[\\s\u00a0\u2007\u202f]+", " ");
    }
  }

  private int inRows(String text) {
    return (int)
        ROW.matcher(text)
            .results()
            .filter(row -> comesOut(row.group(1), row.group(2), row.group(3)))
            .count();
  }

  /** Rows follow a formula: a part, a number for each ring, and the figure. */
  private int inColumns(String text) {
    int right = 0;
    Matcher told = COLUMNS.matcher(text);
    while (told.find()) {
      @Nullable String unit = told.group(3) == null ? null : " mm";
      String[] heads = told.group(2).split("(?=[\u2460-\u2473])");
      Matcher row =
          Pattern.compile(
                  "(?:Half-breadth at [0-9]+ mm )?(?:Mould|Station) [0-9]+"
                      + " (?:Half-breadth at [0-9]+ mm )?"
                      + ("(" + NUMBER + ") ").repeat(heads.length)
                      + "("
                      + NUMBER
                      + ") ")
              .matcher(text)
              .region(told.end(), text.length());
      while (row.lookingAt()) {
        String put = told.group(1);
        for (int i = 0; i < heads.length; i++) {
          put =
              put.replace(
                  heads[i].substring(0, 1),
                  row.group(i + 1) + heads[i].substring(1).replaceAll("[()]", ""));
        }
        right += comesOut(put, row.group(heads.length + 1), unit) ? 1 : 0;
        row.region(row.end(), text.length());
      }
    }
    return right;
  }

  private boolean comesOut(String put, String number, @Nullable String unit) {
    OptionalDouble result = Calculator.result(put);
    if (result.isEmpty()) {
      return false;
    }
    String of = unit == null ? "" : unit;
    int point = number.indexOf('.');
    int decimals = point < 0 ? 0 : number.length() - point - 1;
    double last = Calculator.result("1" + of).orElseThrow() * Math.pow(10, -decimals);
    double value = Calculator.result(number + of).orElseThrow();
    boolean comesOut = Math.abs(result.orElseThrow() - value) <= 0.501 * last;
    if (!comesOut) {
      wrong.add(put + " is not " + number + of + " but " + result.orElseThrow());
    }
    return comesOut;
  }
}
