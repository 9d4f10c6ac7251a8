package chinelog.withhold;

import chinelog.edition.Text;
import chinelog.reckon.Pace;
import java.util.List;

/** The letters of a text, without its form: for anchors, alternative texts and counting words. */
final class PlainText implements Text.RunVisitor<String> {

  private static final PlainText VISITOR = new PlainText();

  private PlainText() {}

  static String of(List<Text.Run> runs) {
    StringBuilder text = new StringBuilder();
    runs.forEach(run -> text.append(run.accept(VISITOR)));
    return text.toString();
  }

  /** Number of words in blocks, footnotes and captions left out. */
  static int words(List<Text.Block> blocks) {
    return blocks.stream().mapToInt(b -> b.accept(new WordCount())).sum();
  }

  @Override
  public String plain(Text.Plain plain) {
    return plain.text();
  }

  @Override
  public String emphasis(Text.Emphasis emphasis) {
    return of(emphasis.text());
  }

  @Override
  public String strong(Text.Strong strong) {
    return of(strong.text());
  }

  @Override
  public String code(Text.CodeRun code) {
    return code.text();
  }

  @Override
  public String link(Text.Link link) {
    return of(link.text());
  }

  @Override
  public String figure(Text.FigureLink figure) {
    return figure.shown();
  }

  @Override
  public String phrase(Text.Phrase phrase) {
    return of(phrase.text());
  }

  @Override
  public String footnote(Text.Footnote footnote) {
    return "";
  }

  @Override
  public String lineBreak(Text.Break lineBreak) {
    return " ";
  }

  @Override
  public String gap(Text.Gap gap) {
    return "";
  }

  private static final class WordCount implements Text.BlockVisitor<Integer> {

    @Override
    public Integer heading(Text.Heading heading) {
      return Pace.words(of(heading.text()));
    }

    @Override
    public Integer paragraph(Text.Paragraph paragraph) {
      return Pace.words(of(paragraph.text()));
    }

    @Override
    public Integer plate(Text.PlateHere plate) {
      return 0;
    }

    @Override
    public Integer items(Text.Items items) {
      return items.items().stream().mapToInt(PlainText::words).sum();
    }

    @Override
    public Integer quote(Text.Quote quote) {
      return words(quote.blocks());
    }

    @Override
    public Integer code(Text.Code code) {
      return Pace.words(code.text());
    }

    @Override
    public Integer rule(Text.Rule rule) {
      return 0;
    }

    @Override
    public Integer grid(Text.Grid grid) {
      return grid.rows().stream()
          .flatMap(List::stream)
          .mapToInt(cell -> Pace.words(of(cell)))
          .sum();
    }

    @Override
    public Integer withheld(Text.Withheld withheld) {
      return 0;
    }
  }
}
