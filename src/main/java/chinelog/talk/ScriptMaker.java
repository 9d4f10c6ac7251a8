package chinelog.talk;

import chinelog.edition.Chart;
import chinelog.edition.Edition;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Post;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.markup.Wording;
import chinelog.wording.Catalogue;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Makes instalments out of the posts of an edition, from what the edition holds alone. */
final class ScriptMaker {

  /** After a paragraph. */
  private static final long PARAGRAPH_MS = 700;

  /** To look at a picture or a card before anything is said of it. */
  private static final long LOOK_MS = 1500;

  /** To read a line of a card by oneself. */
  private static final long LINE_MS = 1500;

  private static final long CARD_MS = 3000;
  private static final int LINES_ON_CARD = 7;

  private final Edition.Contents edition;
  private final Catalogue words;
  private final Wording wording;
  private final Sentences sentences;

  ScriptMaker(Edition edition) {
    this.edition = edition.contents();
    Speech speech = new Speech(this.edition.locale());
    this.words = speech.words();
    this.wording = Wording.of(this.edition.locale());
    this.sentences = new Sentences(this.edition.locale(), speech, wording.text("withheld.phrase"));
  }

  Catalogue words() {
    return words;
  }

  List<Instalment> all() {
    return edition.posts().stream().map(this::instalment).toList();
  }

  private Instalment instalment(Post post) {
    List<Shot> scenes = new ArrayList<>();
    opening(post, scenes);
    for (int i = 0; i < post.entries().size(); i++) {
      String id = post.entries().get(i);
      int place = i;
      edition.entries().stream()
          .filter(e -> e.id().equals(id))
          .forEach(e -> scenes.addAll(new Telling(e, place).scenes()));
    }
    if (post.number() == edition.posts().size()) {
      edition.charts().forEach(c -> scenes.add(graph(c)));
    }
    scenes.add(ending(post));
    return new Instalment(post, scenes);
  }

  /** The title, then what came before and what this one is about. */
  private void opening(Post post, List<Shot> scenes) {
    FrameContent title =
        new FrameContent.Card(
            edition.title(),
            post.title(),
            List.of(
                new FrameContent.Line(words.text("series.card", String.valueOf(post.number())), ""),
                new FrameContent.Line(edition.maker(), "")),
            true);
    List<Shot.Part> said = new ArrayList<>();
    said.add(new Shot.Pause(LOOK_MS));
    said.addAll(
        sentences.of(
            words.text(
                "series", edition.title(), String.valueOf(post.number()), ended(post.title()))));
    said.add(new Shot.Pause(PARAGRAPH_MS));
    List<Shot.Part> about = new ArrayList<>();
    before(post)
        .ifPresent(
            p -> {
              about.addAll(sentences.of(words.text("before", first(p))));
              about.add(new Shot.Pause(PARAGRAPH_MS));
            });
    if (!post.standfirst().isBlank()) {
      about.addAll(sentences.of(post.standfirst()));
      about.add(new Shot.Pause(PARAGRAPH_MS));
    }
    String chapter = words.text("chapter.opening");
    Plate plate = post.opening();
    if (plate == null || about.isEmpty()) {
      said.addAll(about);
      scenes.add(new Shot(title, chapter, said));
    } else {
      scenes.add(new Shot(title, chapter, said));
      scenes.add(new Shot(new FrameContent.Shot(plate), "", about));
    }
  }

  /** A title that {@link #words} puts a full stop behind has none of its own. */
  private static String ended(String title) {
    return title.replaceFirst("[.\\s]+$", "");
  }

  /** What a post is about in a sentence: the first of its standfirst, else its title. */
  private String first(Post post) {
    return sentences.of(post.standfirst()).stream()
        .map(s -> ((Shot.Said) s).written())
        .findFirst()
        .orElse(ended(post.title()) + ".");
  }

  private Optional<Post> before(Post post) {
    return edition.posts().stream().filter(p -> p.number() == post.number() - 1).findFirst();
  }

  private Optional<Post> after(Post post) {
    return edition.posts().stream().filter(p -> p.number() == post.number() + 1).findFirst();
  }

  private Shot ending(Post post) {
    Optional<Post> next = after(post);
    String over = words.text(next.isPresent() ? "next.card" : "last.card");
    String title = next.map(Post::title).orElse(edition.title());
    List<FrameContent.Line> lines = new ArrayList<>();
    if (next.isEmpty()) {
      lines.add(new FrameContent.Line(words.text("last.told"), ""));
    }
    lines.add(new FrameContent.Line(edition.maker(), ""));
    List<Shot.Part> said = new ArrayList<>();
    said.addAll(
        sentences.of(
            next.map(p -> words.text("next", ended(p.title())))
                .orElseGet(() -> words.text("last"))));
    said.add(new Shot.Pause(CARD_MS));
    return new Shot(new FrameContent.Card(over, title, lines, true), over, said);
  }

  private Shot graph(Chart chart) {
    List<Shot.Part> parts = new ArrayList<>();
    parts.add(new Shot.Pause(LOOK_MS));
    parts.addAll(sentences.of(chart.description()));
    parts.add(new Shot.Pause(CARD_MS));
    return new Shot(new FrameContent.Graph(chart), chart.title(), parts);
  }

