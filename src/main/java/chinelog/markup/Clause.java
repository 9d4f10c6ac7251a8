package chinelog.markup;

import chinelog.wording.Fragment;
import chinelog.wording.WorkedLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A sentence of how a figure was worked out. */
record Clause(List<Fragment> fragments) {

  private static final String END = ". ";
  private static final Set<String> ADDING = Set.of(" + ", " − ");
  private static final String TIMES = " × ";
  private static final String BESIDE = ", ";
  private static final String LISTING = "; ";

  /** A fragment as it is in all that were worked out alike: of a figure, its unit alone. */
  record Token(boolean isFigure, String text) {
    private static final Token MORE = new Token(false, "…");

    private static Token of(Fragment fragment) {
      boolean isFigure = fragment.kind() == Fragment.Kind.FIGURE;
      return new Token(isFigure, isFigure ? fragment.unit() : fragment.inLine());
    }
  }

  Clause {
    fragments = List.copyOf(fragments);
  }

  /** The sentences of a line. */
  static List<Clause> of(WorkedLine line) {
    List<Clause> clauses = new ArrayList<>();
    List<Fragment> open = new ArrayList<>();
    for (Fragment fragment : merged(line.fragments())) {
      String text = fragment.text();
      int from = 0;
      if (fragment.kind() == Fragment.Kind.WORDS) {
        for (int end; (end = text.indexOf(END, from)) >= 0; from = end + END.length()) {
          open.add(Fragment.words(text.substring(from, end + 1)));
          clauses.add(new Clause(open));
          open.clear();
        }
      }
      if (from == 0) {
        open.add(fragment);
      } else if (from < text.length()) {
        open.add(Fragment.words(text.substring(from)));
      }
    }
    if (!open.isEmpty()) {
      clauses.add(new Clause(open));
    }
    return clauses;
  }

  /** Words and signs that follow each other as one; a full stop ends the words before it. */
  private static List<Fragment> merged(List<Fragment> fragments) {
    List<Fragment> merged = new ArrayList<>();
    for (Fragment fragment : fragments) {
      int last = merged.size() - 1;
      if (fragment.text().isEmpty()) {
        continue;
      }
      if (last >= 0 && isJoinable(fragment) && merged.get(last).kind() == fragment.kind()) {
        Fragment before = merged.get(last);
        merged.set(
            last, new Fragment(fragment.kind(), before.text() + fragment.text(), fragment.unit()));
      } else {
        merged.add(fragment);
      }
    }
    return merged;
  }

  private static boolean isJoinable(Fragment fragment) {
    return fragment.kind() == Fragment.Kind.WORDS || fragment.kind() == Fragment.Kind.SIGN;
  }

  String text() {
    return fragments.stream().map(Fragment::inLine).collect(Collectors.joining());
  }

  Stream<Fragment> figures() {
    return fragments.stream().filter(f -> f.kind() == Fragment.Kind.FIGURE);
  }

  boolean isCalculation() {
    return fragments.stream().anyMatch(Fragment::isOperator);
  }

  /**
   * What it has in common with others of its kind: all but the figures, and but how many terms are
   * added up or pairs are listed.
   */
  List<Token> shape() {
    List<Token> all = fragments.stream().map(Token::of).toList();
    List<Token> shape = new ArrayList<>();
    int at = 0;
    while (at < all.size()) {
      int length = repeated(all, at);
      if (length == 0) {
        shape.add(all.get(at++));
        continue;
      }
      shape.addAll(all.subList(at, at + length));
      shape.add(Token.MORE);
      while (goesOn(all, at, length)) {
        at += length + 1;
      }
      at += length;
    }
    return shape;
  }

  /** Of how many tokens the term or pair is that begins here and is followed by its like, or 0. */
  private static int repeated(List<Token> all, int at) {
    return all.get(at).isFigure()
        ? Stream.of(3, 1).filter(length -> goesOn(all, at, length)).findFirst().orElse(0)
        : 0;
  }

  private static boolean goesOn(List<Token> all, int at, int length) {
    int next = at + length + 1;
    if (next + length > all.size() || !all.get(next - 2).isFigure()) {
      return false;
    }
    String inside = length == 1 ? TIMES : all.get(at + 1).text();
    String between = all.get(next - 1).text();
    return (inside.equals(TIMES) && ADDING.contains(between)
            || inside.equals(BESIDE) && between.equals(LISTING))
        && all.subList(at, at + length).equals(all.subList(next, next + length));
  }
}
