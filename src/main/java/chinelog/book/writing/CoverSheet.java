package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.page.PlateRows;
import chinelog.book.page.Trim;
import chinelog.edition.Edition;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/** Writes the cover of the build book for a printing house: back, spine and front on one sheet. */
public record CoverSheet(Setting setting, double spineMm) {

  /** A narrower spine bears no title, which would run over its edges: common practice. */
  private static final double LETTERED_MM = 6;

  /** Of the spine's width, its lettering. */
  private static final double LETTERS = 0.5;

  private static final double LARGEST_MM = 6;

  /** So many letters of what the log says of itself are read on the back of a book. */
  private static final int MOST = 700;

  private static final double MARGIN_MM = 24;

  /** A broader picture shows on the back; an upright one would leave no room for words. */
  private static final double BROAD = 1.2;

  /** The width of the spine of so many pages. */
  static double spineMm(int pages, double leafMm) {
    return (pages + 1) / 2 * leafMm;
  }

  /**
   * Writes the sheet.
   *
   * @param pages of the book, without its cover
   */
  public static Manuscript write(Setting setting, String style, int pages) {
    double leafMm = setting.edition.leafMm();
    CoverSheet sheet = new CoverSheet(setting, spineMm(pages, leafMm));
    double width = setting.trim.widthMm;
    Shell shell = new Shell(setting, style + sheet.size());
    shell.open("book.kind", "book.description", List.of());
    sheet.write();
    String told =
        setting.words.say("cover.spine", millimetres(sheet.spineMm), pages, millimetres(leafMm));
    return shell.close(new Manuscript.Slug(List.of(width, width + sheet.spineMm), told));
  }

  private static String millimetres(double mm) {
    return String.format(Locale.ROOT, "%.2f", mm);
  }

  private String size() {
    double width = 2 * setting.trim.widthMm + spineMm + 2 * setting.bleedMm;
    double height = setting.trim.heightMm + 2 * setting.bleedMm;
    return "\n@page { size: %s %s; }".formatted(Trim.mm(width), Trim.mm(height))
        + "\n.book .body { page: cover; page-break-before: auto; }"
        + "\n.sheet { width: %s; }".formatted(Trim.mm(width));
  }

  private void write() {
    Xhtml out = setting.out;
    double width = setting.trim.widthMm;
    out.open("div", "class", "body");
    out.open("div", "class", "sheet");
    // Pictures run on under the spine, and that is printed over them.
    out.open("div", "class", "side", "style", left(width + spineMm));
    new FrontPages(setting).cover(setting.words.say("book.kind"));
    out.close();
    String behind = left(0) + ";width:" + Trim.mm(setting.bleedMm + width);
    out.open("div", "class", "side behind", "style", behind);
    back();
    out.close();
    String at = left(setting.bleedMm + width) + ";width:" + Trim.mm(spineMm);
    out.open("div", "class", "spine", "style", at);
    if (spineMm >= LETTERED_MM) {
      lettering();
    }
    out.close().close().close();
  }

  private static String left(double mm) {
    return "left:" + Trim.mm(mm);
  }

  /** The title along the spine, its head at the head of the book. */
  private void lettering() {
    double size = Math.min(LARGEST_MM, LETTERS * spineMm);
    setting.out.open("div", "class", "lettering", "style", turned(size));
    setting.out.leaf("span", setting.edition.title(), "class", "title");
    setting.out.text("\u2003").leaf("span", setting.edition.maker());
    setting.out.close();
  }

  private String turned(double size) {
    double length = setting.trim.heightMm - 2 * MARGIN_MM;
    return "width:%s;font-size:%s;line-height:%s;left:%s;top:%s"
        .formatted(
            Trim.mm(length),
            Trim.mm(size),
            Trim.mm(spineMm),
            Trim.mm(spineMm),
            Trim.mm(setting.bleedMm + MARGIN_MM));
  }

  /** What the log says of itself, a picture, and who made it. */
  private void back() {
    Xhtml out = setting.out;
    Edition.Contents edition = setting.edition;
    RunWriter runs = new RunWriter(setting, true);
    PlateWriter plates = new PlateWriter(setting, runs);
    double bleed = setting.bleedMm;
    double column = setting.trim.widthMm - 2 * MARGIN_MM;
    out.open(
        "div",
        "class",
        "back",
        "style",
        "width:%s;padding:%s %s"
            .formatted(Trim.mm(column), Trim.mm(bleed + MARGIN_MM), Trim.mm(bleed + MARGIN_MM)));
    new BlockWriter(setting, runs, plates).write(words(), 1, List.of());
    picture().ifPresent(p -> plates.small(p, column));
    if (!edition.maker().isEmpty()) {
      out.leaf("p", edition.maker(), "class", "maker");
    }
    if (!edition.licence().isEmpty()) {
      out.leaf("p", edition.licence(), "class", "small");
    }
    out.close();
  }

  /** The first paragraphs, as far as nothing in them is withheld or under an agreement. */
  private List<Text.Block> words() {
    int letters = 0;
    int end = 0;
    List<Text.Block> about = setting.edition.about();
    while (end < about.size() && about.get(end) instanceof Text.Paragraph paragraph) {
      letters += Text.plainText(paragraph.text(), "").length();
      boolean isOpen =
          paragraph.under().isEmpty()
              && paragraph.text().stream()
                  .noneMatch(r -> r instanceof Text.Gap || r instanceof Text.Phrase);
      if (!isOpen || letters > MOST) {
        break;
      }
      end++;
    }
    return about.subList(0, end);
  }

  /** The last broad plate that is not on the front. */
  private Optional<Plate> picture() {
    return setting.edition.plates().stream()
        .filter(p -> p.entry() != null && !Objects.equals(p, setting.edition.hero()))
        .filter(p -> p.under().isEmpty() && p.picture().filled().isEmpty())
        .filter(p -> PlateRows.shape(p) >= BROAD)
        .reduce((a, b) -> b);
  }
}
