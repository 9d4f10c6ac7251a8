package chinelog.book.writing;

import chinelog.book.page.PlateRows;
import chinelog.book.page.Trim;
import chinelog.edition.Edition;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Line;
import chinelog.edition.Figure;
import chinelog.edition.Plate;
import chinelog.markup.Particulars;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** Writes what stands before the first chapter, for book and booklet alike. */
final class FrontPages {

  /** Id of the title on the cover. */
  static final String COVER = "cover";

  /** Id of the title of the contents. */
  static final String CONTENTS = "contents";

  /** So many sections or fewer need no contents. */
  private static final int FEW = 3;

  /** A title longer than this is set smaller on the cover. */
  private static final int LONG = 36;

  /** A word longer than this may be parted on the cover. */
  private static final int LONG_WORD = 15;

  /** A title longer than this is set smaller still, and higher. */
  private static final int VERY_LONG = 110;

  /** A picture wider than this by its height is not cut to an upright page. */
  private static final double WIDE = 1.1;

  /** The day below a picture, with the room around it. */
  private static final double DAY_MM = 10;

  /** What the title of the same view takes, with some room to spare. */
  private static final double TITLE_MM = 14;

  private static final double MM_PER_INCH = 25.4;

  private static final String NO_BREAK = "\u00a0";

  private final Setting setting;
  private final Xhtml out;
  private final Contents edition;
  private final BookWords words;

  FrontPages(Setting setting) {
    this.setting = setting;
    this.out = setting.out;
    this.edition = setting.edition;
    this.words = setting.words;
  }

  /**
   * How many dots there are to an inch of the picture on the cover.
   *
   * @param plate the picture
   */
  static double dotsPerInch(Plate plate, Trim trim) {
    double shape = PlateRows.shape(plate);
    double widthMm = shape > WIDE ? trim.widthMm : Math.max(trim.widthMm, trim.heightMm * shape);
    return plate.picture().largest().widthPx() / (widthMm / MM_PER_INCH);
  }

  /**
   * The cover: an upright plate runs off all four edges; a wide one, which would lose the bow and
   * the stern by that, stands whole across the top.
   */
  void cover(String kind) {
    Plate hero = edition.hero();
    int length = edition.title().length();
    boolean isWhole = hero != null && PlateRows.shape(hero) > WIDE && length <= VERY_LONG;
    out.open("div", "class", hero == null ? "cover plain" : isWhole ? "cover whole" : "cover");
    if (hero != null && isWhole) {
      across(hero);
    } else if (hero != null) {
      bleed(hero);
    }
    out.open("div", "class", length > VERY_LONG ? "panel high" : "panel");
    out.leaf("p", kind, "class", "kind");
    String size = length > VERY_LONG ? "longest" : length > LONG ? "long" : "";
    boolean hasLongWord =
        Arrays.stream(edition.title().split("\\s")).anyMatch(word -> word.length() > LONG_WORD);
    out.leaf("h1", edition.title(), "class", hasLongWord ? size + " parted" : size, "id", COVER);
    if (!modelOf().isEmpty()) {
      out.leaf("p", modelOf(), "class", "of");
    }
    if (!edition.maker().isEmpty()) {
      out.leaf("p", edition.maker(), "class", "maker");
    }
    out.close().close();
  }

  /** The first page of a book whose cover is printed apart: its title alone. */
  void firstLeaf() {
    out.open("div", "class", "cover leaf");
    out.leaf("h1", edition.title(), "id", COVER);
    out.close();
  }

  /** The whole picture, from edge to edge. */
  private void across(Plate plate) {
    double width = setting.trim.widthMm + 2 * setting.bleedMm;
    String size =
        "width:%s;height:%s".formatted(Trim.mm(width), Trim.mm(width / PlateRows.shape(plate)));
    out.empty(
        "img",
        "src",
        setting.pictures.address(plate.picture(), width),
        "alt",
        plate.alt(),
        "style",
        size);
  }

