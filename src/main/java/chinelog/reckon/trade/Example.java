package chinelog.reckon.trade;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What a log needs for one reckoning, to be copied: {@code facts.yaml} and the tables.
 *
 * @param facts the text of facts.yaml
 * @param tables the text of each table by its name
 */
public record Example(String facts, SortedMap<String, String> tables) {

  private static final String DIVIDER = "--- tables/";

  public Example {
    tables = Collections.unmodifiableSortedMap(new TreeMap<>(tables));
  }

  /** The example of that name: facts.yaml, then each table below a line with its file. */
  static Example of(String name) {
    try (InputStream in = Example.class.getResourceAsStream("examples/" + name + ".txt")) {
      if (in == null) {
        throw new IllegalStateException("no example of " + name);
      }
      String[] parts = new String(in.readAllBytes(), StandardCharsets.UTF_8).split(DIVIDER, -1);
      Map<String, String> tables = new TreeMap<>();
      for (int i = 1; i < parts.length; i++) {
        int end = parts[i].indexOf('\n');
        tables.put(parts[i].substring(0, end).replace(".csv", ""), parts[i].substring(end + 1));
      }
      return new Example(parts[0], new TreeMap<>(tables));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