  /** One entry, told plate by plate. */
  private final class Telling implements Text.BlockVisitor<Telling> {

    private final Entry entry;
    private final int place;
    private final List<Shot> scenes = new ArrayList<>();
    private final Set<Plate> shown = new LinkedHashSet<>();
    private List<Shot.Part> parts = new ArrayList<>();
    private FrameContent sight;
    private String chapter;

    Telling(Entry entry, int place) {
      this.entry = entry;
      this.place = place;
      this.chapter = entry.title();
      Plate first = first(entry.text());
      if (first == null && !entry.plates().isEmpty()) {
        first = entry.plates().get(0);
      }
      this.sight =
          first == null
              ? new FrameContent.Card(wording.date(entry.date()), entry.title(), List.of(), true)
              : new FrameContent.Shot(first);
    }

    private static @Nullable Plate first(List<Text.Block> blocks) {
      for (Text.Block block : blocks) {
        Plate plate = block instanceof Text.PlateHere here ? here.plate() : first(block.children());
        if (plate != null) {
          return plate;
        }
      }
      return null;
    }

    List<Shot> scenes() {
      parts.add(new Shot.Pause(PARAGRAPH_MS));
      List<Shot.Part> opens = new ArrayList<>(sentences.of(ended(entry.title()) + "."));
      opens.addAll(sentences.of(wording.date(entry.date()) + "."));
      say(opens);
      tell(entry.text());
      entry.plates().forEach(this::show);
      close();
      figures();
      return scenes;
    }

    private void tell(List<Text.Block> blocks) {
      blocks.forEach(b -> b.accept(this));
    }

    private void say(List<Shot.Part> said) {
      if (!said.isEmpty()) {
        parts.addAll(said);
        parts.add(new Shot.Pause(PARAGRAPH_MS));
      }
    }

    private void show(Plate plate) {
      if (!shown.add(plate)) {
        return;
      }
      FrameContent next = new FrameContent.Shot(plate);
      if (!next.equals(sight)) {
        close();
        sight = next;
      }
      parts.add(new Shot.Pause(LOOK_MS));
      say(sentences.of(plate.caption()));
    }

    private void close() {
      if (!parts.isEmpty()) {
        scenes.add(new Shot(sight, chapter, place, parts));
        chapter = "";
        parts = new ArrayList<>();
      }
    }

    private void figures() {
      List<FrameContent.Line> lines =
          entry.facts().stream().map(f -> new FrameContent.Line(f.title(), f.shown())).toList();
      for (int from = 0; from < lines.size(); from += LINES_ON_CARD) {
        List<FrameContent.Line> some =
            lines.subList(from, Math.min(lines.size(), from + LINES_ON_CARD));
        List<Shot.Part> said = new ArrayList<>();
        said.add(new Shot.Pause(LOOK_MS));
        for (FrameContent.Line line : some) {
          said.addAll(sentences.of(line.text() + ": " + line.shown() + "."));
        }
        said.add(new Shot.Pause(LOOK_MS));
        scenes.add(
            new Shot(
                new FrameContent.Card(entry.title(), words.text("figures"), some, false),
                chapter,
                place,
                said));
        chapter = "";
      }
    }

    @Override
    public Telling heading(Text.Heading heading) {
      parts.add(new Shot.Pause(PARAGRAPH_MS));
      return this;
    }

    @Override
    public Telling paragraph(Text.Paragraph paragraph) {
      say(sentences.of(paragraph.text()));
      return this;
    }

    @Override
    public Telling plate(Text.PlateHere plate) {
      show(plate.plate());
      return this;
    }

    @Override
    public Telling items(Text.Items items) {
      items.items().forEach(this::tell);
      return this;
    }

    @Override
    public Telling quote(Text.Quote quote) {
      tell(quote.children());
      return this;
    }

    @Override
    public Telling code(Text.Code code) {
      return this;
    }

    @Override
    public Telling rule(Text.Rule rule) {
      parts.add(new Shot.Pause(PARAGRAPH_MS));
      return this;
    }

    /** A table is shown, and not read out. */
    @Override
    public Telling grid(Text.Grid grid) {
      String gap = wording.text("withheld.phrase");
      List<List<String>> rows =
          grid.rows().stream()
              .map(row -> row.stream().map(c -> Text.plainText(c, gap)).toList())
              .toList();
      List<String> head = grid.head().stream().map(c -> Text.plainText(c, gap)).toList();
      close();
      for (int from = 0; from < rows.size(); from += LINES_ON_CARD) {
        List<List<String>> some = rows.subList(from, Math.min(rows.size(), from + LINES_ON_CARD));
        scenes.add(
            new Shot(
                new FrameContent.Table(entry.title(), head, some, grid.rightAligned()),
                chapter,
                place,
                List.of(new Shot.Pause(CARD_MS + some.size() * LINE_MS))));
        chapter = "";
      }
      return this;
    }

    @Override
    public Telling withheld(Text.Withheld withheld) {
      say(sentences.of(wording.text("withheld.block")));
      return this;
    }
  }
}
