package chinelog.talk;

import chinelog.edition.Talk;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * When each frame begins and when each sentence is said, in ms: by the pace of the log, or by the
 * marks of a recording of these very words.
 *
 * @param isRecorded whether by a recording
 * @param scenes in their order
 */
record Timing(boolean isRecorded, List<Span> scenes) {

  /** So many characters of a caption may be read in a second: common practice of captioning. */
  static final int READ_A_SECOND = 17;

  /** No caption stands for a shorter time. */
  static final long LEAST_MS = 1000;

  private static final long MINUTE_MS = 60_000;

  Timing {
    scenes = List.copyOf(scenes);
  }

  /**
   * A scene, or a sentence in it.
   *
   * @param within the sentences of a scene
   */
  record Span(long beginMs, long endMs, List<Span> within) {
    long lengthMs() {
      return endMs - beginMs;
    }
  }

  long endMs() {
    return scenes.isEmpty() ? 0 : scenes.get(scenes.size() - 1).endMs();
  }

  static Timing of(Instalment instalment, Talk talk) {
    Optional<Talk.Recording> recording =
        talk.recordings().stream().filter(r -> fits(r, instalment)).findFirst();
    List<Span> spans = new ArrayList<>();
    long at = 0;
    for (int i = 0; i < instalment.scenes().size(); i++) {
      Shot scene = instalment.scenes().get(i);
      long planned = planned(scene, talk.wordsAMinute());
      long begin = at;
      long end = at + planned;
      if (recording.isPresent()) {
        List<Long> begins = recording.get().beginsMs();
        begin = begins.get(i);
        end = i + 1 < begins.size() ? begins.get(i + 1) : recording.get().endMs();
      }
      spans.add(span(scene, begin, end, planned, talk.wordsAMinute()));
      at = end;
    }
    return new Timing(recording.isPresent(), spans);
  }

  /** Whether these words were read, to these frames. */
  static boolean fits(Talk.Recording recording, Instalment instalment) {
    return recording.instalment().equals(instalment.folder())
        && recording.script().equals(instalment.script())
        && recording.beginsMs().size() == instalment.scenes().size();
  }

  private static Span span(Shot scene, long begin, long end, long planned, int wordsAMinute) {
    List<Span> within = new ArrayList<>();
    long into = 0;
    for (Shot.Part part : scene.parts()) {
      long length = planned(part, wordsAMinute);
      if (part instanceof Shot.Said) {
        within.add(
            new Span(
                begin + into * (end - begin) / planned,
                begin + (into + length) * (end - begin) / planned,
                List.of()));
      }
      into += length;
    }
    return new Span(begin, end, within);
  }

  private static long planned(Shot scene, int wordsAMinute) {
    return Math.max(
        LEAST_MS, scene.parts().stream().mapToLong(p -> planned(p, wordsAMinute)).sum());
  }

  private static long planned(Shot.Part part, int wordsAMinute) {
    if (part instanceof Shot.Pause pause) {
      return pause.ms();
    }
    Shot.Said said = (Shot.Said) part;
    long spoken = said.spoken().split("\\s+").length * MINUTE_MS / wordsAMinute;
    List<Caption> captions = Caption.of(said.written());
    long read = 0;
    for (Caption caption : captions) {
      read += caption.leastMs();
    }
    return Math.max(spoken, read);
  }
}
