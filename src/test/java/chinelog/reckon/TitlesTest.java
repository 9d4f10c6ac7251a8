package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class TitlesTest {

  /** A yield as the reckonings of the trade write it: its name, then its title. */
  private static final Pattern YIELD =
      Pattern.compile(
          "(?:\\.add\\(|length\\(|new Yield\\()\\s*\"[a-z_0-9]+\"(?:\\s*\\+\\s*[a-z.()]+)?,\\s*"
              + "(?:titled\\(title, )?(\"[^\"]+\"(?:\\s*\\+\\s*(?:\"[^\"]*\"|[^\",+]+))*)\\)?,");

  private final Titles german = new Titles(Locale.GERMANY);

  @Test
  void aTitleIsPutIntoTheLanguageOfTheLogWithWhatIsFilledIn() {
    assertThat(german.shown("Hours in all")).isEqualTo("Stunden insgesamt");
    assertThat(german.shown("Hours: Planking")).isEqualTo("Stunden: Planking");
    assertThat(german.shown("Bare shell, mass on 2026-04-18"))
        .isEqualTo("Bare shell, Masse am 2026-04-18");
    assertThat(german.shown("Station 3, immersed area")).isEqualTo("Spant 3, eingetauchte Fläche");
    assertThat(new Titles(Locale.FRANCE).shown("Wood glue: used")).isEqualTo("Wood glue : employé");
  }

  @Test
  void aTitleOfTheAuthorsOwnStaysAsItIs() {
    assertThat(german.shown("Länge über alles")).isEqualTo("Länge über alles");
    assertThat(german.shown("Speed on trial")).isEqualTo("Speed on trial");
    assertThat(german.shown("Seed: $1 \\ {0}")).isEqualTo("Seed: $1 \\ {0}");
  }

  @Test
  void whatWasPlannedIsNamedWithoutThatOnceItIsMeasured() {
    assertThat(german.withoutPlanned(german.shown("Länge, as planned"))).isEqualTo("Länge");
    assertThat(new Titles(Locale.UK).withoutPlanned("Length, as planned")).isEqualTo("Length");
  }

  @Test
  void anotherLanguageHasTheEnglishTitles() {
    assertThat(new Titles(Locale.ITALY).shown("Hours in all")).isEqualTo("Hours in all");
  }

  /** A title that the table lacks would stand in English in every log. */
  @Test
  void everyTitleThatAReckoningOfTheTradeGivesIsInTheTable() throws IOException {
    Properties table = new Properties();
    try (var in = getClass().getResourceAsStream("/chinelog/reckon/titles.properties")) {
      table.load(in);
    }
    Set<String> known = new TreeSet<>();
    table.values().forEach(title -> known.add(((String) title).replaceAll("\\{[0-9]}", "x")));
    List<String> missing = new ArrayList<>();
    int found = 0;
    for (Path file : sources()) {
      Matcher yields = YIELD.matcher(Files.readString(file));
      while (yields.find()) {
        found++;
        String title = filled(yields.group(1));
        if (!known.contains(title) && !isShare(title, known)) {
          missing.add(file.getFileName() + ": " + title);
        }
      }
    }
    assertThat(missing).isEmpty();
    assertThat(found).isGreaterThan(90);
  }

  /** The words that are filled in may be a few that the table has one by one. */
  private static boolean isShare(String title, Set<String> known) {
    String pattern = "\\Q" + title.replace("x", "\\E.+\\Q") + "\\E";
    return known.stream().anyMatch(k -> k.matches(pattern));
  }

  /** {@code "Station " + name + ", girth"} as "Station x, girth". */
  private static String filled(String expression) {
    StringBuilder title = new StringBuilder();
    for (String part : expression.split("\\s*\\+\\s*")) {
      title.append(part.startsWith("\"") ? part.substring(1, part.length() - 1) : "x");
    }
    return title.toString();
  }

  private static List<Path> sources() throws IOException {
    try (Stream<Path> all = Files.list(Path.of("src/main/java/chinelog/reckon/trade"))) {
      return all.sorted().toList();
    }
  }
}
