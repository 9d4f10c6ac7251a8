package chinelog.withhold.question;

import chinelog.label.Label;

/**
 * Something withheld that stands in a text.
 *
 * @param start where it stands in the text
 * @param secret what of the withheld it may give away
 */
record Hit(Question.Kind kind, int start, int end, CharSequence secret, Label label) {}
