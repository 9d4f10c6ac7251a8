package chinelog.problem;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The sentences of problems in other languages, by their English. In a file of {@code
 * chinelog/problem}, the English stands at the beginning of a line; below it, indented, a line for
 * each language that begins with its code.
 */
final class Translations {

  /** By the part of the program that says them. */
  private static final List<String> FILES =
      List.of(
          "common",
          "log",
          "photographs",
          "reckoning",
          "trade",
          "parameters",
          "withholding",
          "publishing",
          "editions",
          "audit",
          "keep",
          "command",
          "desk");

  private static final Map<String, Map<String, String>> KNOWN = new ConcurrentHashMap<>();

  private Translations() {}

  /** All of a language, by their English; none in English. */
  static Map<String, String> of(Locale locale) {
    String language = locale.getLanguage();
    return language.equals(Locale.ENGLISH.getLanguage())
        ? Map.of()
        : KNOWN.computeIfAbsent(language, Translations::read);
  }

  private static Map<String, String> read(String language) {
    Map<String, String> read = new HashMap<>();
    String prefix = "  " + language + " ";
    for (String file : FILES) {
      String english = "";
      for (String line : lines(file)) {
        if (line.startsWith(prefix)) {
          read.put(english, line.substring(prefix.length()));
        } else if (!line.startsWith(" ")) {
          english = line;
        }
      }
    }
    return Map.copyOf(read);
  }

  private static List<String> lines(String file) {
    String name = file + ".txt";
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(Translations.class.getResourceAsStream(name), name),
                StandardCharsets.UTF_8))) {
      return reader.lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
