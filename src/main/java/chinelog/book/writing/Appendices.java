package chinelog.book.writing;

import chinelog.book.writing.DataTable.Column;
import chinelog.edition.Chart;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.HoursLine;
import chinelog.edition.Edition.LimitLine;
import chinelog.edition.Edition.MaterialLine;
import chinelog.edition.Figure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Writes what stands after the last chapter. */
final class Appendices {

  private final Setting setting;
  private final Xhtml out;
  private final Contents edition;
  private final BookWords words;
  private final FigurePages figures;

  Appendices(Setting setting) {
    this.setting = setting;
    this.out = setting.out;
    this.edition = setting.edition;
    this.words = setting.words;
    this.figures = new FigurePages(setting);
  }

  List<BookSection> sections() {
    List<BookSection> sections = new ArrayList<>();
    boolean hasMass =
        setting.listed.stream().anyMatch(Appendices::isOfMass)
            || edition.charts().stream().anyMatch(Appendices::isOfMass);
    boolean hasFigures =
        !edition.drawings().isEmpty() || setting.listed.stream().anyMatch(f -> !isOfMass(f));
    add(sections, "figures", hasFigures, this::figures);
    add(sections, "mass", hasMass, this::mass);
    add(sections, "limits", !edition.limits().isEmpty(), this::limits);
    add(sections, "materials", !edition.materials().isEmpty(), this::materials);
    add(sections, "hours", !edition.hours().isEmpty(), this::hours);
    add(sections, "charts", edition.charts().stream().anyMatch(this::isOther), this::charts);
    add(sections, "cautions", !edition.cautions().isEmpty(), this::cautions);
    add(sections, "index", hasIndex(), this::index);
    return sections;
  }

  private void add(List<BookSection> sections, String id, boolean isDue, Runnable write) {
    if (isDue) {
      sections.add(BookSection.of(id, words.say(id), write));
    }
  }

  private void figures() {
    setting.openSection("figures", words.say("figures"), "appendix");
    setting.lead("figures.about");
    // Those with a key go on to another page; the others share one.
    edition.drawings().stream()
        .sorted(Comparator.comparing(DrawingPages::hasKey))
        .forEach(new DrawingPages(setting)::write);
    figures.groups(setting.listed.stream().filter(f -> !isOfMass(f)).toList());
    out.close();
  }

  private void mass() {
    setting.openSection("mass", words.say("mass"), "appendix");
    setting.lead("mass.about");
    charts(Appendices::isOfMass);
    figures.group(setting.listed.stream().filter(Appendices::isOfMass).toList());
    out.close();
  }

  private void materials() {
    setting.openSection("materials", words.say("materials"), "appendix");
    setting.lead("materials.about");
    Rows rows =
        new Rows(
            setting,
            Column.text(words.say("materials.material")).wide(44),
            Column.number(words.say("materials.bought")),
            Column.number(words.say("materials.used")),
            Column.number(words.say("materials.left")),
            Column.number(words.say("materials.cost")));
    for (MaterialLine line : edition.materials()) {
      String id = "material-" + (edition.materials().indexOf(line) + 1);
      rows.add(
          id, line.under(), "", line.title(), line.bought(), line.used(), line.left(), line.cost());
      setting.index.add(line.title(), id);
    }
    if (!edition.materialsCost().isEmpty()) {
      String key = edition.hasWithheld() ? "materials.total.told" : "materials.total";
      rows.total(words.say(key), "", "", "", edition.materialsCost());
    }
    rows.write();
    whereMaterialsWent();
    charts(Appendices::isOfCost);
    out.close();
  }

  private void whereMaterialsWent() {
    List<Entry> using = edition.entries().stream().filter(e -> !e.materials().isEmpty()).toList();
    if (using.isEmpty()) {
      return;
    }
    setting.subheading(words.say("materials.where"));
    Rows rows =
        new Rows(
            setting,
            Column.text(words.say("materials.entry")).wide(40),
            Column.text(words.say("materials.used")));
    for (Entry entry : using) {
      String used =
          entry.materials().stream()
              .map(line -> line.title() + ": " + line.shown())
              .collect(Collectors.joining("; "));
      rows.add("", entry.under(), "", words.date(entry.date()) + ", " + entry.title(), used);
    }
    rows.write();
  }

  private void hours() {
    setting.openSection("hours", words.say("hours"), "appendix");
    setting.lead("hours.about");
    if (edition.charts().stream().noneMatch(c -> c.id().equals("hours-by-stage"))) {
      hoursTable();
    }
    charts(Appendices::isOfHours);
    out.close();
  }

  /** Where no chart says the same. */
  private void hoursTable() {
    Rows rows =
        new Rows(
            setting,
            Column.text(words.say("hours.stage")).wide(50),
            Column.number(words.say("hours.planned")),
            Column.number(words.say("hours.worked")));
    for (HoursLine line : edition.hours()) {
      rows.add("", List.of(), "", line.title(), line.planned(), line.worked());
    }
    rows.write();
  }

  private static boolean isOfCost(Chart chart) {
    return chart.id().equals("cost-so-far");
  }

  private static boolean isOfHours(Chart chart) {
    return chart.id().startsWith("hours-");
  }

  private static boolean isOfMass(Figure figure) {
    return figure.about() == Figure.About.MASS;
  }

  private static boolean isOfMass(Chart chart) {
    return chart.id().equals("growth-of-mass");
  }

  private boolean isOther(Chart chart) {
    return !isOfMass(chart)
        && (edition.materials().isEmpty() || !isOfCost(chart))
        && (edition.hours().isEmpty() || !isOfHours(chart));
  }

  private void charts() {
    setting.openSection("charts", words.say("charts"), "appendix");
    charts(this::isOther);
    out.close();
  }

  private void charts(Predicate<Chart> wanted) {
    // What is low comes first: it may still find room below a table.
    List<Chart> charts =
        edition.charts().stream()
            .filter(wanted)
            .sorted(Comparator.comparing(c -> c.kind() == Chart.Kind.BARS))
            .toList();
    for (Chart chart : charts) {
      out.empty("div", "class", "gap above");
      out.open("div", "class", "chart");
      out.leaf("h3", chart.title());
      out.drawing(setting.chart(chart));
      out.leaf("p", chart.description(), "class", "said");
      out.close();
    }
  }

  private void limits() {
    setting.openSection("limits", words.say("limits"), "appendix");
    setting.lead("limits.about");
    Rows rows =
        new Rows(
            setting,
            Column.text(words.say("limits.limit")).wide(30),
            Column.number(words.say("limits.value")),
            Column.number(words.say("limits.bound")),
            Column.number(words.say("limits.margin")),
            Column.text(words.say("limits.verdict")));
    for (LimitLine line : edition.limits()) {
      rows.add(
          "",
          line.under(),
          line.kept() ? "" : "broken",
          line.title(),
          line.value(),
          line.bound(),
          line.margin(),
          line.verdict());
    }
    rows.write();
    out.close();
  }

  private void cautions() {
    setting.openSection("cautions", words.say("cautions"), "appendix");
    Cautions.write(out, edition.cautions());
    out.close();
  }

  private boolean hasIndex() {
    return !setting.listed.isEmpty()
        || !edition.materials().isEmpty()
        || edition.stages().stream().anyMatch(s -> !s.entries().isEmpty())
        || edition.entries().stream().anyMatch(e -> !e.materials().isEmpty());
  }

  private void index() {
    setting.openSection("index", words.say("index"), "appendix index last");
    setting.index.write(out, setting.layout.pages(), words, setting.trim.textHeightMm());
    out.close();
  }
}
