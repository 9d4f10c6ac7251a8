package chinelog.markup;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The files that come inside the program. */
final class Resources {

  private Resources() {}

  /**
   * @param path from the root, such as {@code /themes/base/site.css}
   */
  static byte[] bytes(String path) throws IOException {
    byte[] found = find(path);
    if (found == null) {
      throw new FileNotFoundException("chinelog comes without " + path + "; build it anew.");
    }
    return found;
  }

  static byte @Nullable [] find(String path) throws IOException {
    try (InputStream in = Resources.class.getResourceAsStream(path)) {
      return in == null ? null : in.readAllBytes();
    }
  }

  static String text(String path) throws IOException {
    return new String(bytes(path), StandardCharsets.UTF_8);
  }

  /** The keys and values of a properties file, by key. */
  static Map<String, String> properties(String text) throws IOException {
    Properties read = new Properties();
    read.load(new StringReader(text));
    Map<String, String> sorted = new TreeMap<>();
    read.stringPropertyNames().forEach(k -> sorted.put(k, read.getProperty(k).strip()));
    return sorted;
  }
}
