package chinelog.book.writing;

import chinelog.book.page.Layout;
import chinelog.book.page.PageNumbers;
import chinelog.book.page.PictureStore;
import chinelog.book.page.Trim;
import chinelog.edition.Chart;
import chinelog.edition.Drawing;
import chinelog.edition.Edition;
import chinelog.edition.Edition.AgreementLegend;
import chinelog.edition.Figure;
import chinelog.markup.ChartSvg;
import chinelog.markup.DrawingSvg;
import chinelog.markup.Theme;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What all writers of one printed edition share: its words, page size, pictures and index. */
public final class Setting {

  /** As wide as this, the lettering of a chart is about as large as that of a table. */
  private static final double CHART_MM = 88;

  /** Of more places, a chart of bars would take most of a page: it is set smaller. */
  private static final int MANY_BARS = 8;

  private static final double HIGH_CHART_MM = 66;

  /** A drawing with its title and what it says takes no more than a page: part of its height. */
  private static final double HIGHEST_DRAWING = 0.75;

  /** Two drawings of this height share a page with their titles and what they say. */
  private static final double HALF_A_PAGE = 0.42;

  /** What is not higher than this is set smaller, to be half a page. */
  private static final double NEAR_HALF = 0.6;

  private final Theme theme;
  final Edition.Contents edition;
  final BookWords words;
  final Trim trim;
  final double bleedMm;
  final Xhtml out = new Xhtml();
  final PictureStore pictures = new PictureStore();
  final Index index;

  /** As the laying-out before this one found it. */
  final Layout layout;

  /** Figures that have an appendix; none where the particulars tell them all. */
  final List<Figure> listed;

  private final Map<String, String> parties = new TreeMap<>();
  private final Map<String, String> figures = new TreeMap<>();
  private int tables;

  public Setting(Edition edition, Theme theme, Trim trim, double bleedMm, Layout layout) {
    this.theme = theme;
    this.edition = edition.contents();
    this.words = BookWords.of(this.edition.locale());
    this.trim = trim;
    this.bleedMm = bleedMm;
    this.layout = layout;
    this.index = new Index(this.edition.locale());
    List<String> totals =
        this.edition.totals().stream()
            .map(l -> Objects.requireNonNullElse(l.figure(), ""))
            .toList();
    boolean isTold = this.edition.figures().stream().allMatch(f -> totals.contains(f.name()));
    this.listed = isTold ? List.of() : this.edition.figures();
    this.listed.forEach(f -> figures.put(f.name(), f.title()));
    this.edition.agreements().forEach(a -> parties.put(a.id(), a.with()));
  }

  /** The agreements of somebody; what the program itself keeps apart needs no words. */
  List<AgreementLegend> agreements() {
    return edition.agreements().stream().filter(a -> !a.with().isEmpty()).toList();
  }

  /** With whom the agreements are, separated by {@code |}; empty for none. */
  String parties(List<String> under) {
    return String.join("|", under.stream().map(id -> parties.getOrDefault(id, id)).toList());
  }

  /** Whether the figures' appendix has a figure of that name. */
  boolean hasFigure(String name) {
    return figures.containsKey(name);
  }

  /** Whether the date is that of the entry, which stands above it. */
  boolean isOfItsEntry(LocalDate date, @Nullable String entry) {
    return edition.entries().stream().anyMatch(e -> e.id().equals(entry) && e.date().equals(date));
  }

  String chart(Chart chart) {
    boolean isHigh = chart.kind() == Chart.Kind.BARS && chart.categories().size() > MANY_BARS;
    double widthMm = isHigh ? HIGH_CHART_MM : CHART_MM;
    return ChartSvg.forPrint(chart, theme, words.shared(), widthMm);
  }

  /** A drawing as wide as the text, unless it would be too high for its page. */
  String drawing(Drawing drawing) {
    double widthMm = trim.textWidthMm();
    double heightMm = DrawingSvg.heightMm(drawing, theme, words.shared(), widthMm);
    double page = trim.textHeightMm();
    boolean isNearHalf = heightMm > HALF_A_PAGE * page && heightMm < NEAR_HALF * page;
    double share = Math.min(1, (isNearHalf ? HALF_A_PAGE : HIGHEST_DRAWING) * page / heightMm);
    return DrawingSvg.forPrint(drawing, theme, words.shared(), widthMm * share);
  }

  /**
   * A tag in words that something is under agreements, such as "Under agreement: Skerrick Yard".
   */
  void tag(List<String> under) {
    if (!under.isEmpty()) {
      out.leaf(
          "p",
          words.shared().text("under.mark", parties(under).replace("|", ", ")),
          "class",
          "tag");
    }
  }

  /** A tag of one or two words within a line. */
  void shortTag(List<String> under) {
    if (!under.isEmpty()) {
      out.text(" ").leaf("span", parties(under).replace("|", ", "), "class", "shorttag");
    }
  }

  /** The number printed on the page on which what bears the id begins. */
  String page(String id) {
    return PageNumbers.printed(layout.pages().getOrDefault(id, 1), layout.pages());
  }

  /**
   * Opens a division that may come to begin a page.
   *
   * @param id of an element that stands first in it
   */
  Xhtml openLifted(String kind, String id, String... attributes) {
    List<String> all = new ArrayList<>(List.of(attributes));
    all.addAll(List.of("class", kind, Layout.LIFT_ATTRIBUTE, id, "style", lift(id)));
    return out.open("div", all.toArray(String[]::new));
  }

  /** The style that lifts what the id names, or what it stands first in. */
  String lift(String id) {
    double lifted = layout.lifted().getOrDefault(id, 0.0);
    return lifted == 0 ? "" : "margin-top:" + Trim.mm(-lifted);
  }

  /** An id for the next table. */
  String nextTable() {
    return "table-" + ++tables;
  }

  /** Whether a table of so many rows, of one line or two, is kept on one page. */
  boolean isWhole(String table, int rows) {
    return rows * DataTable.WHOLE_MM <= trim.textHeightMm() && !layout.parted().contains(table);
  }

  /** A heading within a section; the room above it stays on the page before. */
  void subheading(String title) {
    out.empty("div", "class", "gap above");
    out.leaf("h3", title);
  }

  /** The title of a section, which is also the head of its pages. */
  void openSection(String id, String title, String kind) {
    openLifted("section " + kind, id);
    runningHead(title);
    out.leaf("h2", title, "id", id);
  }

  /** Left pages are headed by the chapter, right ones by what of it they show. */
  void runningHead(String title) {
    out.leaf("div", BookWords.shortened(title), "class", "running");
    out.leaf("div", BookWords.shortened(title), "class", "runningpart");
  }

  void lead(String key, Object... arguments) {
    out.leaf("p", words.say(key, arguments), "class", "lead");
  }
}
