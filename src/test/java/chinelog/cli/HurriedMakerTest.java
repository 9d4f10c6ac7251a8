package chinelog.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A name and a figure typed openly in every place of a log that takes words, and in every way that
 * a hurried hand breaks them up. One log for each language holds all ways; each has a party and a
 * figure of its own, so that it is known which of them were asked about.
 */
@Timeout(120)
class HurriedMakerTest {

  private static final String[] FIRST = {
    "Bran", "Corv", "Sker", "Tams", "Oldr", "Hyth", "Wexm", "Ludl", "Quil", "Zarg"
  };
  private static final String[] SECOND = {"ock", "ane", "rick", "inel", "ath", "wick", "orra"};

  private static final Map<String, String> DAILY =
      Map.of(
          "en-GB", "The glue took all day and the shop was cold",
          "de-DE", "Der Leim brauchte den ganzen Tag, und es war kalt",
          "nl-NL", "De lijm had de hele dag nodig en het was koud",
          "fr-FR", "La colle a mis la journée et il faisait froid",
          "es-ES", "La cola tardó todo el día y hacía frío");

  /** In a note: {@code A B} is the name, {@code D} what nobody minds, {@code |} a line's end. */
  private static final List<String> NAMES =
      List.of(
          "D, A B.",
          "A|B. D.",
          "D, A  |B.",
          "D, A\\|B.",
          "# D, A B",
          "## A B||D.",
          "D [A B](https://a.example).",
          "D [x](https://a.example/AB).",
          "D: https://www.a-b.example/.",
          "![A B](../photos/keel.png)",
          "| x | y ||---|---|| D | A B |",
          "| A B | y ||---|---|| D | z |",
          "D.[^1]||[^1]: A B.",
          "> D, A B.",
          "- D|- A B",
          "1. D|2. A B",
          "`A B` D.",
          "```|A B|```",
          "    A B",
          "D, **A** B.",
          "D, **A B**.",
          "D, A&nbsp;B.",
          "D, A\u00a0B.",
          "D, A-B.",
          "D, A/B.",
          "D, \u201cA B\u201d.",
          "D, ~~A B~~.",
          "D, A.",
          "D (A).",
          "D; a b.",
          "D, As.",
          "D, A's.",
          "D, A_B.",
          "D @AB.",
          "D #AB.",
          "D, info@ab.example.",
          "D, A\u200bB.");

  /** Likewise a figure: {@code F} in millimetres with one decimal, {@code C} in centimetres. */
  private static final List<String> FIGURES =
      List.of(
          "D, F mm.",
          "| F mm | y ||---|---|| D | z |",
          "| x | y (mm) ||---|---|| F | F |",
          "D, Fmm.",
          "D, F-mm.",
          "D, F|mm.",
          "D, F\u00a0mm.",
          "D, F&nbsp;mm.",
          "D, F\u202fmm.",
          "D (F mm).",
          "## F mm||D.",
          "# D, F mm",
          "![F mm](../photos/keel.png)",
          "D [F mm](https://a.example).",
          "| x | y ||---|---|| D | F mm |",
          "| x | y [mm] ||---|---|| D | F |",
          "D.[^1]||[^1]: F mm.",
          "> F mm",
          "- F mm",
          "`F mm` D.",
          "```|F mm|```",
          "D, **F** mm.",
          "D, *F mm*.",
          "D, C cm.",
          "D, C|cm.",
          "D, \u2248 F mm.",
          "D, ~F mm.",
          "D, ±F mm.",
          "D, F mm/2.",
          "D = F mm",
          "D, F Millimeter.");

  @TempDir private Path folder;

  private String name(int i) {
    return FIRST[i % FIRST.length] + SECOND[i / FIRST.length];
  }

