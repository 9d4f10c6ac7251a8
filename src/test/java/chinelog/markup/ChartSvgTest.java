package chinelog.markup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.edition.Chart;
import java.io.StringReader;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

class ChartSvgTest {

  private static final Wording WORDING = Wording.of(Locale.UK);

  private static final Chart BARS =
      new Chart(
          "hours",
          Chart.Kind.BARS,
          "Hours & days",
          "Twice as many.",
          "h",
          List.of("Moulds", "Planking <all>"),
          List.of(series("Worked", "10", "20"), series("Planned", "5", "0")));

  private static final Chart STEPS =
      new Chart(
          "mass",
          Chart.Kind.STEPS,
          "Mass",
          "It grew.",
          "g",
          List.of("2026-04-01", "2026-04-11", "2026-04-21"),
          List.of(series("Mass", "100", "300", "400")));

  private static Chart.Series series(String name, String... values) {
    return new Chart.Series(name, Stream.of(values).map(BigDecimal::new).toList(), List.of(values));
  }

  private static Element parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)))
        .getDocumentElement();
  }

  private static Theme theme() throws Exception {
    return Theme.load("slipway", null);
  }

  @Test
  void itIsNamedAndDescribed() throws Exception {
    Element svg = parsed(ChartSvg.forScreen(BARS, theme(), WORDING));
    assertThat(svg.getAttribute("role")).isEqualTo("img");
    assertThat(svg.getAttribute("aria-labelledby")).isEqualTo("hours-title hours-description");
    assertThat(svg.getElementsByTagName("title").item(0).getTextContent())
        .isEqualTo("Hours & days");
    assertThat(svg.getElementsByTagName("desc").item(0).getTextContent())
        .isEqualTo("Twice as many.");
    assertThat(svg.hasAttribute("alt")).isFalse();
  }

  @Test
  void onPaperItHasAnAltAndNoOpacity() throws Exception {
    String svg = ChartSvg.forPrint(BARS, theme(), WORDING, 88);
    assertThat(parsed(svg).getAttribute("alt"))
        .isEqualTo(
            "Hours & days. Twice as many. Moulds: Worked 10, Planned 5."
                + " Planking <all>: Worked 20, Planned 0.");
    assertThat(svg).doesNotContain("opacity").doesNotContain("var(");
  }

  @Test
  void barsAreAsLongAsTheirValues() throws Exception {
    Element svg = parsed(ChartSvg.forScreen(BARS, theme(), WORDING));
    double ten = width(svg, 0);
    double twenty = width(svg, 2);
    assertThat(twenty).isEqualTo(2 * ten);
    assertThat(width(svg, 1)).isEqualTo(ten / 2);
  }

  private static double width(Element svg, int bar) {
    return Double.parseDouble(
        ((Element) svg.getElementsByTagName("rect").item(bar)).getAttribute("width"));
  }

  @Test
  void valuesAreShownAsThePrintedOnes() throws Exception {
    String svg = ChartSvg.forScreen(STEPS, theme(), WORDING);
    assertThat(svg).contains(">400</text>").contains(">1 Apr 2026</text>");
  }

  @Test
  void aStepStandsWhereItsDayIs() throws Exception {
    Matcher path =
        Pattern.compile("d=\"M([\\d.]+) [\\d.]+H([\\d.]+)V[\\d.]+H([\\d.]+)V")
            .matcher(ChartSvg.forScreen(STEPS, theme(), WORDING));
    assertThat(path.find()).isTrue();
    double from = Double.parseDouble(path.group(1));
    double to = Double.parseDouble(path.group(3));
    assertThat(Double.parseDouble(path.group(2))).isCloseTo((from + to) / 2, within(0.1));
  }

  @Test
  void seriesAreToldApartWithoutColour() throws Exception {
    Chart two =
        new Chart(
            "two",
            Chart.Kind.STEPS,
            "Two",
            "Two.",
            "h",
            STEPS.categories(),
            List.of(series("a", "1", "2", "3"), series("b", "1", "2", "3")));
    String svg = ChartSvg.forPrint(two, theme(), WORDING, 88);
    assertThat(svg).contains("class=\"line line-2\"").contains("stroke-dasharray=\"5 4\"");
  }

  @Test
  void nothingToShowIsNoFailure() throws Exception {
    Chart none = new Chart("n", Chart.Kind.STEPS, "N", "N.", "h", List.of(), List.of(series("a")));
    assertThat(ChartSvg.forScreen(none, theme(), WORDING)).endsWith("</svg>");
    Chart zero =
        new Chart("z", Chart.Kind.BARS, "Z", "Z.", "h", List.of("a"), List.of(series("a", "0")));
    assertThat(ChartSvg.forScreen(zero, theme(), WORDING)).doesNotContain("NaN", "Infinity");
  }
}
