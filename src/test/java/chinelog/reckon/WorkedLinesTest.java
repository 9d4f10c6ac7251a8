package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.OncePerRun;
import chinelog.edition.Figure;
import chinelog.log.LogReader;
import chinelog.log.records.Log;
import chinelog.publish.Demo;
import chinelog.reckon.trade.Example;
import chinelog.reckon.trade.TradeReckonings;
import chinelog.wording.Catalogue;
import chinelog.wording.WorkedLine;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** From the print-out alone, a reader with a calculator gets the last digit of every figure. */
@ExtendWith(OncePerRun.class)
class WorkedLinesTest {

  private static final Catalogue PRINTED = Catalogue.of(Facts.MESSAGES, Locale.UK).toDigits(7);

  /** Read off a published table, which its line names; or laid out one by one on a sheet. */
  private static final List<String> NOT_ARITHMETIC =
      List.of(
          "material\\.(density.*|basic_density_.*|shrinkage_.*|fibre_fraction_.*)",
          "cutting\\.(sheets|sheet_.*|along_.*|across_.*)",
          "moulds\\.sheets",
          "stocked-size\\.size");

  /** A figure as shown, in decimals: its number, what stands behind the point, its unit. */
  private static final Pattern SHOWN =
      Pattern.compile("= ([−0-9,]+(\\.[0-9]+)?)( ?[^ 0-9±]+)?(?: ±.*)?");

  /** Angles at which, so their line says, the righting arm comes to nothing. */
  private static final List<String> BALANCED = List.of("afloat.heel", "afloat.range");

  /** A draught at which, so its line says, the volume is that of the mass. */
  private static final String DRAUGHT = "hull-form.draught";

  static List<String> names() {
    return TradeReckonings.names();
  }

  @ParameterizedTest
  @MethodSource("names")
  void theNumbersOfItsLineGiveEveryFigure(String name, @TempDir Path folder) throws IOException {
    Example example = TradeReckonings.find(name).orElseThrow().example();
    Files.writeString(folder.resolve("log.yaml"), "title: Building Merrow\nscale: 1:16\n");
    Files.writeString(folder.resolve("facts.yaml"), example.facts());
    Files.createDirectory(folder.resolve("tables"));
    for (var table : example.tables().entrySet()) {
      Files.writeString(folder.resolve("tables/" + table.getKey() + ".csv"), table.getValue());
    }
    Log log = new LogReader(LocalDate.of(2026, 6, 30), ZoneOffset.UTC).read(folder).log();
    Facts facts = Reckoner.reckon(log).facts();
    List<String> wrong = new ArrayList<>();
    for (Fact fact : facts.byName().values()) {
      boolean ofIt =
          log.requests().stream()
              .filter(r -> r.reckoning().value().equals(name))
              .anyMatch(r -> fact.name().startsWith(r.prefix() + "."));
      String of = name + "." + fact.name().substring(fact.name().indexOf('.') + 1);
      if (ofIt && fact.formula() == null && !isTold(of, fact, facts)) {
        wrong.add(
            fact.name()
                + " = "
                + fact.value()
                + ": "
                + fact.method().stream().map(PRINTED::text).toList());
      }
    }
    assertThat(wrong).isEmpty();
  }

  private static boolean isTold(String of, Fact fact, Facts facts) {
    if (BALANCED.contains(of)) {
      // To a ten-thousandth of a millimetre; arms are shown to hundredths.
      return results(fact).anyMatch(arm -> Math.abs(arm) < 1e-7);
    }
    if (of.equals(DRAUGHT)) {
      Fact volume = facts.find(fact.name().replace("draught", "volume")).orElseThrow();
      return results(fact).anyMatch(v -> agree(v, volume));
    }
    return results(fact).anyMatch(r -> agree(r, fact))
        || results(fact).findAny().isEmpty() && NOT_ARITHMETIC.stream().anyMatch(of::matches);
  }

  /** What the lines below a figure come to, in SI units. */
  private static DoubleStream results(Fact fact) {
    return fact.method().stream()
        .map(line -> Calculator.result(PRINTED.text(line)))
        .flatMapToDouble(OptionalDouble::stream);
  }

