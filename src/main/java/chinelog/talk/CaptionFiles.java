package chinelog.talk;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Captions and chapters as files: WebVTT (W3C), SubRip, and a plain list of times and titles. */
final class CaptionFiles {

  private static final String ARROW = "-->";

  private CaptionFiles() {}

  /**
   * What stands on the screen for a while.
   *
   * @param lines one or two
   */
  record Cue(long beginMs, long endMs, List<String> lines) {}

  /** A chapter. */
  record Chapter(long beginMs, long endMs, String title) {}

  /** Each sentence in captions over the time in which it is said. */
  static List<Cue> captions(Instalment instalment, Timing timing) {
    List<Cue> cues = new ArrayList<>();
    for (int i = 0; i < instalment.scenes().size(); i++) {
      List<Shot.Said> said = instalment.scenes().get(i).said();
      for (int k = 0; k < said.size(); k++) {
        add(said.get(k), timing.scenes().get(i).within().get(k), cues);
      }
    }
    return cues;
  }

  private static void add(Shot.Said said, Timing.Span span, List<Cue> cues) {
    List<Caption> captions = Caption.of(said.written());
    long all = captions.stream().mapToLong(Caption::leastMs).sum();
    long before = 0;
    for (Caption caption : captions) {
      long begin = span.beginMs() + before * span.lengthMs() / all;
      before += caption.leastMs();
      long end = span.beginMs() + before * span.lengthMs() / all;
      if (end > begin) {
        cues.add(new Cue(begin, end, caption.lines()));
      }
    }
  }

  static List<Chapter> chapters(Instalment instalment, Timing timing) {
    List<Chapter> chapters = new ArrayList<>();
    for (int i = 0; i < instalment.scenes().size(); i++) {
      String title = instalment.scenes().get(i).chapter().strip();
      long begin = timing.scenes().get(i).beginMs();
      if (title.isEmpty() && !chapters.isEmpty()) {
        continue;
      }
      end(chapters, begin);
      chapters.add(new Chapter(begin, begin, title));
    }
    end(chapters, timing.endMs());
    return chapters;
  }

  private static void end(List<Chapter> chapters, long at) {
    if (!chapters.isEmpty()) {
      Chapter last = chapters.remove(chapters.size() - 1);
      chapters.add(new Chapter(last.beginMs(), at, last.title()));
    }
  }

  static String webVtt(List<Cue> cues) {
    StringBuilder file = new StringBuilder("WEBVTT\n");
    for (Cue cue : cues) {
      file.append('\n').append(times(cue.beginMs(), cue.endMs(), '.'));
      cue.lines().forEach(line -> file.append(escaped(line)).append('\n'));
    }
    return file.toString();
  }

  static String chaptersVtt(List<Chapter> chapters) {
    return webVtt(
        chapters.stream()
            .map(c -> new Cue(c.beginMs(), c.endMs(), List.of(oneLine(c.title()))))
            .toList());
  }

  static String subRip(List<Cue> cues) {
    StringBuilder file = new StringBuilder();
    for (int i = 0; i < cues.size(); i++) {
      Cue cue = cues.get(i);
      file.append(i == 0 ? "" : "\n").append(i + 1).append('\n');
      file.append(times(cue.beginMs(), cue.endMs(), ','));
      // SubRip knows no escapes; what looks like a tag or a time would be taken for one.
      cue.lines()
          .forEach(
              line ->
                  file.append(
                          line.replace(ARROW, "\u2192")
                              .replace('<', '\u2039')
                              .replace('>', '\u203a'))
                      .append('\n'));
    }
    return file.toString();
  }

  /** Such as {@code 1:04 The keel goes down}, a line for each. */
  static String list(List<Chapter> chapters) {
    StringBuilder list = new StringBuilder();
    for (Chapter chapter : chapters) {
      list.append(clock(chapter.beginMs())).append(' ').append(oneLine(chapter.title()));
      list.append('\n');
    }
    return list.toString();
  }

  /** Minutes and seconds, with hours where there are any, such as {@code 7:58}. */
  static String clock(long ms) {
    long s = ms / 1000;
    return s < 3600
        ? String.format(Locale.ROOT, "%d:%02d", s / 60, s % 60)
        : String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }

  private static String times(long begin, long end, char point) {
    return time(begin, point) + " " + ARROW + " " + time(end, point) + "\n";
  }

  private static String time(long ms, char point) {
    return String.format(
        Locale.ROOT,
        "%02d:%02d:%02d%c%03d",
        ms / 3_600_000,
        ms / 60_000 % 60,
        ms / 1000 % 60,
        point,
        ms % 1000);
  }

  /** Of WebVTT cue text (W3C WebVTT, section 4.2.2): no ampersand, less-than sign or arrow. */
  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
