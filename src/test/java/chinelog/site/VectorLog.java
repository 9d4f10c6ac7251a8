package chinelog.site;

import chinelog.photo.Shots;
import chinelog.problem.Problem;
import chinelog.publish.Progress;
import chinelog.publish.Workshop;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * A log on disk that holds scripts from elsewhere wherever its maker, or the programs that its
 * photographs have been through, may write a text. Where a script is refused, plain words stand.
 */
final class VectorLog {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 20);

  private static final int LONGEST_TITLE = 60;
  private static final String WORDS = "The planks lie fair.";
  private static final List<String> HANDOVER =
      List.of(
          "what-it-is",
          "setting-up",
          "taking-down",
          "handling",
          "running",
          "care",
          "finishes",
          "spares",
          "mishaps");

  private final Path folder;
  private final Map<String, List<Line>> files = new LinkedHashMap<>();
  private final Set<String> refused = new TreeSet<>();
  private final Set<String> carried = new TreeSet<>();
  private int ofAKind;
  private int shots;

  /**
   * A line of a file.
   *
   * @param script that stands in it; empty for a line that holds none
   */
  private record Line(String before, String script, String after, boolean quoted) {

    /** Written so that no more than words is left (CommonMark 0.31, section 2.4). */
    String text(boolean refused) {
      String words = refused ? WORDS : script;
      String value =
          quoted ? "'" + words.replace("'", "''") + "'" : words.replaceAll("\\p{Punct}", "\\\\$0");
      return before + (script.isEmpty() ? "" : value) + after;
    }
  }

  private VectorLog(Path folder) {
    this.folder = folder;
  }

  /**
   * Writes it.
   *
   * @param vectors each stands in one place of the head at least
   * @param everywhere these stand in an entry and its photographs, too
   * @return those that stand in entries and in what photographs carry, and were not refused
   */
  static Set<String> write(Path folder, List<String> vectors, List<String> everywhere)
      throws IOException {
    VectorLog log = new VectorLog(folder);
    log.ofAKind = 12 + everywhere.size() / 20;
    log.head(vectors);
    for (int i = 0; i < everywhere.size(); i++) {
      log.entry(i, everywhere.get(i));
      log.photographs(i, everywhere.get(i));
    }
    log.save();
    while (log.refuse()) {
      log.save();
    }
    return log.told();
  }

  private void fixed(String file, String text) {
    lines(file).add(new Line(text, "", "", false));
  }

  private void yaml(String file, String before, String script, String after) {
    lines(file).add(new Line(before, script, after, true));
  }

  private void markdown(String file, String before, String script, String after) {
    lines(file).add(new Line(before, script, after, false));
  }

  private List<Line> lines(String file) {
    return files.computeIfAbsent(file, f -> new ArrayList<>());
  }

  private void head(List<String> vectors) {
    String file = "log.yaml";
    int at = 0;
    // What runs in the book's head is short, or it runs off the page.
    List<String> brief = vectors.stream().filter(v -> v.length() < LONGEST_TITLE).toList();
    for (String key : List.of("title", "subject", "kind", "maker", "client", "licence")) {
      yaml(file, key + ": ", brief.get(++at), "");
    }
    fixed(file, "credit-photos: true");
    fixed(file, "currency: GBP");
    fixed(file, "stages:");
    for (int i = 0; i < ofAKind; i++) {
      fixed(file, "  s" + i + ":");
      yaml(file, "    title: ", vectors.get(++at % vectors.size()), "");
      yaml(file, "    about: ", vectors.get(++at % vectors.size()), "");
    }
    fixed(file, "agreements:");
    for (int i = 0; i < ofAKind; i++) {
      fixed(file, "  a" + i + ":");
      yaml(file, "    with: ", vectors.get(++at % vectors.size()), "");
      yaml(file, "    covers: ", vectors.get(++at % vectors.size()), "");
      fixed(file, "    from: 2026-03-02");
    }
    fixed(file, "readers:");
    fixed(file, "  workshop:");
    yaml(file, "    title: ", vectors.get(++at % vectors.size()), "");
    fixed(file, "    party-to: all");
    fixed(file, "    gets: [site, book, handover]");
    fixed(file, "limits:");
    for (int i = 0; i < ofAKind; i++) {
      fixed(file, "  l" + i + ":");
      yaml(file, "    title: ", vectors.get(++at % vectors.size()), "");
      fixed(file, "    rule: f" + i + ".length <= 36 in");
    }
    fixed(file, "posts:");
    for (int i = 0; i < ofAKind; i++) {
      yaml(file, "  - title: ", vectors.get(++at % vectors.size()), "");
      yaml(file, "    standfirst: ", vectors.get(++at % vectors.size()), "");
      fixed(file, "    entries: [2026-03-14-note-" + i + "]");
    }
    fixed(file, "handover:");
    for (String section : HANDOVER) {
      fixed(file, "  " + section + ":");
      yaml(file, "    title: ", vectors.get(++at % vectors.size()), "");
      yaml(file, "    text: ", vectors.get(++at % vectors.size()), "");
    }
    for (int i = 0; i < ofAKind; i++) {
      fixed("facts.yaml", "f" + i + ".length:");
      fixed("facts.yaml", "  is: 700 mm");
      yaml("facts.yaml", "  title: ", vectors.get(++at % vectors.size()), "");
      fixed("stock.yaml", "- material: m" + i);
      yaml("stock.yaml", "  title: ", vectors.get(++at % vectors.size()), "");
      yaml("stock.yaml", "  supplier: ", vectors.get(++at % vectors.size()), "");
      fixed("stock.yaml", "  bought: 60");
      fixed("stock.yaml", "  price: 21.60 GBP");
    }
  }

  private void entry(int i, String script) {
    String file = "entries/2026-03-14-note-" + i + ".md";
    fixed(file, "---");
    yaml(file, "title: ", script, "");
    fixed(file, "stage: s" + i % ofAKind);
    fixed(file, "time: 1 h");
    fixed(file, "used: {m" + i % ofAKind + ": 1}");
    fixed(file, "---");
    switch (i % 5) {
      case 0 -> markdown(file, "", script, "");
      case 1 -> markdown(file, "## ", script, "");
      case 2 -> {
        markdown(file, "| a | ", script, " |");
        fixed(file, "|---|---|");
        markdown(file, "| ", script, " | b |");
      }
      case 3 -> {
        fixed(file, "She stands.[^1]");
        fixed(file, "");
        markdown(file, "[^1]: ", script, "");
      }
      default -> markdown(file, "> - ", script, "");
    }
    fixed(file, "");
    markdown(file, "![", script, "](../photos/in-text-" + i + ".jpg)");
  }

  private void photographs(int i, String script) throws IOException {
    Files.createDirectories(folder.resolve("photos"));
    photograph("in-text-" + i, shot());
    photograph("said-" + i, shot());
    fixed("photos/photos.yaml", "said-" + i + ".jpg:");
    yaml("photos/photos.yaml", "  caption: ", script, "");
    yaml("photos/photos.yaml", "  alt: ", script, "");
    photograph(
        "carried-" + i,
        i % 2 == 0 ? Shots.withIptc(shot(), 120, script) : Shots.withXmp(shot(), xmp(script)));
    carried.add(script);
  }

  private static String xmp(String script) {
    String escaped =
        script
            .replace("&", "&amp;")
            .replace("<", "&lt;")
            .replace(">", "&gt;")
            .replace("\"", "&quot;");
    return "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">"
        + escaped
        + "</rdf:li></rdf:Alt></dc:description>"
        + "<Iptc4xmpCore:AltTextAccessibility><rdf:Alt><rdf:li xml:lang=\"x-default\">"
        + escaped
        + "</rdf:li></rdf:Alt></Iptc4xmpCore:AltTextAccessibility>";
  }

  private byte[] shot() {
    return Shots.jpeg(Shots.scene(160, 120, ++shots), 0.95);
  }

  private void photograph(String name, byte[] jpeg) throws IOException {
    Files.write(folder.resolve("photos/" + name + ".jpg"), jpeg);
  }

  private void save() throws IOException {
    for (Map.Entry<String, List<Line>> file : files.entrySet()) {
      StringBuilder text = new StringBuilder();
      List<Line> lines = file.getValue();
      for (int i = 0; i < lines.size(); i++) {
        text.append(lines.get(i).text(refused.contains(file.getKey() + ":" + (i + 1))))
            .append('\n');
      }
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.writeString(path, text);
    }
  }

  /** Notes which lines have errors; false if none has. */
  private boolean refuse() throws IOException {
    Set<String> now =
        Workshop.open(folder, DAY, DAY, ZoneId.of("UTC"), Progress.SILENT).problems().stream()
            .filter(Problem::isError)
            .map(p -> p.place().toString().replaceAll("^(.*:\\d+):\\d+$", "$1"))
            .collect(Collectors.toSet());
    return refused.addAll(now);
  }

  private Set<String> told() {
    Set<String> told = new TreeSet<>(carried);
    files.forEach(
        (file, lines) -> {
          for (int i = 0; i < lines.size(); i++) {
            boolean entry = file.startsWith("entries/") && !refused.contains(file + ":" + (i + 1));
            if (entry && !lines.get(i).script().isEmpty()) {
              told.add(lines.get(i).script());
            }
          }
        });
    return told;
  }
}
