package chinelog.reckon;

import chinelog.problem.Place;
import chinelog.problem.Sentence;
import java.util.List;

/** Something that yields facts once the facts it needs are there. */
interface Node {

  /** What it is called in messages: a fact's name, or a request's prefix. */
  String name();

  /** Where it was written. */
  Place place();

  /** Names of the facts it needs, in the order written. */
  List<String> needs();

  /**
   * Adds its facts to the ledger.
   *
   * @return whether it could; if not, it has said why
   */
  boolean yield(Ledger ledger);

  /** Says that it needs a fact that is nowhere. */
  void unknown(Ledger ledger, String need, FactGraph graph);

  /** Says that it rests on too many facts, one upon the other. */
  default void tooDeep(Ledger ledger, int most) {
    ledger.error(
        place(),
        Sentence.of("\"{0}\" rests on more than {1} facts, one upon the other.", name(), most),
        "State one of them instead of reckoning it, or reckon it from what was measured.");
  }

  /** Says that it rests on itself, by way of {@code circle}, which begins and ends with it. */
  void circular(Ledger ledger, List<String> circle);
}
