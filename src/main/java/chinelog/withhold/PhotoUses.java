package chinelog.withhold;

import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Where the texts of a log show its photographs, each with the agreements of everything around it.
 */
final class PhotoUses {

  private final List<Use> all = new ArrayList<>();
  private final Map<String, Label> labels = new HashMap<>();

  PhotoUses(WholeLog whole) {
    Log log = whole.log();
    Set<String> paths = log.photos().stream().map(p -> p.path()).collect(Collectors.toSet());
    for (Entry entry : log.entries()) {
      collect(entry.text(), entry.label(), entry.id());
    }
    collect(log.head().about(), Label.NONE, "");
    log.stages().forEach(s -> collect(s.about(), s.label(), ""));
    log.handover().forEach(h -> collect(h.text(), h.label(), ""));
    all.removeIf(use -> !paths.contains(use.image().path()));
    all.forEach(use -> labels.merge(use.image().path(), use.label(), Label::join));
  }

  /** The agreements that the places of a photograph put it under. */
  Label labelOf(String path) {
    return labels.getOrDefault(path, Label.NONE);
  }

  boolean isUsed(String path) {
    return labels.containsKey(path);
  }

  /** In the order of the log. */
  List<Use> all() {
    return all;
  }

  private void collect(List<Block> blocks, Label around, String entry) {
    blocks.forEach(b -> b.accept(new Walk(around.join(b.label()), entry)));
  }

  /**
   * A photograph shown in a text.
   *
   * @param entry id of the entry; empty for other texts
   */
  record Use(Inline.Image image, Label label, String entry) {}

  private final class Walk implements Block.Visitor<Void>, Inline.Visitor<Void> {

    private final Label around;
    private final String entry;

    Walk(Label around, String entry) {
      this.around = around;
      this.entry = entry;
    }

    private Void walk(List<Inline> inlines) {
      inlines.forEach(i -> i.accept(this));
      return null;
    }

    @Override
    public Void heading(Block.Heading heading) {
      return walk(heading.text());
    }

    @Override
    public Void paragraph(Block.Paragraph paragraph) {
      return walk(paragraph.text());
    }

    @Override
    public Void picture(Block.Picture picture) {
      return image(picture.image());
    }

    @Override
    public Void items(Block.Items items) {
      items.items().forEach(item -> collect(item, around, entry));
      return null;
    }

    @Override
    public Void quote(Block.Quote quote) {
      collect(quote.blocks(), around, entry);
      return null;
    }

    @Override
    public Void code(Block.Code code) {
      return null;
    }

    @Override
    public Void rule(Block.Rule rule) {
      return null;
    }

    @Override
    public Void grid(Block.Grid grid) {
      grid.head().forEach(this::walk);
      grid.rows().forEach(row -> row.forEach(this::walk));
      return null;
    }

    @Override
    public Void text(Inline.Text text) {
      return null;
    }

    @Override
    public Void emphasis(Inline.Emphasis emphasis) {
      return walk(emphasis.text());
    }

    @Override
    public Void strong(Inline.Strong strong) {
      return walk(strong.text());
    }

    @Override
    public Void code(Inline.Code code) {
      return null;
    }

    @Override
    public Void link(Inline.Link link) {
      return walk(link.text());
    }

    @Override
    public Void factLink(Inline.FactLink factLink) {
      return null;
    }

    @Override
    public Void image(Inline.Image image) {
      all.add(new Use(image, around.join(image.label()), entry));
      return null;
    }

    @Override
    public Void phrase(Inline.Phrase phrase) {
      Walk inside = new Walk(around.join(phrase.label()), entry);
      phrase.text().forEach(i -> i.accept(inside));
      return null;
    }

    @Override
    public Void footnote(Inline.Footnote footnote) {
      Walk inside = new Walk(around.join(footnote.label()), entry);
      footnote.text().forEach(i -> i.accept(inside));
      return null;
    }

    @Override
    public Void lineBreak(Inline.Break lineBreak) {
      return null;
    }
  }
}