  /** What site and book are given of each figure of the demo, and what the site's page tells. */
  @Test
  void thePagesOfTheDemoGiveEveryFigure(Demo demo) throws IOException {
    List<List<String>> given =
        demo.edition("workshop").contents().figures().stream()
            .map(Figure::working)
            .filter(steps -> !steps.isEmpty())
            .map(steps -> steps.stream().map(WorkedLine::text).toList())
            .toList();
    assertThat(right(given)).isGreaterThan(200);
    // Of figures that were worked out alike the page tells one.
    Document page = Jsoup.parse(demo.site("slipway", "workshop").resolve("figures.html").toFile());
    List<List<String>> told =
        page.select("ol.working").stream().map(w -> w.select("li").eachText()).toList();
    assertThat(right(told)).isGreaterThan(90);
  }

  /** How many come out as shown; all others are told in words, or are hours, money, fractions. */
  private static int right(List<List<String>> workings) {
    List<String> wrong = new ArrayList<>();
    int inWords = 0;
    int right = 0;
    for (List<String> steps : workings) {
      String told = steps.get(steps.size() - 1).replace('\u202f', ' ');
      Matcher shown = SHOWN.matcher(told);
      // A formula is told with the titles of its facts, then with their figures.
      boolean isFormula = steps.size() == 3 && steps.get(1).startsWith("= ");
      double[] results =
          Stream.of(isFormula ? new String[] {" " + steps.get(1)} : steps.get(0).split("(?<=\\.) "))
              .map(Calculator::result)
              .flatMapToDouble(OptionalDouble::stream)
              .toArray();
      if (results.length == 0 || !shown.matches()) {
        inWords++;
        continue;
      }
      String unit = Objects.requireNonNullElse(shown.group(3), "");
      double value = Calculator.result(shown.group(1) + unit).orElseThrow();
      String decimals = Objects.requireNonNullElse(shown.group(2), ".");
      double last =
          Calculator.result("1" + unit).orElseThrow() * Math.pow(10, 1 - decimals.length());
      if (DoubleStream.of(results).anyMatch(r -> Math.abs(r - value) <= 0.501 * last)) {
        right++;
      } else {
        wrong.add(String.join(" | ", steps));
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(inWords).isLessThan(40);
    return right;
  }

  /** Whether a tenth of the last digit that is shown tells them apart. */
  private static boolean agree(double result, Fact fact) {
    double printed = Math.abs(fact.value().value().doubleValue());
    double scale = printed == 0 ? 1 : Math.abs(fact.value().coherent()) / printed;
    // Four digits are shown, or all that stand before the decimal point.
    double last =
        printed == 0 ? 1e-6 : Math.min(1, Math.pow(10, Math.floor(Math.log10(printed)) - 3));
    return Math.abs(result - fact.value().coherent()) <= 0.1 * last * scale;
  }

  /** That the calculator is none that any line satisfies. */
  @Test
  void aLineWithOneDigitChangedIsFound() {
    assertThat(Calculator.result("2 × (1.5 cm × 3 cm + 4 cm²) ÷ 2 cm.").orElseThrow())
        .isCloseTo(0.085, within(1e-12));
    assertThat(Calculator.result("(d + s x) ÷ cos φ = (2 mm + 4 mm) ÷ cos 60°.").orElseThrow())
        .isCloseTo(0.012, within(1e-12));
    assertThat(Calculator.result("A ÷ ∇^⅔ = 4 m² ÷ (8 m³)^⅔.").orElseThrow())
        .isCloseTo(1, within(1e-12));
    assertThat(Calculator.result("⌈1,230 g ÷ 400 g⌉ × 2² − √16 + 3⁄64 in ÷ 1 in.").orElseThrow())
        .isCloseTo(12.046875, within(1e-12));
    assertThat(Calculator.result("The sum of the masses.")).isEmpty();
    assertThat(Calculator.result("2 × (3 mm")).isEmpty();
    assertThat(Calculator.result("2 mm × sin φ.")).isEmpty();
  }
}
