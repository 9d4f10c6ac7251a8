package chinelog.book.writing;

import chinelog.book.page.Hatching;
import chinelog.book.page.Manuscript;
import chinelog.book.page.PartNumbers;
import chinelog.book.page.PlateRows;
import chinelog.book.page.Trim;
import chinelog.edition.Plate;
import chinelog.edition.Text.PlateHere;
import chinelog.edition.Text.PlateHere.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Writes plates with their captions. */
final class PlateWriter {

  /** A hair more than the part of the text up to which a plate has its caption beside it. */
  private static final double NARROW = PlateRows.NARROW + 0.01;

  /** Of the white on a page with nothing but a picture, the part above it: its optical middle. */
  static final double RAISED = 0.4;

  /** Of the text's height, what the plate that opens a chapter may take. */
  private static final double OPENING_HEIGHT = 0.5;

  /** Of the text's height, what a picture with named parts may take. */
  private static final double NAMED_HEIGHT = 0.45;

  /** What a caption takes on a page that has plates alone. */
  private static final double CAPTION_MM = 12;

  /** What is quite as high as its page spills over. */
  private static final double SLIVER_MM = 1;

  private final Setting setting;
  private final RunWriter runs;
  private final PlateRows rows;
  private List<String> around = List.of();

  PlateWriter(Setting setting, RunWriter runs) {
    this.setting = setting;
    this.runs = runs;
    this.rows = new PlateRows(setting.trim);
  }

  /**
   * Writes plates in rows.
   *
   * @param around what the text around them is under, marked already
   */
  void write(List<Plate> plates, List<String> around) {
    this.around = around;
    rows.lay(plates).forEach(row -> row(row, Layout.BY_SHAPE));
  }

  /** The same with plates of the text, some of which may have a layout of their own. */
  void writeHere(List<PlateHere> plates, List<String> around) {
    List<Plate> byShape = new ArrayList<>();
    for (PlateHere here : plates) {
      if (here.layout() == Layout.BY_SHAPE) {
        byShape.add(here.plate());
      } else {
        write(byShape, around);
        byShape.clear();
        row(rows.lay(here.plate(), here.layout()), here.layout());
      }
    }
    write(byShape, around);
  }

  private void row(List<PlateRows.Placed> row, Layout layout) {
    // A margin would go with the plate to the head of the next page; this stays behind.
    setting.out.empty("div", "class", "gap");
    if (row.size() > 1) {
      row(row);
    } else if (layout == Layout.WIDE) {
      figure(row.get(0), "plate sized alone");
    } else {
      figure(scaled(row.get(0)), "plate alone");
    }
  }

  /** How many of the blocks that follow the plates are to stand before them. */
  int later(List<PlateHere> plates) {
    Map<String, Integer> later = setting.layout.later();
    Plate first = plates.get(0).plate();
    return later.getOrDefault(Anchors.plate(first), later.getOrDefault(rowId(first), 0));
  }

  private static String rowId(Plate first) {
    return "row-" + first.number();
  }

  private PlateRows.Placed scaled(PlateRows.Placed placed) {
    double scale = setting.layout.scales().getOrDefault(Anchors.plate(placed.plate()), 1.0);
    return new PlateRows.Placed(placed.plate(), placed.widthMm() * scale);
  }

  /** A plate on a page of its own. */
  void fullPage(Plate plate) {
    around = List.of();
    double captionMm = 20;
    double height = setting.trim.textHeightMm() - captionMm;
    double width = Math.min(setting.trim.textWidthMm(), height * PlateRows.shape(plate));
    figure(new PlateRows.Placed(plate, width), "plate full");
  }

  /**
   * Plates that have a page to themselves, one below the other, in its optical middle.
   *
   * @param side of the book that it should be on
   */
  void page(List<Plate> plates, String side) {
    around = List.of();
    double height = setting.trim.textHeightMm() - SLIVER_MM;
    double room = height - plates.size() * CAPTION_MM;
    double heights = plates.stream().mapToDouble(p -> 1 / PlateRows.shape(p)).sum();
    double width = Math.min(setting.trim.textWidthMm(), room / heights);
    double white = Math.max(0, room - width * heights);
    String style = "height:%s;padding:%s 0 0 %s";
    setting.out.open(
        "div",
        "class",
        "plates " + side,
        "style",
        style.formatted(
            Trim.mm(height - white * RAISED),
            Trim.mm(white * RAISED),
            Trim.mm((setting.trim.textWidthMm() - width) / 2)));
    plates.forEach(p -> figure(new PlateRows.Placed(p, width), "plate"));
    setting.out.close();
  }

  /**
   * The picture of a plate without its caption, as large as the text allows; it stands elsewhere.
   */
  void bare(Plate plate) {
    double height = setting.trim.textHeightMm() - 2;
    double shape = PlateRows.shape(plate);
    double width = Math.min(setting.trim.textWidthMm(), height * shape);
    picture(plate, width, (height - width / shape) * RAISED);
  }

