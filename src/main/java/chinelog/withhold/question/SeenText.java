package chinelog.withhold.question;

import java.util.List;

/** A text as some readers get it. */
record SeenText(Passage passage, Reading reading) {

  String text() {
    return reading.text();
  }

  /** Words of the text, but for those that only join others. */
  List<Letters.Word> words() {
    return reading.words();
  }
}
