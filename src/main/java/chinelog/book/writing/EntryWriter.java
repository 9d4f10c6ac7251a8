package chinelog.book.writing;

import chinelog.book.page.Manuscript;
import chinelog.edition.Edition.Entry;
import chinelog.edition.Edition.Line;
import chinelog.edition.Figure;
import chinelog.edition.Plate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writes an entry: its day and title, text, plates, and the strip of its figures. */
final class EntryWriter {

  private final Setting setting;
  private final Xhtml out;
  private final BlockWriter blocks;
  private final PlateWriter plates;
  private final boolean isByDay;
  private final Map<String, Figure.Cell> cells = new HashMap<>();

  /**
   * @param isByDay whether entries follow one another by day through the whole book
   */
  EntryWriter(Setting setting, BlockWriter blocks, PlateWriter plates, boolean isByDay) {
    this.isByDay = isByDay;
    this.setting = setting;
    this.out = setting.out;
    this.blocks = blocks;
    this.plates = plates;
    for (Figure figure : setting.edition.figures()) {
      if (figure.cell() != null) {
        cells.put(figure.name(), figure.cell());
      }
    }
  }

  /**
   * Writes an entry.
   *
   * @param fullPage the plate of this entry that gets a page of its own; null for none
   * @param isTitled whether its title stands above it already
   */
  void write(Entry entry, @Nullable Plate fullPage, boolean isTitled) {
    boolean isUnder = !entry.under().isEmpty();
    out.open(
        "div",
        "class",
        isUnder ? "entry under" : "entry",
        Manuscript.UNDER_ATTRIBUTE,
        setting.parties(entry.under()));
    String day = "day-" + entry.id();
    setting.openLifted("head", day);
    out.leaf("p", setting.words.date(entry.date()), "class", "date", "id", day);
    if (isTitled) {
      out.leaf("div", "", "id", Anchors.entry(entry.id()));
    } else {
      out.leaf("h3", entry.title(), "id", Anchors.entry(entry.id()));
    }
    setting.tag(entry.under());
    // Not first: what has its place in the head of the page has none in the entry to be kept with.
    out.leaf("div", BookWords.shortened(entry.title()), "class", "runningpart");
    out.close();
    blocks.write(entry.text(), 3, entry.under());
    entry.drawings().forEach(new DrawingPages(setting)::writeIn);
    List<Plate> rest = new ArrayList<>(entry.plates());
    rest.remove(fullPage);
    plates.write(rest, entry.under());
    strip(entry);
    out.close();
    index(entry);
    if (fullPage != null) {
      plates.fullPage(fullPage);
    }
  }

  private void index(Entry entry) {
    String place = Anchors.entry(entry.id());
    entry.materials().forEach(line -> setting.index.add(line.title(), place));
  }

  /** Facts, materials and hours, each run on beside its label. */
  private void strip(Entry entry) {
    if (entry.facts().isEmpty() && entry.materials().isEmpty() && entry.hours().isEmpty()) {
      return;
    }
    out.open("table", "class", "strip", "id", "strip-" + entry.id()).open("tbody");
    if (!entry.facts().isEmpty()) {
      openRow("label.facts");
      facts(entry.facts());
      out.close().close();
    }
    row("label.materials", entry.materials());
    row("label.hours", hours(entry));
    out.close().close();
  }

  /** The last line tells of all so far, which would go down where a chapter goes back in time. */
  private List<Line> hours(Entry entry) {
    List<Line> hours = entry.hours();
    return isByDay || hours.size() < 2 ? hours : hours.subList(0, hours.size() - 1);
  }

  private void openRow(String key) {
    out.open("tr").leaf("th", setting.words.say(key), "scope", "row").open("td");
  }

  private void row(String key, List<Line> lines) {
    if (lines.isEmpty()) {
      return;
    }
    openRow(key);
    for (Line line : lines) {
      boolean isLast = line == lines.get(lines.size() - 1);
      out.text(line.title() + ": ");
      worth(line, isLast ? "" : ";");
      out.text(isLast ? "" : " ");
    }
    out.close().close();
  }

  /** A line for each fact; several of one part, such as its mass and its centre, share one. */
  private void facts(List<Line> lines) {
    Map<String, List<Line>> byPart = new LinkedHashMap<>();
    lines.forEach(l -> byPart.computeIfAbsent(part(l), p -> new ArrayList<>()).add(l));
    byPart.forEach(
        (part, own) -> {
          out.open("div");
          if (own.size() == 1) {
            out.text(own.get(0).title() + ": ");
            worth(own.get(0), "");
          } else {
            partly(part, own);
          }
          out.close();
        });
  }

  private Figure.@Nullable Cell cellOf(Line line) {
    return line.figure() == null ? null : cells.get(line.figure());
  }

  private String part(Line line) {
    Figure.Cell cell = cellOf(line);
    return cell == null ? line.title() : cell.part();
  }

  private void partly(String part, List<Line> own) {
    out.text(part + ", ");
    for (Line line : own) {
      Figure.Cell cell = cellOf(line);
      boolean isLast = line == own.get(own.size() - 1);
      out.text(cell == null ? "" : cell.aspect() + ": ");
      value(line, isLast ? "" : ";");
      out.text(isLast ? "" : " ");
    }
  }

  /** The value of a line, with what is noted beside it and the mark after both. */
  private void worth(Line line, String after) {
    boolean isAlone = line.note().isEmpty();
    value(line, isAlone ? after : "");
    if (!isAlone) {
      out.text(" ").leaf("span", "(" + line.note() + ")" + after, "class", "beside");
    }
  }

  /** A value with the mark after it, which could else begin the next line. */
  private void value(Line line, String after) {
    if (line.figure() != null && setting.hasFigure(line.figure())) {
      out.leaf(
          "a",
          line.shown() + after,
          "class",
          "value",
          "href",
          "#" + Anchors.figure(line.figure()),
          "title",
          setting.words.say("figure.goto", line.title()));
    } else {
      out.leaf("span", line.shown() + after, "class", "value");
    }
  }
}
