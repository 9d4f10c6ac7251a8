package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.cli.TinyLog.Said;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures of a withheld table, copied into notes, captions and other tables without its mark. */
class CopiedTableTest {

  private static final Map<String, String> NOTES = new LinkedHashMap<>();
  private static final Map<String, String> TABLES = new LinkedHashMap<>();

  static {
    NOTES.put("sentence", "The keel runs at 36.0, 28.3, 21.4, 17.9 and 15.6 above the board.");
    NOTES.put("part", "Half of it: 83.8, 86.1, 85.2, 81.7.");
    NOTES.put("units", "36.0 mm, 28.3 mm, 21.4 mm, 17.9 mm");
    NOTES.put("row", "| a | b | c | d |\n|---|---|---|---|\n| 60 | 28.3 | 83.8 | 14.9 |");
    NOTES.put(
        "column", "| s | k |\n|---|---|\n| A | 36.0 |\n| B | 28.3 |\n| C | 21.4 |\n| D | 17.9 |");
    NOTES.put(
        "columns",
        "| k | b |\n|---|---|\n| 36.0 | 78.0 |\n| 28.3 | 83.8 |\n| 21.4 | 86.1 |\n| 17.9 | 85.2 |");
    NOTES.put("centimetres", "3.60 2.83 2.14 1.79");
    NOTES.put("metres", "0.0360; 0.0283; 0.0214; 0.0179");
    NOTES.put("inches", "1.42 / 1.11 / 0.84 / 0.70 / 0.61");
    NOTES.put("full-size", "Of the real one: 576, 453, 342, 286, 250.");
    NOTES.put("full-metres", "0.576, 0.453, 0.342, 0.286");
    NOTES.put("backwards", "15.6 17.9 21.4 28.3 36.0");
    NOTES.put("whole", "36, 28, 21, 18, 16");
    NOTES.put("comma", "36,0 28,3 21,4 17,9");
    NOTES.put("code", "```\n36.0\n28.3\n21.4\n17.9\n```");
    NOTES.put("items", "- 36.0\n- 28.3\n- 21.4\n- 17.9");
    NOTES.put("quote", "> 83.8 86.1 85.2 81.7");
    NOTES.put("paragraphs", "78.0\n\n83.8\n\n86.1\n\n85.2");
    NOTES.put("words", "First 14.9, then 22.6, then 25.1 and at last 19.3.");
    NOTES.put("stations", "At 1 28.3 up, at 2 21.4, at 3 17.9, at 4 15.6.");
    NOTES.put("pairs", "36.0 by 78.0, 28.3 by 83.8, 21.4 by 86.1, 17.9 by 85.2");
    NOTES.put("breadths", "From side to side: 156.0, 167.6, 172.2, 170.4");
    NOTES.put("every-second", "37.7, 31.2, 25.4, 18.9");
    TABLES.put("breadths", "n,b [mm]\n0,156.0\n1,167.6\n2,172.2\n3,170.4\n");
    TABLES.put("every-second", "n,b [mm]\n0,37.7\n2,31.2\n4,25.4\n6,18.9\n");
    TABLES.put("copy", "station,x [mm],keel [mm]\n0,0,36.0\n1,60,28.3\n2,120,21.4\n3,185,17.9\n");
    TABLES.put("heights", "n,h\n1,36.0\n2,28.3\n3,21.4\n4,17.9\n");
    TABLES.put("small", "n,h [cm]\n1,3.60\n2,2.83\n3,2.14\n4,1.79\n");
    TABLES.put("real", "n,h [m]\n1,0.576\n2,0.453\n3,0.342\n4,0.286\n");
    TABLES.put("part", "n,h [mm]\n2,83.8\n3,86.1\n4,85.2\n5,81.7\n");
    TABLES.put("turned", "what,a [mm],b [mm],c [mm],d [mm]\nkeel,36.0,28.3,21.4,17.9\n");
    TABLES.put("upside-down", "h [mm]\n15.6\n17.9\n21.4\n28.3\n");
  }

  @TempDir private Path folder;

  private TinyLog log() {
    return TinyLog.in(folder)
        .replace(
            "log.yaml",
            "limits:",
            "tables:\n  offsets: {under: lines}\n  waterline: {under: lines}\nlimits:")
        .write(
            "tables/offsets.csv",
            "station,x [mm],keel [mm],half breadth [mm],buttock [mm]\n0,0,36.0,78.0,\n"
                + "1,60,28.3,83.8,14.9\n2,120,21.4,86.1,22.6\n3,185,17.9,85.2,25.1\n"
                + "4,240,15.6,81.7,19.3\n")
        .write(
            "tables/waterline.csv",
            "n,y [mm]\n0,37.7\n1,35.1\n2,31.2\n3,28.8\n4,25.4\n5,22.3\n6,18.9\n");
  }

  @Test
  void copiedFiguresAreAsked() {
    TinyLog log = log();
    NOTES.forEach(
        (name, text) -> log.write("entries/2026-04-02-" + name + ".md", "# A\n\n" + text + "\n"));
    TABLES.forEach((name, text) -> log.write("tables/" + name + ".csv", text));
    log.write("photos/photos.yaml", "keel.png: {caption: \"Keel: 36.0, 28.3, 21.4, 17.9\"}\n");

    Said said = log.run("check");

    List<String> missed = new ArrayList<>();
    NOTES.keySet().stream()
        .map(n -> "entries/2026-04-02-" + n + ".md")
        .filter(f -> !asked(said, f))
        .forEach(missed::add);
    TABLES.keySet().stream()
        .map(n -> "tables/" + n + ".csv")
        .filter(f -> !asked(said, f))
        .forEach(missed::add);
    assertThat(missed).as(said.err()).isEmpty();
    assertThat(asked(said, "photos/photos.yaml")).as(said.err()).isTrue();
    assertThat(said.status()).isEqualTo(Main.PROBLEMS);
  }

  private static boolean asked(Said said, String file) {
    String quoted = java.util.regex.Pattern.quote(file);
    return java.util.regex.Pattern.compile(
                "(?m)^" + quoted + "[:\\d]*: question: .*table (?:offsets|waterline)")
            .matcher(said.err())
            .find()
        || java.util.regex.Pattern.compile(
                "question: .*table (?:offsets|waterline).*Also at .*" + quoted)
            .matcher(said.err())
            .find();
  }

  @Test
  void otherFiguresAreNotAsked() {
    TinyLog log = log();
    log.write("entries/2026-04-02-a.md", "# A\n\nStations 0, 60, 120, 180. Then 1, 2, 3, 4.\n");
    log.write(
        "entries/2026-04-03-b.md", "# B\n\n36.0, 21.4, 28.3, 15.6; 36, 37, 38, 39; 83.8 86.1\n");
    log.write("entries/2026-04-04-c.md", "# C\n\n12.5, 31.9, 40.2, 7.7. At 10:45, 12 strips.\n");
    log.write("tables/masses.csv", "part,mass [g]\nkeel,36.5\nstem,28.9\ndeck,21.1\nmast,17.2\n");
    Said said = log.run("check");
    assertThat(said.err()).doesNotContain("question: ");
  }
}
