package chinelog.book.writing;

import chinelog.book.page.PlateRows;
import chinelog.book.page.Trim;
import chinelog.edition.Edition;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Day;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Line;
import chinelog.edition.Edition.Post;
import chinelog.edition.Edition.Progress;
import chinelog.edition.Edition.Stage;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Writes the chapters: one for each stage or each post, then what belongs to none. */
final class Chapters {

  /** Taller than this, a plate may have a page of its own. */
  private static final double TALL = 0.85;

  /** At least this broad for its height, a picture can be cut to a band. */
  private static final double BROAD = 1.2;

  /** Height of the band by its width. */
  private static final double BAND = 0.36;

  private static final int ENOUGH = 2;

  private final Setting setting;
  private final Xhtml out;
  private final Contents edition;
  private final BookWords words;
  private final BlockWriter blocks;
  private final PlateWriter plates;
  private final EntryWriter entryWriter;

  /** Entries of the last chapter, and what follows it. */
  private final List<Entry> last;

  private final FinishSpread finish;

  Chapters(Setting setting, BlockWriter blocks, PlateWriter plates) {
    this.setting = setting;
    this.out = setting.out;
    this.edition = setting.edition;
    this.words = setting.words;
    this.blocks = blocks;
    this.plates = plates;
    this.entryWriter = new EntryWriter(setting, blocks, plates, isByDay());
    this.last = lastChapter();
    this.finish = isFinished() ? FinishSpread.of(last, lastOpening()) : FinishSpread.NONE;
  }

  private boolean isFinished() {
    return !edition.stages().isEmpty()
        && edition.stages().stream().allMatch(s -> s.progress() == Progress.DONE);
  }

  private List<Entry> lastChapter() {
    List<List<String>> chapters =
        isByPost()
            ? edition.posts().stream().map(Post::entries).toList()
            : edition.stages().stream().map(Stage::entries).toList();
    return chapters.stream()
        .map(ids -> edition.entries().stream().filter(e -> ids.contains(e.id())).toList())
        .filter(own -> !own.isEmpty())
        .reduce(List.of(), (a, b) -> b);
  }

  private @Nullable Plate lastOpening() {
    return isByPost() ? edition.posts().get(edition.posts().size() - 1).opening() : null;
  }

  private boolean isByPost() {
    return edition.chapters() == Edition.Chapters.POSTS && !edition.posts().isEmpty();
  }

  /** Whether no chapter goes back to a day before one that was told already. */
  private boolean isByDay() {
    Map<String, LocalDate> days =
        edition.entries().stream().collect(Collectors.toMap(Entry::id, Entry::date, (a, b) -> a));
    List<LocalDate> told =
        (isByPost()
                ? edition.posts().stream().map(Post::entries)
                : edition.stages().stream().map(Stage::entries))
            .flatMap(List::stream)
            .filter(days::containsKey)
            .map(days::get)
            .toList();
    return told.equals(told.stream().sorted().toList());
  }

