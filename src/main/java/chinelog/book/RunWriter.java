package chinelog.book;

import chinelog.edition.Edition;
import chinelog.edition.Figure;
import chinelog.edition.Text;
import chinelog.edition.Text.Break;
import chinelog.edition.Text.CodeRun;
import chinelog.edition.Text.Emphasis;
import chinelog.edition.Text.FigureLink;
import chinelog.edition.Text.Footnote;
import chinelog.edition.Text.Gap;
import chinelog.edition.Text.Link;
import chinelog.edition.Text.Phrase;
import chinelog.edition.Text.Plain;
import chinelog.edition.Text.Run;
import chinelog.edition.Text.Strong;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes the runs of a line. */
final class RunWriter implements Text.RunVisitor<Xhtml> {

  private static final String ENTRY = "entry:";

  private final Setting setting;
  private final Xhtml out;
  private final Map<String, String> entryTitles;
  private final Map<String, String> figureTitles;
  private final boolean isFigured;

  /** Within captions, tables and notes a note cannot hang; it is then put in brackets. */
  private boolean isBracketing;

  /**
   * @param isFigured whether the figures have an appendix that their names can lead to
   */
  RunWriter(Setting setting, boolean isFigured) {
    this.setting = setting;
    this.out = setting.out;
    this.isFigured = isFigured;
    this.entryTitles =
        setting.edition.entries().stream()
            .collect(Collectors.toMap(Edition.Entry::id, Edition.Entry::title));
    this.figureTitles =
        setting.edition.figures().stream().collect(Collectors.toMap(Figure::name, Figure::title));
  }

  void write(List<Run> runs) {
    runs.forEach(run -> run.accept(this));
  }

  /** For places where a note cannot hang at the foot of the page. */
  void writeBracketing(List<Run> runs) {
    boolean was = isBracketing;
    isBracketing = true;
    write(runs);
    isBracketing = was;
  }

  @Override
  public Xhtml plain(Plain plain) {
    return out.text(plain.text());
  }

  @Override
  public Xhtml emphasis(Emphasis emphasis) {
    return inside("em", "", emphasis.text());
  }

  @Override
  public Xhtml strong(Strong strong) {
    return inside("strong", "", strong.text());
  }

  @Override
  public Xhtml code(CodeRun code) {
    return out.leaf("code", code.text());
  }

  @Override
  public Xhtml link(Link link) {
    if (link.target().startsWith(ENTRY)) {
      String id = link.target().substring(ENTRY.length());
      String title = setting.words.say("entry.goto", entryTitles.getOrDefault(id, ""));
      out.open("a", "class", "see", "href", "#" + Anchors.entry(id), "title", title);
      write(link.text());
      String page = setting.words.say("page", setting.page(Anchors.entry(id)));
      return out.text(" (" + page + ")").close();
    }
    out.open("a", "href", link.target(), "title", link.target());
    write(link.text());
    out.close();
    return note(List.of(new Plain(link.target().replaceFirst("^mailto:", ""))));
  }

  @Override
  public Xhtml figure(FigureLink figure) {
    String title = figureTitles.get(figure.figure());
    if (!isFigured || title == null) {
      return out.leaf("span", figure.shown(), "class", "figure");
    }
    return out.leaf(
        "a",
        figure.shown(),
        "class",
        "figure",
        "href",
        "#" + Anchors.figure(figure.figure()),
        "title",
        setting.words.say("figure.goto", title));
  }

  @Override
  public Xhtml phrase(Phrase phrase) {
    out.open("span", "class", "phrase", Marks.ATTRIBUTE, setting.parties(phrase.under()));
    write(phrase.text());
    if (!phrase.text().equals(List.of(new Plain(setting.parties(phrase.under()))))) {
      setting.shortTag(phrase.under());
    }
    return out.close();
  }

  @Override
  public Xhtml footnote(Footnote footnote) {
    return note(footnote.text());
  }

  private Xhtml note(List<Run> text) {
    if (isBracketing) {
      out.text(" (");
      write(text);
      return out.text(")");
    }
    out.open("span", "class", "note");
    writeBracketing(text);
    return out.close();
  }

  @Override
  public Xhtml lineBreak(Break lineBreak) {
    return lineBreak.hard() ? out.empty("br") : out.text(" ");
  }

  @Override
  public Xhtml gap(Gap gap) {
    return out.leaf("span", setting.words.shared().text("withheld.phrase"), "class", "gap");
  }

  private Xhtml inside(String element, String kind, List<Run> text) {
    out.open(element, "class", kind);
    write(text);
    return out.close();
  }
}
