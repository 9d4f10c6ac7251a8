package chinelog.book.writing;

import chinelog.book.page.Manuscript;
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
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Writes the runs of a line. */
final class RunWriter implements Text.RunVisitor<Xhtml> {

  private static final String ENTRY = "entry:";

  private static final Pattern CLOSING = Pattern.compile("^[\\p{Pe}\\p{Pf}\\p{Po}]+");

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
        setting.listed.stream().collect(Collectors.toMap(Figure::name, Figure::title));
  }

  /**
   * Writes runs. Where an element begins or ends, the library lets a line end: what closes a phrase
   * would begin the next line, and a space before an element would be left at the end of its line,
   * short of the edge. Both go into the element.
   */
  void write(List<Run> runs) {
    String taken = "";
    String space = "";
    for (int i = 0; i < runs.size(); i++) {
      Run run = runs.get(i);
      Run next = i + 1 < runs.size() ? runs.get(i + 1) : run;
      if (run instanceof Plain plain) {
        String text = plain.text().substring(taken.length());
        space = text.endsWith(" ") && isOpenTo(next) ? " " : "";
        out.text(text.substring(0, text.length() - space.length()));
        taken = "";
      } else {
        String after = closing(next);
        taken = enclosed(run, space, after) ? after : "";
        space = "";
      }
    }
  }

  private static boolean isOpenTo(Run run) {
    return run instanceof FigureLink || run instanceof Emphasis || run instanceof Strong;
  }

  /** The marks that a run begins with, such as a full stop. */
  private static String closing(Run run) {
    Matcher marks = CLOSING.matcher(run instanceof Plain plain ? plain.text() : "");
    return marks.find() ? marks.group() : "";
  }

  /** Writes a run with the space before it and the marks after it; whether it took the marks. */
  private boolean enclosed(Run run, String space, String after) {
    if (run instanceof Gap) {
      gap(after);
    } else if (run instanceof FigureLink figure) {
      figure(figure, space, after);
    } else if (run instanceof Emphasis emphasis) {
      inside("em", emphasis.children(), space, after);
    } else if (run instanceof Strong strong) {
      inside("strong", strong.children(), space, after);
    } else if (run instanceof Link link && link.target().startsWith(ENTRY)) {
      entry(link, after);
    } else {
      run.accept(this);
      return false;
    }
    return true;
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
    return inside("em", emphasis.children(), "", "");
  }

  @Override
  public Xhtml strong(Strong strong) {
    return inside("strong", strong.children(), "", "");
  }

  @Override
  public Xhtml code(CodeRun code) {
    return out.leaf("code", code.text());
  }

  @Override
  public Xhtml link(Link link) {
    if (link.target().startsWith(ENTRY)) {
      return entry(link, "");
    }
    out.open("a", "href", link.target(), "title", link.target());
    write(link.children());
    out.close();
    return note(List.of(new Plain(link.target().replaceFirst("^mailto:", ""))));
  }

  private Xhtml entry(Link link, String after) {
    String id = link.target().substring(ENTRY.length());
    String title = setting.words.say("entry.goto", entryTitles.getOrDefault(id, ""));
    out.open("a", "class", "see", "href", "#" + Anchors.entry(id), "title", title);
    write(link.children());
    String page = setting.words.say("page", setting.page(Anchors.entry(id)));
    return out.text(" (" + page + ")" + after).close();
  }

  @Override
  public Xhtml figure(FigureLink figure) {
    return figure(figure, "", "");
  }

  private Xhtml figure(FigureLink figure, String space, String after) {
    String title = figureTitles.get(figure.figure());
    if (!isFigured || title == null) {
      return out.leaf("span", space + figure.shown() + after, "class", "figure");
    }
    return out.leaf(
        "a",
        space + figure.shown() + after,
        "class",
        "figure",
        "href",
        "#" + Anchors.figure(figure.figure()),
        "title",
        setting.words.say("figure.goto", title));
  }

  @Override
  public Xhtml phrase(Phrase phrase) {
    out.open(
        "span", "class", "phrase", Manuscript.UNDER_ATTRIBUTE, setting.parties(phrase.under()));
    write(phrase.children());
    if (!phrase.children().equals(List.of(new Plain(setting.parties(phrase.under()))))) {
      setting.shortTag(phrase.under());
    }
    return out.close();
  }

  @Override
  public Xhtml footnote(Footnote footnote) {
    return note(footnote.children());
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
    return gap("");
  }

  private Xhtml gap(String after) {
    String sign = setting.words.shared().text("withheld.phrase");
    return out.leaf("span", sign + after, "class", "gap");
  }

  private Xhtml inside(String element, List<Run> text, String space, String after) {
    out.open(element).text(space);
    write(text);
    return out.text(after).close();
  }
}
