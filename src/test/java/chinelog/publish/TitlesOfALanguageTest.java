package chinelog.publish;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Edition;
import chinelog.edition.Figure;
import chinelog.log.Readers;
import chinelog.log.Statement;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The demo's log in another language: what chinelog itself names is named in it. */
class TitlesOfALanguageTest {

  /** The same in both languages. */
  private static final String SAME = "Material: ";

  @TempDir Path folder;

  @Test
  void noEnglishTitleIsLeftInTheEditionOfAGermanLog() throws IOException {
    Workshop.Opened english = open("en-GB", folder.resolve("en"));
    Workshop.Opened german = open("de", folder.resolve("de"));
    Map<String, String> before = figures(edition(english));
    Map<String, String> after = figures(edition(german));
    // What the author named is the author's.
    Set<String> own =
        english.log().statements().stream()
            .map(Statement::name)
            .collect(Collectors.toCollection(TreeSet::new));
    english.log().entries().forEach(e -> e.measured().forEach(m -> own.add(m.fact())));
    Set<String> left = new TreeSet<>();
    after.forEach(
        (name, title) -> {
          boolean isOwn = own.stream().anyMatch(o -> name.equals(o) || name.startsWith(o + "."));
          if (!isOwn && title.equals(before.get(name)) && !title.startsWith(SAME)) {
            left.add(name + ": " + title);
          }
        });
    assertThat(after).hasSizeGreaterThan(80);
    assertThat(left).isEmpty();
    assertThat(after)
        .containsEntry("form.cb", "Blockkoeffizient")
        .containsEntry("hours.total", "Stunden insgesamt");
    assertThat(edition(german).contents().handover())
        .extracting(Edition.HandoverSection::title)
        .containsExactly(
            "Was es ist",
            "Aufbauen",
            "Abbauen",
            "Anfassen und Tragen",
            "Fahren",
            "Pflege",
            "Anstriche",
            "Ersatzteile",
            "Wenn etwas schiefgeht");
  }

  private static Workshop.Opened open(String language, Path to) throws IOException {
    Path log = Path.of("sample-log");
    try (Stream<Path> all = Files.walk(log)) {
      for (Path file : all.toList()) {
        Path name = log.relativize(file);
        boolean isMade = name.startsWith("published") || name.startsWith("records");
        if (!isMade && Files.isRegularFile(file)) {
          Path copy = to.resolve(name.toString());
          Files.createDirectories(copy.getParent());
          Files.copy(file, copy);
        }
      }
    }
    Path head = to.resolve("log.yaml");
    String text = Files.readString(head);
    Files.writeString(head, text.replace("language: en-GB", "language: " + language));
    return Workshop.open(to, DemoPrints.DAY, DemoPrints.DAY, ZoneOffset.UTC, Progress.SILENT);
  }

  private static Edition edition(Workshop.Opened opened) throws IOException {
    for (Readers group : opened.log().readers()) {
      if (group.id().equals("workshop")) {
        return DemoPrints.edition(opened, group);
      }
    }
    throw new IllegalStateException("no workshop");
  }

  private static Map<String, String> figures(Edition edition) {
    return edition.contents().figures().stream()
        .collect(Collectors.toMap(Figure::name, Figure::title));
  }
}