  /** Fills the page with the picture; what is beyond its edges is cut off. */
  private void bleed(Plate plate) {
    double width = setting.trim.widthMm + 2 * setting.bleedMm;
    double height = setting.trim.heightMm + 2 * setting.bleedMm;
    double shape = PlateRows.shape(plate);
    double shownWidth = Math.max(width, height * shape);
    double shownHeight = shownWidth / shape;
    out.open("div", "class", "bleed");
    out.empty(
        "img",
        "src",
        setting.pictures.address(plate.picture(), shownWidth),
        "alt",
        plate.alt(),
        "style",
        "width:%s;height:%s;margin-left:%s;margin-top:%s"
            .formatted(
                Trim.mm(shownWidth),
                Trim.mm(shownHeight),
                Trim.mm((width - shownWidth) / 2),
                Trim.mm((height - shownHeight) / 2)));
    out.close();
  }

  /** What the model is of, as far as the edition says; may be empty. */
  String modelOf() {
    String subject = edition.subject();
    String of =
        subject.isEmpty()
            ? edition.kind()
            : edition.kind().isEmpty()
                ? words.say("model.of.plain", subject)
                : words.say("model.of", edition.kind(), subject);
    return of.isEmpty() || edition.scale().isEmpty()
        ? of + edition.scale()
        : of + ", " + edition.scale();
  }

  /**
   * Faces the title page: the same view on several days where there is one; else the last plate
   * that stands neither on the cover nor is under an agreement nor has something filled; without
   * one, the page stays white.
   */
  void frontispiece(PlateWriter plates) {
    out.open("div", "class", "frontispiece");
    if (!edition.sameView().isEmpty()) {
      sameView(plates);
      out.close();
      return;
    }
    edition.plates().stream()
        .filter(p -> !p.equals(edition.hero()))
        .filter(p -> p.entry() != null || edition.entries().isEmpty())
        .filter(p -> p.under().isEmpty() && p.picture().filled().isEmpty())
        .reduce((a, b) -> b)
        .ifPresentOrElse(plates::bare, () -> out.leaf("p", NO_BREAK));
    out.close();
  }

  /** Two beside each other, with their days. */
  private void sameView(PlateWriter plates) {
    List<Plate> all = edition.sameView();
    int rows = (all.size() + 1) / 2;
    double height = setting.trim.textHeightMm() - TITLE_MM;
    double half = (setting.trim.textWidthMm() - PlateRows.GAP_MM) / 2;
    double room = height / rows - DAY_MM;
    double width = Math.min(half, room * PlateRows.shape(all.get(0)));
    double white = height - rows * (width / PlateRows.shape(all.get(0)) + DAY_MM);
    out.leaf(
        "p",
        words.shared().text("view.title"),
        "class",
        "title",
        "style",
        "padding-top:" + Trim.mm(white * PlateWriter.RAISED));
    for (int i = 0; i < all.size(); i += 2) {
      out.open("div", "class", "pair");
      for (Plate plate : all.subList(i, Math.min(all.size(), i + 2))) {
        out.open("div", "class", "one");
        plates.small(plate, width);
        out.leaf("p", words.date(Objects.requireNonNull(plate.date())));
        out.close();
      }
      out.close();
    }
  }

  /**
   * Below the contents, in small type.
   *
   * @param colophon how it was set, line by line
   */
  void imprint(String descriptionKey, List<String> colophon) {
    out.open("div", "class", "imprint");
    out.leaf(
        "p",
        words.say(
            descriptionKey, edition.title(), edition.readersTitle(), words.date(edition.asOf())));
    if (!edition.licence().isEmpty()) {
      out.leaf("p", edition.licence());
    }
    if (edition.address() != null) {
      String address = edition.address().toString();
      out.open("p").leaf("a", address, "href", address, "title", address).close();
    }
    colophon.forEach(line -> out.leaf("p", line));
    out.close();
  }

  void halfTitle(BlockWriter blocks) {
    out.open("div", "class", setting.agreements().isEmpty() ? "halftitle" : "halftitle crowded");
    out.leaf("p", edition.title(), "class", "title");
    if (!modelOf().isEmpty()) {
      out.leaf("p", modelOf(), "class", "of");
    }
    if (!edition.maker().isEmpty()) {
      out.leaf("p", words.say("by", edition.maker()), "class", "by");
    }
    if (!edition.client().isEmpty()) {
      out.leaf("p", words.say("for.client", edition.client()), "class", "by");
    }
    out.open("div", "class", "about");
    blocks.write(edition.about(), 1, List.of());
    out.close();
    if (!setting.agreements().isEmpty()) {
      agreements();
    }
    out.close();
  }

