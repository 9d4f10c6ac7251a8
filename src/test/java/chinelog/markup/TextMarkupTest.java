package chinelog.markup;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.edition.Text.PlateHere.Layout;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class TextMarkupTest {

  private static final List<String> NONE = List.of();

  /** Writes what differs between site and book in the plainest way. */
  private static final class Plainly implements TextMarkup.Manner {
    @Override
    public void mark(HtmlWriter html, List<String> agreements) {
      html.text("Under agreement: " + String.join(", ", agreements));
    }

    @Override
    public void plate(HtmlWriter html, Plate plate, Layout layout) {
      html.empty("img", "alt", plate.alt());
    }

    @Override
    public @Nullable String figureAddress(String figure) {
      return figure.equals("hull.loa") ? "#loa" : null;
    }

    @Override
    public @Nullable String entryAddress(String entry) {
      return entry.equals("known") ? "known.html" : null;
    }

    @Override
    public void footnote(HtmlWriter html, String markup) {
      html.open("small").raw(markup).close("small");
    }

    @Override
    public int firstHeading() {
      return 3;
    }

    @Override
    public Wording wording() {
      return Wording.of(Locale.UK);
    }
  }

  private static String written(Text.Block... blocks) {
    HtmlWriter html = new HtmlWriter();
    TextMarkup.write(List.of(blocks), new Plainly(), html);
    return html.toString().strip();
  }

  private static String written(Text.Run... runs) {
    HtmlWriter html = new HtmlWriter();
    TextMarkup.writeRuns(List.of(runs), new Plainly(), html);
    return html.toString();
  }

  private static List<Text.Run> plain(String text) {
    return List.of(new Text.Plain(text));
  }

  @Test
  void textIsEscaped() {
    assertThat(written(new Text.Paragraph(plain("5 < 6 & \"so\" <script>"), NONE)))
        .isEqualTo("<p>5 &lt; 6 &amp; &quot;so&quot; &lt;script&gt;</p>");
  }

  /** XML 1.0, production 2: of the control characters only tab, line feed and return may stand. */
  @Test
  void controlCharactersAreLeftOut() {
    assertThat(written(new Text.Plain("a\u0000b\u001b\tc\ufffe"))).isEqualTo("ab\tc");
  }

  @Test
  void aFigureIsLinkedWhereItIsTold() {
    assertThat(written(new Text.FigureLink("hull.loa", "700 mm")))
        .isEqualTo("<a class=\"fact\" href=\"#loa\">700\u00a0mm</a>");
    assertThat(written(new Text.FigureLink("hull.beam", "190 mm")))
        .isEqualTo("<span class=\"fact\">190\u00a0mm</span>");
  }

  @Test
  void aLinkLeadsOnlyToTheWebOrToAnEntryThatIsTold() {
    assertThat(written(new Text.Link("https://example.org/", plain("there"))))
        .isEqualTo("<a href=\"https://example.org/\">there</a>");
    assertThat(written(new Text.Link("entry:known", plain("then"))))
        .isEqualTo("<a href=\"known.html\">then</a>");
    assertThat(written(new Text.Link("entry:unknown", plain("then")))).isEqualTo("then");
    assertThat(written(new Text.Link("javascript:x", plain("here")))).isEqualTo("here");
  }

  @Test
  void aHeadingNeverSkipsALevel() {
    assertThat(
            written(
                new Text.Heading(2, "a", plain("A"), NONE),
                new Text.Heading(4, "b", plain("B"), NONE),
                new Text.Heading(1, "c", plain("C"), NONE)))
        .isEqualTo("<h3 id=\"a\">A</h3>\n<h4 id=\"b\">B</h4>\n<h3 id=\"c\">C</h3>");
  }

  @Test
  void whatIsUnderAnAgreementIsMarked() {
    assertThat(written(new Text.Paragraph(plain("x"), List.of("lines"))))
        .isEqualTo(
            "<div class=\"under\"><p class=\"under-mark\">Under agreement: lines</p><p>x</p>\n</div>");
    assertThat(
            written(
                new Text.Paragraph(plain("x"), List.of("lines")),
                new Text.Quote(
                    List.of(
                        new Text.Paragraph(plain("y"), List.of("lines")),
                        new Text.Paragraph(plain("z"), List.of("lines", "client"))),
                    List.of("lines")),
                new Text.Paragraph(plain("w"), List.of("client"))))
        .isEqualToIgnoringNewLines(
            "<div class=\"under\"><p class=\"under-mark\">Under agreement: lines</p><p>x</p>"
                + "<blockquote><p>y</p>"
                + "<div class=\"under\"><p class=\"under-mark\">Under agreement: lines, client</p>"
                + "<p>z</p></div></blockquote></div>"
                + "<div class=\"under\"><p class=\"under-mark\">Under agreement: client</p>"
                + "<p>w</p></div>");
    assertThat(written(new Text.Phrase(plain("x"), List.of("lines", "client"))))
        .contains("Under agreement: lines, client");
  }

  @Test
  void listsStandCloseUnlessAnItemHasSeveralBlocks() {
    Text.Block one = new Text.Paragraph(plain("one"), NONE);
    assertThat(written(new Text.Items(3, List.of(List.of(one)), NONE)))
        .isEqualTo("<ol start=\"3\"><li>one</li></ol>");
    assertThat(written(new Text.Items(0, List.of(List.of(one, one)), NONE)))
        .isEqualTo("<ul><li><p>one</p>\n<p>one</p>\n</li></ul>");
  }

  @Test
  void numbersInATableStandAtTheRight() {
    assertThat(
            written(
                new Text.Grid(
                    List.of(plain("Side"), plain("Strips")),
                    List.of(List.of(plain("Port"), plain("59"))),
                    List.of(false, true),
                    NONE)))
        .contains("<th scope=\"col\" class=\"number\">Strips</th>")
        .contains("<td>Port</td><td class=\"number\">59</td>");
  }

  @Test
  void plainTextLeavesMarkupAndFootnotesOut() {
    List<Text.Run> runs =
        List.of(
            new Text.Strong(plain("She")),
            new Text.Footnote(plain("the boat")),
            new Text.Break(false),
            new Text.Gap());
    assertThat(TextMarkup.plain(runs, Wording.of(Locale.UK))).isEqualTo("She [withheld]");
  }

  @Test
  void aNumberAndItsUnitStayOnOneLine() {
    assertThat(TextMarkup.typeset("3 mm by 9 1/2 in of 12 planks, 3 min apart"))
        .isEqualTo("3\u00a0mm by 9\u202f1\u20442\u00a0in of 12 planks, 3\u00a0min apart");
  }
}
