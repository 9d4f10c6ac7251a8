package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.book.writing.DataTable.Column;
import chinelog.edition.Edition.Contents;
import chinelog.edition.Edition.HandoverSection;
import chinelog.edition.Edition.MaterialLine;
import chinelog.edition.Figure;
import java.text.Collator;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Writes the handover booklet: what goes with the model when it changes hands. */
public final class HandoverBooklet {

  /** The section that gets a page of its own, to be copied or pinned up. */
  private static final String CARD = "quick-card";

  /** Lines that fill about a page of the booklet. */
  private static final int OUTINGS = 18;

  private static final String BLANK = "\u00a0";

  /** The section that says what is in the box. */
  private static final String BOX = "box";

  private final Setting setting;
  private final Xhtml out;
  private final Contents edition;
  private final BookWords words;
  private final PlateWriter plates;
  private final BlockWriter blocks;
  private final FrontPages front;

  private HandoverBooklet(Setting setting) {
    this.setting = setting;
    this.out = setting.out;
    this.edition = setting.edition;
    this.words = setting.words;
    RunWriter runs = new RunWriter(setting, false);
    this.plates = new PlateWriter(setting, runs);
    this.blocks = new BlockWriter(setting, runs, plates);
    this.front = new FrontPages(setting);
  }

  public static Manuscript write(Setting setting, String style) {
    return new HandoverBooklet(setting).write(style);
  }

  private Manuscript write(String style) {
    List<BookSection> sections = sections();
    Shell shell = new Shell(setting, style);
    shell.open("booklet.kind", "booklet.description", sections);
    front.cover(words.say("booklet.kind"));
    out.open("div", "class", "front");
    front.contents(sections);
    front.imprint("booklet.description", List.of());
    out.close();
    out.open("div", "class", "body");
    sections.forEach(section -> section.write().run());
    out.close();
    return shell.close();
  }

  private List<BookSection> sections() {
    List<BookSection> sections = new ArrayList<>();
    edition.handover().stream()
        .filter(s -> !s.text().isEmpty())
        .forEach(s -> sections.add(BookSection.of(id(s), s.title(), () -> section(s))));
    // After the card, what it is stands first in the log's order; the particulars come straight
    // after it.
    boolean hasCard = edition.handover().stream().anyMatch(HandoverBooklet::isCard);
    int after = Math.min(sections.size(), hasCard ? 2 : 1);
    sections.add(
        after,
        BookSection.of(
            "particulars",
            words.say("handover.particulars"),
            () -> front.particulars("handover.particulars", false)));
    if (edition.plates().stream().anyMatch(p -> !p.parts().isEmpty())) {
      sections.add(after + 1, BookSection.of("parts", words.say("handover.parts"), this::parts));
    }
    if (!setting.agreements().isEmpty()) {
      sections.add(BookSection.of("agreements", words.say("agreements"), front::agreements));
    }
    if (!edition.materials().isEmpty()) {
      sections.add(BookSection.of("materials", words.say("handover.materials"), this::materials));
    }
    sections.add(BookSection.of("cautions", words.say("handover.cautions"), this::cautions));
    sections.add(BookSection.of("outings", words.say("handover.outings"), this::outings));
    sections.add(BookSection.of("record", words.say("handover.record"), this::record));
    return sections;
  }

  private static boolean isCard(HandoverSection section) {
    return section.id().equals(CARD) && !section.text().isEmpty();
  }

  private static String id(HandoverSection section) {
    return "handover-" + section.id();
  }

  private void section(HandoverSection section) {
    String kind = isCard(section) ? "section card" : "section";
    setting.openLifted(
        section.under().isEmpty() ? kind : kind + " under",
        id(section),
        Manuscript.UNDER_ATTRIBUTE,
        setting.parties(section.under()));
    out.leaf("h2", section.title(), "id", id(section));
    setting.tag(section.under());
    blocks.write(section.text(), 2, section.under());
    if (section.id().equals(BOX)) {
      box();
    }
    out.close();
  }

  /** What a carrier asks for. */
  private void box() {
    List<Figure> figures =
        edition.figures().stream().filter(f -> f.about() == Figure.About.BOX).toList();
    if (figures.isEmpty()) {
      return;
    }
    out.open("p", "class", "forall");
    for (Figure figure : figures) {
      boolean isLast = figure.equals(figures.get(figures.size() - 1));
      out.text(figure.title() + " ").leaf("strong", figure.model());
      setting.shortTag(figure.under());
      out.text(isLast ? "" : " · ");
    }
    out.close();
  }