  /** Whether there is so much in a book that contents help. */
  static boolean hasContents(List<BookSection> sections) {
    return sections.size() > FEW;
  }

  void contents(List<BookSection> sections) {
    if (!hasContents(sections)) {
      return;
    }
    out.open("div", "class", "contents");
    out.leaf("h2", words.say("contents"), "id", CONTENTS);
    out.open("table").open("tbody");
    for (BookSection section : sections) {
      line("main", section.id(), section.title());
      if (!section.within().isEmpty()) {
        within(section.within());
      }
    }
    out.close().close().close();
  }

  private void line(String kind, String id, String title) {
    String goTo = words.say("contents.goto", title);
    out.open("tr", "class", kind);
    out.open("th", "scope", "row").leaf("a", title, "href", "#" + id, "title", goTo).close();
    out.open("td").leaf("a", setting.page(id), "href", "#" + id, "title", goTo).close();
    out.close();
  }

  /** The entries of a chapter run on: one a line, they would fill pages with little on them. */
  private void within(List<BookSection.Entry> entries) {
    out.open("tr", "class", "within").open("td", "colspan", "2");
    for (BookSection.Entry entry : entries) {
      boolean isLast = entry.equals(entries.get(entries.size() - 1));
      out.leaf(
          "a",
          entry.title() + NO_BREAK + setting.page(entry.id()),
          "href",
          "#" + entry.id(),
          "title",
          words.say("contents.goto", entry.title()));
      out.text(isLast ? "" : NO_BREAK + "· ");
    }
    out.close().close();
  }

  void reading() {
    setting.openSection("reading", words.say("reading"), "reading");
    for (String key : List.of("reading.1", "reading.2", "reading.3")) {
      out.leaf("p", words.say(key));
    }
    if (edition.hasWithheld()) {
      out.leaf("p", words.say("withheld.about", words.shared().text("withheld.phrase")));
    }
    out.close();
  }

  /** The subject and its model, and their chief sizes side by side. */
  void particulars(String titleKey, boolean withTotals) {
    boolean isBrief = setting.listed.isEmpty() && !edition.hasWithheld();
    setting.openSection(
        "particulars", words.say(titleKey), isBrief ? "particulars brief" : "particulars");
    out.open("table", "class", "data whole list").open("tbody");
    particular("particulars.subject", edition.subject());
    particular("particulars.kind", edition.kind());
    particular("particulars.scale", edition.scale());
    particular("particulars.maker", edition.maker());
    particular("particulars.client", edition.client());
    particular("particulars.asof", words.date(edition.asOf()));
    if (withTotals) {
      edition.totals().forEach(this::total);
    }
    out.close().close();
    sizes();
    out.close();
  }

  private void particular(String key, String value) {
    if (!value.isEmpty()) {
      out.open("tr").leaf("th", words.say(key), "scope", "row").leaf("td", value).close();
    }
  }

  private void total(Line line) {
    String shown = line.note().isEmpty() ? line.shown() : line.shown() + ", " + line.note();
    out.open("tr").leaf("th", line.title(), "scope", "row").leaf("td", shown).close();
  }

  private void sizes() {
    List<Figure> sizes = Particulars.of(edition.figures());
    if (sizes.isEmpty()) {
      return;
    }
    Rows rows =
        new Rows(
            setting,
            DataTable.Column.text(words.say("particulars.what")).wide(46),
            DataTable.Column.number(words.say("particulars.model")),
            DataTable.Column.number(words.say("particulars.full")));
    sizes.forEach(f -> rows.add("", f.under(), "", f.title(), model(f), f.fullSize()));
    rows.write();
  }

  private static String model(Figure figure) {
    return figure.tolerance().isEmpty() || figure.model().contains("±")
        ? figure.model()
        : figure.model() + " " + figure.tolerance();
  }

  /** What the agreements are whose contents this copy shows. */
  void agreements() {
    setting.openSection("agreements", words.say("agreements"), "quiet");
    setting.lead("agreements.about");
    Rows rows =
        new Rows(
            setting,
            DataTable.Column.text(words.say("agreements.with")).wide(35),
            DataTable.Column.text(words.say("agreements.covers")));
    for (Edition.AgreementLegend legend : setting.agreements()) {
      rows.add("", List.of(), "", legend.with(), legend.covers());
    }
    rows.write();
    out.close();
  }
}
