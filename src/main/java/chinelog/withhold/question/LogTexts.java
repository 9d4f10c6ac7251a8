package chinelog.withhold.question;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.Release;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.problem.Place;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Every text of a log that some readers may get, or that is kept from them. */
final class LogTexts {

  private final List<Passage> all = new ArrayList<>();
  private Label outer = Label.NONE;
  private Release.@Nullable Kind released;
  private String name = "";

  private LogTexts() {}

  static List<Passage> of(Log log, Album album) {
    LogTexts texts = new LogTexts();
    texts.head(log.head());
    for (Agreement a : log.agreements().values()) {
      Place place = Place.of("log.yaml");
      Label own = Label.of(a.id());
      texts.add(Passage.Role.NAME, "the other party to " + a.id(), place, a.with(), own);
      texts.add(Passage.Role.PROMISE, "what " + a.id() + " covers", place, a.covers(), own);
    }
    log.readers()
        .forEach(r -> texts.add(Passage.Role.NAME, "readers", r.place(), r.title(), Label.NONE));
    log.stages()
        .forEach(
            s -> {
              texts.add(
                  Passage.Role.PROSE, "the title of " + s.id(), s.place(), s.title(), s.label());
              texts.blocks("the text about " + s.id(), s.about(), s.label());
            });
    log.releases()
        .forEach(
            r -> {
              Label own = Label.of(r.agreement());
              String what = "the release of " + r.name();
              texts.add(Passage.Role.NAME, "who gave " + what, r.place(), r.by(), own);
              texts.add(Passage.Role.PROMISE, "the words of " + what, r.place(), r.words(), own);
            });
    log.limits()
        .forEach(l -> texts.add(Passage.Role.TERM, "a limit", l.place(), l.title(), l.label()));
    log.posts()
        .forEach(
            p -> {
              texts.add(Passage.Role.PROSE, "a post's title", p.place(), p.title(), p.label());
              texts.add(
                  Passage.Role.PROSE, "a post's standfirst", p.place(), p.standfirst(), p.label());
            });
    log.handover()
        .forEach(
            h -> {
              texts.add(Passage.Role.PROSE, "a title", h.place(), h.title(), h.label());
              texts.blocks("handover section " + h.id(), h.text(), h.label());
            });
    log.statements()
        .forEach(
            s ->
                texts.add(
                    Passage.Role.TERM,
                    "the title of " + s.name(),
                    s.place(),
                    s.title(),
                    s.label()));
    log.stock()
        .forEach(
            l -> {
              texts.add(Passage.Role.TERM, l.material(), l.place(), l.title(), l.label());
              Marked<String> supplier = l.supplier();
              if (supplier != null) {
                texts.add(
                    Passage.Role.NAME,
                    "the supplier of " + l.material(),
                    supplier.place(),
                    supplier.value(),
                    l.label().join(supplier.label()));
              }
            });
    log.entries().forEach(texts::entry);
    album.photographs().forEach(texts::photograph);
    return texts.all;
  }

  private void head(Head head) {
    marked(Passage.Role.PROSE, "the log's title", head.title());
    marked(Passage.Role.NAME, "the subject's name", head.subject());
    marked(Passage.Role.NAME, "the kind of the subject", head.kind());
    marked(Passage.Role.NAME, "the maker's name", head.maker());
    marked(Passage.Role.NAME, "the client's name", head.client());
    marked(Passage.Role.PROSE, "the licence", head.licence());
    blocks("the text about the build", head.about(), Label.NONE);
  }

  private void marked(Passage.Role role, String what, @Nullable Marked<String> text) {
    if (text != null) {
      add(role, what, text.place(), text.value(), text.label());
    }
  }

  private void entry(Entry entry) {
    released = Release.Kind.ENTRY;
    name = entry.id();
    outer = entry.label();
    Marked<String> title = entry.title();
    Place place = title.place().line() == 0 ? entry.place() : title.place();
    add(Passage.Role.PROSE, "the title of " + entry.id(), place, title.value(), title.label());
    blocks(entry.id(), entry.text(), Label.NONE);
    for (Entry.Measurement m : entry.measured()) {
      add(Passage.Role.TERM, "the title of " + m.fact(), m.place(), m.title(), m.label());
    }
    for (Entry.Weighing w : entry.weighed()) {
      add(Passage.Role.TERM, "the title of " + w.part(), w.place(), w.title(), w.label());
    }
    for (Entry.Use u : entry.used()) {
      add(Passage.Role.TERM, "where " + u.material() + " went", u.place(), u.where(), u.label());
    }
    released = null;
    outer = Label.NONE;
  }

  private void photograph(Photograph photograph) {
    if (photograph.link() == Photograph.Link.LEFT_OUT) {
      return;
    }
    released = Release.Kind.PHOTO;
    name = photograph.file().path();
    outer = photograph.file().label();
    Place place = photograph.file().place();
    line("the caption of " + name, photograph.file().caption(), place, Label.NONE);
    add(Passage.Role.PROSE, "the words for " + name, place, photograph.file().alt(), Label.NONE);
    String what = "words inside " + name;
    add(Passage.Role.PROSE, what, place, photograph.written().caption(), Label.NONE);
    add(Passage.Role.PROSE, what, place, photograph.written().alt(), Label.NONE);
    released = null;
    outer = Label.NONE;
  }