  /** Photographs with numbers on them, and the names of what they show. */
  private void parts() {
    setting.openLifted("section", "parts");
    out.leaf("h2", words.say("handover.parts"), "id", "parts");
    edition.plates().stream().filter(p -> !p.parts().isEmpty()).forEach(plates::named);
    out.close();
  }

  private void materials() {
    setting.openLifted("section", "materials");
    out.leaf("h2", words.say("handover.materials"), "id", "materials");
    List<MaterialLine> forRepair =
        edition.materials().stream().filter(m -> !m.repair().isEmpty()).toList();
    if (!forRepair.isEmpty()) {
      forRepair(forRepair);
      out.close();
      return;
    }
    setting.lead("handover.materials.about");
    if (edition.materials().stream().allMatch(m -> m.used().isEmpty())) {
      names();
    } else {
      Rows rows =
          new Rows(
              setting,
              Column.text(words.say("materials.material")).wide(70),
              Column.number(words.say("materials.used")));
      edition.materials().forEach(m -> rows.add("", m.under(), "", m.title(), m.used()));
      rows.write();
    }
    out.close();
  }

  /** What an owner may come to need, by what for. */
  private void forRepair(List<MaterialLine> lines) {
    setting.lead("handover.repair.about");
    Rows rows =
        new Rows(
            setting,
            Column.text(words.say("handover.repair")).wide(50),
            Column.text(words.say("materials.material")).wide(50));
    record Need(String repair, List<String> under) {}
    Collator order = Collator.getInstance(edition.locale());
    Map<Need, List<MaterialLine>> byNeed =
        lines.stream()
            .sorted(Comparator.comparing(MaterialLine::repair, order))
            .collect(
                Collectors.groupingBy(
                    m -> new Need(m.repair(), m.under()), LinkedHashMap::new, Collectors.toList()));
    byNeed.forEach(
        (need, of) ->
            rows.add(
                "",
                need.under,
                "",
                need.repair,
                of.stream().map(MaterialLine::title).collect(Collectors.joining("; "))));
    rows.write();
  }

  /** Materials without quantities, in two columns. */
  private void names() {
    List<MaterialLine> all = edition.materials();
    int half = (all.size() + 1) / 2;
    out.open("div", "class", "halves");
    half("half left", all.subList(0, half));
    half("half", all.subList(half, all.size()));
    out.close();
  }

  private void half(String kind, List<MaterialLine> lines) {
    out.open("div", "class", kind);
    for (MaterialLine line : lines) {
      out.open("p", "class", "word", Manuscript.UNDER_ATTRIBUTE, setting.parties(line.under()));
      out.text(line.title());
      setting.shortTag(line.under());
      out.close();
    }
    out.close();
  }

  private void cautions() {
    setting.openLifted("section", "cautions");
    out.leaf("h2", words.say("handover.cautions"), "id", "cautions");
    setting.lead("handover.cautions.about");
    if (edition.cautions().isEmpty()) {
      out.leaf("p", words.say("handover.cautions.none"));
    }
    Cautions.write(out, edition.cautions());
    out.close();
  }

  /** A page to be filled in by the owner. */
  private void outings() {
    setting.openLifted("section outings", "outings");
    out.leaf("h2", words.say("handover.outings"), "id", "outings");
    setting.lead("handover.outings.about");
    Rows rows =
        new Rows(
            setting,
            Column.text(BLANK).wide(5),
            Column.text(words.say("handover.outings.day")).wide(18),
            Column.text(words.say("handover.outings.where")).wide(25),
            Column.text(words.say("handover.outings.time")).wide(15),
            Column.text(words.say("handover.outings.noticed")).wide(37));
    for (int i = 1; i <= OUTINGS; i++) {
      rows.add("", List.of(), "", String.valueOf(i), BLANK, BLANK, BLANK, BLANK);
    }
    rows.write();
    out.close();
  }

  private void record() {
    setting.openLifted("section record", "record");
    out.leaf("h2", words.say("handover.record"), "id", "record");
    setting.lead("handover.record.about");
    line(words.say("handover.record.model"), edition.title() + ", " + edition.scale());
    line(words.say("particulars.maker"), edition.maker());
    line(words.say("handover.record.address"), "");
    line(words.say("handover.record.condition"), "");
    line("", "");
    line(words.say("handover.record.place"), "");
    for (String key : List.of("handover.record.from", "handover.record.to")) {
      out.leaf("h3", words.say(key));
      line(words.say("handover.record.name"), "");
      line(words.say("handover.record.signature"), "");
    }
    out.close();
  }

  private void line(String label, String filled) {
    out.lineToWriteOn(label, filled);
  }
}
