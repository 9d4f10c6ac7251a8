package chinelog.talk;

import chinelog.edition.Text;
import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Cuts text into sentences. */
final class Sentences {

  private final Locale locale;
  private final Speech speech;
  private final String gapShown;
  private final String gapSaid;

  /**
   * @param gapShown stands in captions for what is withheld
   */
  Sentences(Locale locale, Speech speech, String gapShown) {
    this.locale = locale;
    this.speech = speech;
    this.gapShown = gapShown;
    this.gapSaid = "– " + speech.words().text("gap") + " –";
  }

  List<Scene.Part> of(List<Text.Run> runs) {
    return of(Text.plainText(runs, gapShown));
  }

  List<Scene.Part> of(String text) {
    List<Scene.Part> said = new ArrayList<>();
    String plain = text.replaceAll("[\\s\\p{Cc}&&[^\u00a0\u202f]]+", " ").strip();
    BreakIterator ends = BreakIterator.getSentenceInstance(locale);
    ends.setText(plain);
    int from = 0;
    for (int to = ends.next(); to != BreakIterator.DONE; to = ends.next()) {
      boolean goesOn =
          to < plain.length() && speech.abbreviations().endsIn(plain.substring(from, to));
      String sentence = plain.substring(from, to).strip();
      if (!goesOn && !sentence.isEmpty()) {
        said.add(said(sentence));
        from = to;
      }
    }
    if (!plain.substring(from).isBlank()) {
      said.add(said(plain.substring(from).strip()));
    }
    return said;
  }

  private Scene.Said said(String sentence) {
    String spoken = speech.say(sentence).replace(gapShown, gapSaid);
    boolean beginsInWords = Character.isLetter(sentence.codePointAt(0));
    return new Scene.Said(sentence, beginsInWords ? spoken : capital(spoken));
  }

  private String capital(String spoken) {
    int second = spoken.offsetByCodePoints(0, 1);
    return spoken.substring(0, second).toUpperCase(locale) + spoken.substring(second);
  }
}
