package chinelog.talk;

import chinelog.edition.Text;
import java.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Cuts text into sentences.
 *
 * @param gapShown stands in captions for what is withheld
 */
record Sentences(Locale locale, Speech speech, String gapShown) {

  /** Not after a figure, as in the date 14. 3. 2026. */
  private static final Pattern BEFORE_A_FIGURE =
      Pattern.compile("(?<=[^\\p{Nd}\\s])[.!?][\u201d\u2019)]? (?=\\p{Nd})");

  List<Shot.Part> of(List<Text.Run> runs) {
    return of(Text.plainText(runs, gapShown));
  }

  List<Shot.Part> of(String text) {
    List<Shot.Part> said = new ArrayList<>();
    String plain = text.replaceAll("[\\s\\p{Cc}&&[^\u00a0\u202f]]+", " ").strip();
    int from = 0;
    for (int to : ends(plain)) {
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

  /** Where sentences may end; the platform sees no end before one that begins with a figure. */
  private SortedSet<Integer> ends(String plain) {
    SortedSet<Integer> all = new TreeSet<>();
    BreakIterator ends = BreakIterator.getSentenceInstance(locale);
    ends.setText(plain);
    for (int to = ends.next(); to != BreakIterator.DONE; to = ends.next()) {
      all.add(to);
    }
    Matcher figure = BEFORE_A_FIGURE.matcher(plain);
    while (figure.find()) {
      all.add(figure.end());
    }
    return all;
  }

  private Shot.Said said(String sentence) {
    String gap = "– " + speech.words().text("gap") + " –";
    String spoken = speech.say(sentence).replace(gapShown, gap);
    boolean beginsInWords = Character.isLetter(sentence.codePointAt(0));
    return new Shot.Said(sentence, beginsInWords ? spoken : capital(spoken));
  }

  private String capital(String spoken) {
    int second = spoken.offsetByCodePoints(0, 1);
    return spoken.substring(0, second).toUpperCase(locale) + spoken.substring(second);
  }
}
