package chinelog.log;

import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Yaml;
import chinelog.log.records.TalkPlan;
import chinelog.problem.Sentence;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Reads how the series is told aloud: {@code talk} of log.yaml, and the marks of recordings in
 * {@code talk/READERS/INSTALMENT.csv}.
 */
record TalkReader(Fields log, Scope scope) {

  private static final Map<String, int[]> FRAMES =
      Map.of("1920x1080", new int[] {1920, 1080}, "3840x2160", new int[] {3840, 2160});

  TalkPlan read() {
    TalkPlan usual = TalkPlan.USUAL;
    List<TalkPlan.Recording> recordings = recordings();
    Yaml yaml = log.find("talk");
    if (yaml == null) {
      return new TalkPlan(
          usual.widthPx(),
          usual.heightPx(),
          usual.wordsAMinute(),
          usual.minutes(),
          usual.latitudeMinutes(),
          recordings);
    }
    Fields talk =
        Fields.of(yaml, scope, Label.NONE, "words-a-minute", "minutes", "latitude", "frame");
    int[] frame = frame(talk);
    int minutes = number(talk, "minutes", usual.minutes(), 1, 120);
    int latitude = number(talk, "latitude", Math.min(usual.latitudeMinutes(), minutes), 0, minutes);
    return new TalkPlan(
        frame[0],
        frame[1],
        number(talk, "words-a-minute", usual.wordsAMinute(), 60, 240),
        minutes,
        latitude,
        recordings);
  }

  private int[] frame(Fields talk) {
    Yaml.Scalar word = talk.scalar("frame");
    int[] usual = {TalkPlan.USUAL.widthPx(), TalkPlan.USUAL.heightPx()};
    if (word == null) {
      return usual;
    }
    int[] frame = FRAMES.get(word.text().replace('×', 'x').replace(" ", ""));
    if (frame == null) {
      scope.error(
          word.place(),
          Sentence.of("\"{0}\" is not the size of a frame.", word.text()),
          "Write 1920x1080 or 3840x2160, in pixels.");
      return usual;
    }
    return frame;
  }

  private int number(Fields talk, String key, int otherwise, int least, int most) {
    Yaml.Scalar word = talk.scalar(key);
    if (word == null) {
      return otherwise;
    }
    String text = word.text().strip();
    int number = text.matches("\\d{1,6}") ? Integer.parseInt(text) : -1;
    if (number < least || number > most) {
      scope.error(
          word.place(),
          Sentence.of("\"{0}\" is \"{1}\".", key, word.text()),
          Sentence.of(
              "Write a whole number from {0} to {1}, such as {2}.", least, most, otherwise));
      return otherwise;
    }
    return number;
  }

  private List<TalkPlan.Recording> recordings() {
    List<TalkPlan.Recording> recordings = new ArrayList<>();
    for (Map.Entry<String, Path> file : scope.inventory().marks().entrySet()) {
      Source source = scope.inventory().read(file.getValue(), file.getKey(), scope.problems());
      if (source != null) {
        TalkPlan.Recording recording =
            new MarksReader(file.getKey(), source, scope.problems()).read();
        if (recording != null) {
          recordings.add(recording);
        }
      }
    }
    return recordings;
  }
}
