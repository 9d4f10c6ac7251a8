package chinelog.withhold;

import chinelog.problem.Sentence;
import chinelog.withhold.derive.Derivability;
import java.util.List;
import java.util.Set;

/**
 * Figures that the same shown ones give away, in words.
 *
 * @param first the one that is told of
 * @param names of all of them
 * @param remedies what could be withheld as well, each set a way out
 */
record GivenAway(Derivability.Verdict first, List<String> names, List<Set<String>> remedies) {

  /** What gives what away. */
  CharSequence what() {
    CharSequence what =
        first.answer() == Derivability.Answer.DERIVABLE
            ? first.path()
            : Sentence.of("\u201c{0}\u201d might be worked out: {1}", first.name(), first.path());
    if (!first.causes().isEmpty()) {
      what = Sentence.of("Shown: {0}. So {1}", String.join(", ", first.causes()), what);
    }
    List<String> others = names.stream().filter(n -> !n.equals(first.name())).toList();
    return others.isEmpty()
        ? what
        : Sentence.of("{0} So can {1}.", what, String.join(", ", others));
  }

  Sentence remedy() {
    CharSequence release =
        names.size() == 1
            ? "Record a release of it"
            : Sentence.of(
                "Record one release of all of them, such as {0}",
                "{fact: [" + String.join(", ", names) + "], \u2026}");
    return remedies.isEmpty()
        ? Sentence.of(
            "{0}, or put more of what it is worked out from under the agreement.",
            Sentence.of(release))
        : Sentence.of("{0}, or withhold {1} as well.", Sentence.of(release), ways());
  }

  /** Of a table's cells none is released by itself. */
  Sentence remedyOfCell() {
    return remedies.isEmpty()
        ? Sentence.of("Put another row of the table under the agreement too.")
        : Sentence.of(
            "Put another row of the table under the agreement too, or withhold {0}.", ways());
  }

  /** Each way out by itself: "a and b, or c". */
  private CharSequence ways() {
    return remedies.stream()
        .map(
            names ->
                names.stream()
                    .<CharSequence>map(n -> n)
                    .reduce((a, b) -> Sentence.of("{0} and {1}", a, b))
                    .orElse(""))
        .reduce((a, b) -> Sentence.of("{0}, or {1}", a, b))
        .orElse("");
  }
}