  private void add(Passage.Role role, String what, Place place, String text, Label label) {
    add(role, what, place, List.of(new Passage.Piece(text, label)));
  }

  private void add(Passage.Role role, String what, Place place, List<Passage.Piece> pieces) {
    if (pieces.stream().anyMatch(p -> !p.text().isBlank())) {
      all.add(new Passage(role, what, place, List.copyOf(pieces), outer, released, name));
    }
  }

  private void line(String what, List<Inline> text, Place place, Label label) {
    add(Passage.Role.PROSE, what, place, new Runs(label).read(text));
  }

  private void blocks(String what, List<Block> blocks, Label around) {
    for (Block block : blocks) {
      block.accept(new Blocks(what, around.join(block.label())));
    }
  }

  /** The lines of a block. */
  private final class Blocks implements Block.Visitor<Boolean> {
    private final String what;
    private final Label label;

    Blocks(String what, Label label) {
      this.what = what;
      this.label = label;
    }

    @Override
    public Boolean heading(Block.Heading heading) {
      line(what, heading.text(), heading.place(), label);
      return true;
    }

    @Override
    public Boolean paragraph(Block.Paragraph paragraph) {
      line(what, paragraph.text(), paragraph.place(), label);
      return true;
    }

    @Override
    public Boolean picture(Block.Picture picture) {
      line(what, List.of(picture.image()), picture.place(), label);
      return true;
    }

    @Override
    public Boolean items(Block.Items items) {
      items.items().forEach(item -> blocks(what, item, label));
      return true;
    }

    @Override
    public Boolean quote(Block.Quote quote) {
      blocks(what, quote.blocks(), label);
      return true;
    }

    @Override
    public Boolean code(Block.Code code) {
      add(Passage.Role.PROSE, what, code.place(), code.text(), label);
      return true;
    }

    @Override
    public Boolean rule(Block.Rule rule) {
      return true;
    }

    @Override
    public Boolean grid(Block.Grid grid) {
      List<Passage.Piece> head = row(grid.head());
      add(Passage.Role.PROSE, what, grid.place(), head);
      // A row is read with the words of the head, which say what its figures are.
      for (List<List<Inline>> row : grid.rows()) {
        List<Passage.Piece> both = new ArrayList<>(head);
        both.addAll(row(row));
        add(Passage.Role.PROSE, what, grid.place(), both);
      }
      return true;
    }

    private List<Passage.Piece> row(List<List<Inline>> cells) {
      List<Passage.Piece> pieces = new ArrayList<>();
      for (List<Inline> cell : cells) {
        pieces.addAll(new Runs(label).read(cell));
        pieces.add(new Passage.Piece(" | ", label));
      }
      return pieces;
    }
  }

  /** The runs of a line, as pieces. */
  private static final class Runs implements Inline.Visitor<Boolean> {
    private final List<Passage.Piece> pieces = new ArrayList<>();
    private Label label;

    Runs(Label label) {
      this.label = label;
    }

    List<Passage.Piece> read(List<Inline> runs) {
      runs.forEach(r -> r.accept(this));
      return pieces;
    }

    private Boolean write(String text) {
      pieces.add(new Passage.Piece(text, label));
      return true;
    }

    private Boolean inside(Label more, List<Inline> runs) {
      Label before = label;
      label = label.join(more);
      runs.forEach(r -> r.accept(this));
      label = before;
      return true;
    }

    @Override
    public Boolean text(Inline.Text text) {
      return write(text.text());
    }

    @Override
    public Boolean emphasis(Inline.Emphasis emphasis) {
      return inside(Label.NONE, emphasis.text());
    }

    @Override
    public Boolean strong(Inline.Strong strong) {
      return inside(Label.NONE, strong.text());
    }

    @Override
    public Boolean code(Inline.Code code) {
      return write(code.text());
    }

    @Override
    public Boolean link(Inline.Link link) {
      inside(Label.NONE, link.text());
      return link.target().matches("(https?|mailto):.*") ? write(" " + link.target() + " ") : true;
    }

    @Override
    public Boolean factLink(Inline.FactLink factLink) {
      return write(String.valueOf(Passage.CUT));
    }

    @Override
    public Boolean image(Inline.Image image) {
      write("\n");
      inside(image.label(), image.caption());
      return write("\n");
    }

    @Override
    public Boolean phrase(Inline.Phrase phrase) {
      return inside(phrase.label(), phrase.text());
    }

    @Override
    public Boolean footnote(Inline.Footnote footnote) {
      write("\n");
      inside(footnote.label(), footnote.text());
      return write("\n");
    }

    @Override
    public Boolean lineBreak(Inline.Break lineBreak) {
      return write(" ");
    }
  }
}
