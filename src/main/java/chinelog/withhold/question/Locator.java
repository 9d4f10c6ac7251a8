package chinelog.withhold.question;

import chinelog.log.records.Entry;
import chinelog.problem.Place;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Finds words in the log's files, so that a question names their line and column. */
final class Locator {

  private final Path folder;
  private final Map<String, String> texts = new HashMap<>();

  Locator(Path folder) {
    this.folder = folder;
  }

  /** Where the words stand at or after a place; the place itself where they cannot be found. */
  Place find(Place from, String words) {
    if (from.line() == 0 && !Entry.isNoteFile(from.file())) {
      return from;
    }
    String text = texts.computeIfAbsent(from.file(), this::read);
    int start = 0;
    for (int line = 1; line < from.line() && start >= 0; line++) {
      start = text.indexOf('\n', start) + 1;
    }
    String pattern =
        Stream.of(words.strip().split("\\s+"))
            .map(Pattern::quote)
            .collect(Collectors.joining("[\\s>]+"));
    Matcher m = Pattern.compile(pattern).matcher(text);
    if (start > text.length() || !m.find(start)) {
      return from;
    }
    int line = (int) text.substring(0, m.start()).chars().filter(c -> c == '\n').count() + 1;
    return Place.of(
        from.file(), line, m.start() - text.lastIndexOf('\n', Math.max(0, m.start() - 1)));
  }

  private String read(String file) {
    try {
      return Files.readString(folder.resolve(file)).replace("\r\n", "\n");
    } catch (IOException e) {
      // The place of the paragraph is told instead.
      return "";
    }
  }
}