  List<BookSection> sections() {
    Map<String, Entry> entries =
        edition.entries().stream()
            .collect(
                Collectors.toMap(Entry::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
    List<BookSection> sections = new ArrayList<>();
    Set<String> told = new HashSet<>();
    if (isByPost()) {
      for (Post post : edition.posts()) {
        List<Entry> own =
            post.entries().stream().filter(entries::containsKey).map(entries::get).toList();
        told.addAll(post.entries());
        sections.add(chapter(post, own));
      }
      addRest(sections, told);
      return sections;
    }
    for (Stage stage : edition.stages()) {
      List<Entry> own =
          stage.entries().stream().filter(entries::containsKey).map(entries::get).toList();
      own.forEach(e -> told.add(e.id()));
      if (!own.isEmpty()) {
        int number = sections.size() + 1;
        sections.add(chapter(stage, number, own));
      }
    }
    addRest(sections, told);
    return sections;
  }

  /** Adds what belongs to no chapter: entries that none tells, and plates without an entry. */
  private void addRest(List<BookSection> sections, Set<String> told) {
    List<Entry> rest = edition.entries().stream().filter(e -> !told.contains(e.id())).toList();
    if (!rest.isEmpty()) {
      String title = words.say(sections.isEmpty() ? "stage.entries" : "stage.unstaged");
      sections.add(
          chapter(
              "other-days",
              title,
              rest,
              () -> {
                open("other-days", title, "", "", null);
                out.close();
              }));
    }
    if (!edition.unplaced().isEmpty()) {
      String title = words.say("unplaced");
      sections.add(BookSection.of("unplaced", title, () -> unplaced(title)));
    }
  }

  /** A chapter that follows a post: it begins a page, with the plate that opens the post. */
  private BookSection chapter(Post post, List<Entry> entries) {
    String id = "post-" + post.slug();
    List<Plate> opening = post.opening() == null ? List.of() : List.of(post.opening());
    List<Entry> own = entries.stream().map(e -> without(e, opening)).toList();
    return chapter(
        id,
        post.title(),
        own,
        () -> {
          String kind = post.opening() == null ? "section chapter" : "section chapter posted";
          setting.openLifted(kind, "chapter-" + id, "id", "chapter-" + id);
          setting.runningHead(post.title());
          if (post.opening() != null) {
            plates.opening(post.opening());
          }
          out.open("div", "class", "opening");
          out.leaf("p", words.shared().text("post.number", post.number()), "class", "number");
          out.leaf("h2", post.title(), "id", id);
          out.leaf("p", days(own), "class", "dates");
          setting.tag(post.under());
          if (!post.standfirst().isEmpty()) {
            out.open("div", "class", "standfirst").leaf("p", post.standfirst()).close();
          }
          out.close();
          setting.index.add(post.title(), id);
        });
  }

  private String days(List<Entry> entries) {
    LocalDate first = entries.get(0).date();
    LocalDate last = entries.get(entries.size() - 1).date();
    return first.equals(last) ? words.date(first) : words.date(first) + " – " + words.date(last);
  }

  /** The entry without plates that stand elsewhere. */
  static Entry without(Entry entry, List<Plate> plates) {
    return new Entry(
        entry.id(),
        entry.date(),
        entry.stage(),
        entry.title(),
        entry.text().stream()
            .filter(b -> !(b instanceof Text.PlateHere here && plates.contains(here.plate())))
            .toList(),
        entry.plates().stream().filter(p -> !plates.contains(p)).toList(),
        entry.facts(),
        entry.materials(),
        entry.hours(),
        entry.drawings(),
        entry.under());
  }

  private BookSection chapter(Stage stage, int number, List<Entry> entries) {
    String id = Anchors.stage(stage.id());
    return chapter(
        id,
        stage.title(),
        entries,
        () -> {
          open(
              id,
              stage.title(),
              words.say("stage.number", number),
              stage.dates(),
              picture(entries));
          opening(stage);
          setting.index.add(stage.title(), id);
        });
  }

  private BookSection chapter(String id, String title, List<Entry> entries, Runnable opening) {
    return new BookSection(
        id,
        title,
        () -> {
          opening.run();
          entries(title, entries);
          out.close();
        },
        entries.stream()
            .filter(e -> e != entries.get(0) || !isTitledBy(title, e))
            .map(e -> new BookSection.Entry(Anchors.entry(e.id()), e.title()))
            .toList());
  }

  private void open(String id, String title, String number, String dates, @Nullable Plate picture) {
    String kind = picture == null ? "section chapter" : "section chapter pictured";
    setting.openLifted(kind, "chapter-" + id, "id", "chapter-" + id);
    setting.runningHead(title);
    out.open("div", "class", "opening");
    if (picture != null) {
      band(picture);
    }
    if (!number.isEmpty()) {
      out.leaf("p", number, "class", "number");
    }
    out.leaf("h2", title, "id", id);
    if (!dates.isEmpty()) {
      out.leaf("p", dates, "class", "dates");
    }
  }

  /**
   * The plate for the head of a chapter: one that the maker has open an instalment, else the last
   * broad one, which shows what the stage came to; none where there are too few to show one twice.
   */
  private @Nullable Plate picture(List<Entry> entries) {
    Set<String> own = entries.stream().map(Entry::id).collect(Collectors.toSet());
    List<Plate> broad =
        edition.plates().stream()
            .filter(p -> p.entry() != null && own.contains(p.entry()))
            .filter(p -> p.under().isEmpty() && p.picture().filled().isEmpty())
            .filter(p -> PlateRows.shape(p) >= BROAD)
            .toList();
    if (broad.size() < ENOUGH) {
      return null;
    }
    return edition.posts().stream()
        .map(Post::opening)
        .filter(broad::contains)
        .findFirst()
        .orElse(broad.get(broad.size() - 1));
  }

  /** The middle of the picture, as wide as the text. It is shown whole, with its words, below. */
  private void band(Plate plate) {
    double width = setting.trim.textWidthMm();
    double height = width / PlateRows.shape(plate);
    double shown = width * BAND;
    out.open("div", "class", "band", "style", "height:" + Trim.mm(shown));
    out.empty(
        "img",
        "src",
        setting.pictures.address(plate.picture(), width),
        "alt",
        words.say("stage.picture", plate.number(), plate.alt()),
        "style",
        "width:%s;height:%s;margin-top:%s"
            .formatted(Trim.mm(width), Trim.mm(height), Trim.mm((shown - height) / 2)));
    out.close();
  }

  private void opening(Stage stage) {
    setting.tag(stage.under());
    out.open("div", "class", "standfirst");
    blocks.write(stage.about(), 2, stage.under());
    out.close();
    List<String> totals = new ArrayList<>(stage.totals().stream().map(Chapters::inWords).toList());
    if (stage.progress() == Progress.UNDER_WAY) {
      totals.add(words.say("stage.underway"));
    }
    if (!totals.isEmpty()) {
      out.leaf("p", String.join(" · ", totals), "class", "totals");
    }
    out.close();
  }

  private static String inWords(Line line) {
    String shown = line.title() + " " + line.shown();
    return line.note().isEmpty() ? shown : shown + " (" + line.note() + ")";
  }

  /** A chapter may end on a tall plate with a page of its own, where the white is least missed. */
  private void entries(String title, List<Entry> entries) {
    boolean isFinish = isLast(entries);
    for (int i = 0; i < entries.size(); i++) {
      Entry entry = isFinish ? finish.without(entries.get(i)) : entries.get(i);
      boolean isLast = i == entries.size() - 1;
      boolean isTitled = i == 0 && isTitledBy(title, entry);
      entryWriter.write(entry, isLast ? fullPage(entry) : null, isTitled);
    }
    if (isFinish && !finish.left().isEmpty()) {
      plates.page(finish.left(), "verso");
      plates.page(finish.right(), "recto");
    }
  }

  private boolean isLast(List<Entry> entries) {
    return !entries.isEmpty()
        && !last.isEmpty()
        && entries.get(entries.size() - 1).id().equals(last.get(last.size() - 1).id());
  }

  /** Whether the title of a chapter is that of its first entry, too, which need not repeat it. */
  private static boolean isTitledBy(String title, Entry first) {
    return first.title().equals(title);
  }

  private static @Nullable Plate fullPage(Entry entry) {
    return entry.plates().stream()
        .filter(p -> PlateRows.shape(p) < TALL)
        .reduce((a, b) -> b)
        .orElse(null);
  }

  private void unplaced(String title) {
    open("unplaced", title, "", "", null);
    setting.lead("unplaced.about");
    out.close();
    for (Day day : edition.unplaced()) {
      if (day.date() != null) {
        out.leaf("p", words.date(day.date()), "class", "date");
      }
      plates.write(day.plates(), List.of());
    }
    out.close();
  }
}