  /** The same, as wide as is said. */
  void small(Plate plate, double widthMm) {
    picture(plate, widthMm, 0);
  }

  /** A plate that opens a chapter: as wide as the text, unless it is upright. */
  void opening(Plate plate) {
    around = List.of();
    double highest = setting.trim.textHeightMm() * OPENING_HEIGHT;
    double width = Math.min(setting.trim.textWidthMm(), highest * PlateRows.shape(plate));
    figure(new PlateRows.Placed(plate, width), "plate first");
  }

  /** A picture with the numbers of its parts drawn on it, and their names below. */
  void named(Plate plate) {
    Xhtml out = setting.out;
    double shape = PlateRows.shape(plate);
    String id = "named-" + plate.number();
    double width =
        Math.min(setting.trim.textWidthMm(), setting.trim.textHeightMm() * NAMED_HEIGHT * shape)
            * setting.layout.scales().getOrDefault(id, 1.0);
    out.open("figure", "class", "plate named", "id", id);
    picture(plate, width, 0, PartNumbers.ATTRIBUTE, PartNumbers.attribute(plate.parts()));
    out.open("figcaption");
    for (int i = 0; i < plate.parts().size(); i += 2) {
      out.open("div", "class", "halves");
      part(plate, i, "half left");
      part(plate, i + 1, "half");
      out.close();
    }
    out.close().close();
  }

  private void part(Plate plate, int index, String kind) {
    setting.out.open("div", "class", kind);
    if (index < plate.parts().size()) {
      setting.out.leaf("b", index + 1 + "\u2002").text(plate.parts().get(index).name());
    }
    setting.out.close();
  }

  private void picture(Plate plate, double width, double above, String... attributes) {
    List<String> all =
        new ArrayList<>(
            List.of(
                "src",
                setting.pictures.address(plate.picture(), width),
                "alt",
                setting.words.say("plate.again", plate.number(), plate.alt()),
                "style",
                "width:%s;height:%s;margin-top:%s"
                    .formatted(
                        Trim.mm(width), Trim.mm(width / PlateRows.shape(plate)), Trim.mm(above))));
    all.addAll(List.of(attributes));
    setting.out.empty("img", all.toArray(String[]::new));
  }

  private void row(List<PlateRows.Placed> row) {
    setting.out.open("div", "class", "row", "id", rowId(row.get(0).plate()));
    for (int i = 0; i < row.size(); i++) {
      boolean isLast = i == row.size() - 1;
      PlateRows.Placed placed = row.get(i);
      double cell = placed.widthMm() + (isLast ? 0 : PlateRows.GAP_MM);
      setting.out.open(
          "div", "class", isLast ? "cell last" : "cell", "style", "width:" + Trim.mm(cell));
      figure(placed, "plate");
      setting.out.close();
    }
    setting.out.close();
  }

  private void figure(PlateRows.Placed placed, String kind) {
    Plate plate = placed.plate();
    Xhtml out = setting.out;
    boolean isNarrow =
        kind.endsWith("alone") && placed.widthMm() < NARROW * setting.trim.textWidthMm();
    boolean isMarked = !plate.under().isEmpty() && !plate.under().equals(around);
    out.open(
        "figure",
        "class",
        kind + (isNarrow ? " narrow" : "") + (isMarked ? " under" : ""),
        "id",
        Anchors.plate(plate),
        Manuscript.UNDER_ATTRIBUTE,
        setting.parties(plate.under()));
    if (isMarked) {
      setting.tag(plate.under());
    }
    if (isNarrow) {
      // The caption stands in the room beside.
      out.open("div", "class", "picture", "style", "width:" + Trim.mm(placed.widthMm()));
    }
    out.empty(
        "img",
        "src",
        setting.pictures.address(plate.picture(), placed.widthMm()),
        "alt",
        plate.alt(),
        "style",
        "width:" + Trim.mm(placed.widthMm()) + ";height:" + Trim.mm(placed.heightMm()),
        Hatching.ATTRIBUTE,
        filled(plate));
    if (isNarrow) {
      out.close();
    }
    caption(plate);
    out.close();
  }

  private String filled(Plate plate) {
    return plate.picture().filled().isEmpty()
        ? ""
        : Hatching.attribute(
            setting.words.shared().text("withheld.word"), plate.picture().filled());
  }

  private void caption(Plate plate) {
    Xhtml out = setting.out;
    out.open("figcaption");
    out.leaf("b", setting.words.say("plate", plate.number()));
    if (!plate.caption().isEmpty()) {
      out.text("  ");
      runs.write(plate.caption());
    }
    if (plate.date() != null && !setting.isOfItsEntry(plate.date(), plate.entry())) {
      out.text(" ")
          .leaf(
              "span",
              setting.words.say("plate.taken", setting.words.date(plate.date())),
              "class",
              "taken");
    }
    out.close();
  }
}
