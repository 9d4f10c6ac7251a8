package chinelog.reckon;

import chinelog.quantity.UnitKinds;
import chinelog.reckon.formula.Function;
import chinelog.reckon.formula.Functions;
import chinelog.reckon.trade.Example;
import chinelog.reckon.trade.Parameter;
import chinelog.reckon.trade.TradeReckoning;
import chinelog.reckon.trade.TradeReckonings;
import chinelog.wording.Catalogue;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What can be reckoned, told from the very records by which it is: the reckonings with their keys,
 * columns, figures and examples, the functions of formulas, and the units.
 */
public final class ReckoningPages {

  private static final int WIDTH = 100;
  private static final Catalogue WORDS = Catalogue.of(Facts.MESSAGES, Locale.ENGLISH);

  private ReckoningPages() {}

  /** All of it in short, a line each. */
  public static List<String> contents() {
    List<String> lines = new ArrayList<>();
    lines.add("Reckonings, for facts.yaml as \"NAME: {reckon: RECKONING, …}\":");
    int wide = TradeReckonings.names().stream().mapToInt(String::length).max().orElse(0);
    for (TradeReckoning reckoning : all()) {
      lines.add("  " + padded(reckoning.name(), wide) + reckoning.title());
    }
    lines.add("");
    lines.add("Functions of formulas:");
    for (Function function : Functions.all()) {
      wrap(lines, "  " + function.name() + "  ", function.yields() + ": " + function.example());
    }
    lines.add("  pi  3.14159…");
    lines.add("  A formula may end in a unit to tell it in: hull.loa in ft");
    lines.add("  A column of a table: mean(runs.time) for \"time [s]\" of tables/runs.csv");
    lines.add("");
    lines.add("Units:");
    for (UnitKinds.Kind kind : UnitKinds.all()) {
      wrap(lines, "  " + kind.title() + ": ", String.join(", ", kind.symbols()));
    }
    lines.add("  money: the three letters of ISO 4217, such as GBP or EUR");
    lines.add("");
    lines.add("\"reckon --list RECKONING\" tells one reckoning with an example.");
    return List.copyOf(lines);
  }

  /** All of one reckoning or function. */
  public static Optional<List<String>> page(String name) {
    Optional<TradeReckoning> reckoning = TradeReckonings.find(name);
    if (reckoning.isPresent()) {
      return Optional.of(page(reckoning.get()));
    }
    return Functions.all().stream()
        .filter(f -> f.name().equals(name))
        .findFirst()
        .map(
            f ->
                List.of(
                    f.name() + "(…) of " + f.takes() + " is " + f.yields() + ".",
                    "Example: " + f.example()));
  }

  /** Names that {@link #page} knows. */
  public static List<String> names() {
    List<String> names = new ArrayList<>(TradeReckonings.names());
    names.addAll(Functions.names());
    return names;
  }

  private static List<TradeReckoning> all() {
    return TradeReckonings.names().stream()
        .map(n -> TradeReckonings.find(n).orElseThrow())
        .toList();
  }

  private static List<String> page(TradeReckoning reckoning) {
    List<String> lines = new ArrayList<>();
    lines.add(reckoning.name() + ": " + reckoning.title() + ".");
    lines.add("");
    lines.add("It takes:");
    for (Parameter parameter : reckoning.parameters()) {
      wrap(lines, "  ", parameter.line());
    }
    lines.add("");
    lines.add("It yields, as NAME and a dot before these:");
    for (TradeReckoning.Offer offer : reckoning.offers()) {
      wrap(lines, "  " + offer.name() + ": ", title(offer));
    }
    lines.add("");
    lines.add("Example, in facts.yaml:");
    Example example = reckoning.example();
    indented(lines, example.facts());
    for (Map.Entry<String, String> table : example.tables().entrySet()) {
      lines.add("and in tables/" + table.getKey() + ".csv:");
      indented(lines, table.getValue());
    }
    return List.copyOf(lines);
  }

  /** The same as one page of documentation, in Markdown. */
  public static String markdown() {
    StringBuilder page = new StringBuilder();
    page.append("# Reckonings, functions and units\n\n");
    page.append(
        """
        This page is made from the program's own records (`chinelog reckon --list` tells the same), and every
        example on it is run by a test. A column that ends in `?` may be left out; one that ends in `…` stands
        for every column whose name begins so. Any unit of the right kind will do.

        """);
    page.append("## Reckonings\n");
    for (TradeReckoning reckoning : all()) {
      page.append("\n### ").append(reckoning.name()).append("\n\n");
      page.append(reckoning.title()).append(".\n\nTakes:\n\n");
      reckoning.parameters().forEach(p -> page.append("- `").append(item(p)));
      page.append("\nYields:\n\n");
      for (TradeReckoning.Offer offer : reckoning.offers()) {
        page.append("- `").append(offer.name()).append("`: ").append(title(offer)).append('\n');
      }
      Example example = reckoning.example();
      page.append("\nExample:\n\n```yaml\n").append(example.facts().strip()).append("\n```\n");
      example
          .tables()
          .forEach(
              (name, text) ->
                  page.append("\n`tables/")
                      .append(name)
                      .append(".csv`\n\n```csv\n")
                      .append(text.strip())
                      .append("\n```\n"));
    }
    page.append("\n## Functions\n\n");
    for (Function function : Functions.all()) {
      page.append("- `").append(function.name()).append("(…)` of ").append(function.takes());
      page.append(": ").append(function.yields());
      page.append(", such as `").append(function.example()).append("`\n");
    }
    page.append("- `pi`\n- `hull.loa in ft`: a formula may end in a unit to tell it in\n");
    page.append("- `mean(runs.time)`: the column “time [s]” of `tables/runs.csv`\n");
    page.append("\n## Units\n\n");
    for (UnitKinds.Kind kind : UnitKinds.all()) {
      page.append("- ").append(kind.title()).append(": ");
      page.append(
          kind.symbols().stream().map(s -> "`" + s + "`").collect(Collectors.joining(", ")));
      page.append('\n');
    }
    page.append("- money: the three letters of ISO 4217, such as `GBP`\n");
    return page.toString();
  }

  private static String item(Parameter parameter) {
    String line = parameter.line();
    int colon = line.indexOf(':');
    return line.substring(0, colon) + "`" + line.substring(colon) + "\n";
  }

  private static String title(TradeReckoning.Offer offer) {
    return WORDS.find(offer.title()).orElseThrow().replaceAll("\\{[0-9]}", "…");
  }

  private static void indented(List<String> lines, String text) {
    text.strip().lines().forEach(l -> lines.add("    " + l));
  }

  private static String padded(String word, int width) {
    return word + " ".repeat(width - word.length() + 2);
  }

  private static void wrap(List<String> lines, String lead, String text) {
    StringBuilder line = new StringBuilder(lead);
    String indent = "      ";
    for (String word : text.split(" ", -1)) {
      if (line.length() + word.length() > WIDTH && line.length() > indent.length()) {
        lines.add(line.toString().stripTrailing());
        line = new StringBuilder(indent);
      }
      line.append(word).append(' ');
    }
    lines.add(line.toString().stripTrailing());
  }
}
