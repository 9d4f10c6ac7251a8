package chinelog.audit;

import chinelog.problem.Sentence;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Opens captions and chapters line by line: WebVTT (W3C) and SubRip. Of WebVTT nothing but cues may
 * be there: no remarks, styles, regions or settings. What is said in one breath is searched as one
 * text, wherever a caption ends in it.
 */
final class CaptionFile {

  private static final Pattern VTT_TIMES =
      Pattern.compile(
          "(\\d{2,}:[0-5]\\d:[0-5]\\d\\.\\d{3}) --> (\\d{2,}:[0-5]\\d:[0-5]\\d\\.\\d{3})");
  private static final Pattern SRT_TIMES =
      Pattern.compile("(\\d{2,}:[0-5]\\d:[0-5]\\d,\\d{3}) --> (\\d{2,}:[0-5]\\d:[0-5]\\d,\\d{3})");

  private CaptionFile() {}

  static void inspect(String text, String ending, Search search, Findings findings) {
    boolean isVtt = ending.equals("vtt");
    List<String> lines = text.lines().toList();
    StringBuilder said = new StringBuilder();
    int at = 0;
    if (isVtt) {
      if (lines.isEmpty() || !lines.get(0).equals("WEBVTT")) {
        findings.add(Sentence.of("line 1"), Sentence.of("This does not begin as captions do."));
      }
      at = 1;
    }
    String before = "";
    int cue = 0;
    while (at < lines.size()) {
      if (lines.get(at).isBlank()) {
        at++;
        continue;
      }
      cue++;
      if (!isVtt && !lines.get(at++).equals(String.valueOf(cue))) {
        findings.add(
            Sentence.of("line {0}", at),
            Sentence.of("The captions are not numbered one after the other."));
      }
      Matcher times =
          (isVtt ? VTT_TIMES : SRT_TIMES).matcher(at < lines.size() ? lines.get(at) : "");
      if (!times.matches()) {
        findings.add(
            Sentence.of("line {0}", at + 1),
            Sentence.of("Here stands something that is no caption."));
      } else if (times.group(1).compareTo(before) < 0
          || times.group(2).compareTo(times.group(1)) <= 0) {
        findings.add(
            Sentence.of("line {0}", at + 1), Sentence.of("The times of the captions go back."));
      } else {
        before = times.group(1);
      }
      at++;
      while (at < lines.size() && !lines.get(at).isBlank()) {
        said.append(lines.get(at++)).append(' ');
      }
    }
    String whole = said.toString();
    search.text(
        isVtt ? Disguises.withoutTags(whole) : whole, findings, Sentence.of("the captions"));
    search.text(text, findings, Sentence.of("the file"));
  }
}
