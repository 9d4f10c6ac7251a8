package chinelog.reckon;

import chinelog.wording.Message;
import java.util.List;

/**
 * What decides a fact's value, such as the draught and the table of offsets for a displacement.
 *
 * @param facts names of those of its inputs that do; the others only had to be there
 * @param given tables, figures and words that stand in facts.yaml itself, and what was taken for
 *     want of them, a line each
 */
record Basis(List<String> facts, List<Message> given) {

  /** The facts themselves, and nothing else. */
  static Basis of(List<String> facts) {
    return new Basis(facts, List.of());
  }

  Basis {
    facts = List.copyOf(facts);
    given = List.copyOf(given);
  }
}
