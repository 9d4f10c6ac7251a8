package chinelog.withhold.question;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Release;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.photo.album.Album;
import chinelog.photo.album.Photograph;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Every text of a log that some readers may get, or that is kept from them. */
final class LogTexts {

  private static final Pattern UNIT = Pattern.compile("[\\[(]\\s*([^\\])]+?)\\s*[\\])]$");
  private static final Pattern NUMBER = Pattern.compile("[\\d.,\\u00a0\\u202f ]+");

  private final List<Passage> all = new ArrayList<>();
  private final Map<String, Label> pictures = new HashMap<>();
  private Label outer = Label.NONE;
  private Release.@Nullable Kind released;
  private String name = "";

  private LogTexts() {}

  static List<Passage> of(Log log, Album album) {
    LogTexts texts = new LogTexts();
    album.photographs().forEach(p -> texts.pictures.put(p.file().path(), p.file().label()));
    texts.head(log.head());
    for (Agreement a : log.agreements().values()) {
      if (a.isOwn()) {
        continue;
      }
      Place place = Place.of("log.yaml");
      Label own = Label.of(a.id());
      texts.add(
          Passage.Role.NAME, Sentence.of("the other party to {0}", a.id()), place, a.with(), own);
      texts.add(
          Passage.Role.PROMISE, Sentence.of("what {0} covers", a.id()), place, a.covers(), own);
    }
    log.readers()
        .forEach(r -> texts.add(Passage.Role.NAME, "readers", r.place(), r.title(), Label.NONE));
    log.stages()
        .forEach(
            s -> {
              texts.add(
                  Passage.Role.PROSE,
                  Sentence.of("the title of {0}", s.id()),
                  s.place(),
                  s.title(),
                  s.label());
              texts.blocks(Sentence.of("the text about {0}", s.id()), s.about(), s.label());
              texts.id(s.id(), s.place(), s.label());
            });
    log.releases()
        .forEach(
            r -> {
              Label own = Label.of(r.agreement());
              Sentence what = Sentence.of("the release of {0}", r.name());
              texts.add(
                  Passage.Role.NAME, Sentence.of("who gave {0}", what), r.place(), r.by(), own);
              texts.add(
                  Passage.Role.PROMISE,
                  Sentence.of("the words of {0}", what),
                  r.place(),
                  r.words(),
                  own);
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
              texts.blocks(Sentence.of("handover section {0}", h.id()), h.text(), h.label());
            });
    log.statements().forEach(s -> texts.figure(s.name(), s.place(), s.title(), s.label()));
    log.requests().forEach(r -> texts.id(r.prefix(), r.place(), r.label()));
    log.stock()
        .forEach(
            l -> {
              texts.add(Passage.Role.TERM, l.material(), l.place(), l.title(), l.label());
              texts.id(l.material(), l.place(), l.label());
              texts.add(Passage.Role.PROSE, "a repair", l.place(), l.repair(), l.label());
              Marked<String> supplier = l.supplier();
              if (supplier != null) {
                texts.add(
                    Passage.Role.NAME,
                    Sentence.of("the supplier of {0}", l.material()),
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
    head.figureGroups()
        .forEach(
            g -> add(Passage.Role.TERM, "a heading of figures", g.place(), g.title(), Label.NONE));
    blocks("the text about the build", head.about(), Label.NONE);
    blocks("the letter", head.letter().text(), Label.NONE);
  }

  private void marked(Passage.Role role, CharSequence what, @Nullable Marked<String> text) {
    if (text != null) {
      add(role, what, text.place(), text.value(), text.label());
    }
  }

  private void figure(String name, Place place, String title, Label label) {
    add(Passage.Role.TERM, Sentence.of("the title of {0}", name), place, title, label);
    id(name, place, label);
  }

  private void entry(Entry entry) {
    released = Release.Kind.ENTRY;
    name = entry.id();
    outer = entry.label();
    Marked<String> title = entry.title();
    Place place = title.place().line() == 0 ? entry.place() : title.place();
    add(
        Passage.Role.PROSE,
        Sentence.of("the title of {0}", entry.id()),
        place,
        title.value(),
        title.label());
    blocks(entry.id(), entry.text(), Label.NONE);
    entry.measured().forEach(m -> figure(m.fact(), m.place(), m.title(), m.label()));
    entry.weighed().forEach(w -> figure(w.part(), w.place(), w.title(), w.label()));
    for (Entry.Use u : entry.used()) {
      add(
          Passage.Role.TERM,
          Sentence.of("where {0} went", u.material()),
          u.place(),
          u.where(),
          u.label());
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
    line(Sentence.of("the caption of {0}", name), photograph.file().caption(), place, Label.NONE);
    add(
        Passage.Role.PROSE,
        Sentence.of("the words for {0}", name),
        place,
        photograph.file().alt(),
        Label.NONE);
    for (PhotoFile.Part part : photograph.file().parts()) {
      add(
          Passage.Role.PROSE,
          Sentence.of("what is named in {0}", name),
          part.place(),
          part.name(),
          Label.NONE);
    }
    // Words inside a file are not read to those who may not see a part of its picture.
    CharSequence what = Sentence.of("words inside {0}", name);
    Label parts =
        photograph.file().regions().stream()
            .map(PhotoFile.Region::label)
            .reduce(Label.NONE, Label::join);
    add(Passage.Role.PROSE, what, place, photograph.written().caption(), parts);
    add(Passage.Role.PROSE, what, place, photograph.written().alt(), parts);
    released = null;
    outer = Label.NONE;
  }

  private void add(Passage.Role role, CharSequence what, Place place, String text, Label label) {
    add(role, what, place, List.of(new Passage.Piece(text, label)));
  }

  private void add(Passage.Role role, CharSequence what, Place place, List<Passage.Piece> pieces) {
    if (pieces.stream().anyMatch(p -> !p.text().isBlank())) {
      all.add(new Passage(role, what, place, List.copyOf(pieces), outer, released, name));
    }
  }

  /**
   * Names of facts, stages and materials are parts of addresses, and titles where none is given.
   */
  private void id(String id, Place place, Label label) {
    add(
        Passage.Role.TERM,
        Sentence.of("the name {0}", id),
        place,
        id.replaceAll("[._-]+", " "),
        label);
  }

  private void line(CharSequence what, List<Inline> text, Place place, Label label) {
    List<Passage.Piece> pieces = new ArrayList<>();
    read(text, label, pieces);
    add(Passage.Role.PROSE, what, place, pieces);
  }

  /** The lines of blocks. */
  private void blocks(CharSequence what, List<Block> blocks, Label around) {
    for (Block block : blocks) {
      Label label = around.join(block.label());
      if (block instanceof Block.Grid grid) {
        rows(what, grid, label);
      } else if (block instanceof Block.Code code) {
        add(Passage.Role.PROSE, what, code.place(), code.text(), label);
      } else {
        block.lines().forEach(line -> line(what, line, block.place(), label));
      }
      blocks(what, block.children(), label);
    }
  }

  /** A row is read with the words of the head, which say what its figures are. */
  private void rows(CharSequence what, Block.Grid grid, Label label) {
    List<Passage.Piece> head = row(grid.head(), List.of(), label);
    add(Passage.Role.PROSE, what, grid.place(), head);
    List<String> units = grid.head().stream().map(LogTexts::unit).toList();
    for (List<List<Inline>> row : grid.rows()) {
      List<Passage.Piece> both = new ArrayList<>(head);
      both.addAll(row(row, units, label));
      add(Passage.Role.PROSE, what, grid.place(), both);
    }
  }

  /** The unit in the brackets of a heading such as "Beam [mm]", with a blank; empty for none. */
  private static String unit(List<Inline> head) {
    Matcher m = UNIT.matcher(plain(head));
    return m.find() ? " " + m.group(1) : "";
  }

  private static String plain(List<Inline> runs) {
    return runs.stream().map(Inline::plainText).collect(Collectors.joining()).strip();
  }

  /**
   * @param units of the columns, which a bare number in one of them is read with
   */
  private List<Passage.Piece> row(List<List<Inline>> cells, List<String> units, Label label) {
    List<Passage.Piece> pieces = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      List<Inline> cell = cells.get(i);
      read(cell, label, pieces);
      if (i < units.size() && NUMBER.matcher(plain(cell)).matches()) {
        pieces.add(new Passage.Piece(units.get(i), label));
      }
      pieces.add(new Passage.Piece(" | ", label));
    }
    return pieces;
  }

  /** The runs of a line, as pieces. */
  private void read(List<Inline> runs, Label around, List<Passage.Piece> pieces) {
    for (Inline run : runs) {
      Label label = around.join(run.label());
      if (run instanceof Inline.Image image) {
        // Who does not get the picture does not get its caption.
        label = label.join(pictures.getOrDefault(image.path(), Label.NONE));
      }
      boolean apart = run instanceof Inline.Image || run instanceof Inline.Footnote;
      if (apart) {
        pieces.add(new Passage.Piece("\n", around));
      }
      if (run instanceof Inline.FactLink) {
        pieces.add(new Passage.Piece(String.valueOf(Passage.CUT), label));
      } else if (run.children().isEmpty() && !apart) {
        pieces.add(new Passage.Piece(run.plainText(), label));
      } else {
        read(run.children(), label, pieces);
      }
      if (run instanceof Inline.Link link && link.target().matches("(https?|mailto):.*")) {
        pieces.add(new Passage.Piece(" " + link.target() + " ", label));
      }
      if (apart) {
        pieces.add(new Passage.Piece("\n", around));
      }
    }
  }
}