  /** Ways outside the notes: where it is written, and how. */
  private static final List<BiConsumer<TinyLog, String>> ELSEWHERE =
      List.of(
          (log, s) -> append(log, "log.yaml", "about: Words about it, " + s + "."),
          (log, s) -> append(log, "log.yaml", "licence: Ask " + s + "."),
          (log, s) -> append(log, "log.yaml", "kind: launch of " + s),
          (log, s) -> append(log, "log.yaml", "stages: {p: {title: \"D, " + s + "\"}}"),
          (log, s) -> append(log, "log.yaml", "limits: {l: {title: " + s + ", rule: a.b <= 9 m}}"),
          (log, s) -> append(log, "log.yaml", "handover: {running: \"Ask " + s + ".\"}"),
          (log, s) -> append(log, "log.yaml", "letter: {since: 2026-03-14, text: " + s + ".}"),
          (log, s) ->
              append(
                  log,
                  "log.yaml",
                  "posts: [{title: " + s + ", standfirst: D, entries: [2026-04-01-w0]}]"),
          (log, s) -> append(log, "facts.yaml", "a.b: {is: 1 m, title: " + s + "}"),
          (log, s) ->
              append(
                  log,
                  "stock.yaml",
                  "- {material: cedar, title: Cedar, bought: 9, supplier: " + s + "}"),
          (log, s) -> append(log, "photos/photos.yaml", "keel.png: {caption: " + s + "}"),
          (log, s) -> append(log, "photos/photos.yaml", "deck.png: {alt: " + s + "}"),
          (log, s) -> append(log, "facts.yaml", id(s) + ".loa: {is: 1 m, title: Length}"),
          (log, s) -> append(log, "facts.yaml", "hull." + id(s) + ": {is: 1 m, title: Length}"),
          (log, s) ->
              append(log, "stock.yaml", "- {material: " + id(s) + "_ply, title: P, bought: 9}"),
          (log, s) -> note(log, "weighed", "weighed: {" + id(s) + ": {is: 3 g, title: K}}\n", "D."),
          (log, s) ->
              note(log, "measured", "measured: {a." + id(s) + ": {is: 3 m, title: K}}\n", "D."),
          (log, s) -> note(log, "title", "title: " + s + "\n", "D."),
          (log, s) -> note(log, "used", "used: {cedar: {amount: 2, where: " + s + "}}\n", "D."),
          (log, s) -> note(log, "part", "weighed: {p: {is: 3 g, title: " + s + "}}\n", "D."),
          (log, s) -> note(log, "fact", "measured: {m.n: {is: 3 m, title: " + s + "}}\n", "D."));

  private static String id(String name) {
    return name.toLowerCase(Locale.ROOT).replace(' ', '_');
  }

  private static void append(TinyLog log, String file, String line) {
    String before = java.nio.file.Files.exists(log.path(file)) ? log.read(file) : "";
    log.write(file, before + line + "\n");
  }

  private static void note(TinyLog log, String name, String head, String text) {
    log.write("entries/2026-05-01-" + name + ".md", "---\n" + head + "---\n" + text + "\n");
  }

  private TinyLog log(String language) {
    TinyLog log = TinyLog.empty(folder);
    StringBuilder head =
        new StringBuilder(
            """
            title: Building Merrow
            subject: Merrow
            scale: 1:16
            language: LANGUAGE
            zone: Europe/London
            currency: GBP
            tell: {client: [public]}
            readers:
              public: {title: Everybody, party-to: [], gets: [site, handover, letter]}
              workshop: {title: The workshop, party-to: all, gets: [site]}
            agreements:
            """
                .replace("LANGUAGE", language));
    for (int i = 0; i < NAMES.size() + ELSEWHERE.size(); i++) {
      head.append("  n").append(i).append(": {with: ").append(name(i)).append(" Yard,");
      head.append(" covers: her, until: never}\n");
    }
    head.append("  lines: {with: Nemo, covers: it, until: never}\n");
    log.write("log.yaml", head.toString());
    StringBuilder facts = new StringBuilder();
    for (int i = 0; i < FIGURES.size(); i++) {
      facts.append(String.format(Locale.ROOT, "h%d.v: {is: %.1f mm, title: T%d, ", i, value(i), i));
      facts.append("under: lines}\n");
    }
    log.write("facts.yaml", facts.toString());
    return log;
  }

  /** Apart from one another, in every unit and size. */
  private static double value(int i) {
    return 120.3 * Math.pow(1.047, i);
  }

