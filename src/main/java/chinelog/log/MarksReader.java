package chinelog.log;

import chinelog.log.reading.Source;
import chinelog.log.records.TalkPlan;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads when each frame of a recorded instalment begins: lines such as {@code 3,1:04.5}, a line
 * {@code end,7:58.2}, and a line {@code script,3f9a1c20de} that names the words that were read.
 */
final class MarksReader {

  private static final Pattern TIME =
      Pattern.compile("(?:(\\d{1,2}):)?(\\d{1,3}):([0-5]\\d(?:[.,]\\d{1,3})?)");

  private final String path;
  private final Source source;
  private final Problems problems;
  private final List<Long> begins = new ArrayList<>();
  private long end = -1;
  private String script = "";
  private boolean isSound = true;

  MarksReader(String path, Source source, Problems problems) {
    this.path = path;
    this.source = source;
    this.problems = problems;
  }

  /** Null if anything in it is wrong. */
  TalkPlan.@Nullable Recording read() {
    long errors = errors();
    for (List<CsvRecords.Field> line : CsvRecords.read(source, problems)) {
      line(line);
    }
    Place whole = Place.of(path);
    if (isSound && begins.isEmpty()) {
      wrong(whole, "This file marks no frame.", "Write a line for each frame, such as \"1,0:00\".");
    } else if (isSound && end < 0) {
      wrong(whole, "It is not said when the recording ends.", "Add a line such as \"end,7:58.2\".");
    } else if (isSound && script.isEmpty()) {
      wrong(
          whole,
          "It is not said which words were read.",
          "Add the line that begins with \"script,\": chinelog talk prints it for each"
              + " instalment.");
    }
    if (!isSound || errors() > errors) {
      return null;
    }
    String[] parts = path.split("/");
    return new TalkPlan.Recording(
        parts[1], parts[2].substring(0, parts[2].length() - 4), script, begins, end, whole);
  }

  private long errors() {
    return problems.list().stream().filter(p -> p.isError()).count();
  }

  private void line(List<CsvRecords.Field> line) {
    String key = line.get(0).text().strip();
    String value = line.size() > 1 ? line.get(1).text().strip() : "";
    Place place = line.get(0).place();
    if (key.equals("frame") && begins.isEmpty()) {
      return;
    }
    if (key.equals("script")) {
      script = value;
      return;
    }
    boolean isEnd = key.equals("end");
    int next = begins.size() + 1;
    if (!isEnd && !key.matches("0*" + next)) {
      wrong(
          place,
          Sentence.of("\"{0}\" stands where frame {1} is marked.", key, next),
          "Write the frames in their order, from 1, then \"end\" and \"script\".");
      return;
    }
    if (end >= 0) {
      wrong(place, "This stands after the end.", "Write the line \"end\" behind the last frame.");
      return;
    }
    Long time = time(value);
    if (time == null) {
      wrong(
          line.get(Math.min(1, line.size() - 1)).place(),
          Sentence.of("\"{0}\" is not a time in a recording.", value),
          "Write minutes and seconds, such as 1:04.5.");
      return;
    }
    long before = begins.isEmpty() ? -1 : begins.get(begins.size() - 1);
    if (!isEnd && begins.isEmpty() && time != 0) {
      wrong(place, "The first frame does not begin at 0:00.", "Write \"1,0:00\".");
    } else if (time <= before) {
      wrong(
          place,
          isEnd
              ? Sentence.of(
                  "The recording is shorter than its marks: it ends at {0}, before frame {1}"
                      + " begins.",
                  value, begins.size())
              : Sentence.of(
                  "Frame {0} begins at {1}, no later than the one before it.", next, value),
          "Correct one of the two times.");
    } else if (isEnd) {
      end = time;
    } else {
      begins.add(time);
    }
  }

  private void wrong(Place place, CharSequence what, CharSequence remedy) {
    // One fault brings others after it: the first is told.
    if (isSound) {
      problems.error(place, what, remedy);
    }
    isSound = false;
  }

  private static @Nullable Long time(String text) {
    Matcher m = TIME.matcher(text);
    if (!m.matches()) {
      return null;
    }
    long hours = m.group(1) == null ? 0 : Long.parseLong(m.group(1));
    long minutes = Long.parseLong(m.group(2));
    BigDecimal seconds = new BigDecimal(m.group(3).replace(',', '.'));
    return (hours * 60 + minutes) * 60_000 + seconds.movePointRight(3).longValue();
  }
}
