package chinelog.reckon.formula;

import chinelog.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * A word of a formula.
 *
 * @param text as written
 * @param literal the quantity it is; null for all but {@link Kind#LITERAL}
 * @param index offset into the formula in UTF-16 code units, from 0
 */
record Token(Kind kind, String text, @Nullable Quantity literal, int index) {

  enum Kind {
    LITERAL,
    NAME,
    /** One of + - * / ^. */
    OPERATOR,
    OPEN,
    CLOSE,
    COMMA,
    /** One of {@code <= < >= > =}. */
    COMPARISON,
    END
  }

  boolean is(String operator) {
    return kind == Kind.OPERATOR && text.equals(operator);
  }
}