  @ParameterizedTest
  @ValueSource(strings = {"en-GB", "de-DE", "nl-NL", "fr-FR", "es-ES"})
  void whereverItIsTypedItIsAsked(String language) {
    TinyLog log = log(language);
    String daily = DAILY.getOrDefault(language, "");
    for (int i = 0; i < NAMES.size(); i++) {
      String name = name(i);
      String text =
          NAMES
              .get(i)
              .replace("D", "\0")
              .replaceAll("\\bAB\\b", name + "Yard")
              .replace("ab.example", name.toLowerCase(Locale.ROOT) + "yard.example")
              .replace("a-b.example", name.toLowerCase(Locale.ROOT) + "-yard.example")
              .replace("a b.", name.toLowerCase(Locale.ROOT) + " yard.")
              .replaceAll("\\bA(?=s?\\b|[_'\\u200b])", name)
              .replaceAll("(?<=\\b|_|\\u200b)B\\b", "Yard");
      log.write("entries/2026-04-01-w" + i + ".md", lines(text, daily));
    }
    for (int i = 0; i < FIGURES.size(); i++) {
      String millimetres = number(language, "%.1f", value(i));
      String text =
          FIGURES
              .get(i)
              .replace("D", "\0")
              .replaceAll("\\bF(?=mm|\\b)", millimetres)
              .replaceAll("\\bC\\b", number(language, "%.2f", value(i) / 10));
      log.write("entries/2026-04-02-f" + i + ".md", lines(text, daily));
    }
    for (int i = 0; i < ELSEWHERE.size(); i++) {
      ELSEWHERE.get(i).accept(log, name(NAMES.size() + i) + " Yard");
    }
    log.photo("photos/keel.png").photo("photos/deck.png");

    TinyLog.Said said = log.run("check");

    assertThat(said.err()).contains("answers.yaml");
    List<String> missed = new ArrayList<>();
    for (int i = 0; i < NAMES.size() + ELSEWHERE.size(); i++) {
      if (!said.err().matches("(?s).*" + TinyLog.QUESTION + " ?: [^\\n]* n" + i + "\\b.*")) {
        missed.add(i < NAMES.size() ? NAMES.get(i) : "elsewhere " + (i - NAMES.size()));
      }
    }
    for (int i = 0; i < FIGURES.size(); i++) {
      if (!said.err().matches("(?s).*" + TinyLog.QUESTION + " ?: [^\\n]*\\bh" + i + "\\.v\\b.*")) {
        missed.add(FIGURES.get(i));
      }
    }
    assertThat(missed).isEmpty();
  }

  /** What is read nowhere: a link's and a picture's title, and the names of files. */
  @Test
  void whatIsReadNowhereIsNotPublished() {
    TinyLog log = log("en-GB");
    String name = name(0);
    String file = name.toLowerCase(Locale.ROOT) + "-yard-187.3mm";
    log.photo("photos/" + file + ".png").photo("photos/" + file + " 2.jpg");
    note(
        log,
        file,
        "",
        String.format(
            "# A day\n\n[x](https://a.example \"%s Yard\"), said he.\n\n![D](../photos/%s.png)\n",
            name, file));
    TinyLog.Said said = log.run("publish", "--for", "public");
    assertThat(said.status()).as(said.err()).isEqualTo(Main.DONE);
    assertThat(log.everything().entrySet())
        .filteredOn(e -> e.getKey().startsWith("published/public"))
        .isNotEmpty()
        .noneMatch(e -> (e.getKey() + e.getValue()).toLowerCase(Locale.ROOT).contains("branock"))
        .noneMatch(e -> (e.getKey() + e.getValue()).contains("187.3"));
  }

  private static String lines(String text, String daily) {
    boolean table = text.startsWith("| ");
    String broken = table ? text.replace("||", "|\n|") : text.replace('|', '\n');
    return (table ? daily + ".\n\n" : "") + broken.replace("\0", daily) + "\n";
  }

  private static String number(String language, String format, double value) {
    String plain = String.format(Locale.ROOT, format, value);
    return language.startsWith("en") ? plain : plain.replace('.', ',');
  }
}
