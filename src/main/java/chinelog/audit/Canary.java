package chinelog.audit;

import chinelog.problem.Sentence;

/**
 * A text that must not appear.
 *
 * @param text as it would be shown
 * @param what it is, for the private report
 */
public record Canary(String text, Sentence what) {}
