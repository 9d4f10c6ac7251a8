package chinelog.desk;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.records.Readers;
import chinelog.publish.Step;
import chinelog.reckon.Facts;
import chinelog.reckon.Origin;
import chinelog.withhold.Register;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The desk speaks five languages, and says the same in all of them. */
class DeskWordsTest {

  private static final Path FOLDER = Path.of("src/main/resources/chinelog/desk");
  private static final List<String> TABLES = List.of("words", "photographs", "sheets");
  private static final List<String> LANGUAGES = List.of("de", "nl", "fr", "es");
  private static final Pattern PLACE = Pattern.compile("\\{[0-9]}");
  private static final Pattern SAID = Pattern.compile("\\b(say|count)\\(\"([a-z][a-zA-Z0-9.-]*)\"");

  private static Properties table(String name) throws IOException {
    Properties table = new Properties();
    try (Reader in = Files.newBufferedReader(FOLDER.resolve(name + ".properties"))) {
      table.load(in);
    }
    return table;
  }

  @Test
  void everyLanguageSaysEverythingWithTheSamePlaces() throws IOException {
    List<String> wrong = new ArrayList<>();
    for (String name : TABLES) {
      Properties english = table(name);
      for (String language : LANGUAGES) {
        compare(english, language, table(name + "_" + language), wrong);
      }
    }
    assertThat(wrong).isEmpty();
  }

  private static void compare(
      Properties english, String language, Properties other, List<String> wrong) {
    assertThat(other.stringPropertyNames()).isEqualTo(english.stringPropertyNames());
    for (String key : english.stringPropertyNames()) {
      if (!places(english.getProperty(key)).equals(places(other.getProperty(key)))
          || other.getProperty(key).contains("'")) {
        wrong.add(language + " " + key);
      }
    }
  }

  private static SortedSet<String> places(String text) {
    SortedSet<String> places = new TreeSet<>();
    Matcher place = PLACE.matcher(text);
    while (place.find()) {
      places.add(place.group());
    }
    return places;
  }

  /** Words put together with one of the program's own: each of these must be there. */
  @Test
  void whateverTheProgramNamesHasWords() throws IOException {
    Properties words = table("words");
    for (Readers.Output output : Readers.Output.values()) {
      assertThat(words).containsKey("gets." + output.name());
      assertThat(words)
          .containsKey("output." + output.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    for (Register.Kind kind : Register.Kind.values()) {
      assertThat(words).containsKey("thing." + kind.name());
    }
    for (Origin origin : Origin.values()) {
      assertThat(words).containsKey("origin." + origin.name().toLowerCase(Locale.ROOT));
    }
    for (Facts.Verdict verdict : Facts.Verdict.values()) {
      assertThat(words).containsKey("verdict." + verdict.name().toLowerCase(Locale.ROOT));
    }
    for (Locale locale : List.of(Locale.UK, Locale.GERMAN, Locale.FRENCH)) {
      for (Step.Kind kind : Step.Kind.values()) {
        Step step = new Step(kind, "public", 3, 7, 40, 25, 0);
        assertThat(step.words(locale)).contains("3", "7", "40", "25").doesNotContain("{");
      }
    }
  }

  @Test
  void whatTemplatesSayIsThere() throws IOException {
    SortedSet<String> known = new TreeSet<>();
    for (String table : TABLES) {
      known.addAll(table(table).stringPropertyNames());
    }
    List<String> missing = new ArrayList<>();
    try (Stream<Path> templates = Files.list(FOLDER)) {
      for (Path file : templates.filter(f -> f.toString().endsWith(".ftlh")).toList()) {
        Matcher said = SAID.matcher(Files.readString(file, StandardCharsets.UTF_8));
        while (said.find()) {
          boolean counted = said.group(1).equals("count");
          String key = said.group(2) + (counted ? ".other" : "");
          // One that ends in a stop is put together with a word of the program's.
          boolean isBeginning = key.endsWith(".") || key.endsWith("..other");
          if (!isBeginning && !known.contains(key)) {
            missing.add(file.getFileName() + ": " + key);
          }
        }
      }
    }
    assertThat(missing).isEmpty();
  }
}
