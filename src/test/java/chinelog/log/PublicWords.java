package chinelog.log;

import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Statement;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import java.util.List;
import java.util.stream.Collectors;

/** The words of a text that stand under no agreement at all. */
final class PublicWords implements Block.Visitor<String>, Inline.Visitor<String> {

  private PublicWords() {}

  static String of(Log log) {
    StringBuilder words = new StringBuilder();
    log.entries().forEach(entry -> words.append(of(entry)));
    for (PhotoFile photo : log.photos()) {
      if (photo.label().isNone()) {
        words.append(runs(photo.caption())).append(photo.alt()).append('\n');
      }
    }
    for (Statement statement : log.statements()) {
      if (statement.label().isNone()) {
        words.append(statement.expression()).append('\n');
      }
    }
    Marked<String> client = log.head().client();
    return words.append(client != null && client.label().isNone() ? client.value() : "").toString();
  }

  static String of(Entry entry) {
    if (!entry.label().isNone()) {
      return "";
    }
    String title = entry.title().label().isNone() ? entry.title().value() : "";
    return title + "\n" + blocks(entry.text());
  }

  static String blocks(List<Block> blocks) {
    return blocks.stream()
        .filter(b -> b.label().isNone())
        .map(b -> b.accept(new PublicWords()) + "\n")
        .collect(Collectors.joining());
  }

  private static String runs(List<Inline> runs) {
    return runs.stream().map(r -> r.accept(new PublicWords())).collect(Collectors.joining());
  }

  @Override
  public String heading(Block.Heading heading) {
    return runs(heading.text());
  }

  @Override
  public String paragraph(Block.Paragraph paragraph) {
    return runs(paragraph.text());
  }

  @Override
  public String picture(Block.Picture picture) {
    return image(picture.image());
  }

  @Override
  public String items(Block.Items items) {
    return items.items().stream().map(PublicWords::blocks).collect(Collectors.joining());
  }

  @Override
  public String quote(Block.Quote quote) {
    return blocks(quote.children());
  }

  @Override
  public String code(Block.Code code) {
    return code.text();
  }

  @Override
  public String rule(Block.Rule rule) {
    return "";
  }

  @Override
  public String grid(Block.Grid grid) {
    return grid.head().stream().map(PublicWords::runs).collect(Collectors.joining())
        + grid.rows().stream()
            .flatMap(List::stream)
            .map(PublicWords::runs)
            .collect(Collectors.joining());
  }

  @Override
  public String text(Inline.Text text) {
    return text.text();
  }

  @Override
  public String emphasis(Inline.Emphasis emphasis) {
    return runs(emphasis.children());
  }

  @Override
  public String strong(Inline.Strong strong) {
    return runs(strong.children());
  }

  @Override
  public String code(Inline.Code code) {
    return code.text();
  }

  @Override
  public String link(Inline.Link link) {
    return runs(link.children()) + " <" + link.target() + "> ";
  }

  @Override
  public String factLink(Inline.FactLink factLink) {
    return factLink.written();
  }

  @Override
  public String image(Inline.Image image) {
    return image.label().isNone() ? image.path() + runs(image.caption()) : "";
  }

  @Override
  public String phrase(Inline.Phrase phrase) {
    return phrase.label().isNone() ? runs(phrase.children()) : "";
  }

  @Override
  public String footnote(Inline.Footnote footnote) {
    return footnote.label().isNone() ? runs(footnote.children()) : "";
  }

  @Override
  public String lineBreak(Inline.Break lineBreak) {
    return "\n";
  }
}
