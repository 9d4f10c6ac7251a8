package chinelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.reflect.Field;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * In how many variants each way is tried in which a maker who is in a hurry leaks: {@code
 * threats/unmarked.csv} names the tests, their variants are counted, and the table in DEVELOPERS.md
 * tells no other numbers. Written anew by {@code -Dchinelog.write=1}.
 */
class UnmarkedTest {

  private static final Path GUIDE = Path.of("DEVELOPERS.md");
  private static final String HEAD =
      "| way | tests | variants | languages |\n| --- | --- | --- | --- |\n";
  private static final Pattern LANGUAGE = Pattern.compile("\\b(en|de|nl|fr|es)-[A-Z]{2}\\b");

  /** Of each way. */
  private static final int LEAST = 20;

  @Test
  void everyWayIsTriedInTwentyVariantsAndTheGuideSaysSo() throws Exception {
    StringBuilder table = new StringBuilder(HEAD);
    List<String> few = new ArrayList<>();
    for (String line : Files.readAllLines(Path.of("src/test/resources/threats/unmarked.csv"))) {
      if (line.startsWith("way,")) {
        continue;
      }
      String way = line.substring(0, line.indexOf(','));
      int variants = 0;
      SortedSet<String> languages = new TreeSet<>();
      SortedSet<String> tests = new TreeSet<>();
      for (String product : line.substring(line.indexOf(',') + 1).split(" ")) {
        int of = 1;
        for (String factor : product.split("\\*")) {
          of *= count(factor, languages);
          Matcher name = Pattern.compile("(\\w+)(?:[#$].*)?$").matcher(factor);
          if (factor.contains(".") && !factor.startsWith("pom:") && name.find()) {
            tests.add(name.group(1));
          }
        }
        variants += of;
      }
      if (variants < LEAST
          || !languages.isEmpty() && languages.size() < 5 && !way.startsWith("4")) {
        few.add(way + ": " + variants + " " + languages);
      }
      table.append("| ").append(way).append(" | `").append(String.join("` `", tests));
      table.append("` | ").append(variants).append(" | ");
      table.append(languages.isEmpty() ? "" : languages.size()).append(" |\n");
    }
    assertThat(few).isEmpty();
    String guide = Files.readString(GUIDE);
    int from = guide.indexOf(HEAD);
    assertThat(from).as("the table in " + GUIDE).isPositive();
    int to = guide.indexOf("\n\n", from) + 1;
    if (System.getProperty("chinelog.write") != null) {
      Files.writeString(GUIDE, guide.substring(0, from) + table + guide.substring(to));
    } else {
      assertThat(guide.substring(from, to)).isEqualTo(table.toString());
    }
  }

  /**
   * How many variants a factor stands for.
   *
   * @param languages those that its cases name are added
   */
  private static int count(String factor, Collection<String> languages) throws Exception {
    if (factor.matches("\\d+")) {
      return Integer.parseInt(factor);
    }
    if (factor.startsWith("pom:")) {
      return ofPom(factor.substring("pom:".length()));
    }
    int hash = factor.indexOf('#');
    Class<?> type = Class.forName("chinelog." + (hash < 0 ? factor : factor.substring(0, hash)));
    if (hash < 0) {
      return type.isEnum() ? type.getEnumConstants().length : tests(type);
    }
    String member = factor.substring(hash + 1);
    for (Method method : type.getDeclaredMethods()) {
      if (method.getName().equals(member)) {
        List<String> cases = cases(method);
        for (String one : cases) {
          Matcher m = LANGUAGE.matcher(one);
          while (m.find()) {
            languages.add(m.group());
          }
        }
        return cases.size();
      }
    }
    Field field = type.getDeclaredField(member);
    field.setAccessible(true);
    Object value = field.get(null);
    return value instanceof Collection<?> c
        ? c.size()
        : value instanceof Map<?, ?> map ? map.size() : (Integer) value;
  }

  private static List<String> cases(Method method) {
    CsvSource rows = method.getAnnotation(CsvSource.class);
    ValueSource values = method.getAnnotation(ValueSource.class);
    return rows != null
        ? Arrays.asList(rows.value())
        : values != null ? Arrays.asList(values.strings()) : List.of();
  }

  private static int tests(Class<?> type) {
    return (int)
        Stream.of(type.getDeclaredMethods()).filter(m -> m.isAnnotationPresent(Test.class)).count();
  }

  /** What the run at length is given. */
  private static int ofPom(String property) throws IOException {
    Matcher m =
        Pattern.compile("<" + Pattern.quote(property) + ">(\\d+)<")
            .matcher(Files.readString(Path.of("pom.xml")));
    assertThat(m.find()).as(property).isTrue();
    return Integer.parseInt(m.group(1));
  }
}
