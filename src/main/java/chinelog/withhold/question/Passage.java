package chinelog.withhold.question;

import chinelog.label.Label;
import chinelog.log.records.Release;
import chinelog.problem.Place;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A text of the log, in pieces that are each under agreements of their own.
 *
 * @param what it is, such as "the title of 2026-03-14-drawings"
 * @param outer the agreements that all of it is under, but for releases of the thing it belongs to
 * @param released what may be released by name, with its name; null where nothing may
 */
record Passage(
    Role role,
    CharSequence what,
    Place place,
    List<Piece> pieces,
    Label outer,
    Release.@Nullable Kind released,
    String name) {

  /** Stands for what is not read as text: a named figure, or what is withheld. */
  static final char CUT = '\f';

  /** What a text is for. */
  enum Role {
    /** Of a person, firm or boat: shown by right where it may be seen. */
    NAME,
    /** Of a fact, a material or a stage: it tells little by itself. */
    TERM,
    /** Of the maker's own wording. */
    PROSE,
    /** Of an agreement or a release: what it covers, in what words it was given. */
    PROMISE
  }

  /**
   * A part of it.
   *
   * @param text as written; a {@link #CUT} where a named figure stands
   */
  record Piece(String text, Label label) {}

  /** What is left of the agreements of a piece for these readers. */
  Label label(Piece piece, Sight sight) {
    Label around = released == null ? outer : sight.afterReleases(released, name, outer);
    return around.join(piece.label);
  }

  /** What these readers see of it, cut where they do not. */
  String seen(Sight sight) {
    StringBuilder seen = new StringBuilder();
    for (Piece piece : pieces) {
      if (sight.allows(label(piece, sight))) {
        seen.append(piece.text);
      } else if (!seen.isEmpty() && seen.charAt(seen.length() - 1) != CUT) {
        seen.append(CUT);
      }
    }
    return seen.toString();
  }

  /** What is withheld from these readers, each with its agreements. */
  List<Piece> unseen(Sight sight) {
    List<Piece> unseen = new ArrayList<>();
    boolean joined = false;
    for (Piece piece : pieces) {
      Label label = label(piece, sight);
      if (sight.allows(label)) {
        joined = false;
        continue;
      }
      int last = unseen.size() - 1;
      if (joined) {
        Piece before = unseen.get(last);
        unseen.set(last, new Piece(before.text + piece.text, before.label.join(label)));
      } else {
        unseen.add(new Piece(piece.text, label));
      }
      joined = true;
    }
    return unseen;
  }
}
