package chinelog.markup;

import chinelog.edition.Figure;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What many figures name as their source, said once as a numbered note: a book in brackets, such as
 * "(Derrett and Barrass, Ship Stability)", and what was put into a reckoning, such as a table.
 */
public final class Sources {

  /** A source in brackets: it has a number, be it of an edition, a year or a page. */
  private static final Pattern BRACKETED =
      Pattern.compile(" ?\\(((?=[^)]{24})(?=[^)]*[0-9])[^()]*(?:\\([^()]*\\)[^()]*)*)\\)");

  private static final Pattern NUMBERED = Pattern.compile("\uE000([0-9]+)\uE001");

  /** A note is worth following only where it spares saying a thing again. */
  private static final int LEAST_TIMES = 3;

  private static final int LEAST_GIVEN = 2;

  private final Map<String, Integer> numbers = new LinkedHashMap<>();

  private Sources() {}

  /** The sources of figures, numbered from 1 as they come. */
  public static Sources of(List<Figure> figures) {
    Map<String, Integer> times = new LinkedHashMap<>();
    for (Figure figure : figures) {
      bracketed(figure).forEach(source -> times.merge(source, 1, Integer::sum));
      if (given(figure).size() >= LEAST_GIVEN) {
        times.merge(inOne(given(figure)), 1, Integer::sum);
      }
    }
    Sources sources = new Sources();
    times.forEach(
        (source, said) -> {
          if (said >= LEAST_TIMES) {
            sources.numbers.put(source, sources.numbers.size() + 1);
          }
        });
    return sources;
  }

  private static List<String> bracketed(Figure figure) {
    return figure.working().stream()
        .flatMap(step -> BRACKETED.matcher(step).results())
        .map(found -> found.group(1))
        .toList();
  }

  /** What was put in stands between how it was worked out and what came of it. */
  private static List<String> given(Figure figure) {
    List<String> steps = figure.working();
    List<String> between = steps.size() < 2 ? List.of() : steps.subList(1, steps.size() - 1);
    return between.stream().anyMatch(step -> step.startsWith("=")) ? List.of() : between;
  }

  private static String inOne(List<String> given) {
    return String.join("; ", given);
  }

  /** The notes, in the order of their numbers. */
  public List<String> notes() {
    return List.copyOf(numbers.keySet());
  }

  /** How a figure was worked out, with notes as "[3]". */
  public List<String> steps(Figure figure) {
    return marked(figure).stream()
        .map(step -> NUMBERED.matcher(step).replaceAll(n -> "[" + n.group(1) + "]"))
        .toList();
  }

  /** Writes the steps as a list, with links to the notes. */
  public void write(HtmlWriter html, Figure figure, IntFunction<String> label) {
    html.open("ol", "class", "working");
    for (String step : marked(figure)) {
      html.open("li");
      int from = 0;
      for (MatchResult note : NUMBERED.matcher(step).results().toList()) {
        String number = note.group(1);
        html.text(step.substring(from, note.start()));
        html.element(
            "a",
            "[" + number + "]",
            "href",
            "#source-" + number,
            "aria-label",
            label.apply(Integer.parseInt(number)));
        from = note.end();
      }
      html.text(step.substring(from)).close("li");
    }
    html.close("ol");
  }

  private List<String> marked(Figure figure) {
    List<String> steps = new ArrayList<>();
    List<String> given = given(figure);
    Integer number = numbers.get(inOne(given));
    boolean isNoted = number != null && given.size() >= LEAST_GIVEN;
    for (int i = 0; i < figure.working().size(); i++) {
      if (!isNoted || i == 0 || i == figure.working().size() - 1) {
        String step = BRACKETED.matcher(figure.working().get(i)).replaceAll(this::noted);
        steps.add(i == 0 && isNoted ? step + " \uE000" + number + "\uE001" : step);
      }
    }
    return steps;
  }

  private String noted(MatchResult source) {
    Integer number = numbers.get(source.group(1));
    return Matcher.quoteReplacement(
        number == null ? source.group() : " \uE000" + number + "\uE001");
  }
}
