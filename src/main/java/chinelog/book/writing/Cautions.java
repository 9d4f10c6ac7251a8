package chinelog.book.writing;

import chinelog.edition.Edition.Caution;
import chinelog.markup.TextMarkup;
import java.util.List;

/** Writes cautions; what all of them end with is said once, after the last. */
final class Cautions {

  /** The warning triangle. */
  private static final String SIGN = "\u26a0";

  private Cautions() {}

  static void write(Xhtml out, List<Caution> cautions) {
    String common = TextMarkup.commonEnd(cautions.stream().map(Caution::text).toList());
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
}
