package chinelog.markup;

import chinelog.edition.Text;
import java.util.List;

/** Gathers the text of runs without any markup; footnotes are left out. */
final class PlainText implements Text.RunVisitor<StringBuilder> {

  private final StringBuilder out;
  private final Wording wording;

  PlainText(StringBuilder out, Wording wording) {
    this.out = out;
    this.wording = wording;
  }

  private StringBuilder all(List<Text.Run> runs) {
    runs.forEach(r -> r.accept(this));
    return out;
  }

  @Override
  public StringBuilder plain(Text.Plain plain) {
    return out.append(plain.text());
  }

  @Override
  public StringBuilder emphasis(Text.Emphasis emphasis) {
    return all(emphasis.text());
  }

  @Override
  public StringBuilder strong(Text.Strong strong) {
    return all(strong.text());
  }

  @Override
  public StringBuilder code(Text.CodeRun code) {
    return out.append(code.text());
  }

  @Override
  public StringBuilder link(Text.Link link) {
    return all(link.text());
  }

  @Override
  public StringBuilder figure(Text.FigureLink figure) {
    return out.append(figure.shown());
  }

  @Override
  public StringBuilder phrase(Text.Phrase phrase) {
    return all(phrase.text());
  }

  @Override
  public StringBuilder footnote(Text.Footnote footnote) {
    return out;
  }

  @Override
  public StringBuilder lineBreak(Text.Break lineBreak) {
    return out.append(' ');
  }

  @Override
  public StringBuilder gap(Text.Gap gap) {
    return out.append(wording.text("withheld.phrase"));
  }
}
