package chinelog.markup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chinelog.drawn.Anchor;
import chinelog.drawn.Ink;
import chinelog.drawn.Spot;
import chinelog.edition.Diagram;
import chinelog.edition.Drawing;
import chinelog.edition.Timeline;
import java.io.StringReader;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class DrawingSvgTest {

  private static final Wording WORDING = Wording.of(Locale.UK);
  private static final Drawing.Table NONE = new Drawing.Table(List.of(), List.of(), false);

  private static final Diagram EVERY_INK =
      new Diagram(
          "lines-form", "form", "Lines & <more>", "A hull.", 120, shapes(), NONE, List.of());

  private static List<Diagram.Shape> shapes() {
    List<Diagram.Shape> shapes = new ArrayList<>();
    for (Ink ink : Ink.values()) {
      shapes.add(new Diagram.Line(ink, true, List.of(new Spot(1, 2), new Spot(30.5, 40))));
    }
    shapes.add(new Diagram.Disc(Ink.WEIGHT, new Spot(50, 20), 4.5));
    shapes.add(new Diagram.Note("G", new Spot(60, 20), Anchor.END, true));
    return shapes;
  }

  private static LocalDate april(int day) {
    return LocalDate.of(2026, 4, day);
  }

  private static final Timeline TIME =
      new Timeline(
          "time",
          "The build by day",
          "Two stages.",
          april(1),
          april(20),
          List.of(
              new Timeline.Row(
                  "Moulds",
                  april(1),
                  april(4),
                  List.of(
                      new Timeline.Day(april(2), BigDecimal.valueOf(2)),
                      new Timeline.Day(april(3), BigDecimal.valueOf(4))),
                  april(3)),
              new Timeline.Row("Planking", null, null, List.of(), null)),
          List.of(new Timeline.Count(april(2), 3)),
          "Plates",
          NONE,
          List.of());

  private static Element parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)))
        .getDocumentElement();
  }

  private static Theme theme() throws Exception {
    return Theme.load("slipway", null);
  }

  private static List<Element> all(Element svg, String tag, String kind) {
    List<Element> found = new ArrayList<>();
    NodeList nodes = svg.getElementsByTagName(tag);
    for (int i = 0; i < nodes.getLength(); i++) {
      if (((Element) nodes.item(i)).getAttribute("class").equals(kind)) {
        found.add((Element) nodes.item(i));
      }
    }
    return found;
  }

  @Test
  void itIsNamedAndDescribedOnScreenAndOnPaper() throws Exception {
    Element screen = parsed(DrawingSvg.forScreen(EVERY_INK, theme(), WORDING));
    assertThat(screen.getAttribute("role")).isEqualTo("img");
    assertThat(screen.getAttribute("aria-labelledby"))
        .isEqualTo("lines-form-title lines-form-description");
    assertThat(screen.getElementsByTagName("title").item(0).getTextContent())
        .isEqualTo("Lines & <more>");
    assertThat(screen.getElementsByTagName("desc").item(0).getTextContent()).isEqualTo("A hull.");
    assertThat(screen.getAttribute("data-of")).isEqualTo("form");
    String paper = DrawingSvg.forPrint(EVERY_INK, theme(), WORDING, 120);
    assertThat(parsed(paper).getAttribute("alt")).isEqualTo("Lines & <more>. A hull.");
    assertThat(paper).doesNotContain("opacity").doesNotContain("var(").contains("width:120.00mm");
  }

  @Test
  void everyInkHasALookOfItsOwnAndUpIsUp() throws Exception {
    Element svg = parsed(DrawingSvg.forScreen(EVERY_INK, theme(), WORDING));
    for (Ink ink : Ink.values()) {
      String kind = "ink-" + ink.name().toLowerCase(Locale.ROOT).replace('_', '-');
      assertThat(all(svg, "path", kind)).as(kind).hasSize(1);
      assertThat(all(svg, "path", kind).get(0).getAttribute("d")).isEqualTo("M1 118L30.5 80Z");
    }
    assertThat(all(svg, "circle", "ink-weight").get(0).getAttribute("cy")).isEqualTo("100");
    Element note = all(svg, "text", "label soft").get(0);
    assertThat(note.getAttribute("text-anchor")).isEqualTo("end");
    assertThat(Double.parseDouble(note.getAttribute("y"))).isCloseTo(100, within(1e-9));
  }

  @Test
  void aDayOfTwiceTheHoursIsTwiceAsTall() throws Exception {
    Element svg = parsed(DrawingSvg.forScreen(TIME, theme(), WORDING));
    List<Element> days = all(svg, "path", "ink-work");
    assertThat(days).hasSize(2);
    assertThat(height(days.get(1))).isCloseTo(2 * height(days.get(0)), within(0.11));
    assertThat(all(svg, "path", "ink-plan")).hasSize(1);
    assertThat(all(svg, "path", "ink-centroid")).hasSize(1);
    assertThat(svg.getAttribute("data-of")).isEmpty();
  }

  private static double height(Element bar) {
    return Double.parseDouble(bar.getAttribute("d").replaceAll(".*v([0-9.]+)h.*", "$1"));
  }

  @Test
  void whatIsLaidOnPaperIsAsHighAsItSays() throws Exception {
    assertThat(DrawingSvg.heightMm(EVERY_INK, theme(), WORDING, 100)).isCloseTo(30, within(1e-9));
    assertThat(DrawingSvg.forPrint(EVERY_INK, theme(), WORDING, 100)).contains("height:30.00mm");
  }
}
