package chinelog.book.writing;

import chinelog.edition.Edition.Caution;
import java.util.List;

/** Writes cautions; what all of them end with is said once, after the last. */
final class Cautions {

  /** The warning triangle. */
  private static final String SIGN = "\u26a0";

  private Cautions() {}

  static void write(Xhtml out, List<Caution> cautions) {
    String common = commonEnd(cautions.stream().map(Caution::text).toList());
    for (Caution caution : cautions) {
      String own = caution.text();
      out.open("div", "class", "caution");
      out.open("h3").leaf("span", SIGN, "class", "sign").text(" " + caution.title()).close();
      out.leaf("p", own.substring(0, own.length() - common.length()).strip());
      out.close();
    }
    if (!common.isEmpty()) {
      out.leaf("p", common.strip(), "class", "forall");
    }
  }

  /** The sentences at the end of every text; nothing for fewer than two texts. */
  static String commonEnd(List<String> texts) {
    if (texts.size() < 2) {
      return "";
    }
    String end = texts.get(0);
    for (String text : texts) {
      int same = 0;
      int most = Math.min(end.length(), text.length());
      while (same < most
          && end.charAt(end.length() - 1 - same) == text.charAt(text.length() - 1 - same)) {
        same++;
      }
      end = end.substring(end.length() - same);
    }
    int start = end.indexOf(". ");
    return start < 0 ? "" : end.substring(start + 1);
  }
}
