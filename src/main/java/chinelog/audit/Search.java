package chinelog.audit;

import chinelog.problem.Sentence;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Looks for everything that must not be there in the texts of one edition.
 *
 * @param undrawn reckonings of which nothing may be drawn
 */
record Search(Needles needles, FigureNet figures, Set<String> undrawn, CurveNet curves) {

  /** In bytes that are no text, shorter words than this occur by chance. */
  private static final int LEAST_IN_BYTES = 8;

  /** The longest words of the languages of styles and scripts have fewer letters. */
  private static final int LEAST_IN_CODE = 12;

  /** Of what lies there, much is to be read aloud. */
  private static final String SPOKEN = "talk/";

  /** No figure is written with as many letters and digits. */
  private static final int LONGEST_FIGURE = 100;

  /** Looks whether a drawing may be there, by the reckoning that it is of. */
  void drawing(String of, Findings findings, Sentence where) {
    if (undrawn.contains(of)) {
      findings.addOnce(where, Sentence.of("It holds a drawing of what \"{0}\" reckons from.", of));
    }
  }

  /** Looks for withheld curves in the lines of a drawing, each from point to point. */
  void lines(List<List<double[]>> lines, Findings findings, Sentence where) {
    curves
        .find(lines)
        .forEach(
            what ->
                findings.addOnce(where, Sentence.of("It holds a line drawn through {0}.", what)));
  }

  /**
   * Searches text in every disguise.
   *
   * @param text with a form feed between paragraphs, cells and attributes
   */
  void text(String text, Findings findings, Sentence where) {
    for (String guise : Disguises.of(text)) {
      findWords(guise, findings, where);
      figures
          .find(guise)
          .forEach(what -> findings.addOnce(where, Sentence.of("It holds {0}.", what)));
    }
    if (findings.file().startsWith(SPOKEN)) {
      figures
          .find(SpokenFigures.in(text))
          .forEach(what -> findings.addOnce(where, Sentence.of("It holds, in words, {0}.", what)));
    }
  }

  /** Searches text, in which letters may stand together by chance, for words alone. */
  void words(String text, Findings findings, Sentence where) {
    Disguises.of(text).forEach(guise -> findWords(guise, findings, where));
  }

  /** Searches what is neither said nor read, in whose own words a short name may occur. */
  void code(String text, Findings findings, Sentence where) {
    for (String guise : Disguises.of(text)) {
      needles
          .find(Folded.of(guise), LEAST_IN_CODE)
          .forEach(n -> findings.addOnce(where, Sentence.of("It holds {0}.", n.what())));
    }
  }

  private void findWords(String guise, Findings findings, Sentence where) {
    needles
        .find(Folded.of(guise), 0)
        .forEach(n -> findings.addOnce(where, Sentence.of("It holds {0}.", n.what())));
  }

  /** Searches a file's name. */
  void name(String name, Findings findings) {
    needles
        .find(Folded.of(name.replace('/', '\f')), 0)
        .forEach(
            n ->
                findings.addOnce(
                    Sentence.of("its name"), Sentence.of("The name holds {0}.", n.what())));
  }

  /** Searches the runs of text in bytes that are not text. */
  void bytes(byte[] bytes, Findings findings, Sentence where) {
    StringBuilder all = new StringBuilder();
    Disguises.strings(bytes).forEach(s -> all.append(s).append('\f'));
    needles
        .find(Folded.of(all.toString()), LEAST_IN_BYTES)
        .forEach(n -> findings.addOnce(where, Sentence.of("It holds {0}.", n.what())));
  }

  /** Each piece that is looked for, in words that differ when what would be found does. */
  Stream<String> pieces() {
    return Stream.of(
            needles.letters().map(letters -> "text " + letters),
            figures.pieces().map(figure -> "figure " + figure),
            undrawn.stream().map(of -> "drawing " + of),
            curves.pieces().map(curve -> "curve " + curve))
        .flatMap(pieces -> pieces);
  }

  /** How many letters the longest text has that is looked for; figures are shorter than that. */
  int longest() {
    return Math.max(LONGEST_FIGURE, needles.letters().mapToInt(String::length).max().orElse(0));
  }

  /** How many pieces are looked for. */
  int size() {
    return needles.size() + figures.size() + undrawn.size() + curves.size();
  }
}
