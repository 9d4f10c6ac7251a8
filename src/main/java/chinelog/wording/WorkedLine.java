package chinelog.wording;

import java.util.List;
import java.util.stream.Collectors;

/** One line of how a figure was worked out, such as "= 11.200 m ÷ 16", in words. */
public record WorkedLine(Kind kind, List<Fragment> fragments) {

  /** What a line tells; its beginning shows it. */
  public enum Kind {
    /** The method, in words or as a formula. */
    HOW,
    /** Something that was put in. */
    GIVEN,
    /** The formula with its figures, after an equals sign. */
    PUT_IN,
    /** What came of it, after an equals sign. */
    RESULT
  }

  public WorkedLine {
    fragments = List.copyOf(fragments);
  }

  public static WorkedLine of(Kind kind, Fragment... fragments) {
    return new WorkedLine(kind, List.of(fragments));
  }

  /** Whether it goes on where the line before it ended. */
  public boolean goesOn() {
    return kind == Kind.PUT_IN || kind == Kind.RESULT;
  }

  public String text() {
    return fragments.stream().map(Fragment::inLine).collect(Collectors.joining());
  }

  @Override
  public String toString() {
    return text();
  }
}
