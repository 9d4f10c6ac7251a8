package chinelog.cli;

import chinelog.log.PriceReader;
import chinelog.log.records.PricePlan;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.publish.Workshop;
import chinelog.reckon.Explanation;
import chinelog.reckon.Fact;
import chinelog.reckon.FactWriter;
import chinelog.reckon.Facts;
import chinelog.reckon.NextBuild;
import chinelog.reckon.QuotationWriter;
import chinelog.reckon.ReckoningPages;
import chinelog.reckon.ShoppingList;
import chinelog.reckon.trade.Quotation;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code chinelog reckon}. */
@Command(
    name = "reckon",
    description = "Tell the facts of a log; for one fact, how it came about, step by step.",
    footer = {
      "",
      "Example: ${sys:chinelog.command:-chinelog} reckon sample-log hull.loa",
      "         ${sys:chinelog.command:-chinelog} reckon sample-log --price sample-log/quotation.yaml",
      "         ${sys:chinelog.command:-chinelog} reckon --list hull-form"
    })
final class ReckonCommand extends LogCommand {

  /** The forms in which facts are told. */
  enum Form {
    TABLE,
    CSV,
    JSON
  }

  @Parameters(index = "0", arity = "0..1", paramLabel = "LOG", description = "The log's folder.")
  private @Nullable Path log;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "FACT",
      description = "A fact's name, such as hull.loa, or the beginning of several, such as mass.")
  private @Nullable String fact;

  @Option(
      names = "--as",
      paramLabel = "FORM",
      description =
          "table, csv or json. Default: table for many facts, the way it came about for one.")
  private @Nullable Form form;

  @Option(
      names = "--list",
      arity = "0..1",
      fallbackValue = "",
      paramLabel = "RECKONING",
      description =
          "Tell what can be reckoned; all of one reckoning, with an example; of \"all\", as Markdown.")
  private @Nullable String list;

  @Option(
      names = "--price",
      paramLabel = "FILE",
      description = "Price the next build from this one's hours and material, as FILE says.")
  private @Nullable Path price;

  @Option(
      names = "--shopping",
      description = "List what is still to be bought, by what is planned and what was used.")
  private boolean shopping;

  ReckonCommand(Terminal talk, Clock clock) {
    super(talk, clock);
  }

  @Override
  Path folder() {
    return log == null ? Path.of("") : log;
  }

  @Override
  public Integer call() throws IOException {
    if (list != null) {
      return tell(list);
    }
    if (log == null) {
      throw wrong("Missing required parameter: 'LOG'");
    }
    return reckon(log);
  }

  private int tell(String what) {
    if (what.equals("all")) {
      result().print(ReckoningPages.markdown());
      result().flush();
      return Main.DONE;
    }
    Optional<List<String>> page =
        what.isEmpty() ? Optional.of(ReckoningPages.contents()) : ReckoningPages.page(what);
    if (page.isEmpty()) {
      talk()
          .warn(
              "There is no reckoning or function \u201c{0}\u201d. {1}",
              what, Suggestion.remedy(what, ReckoningPages.names()));
      return Main.USAGE;
    }
    page.get().forEach(result()::println);
    result().flush();
    return Main.DONE;
  }

  private int reckon(Path folder) throws IOException {
    Path plan = price;
    if (plan != null && fact != null) {
      throw wrong("A price is told for the whole build: leave \u201c{0}\u201d out.", fact);
    }
    Workshop.Opened opened =
        Workshop.open(requireFolder(folder), today(), today(), zone(), talk().progress());
    talk().endProgress();
    tellNewer(folder);
    talk().problems(opened.problems().stream().filter(p -> p.isError()).toList());
    if (plan != null) {
      return quote(plan, opened);
    }
    if (shopping) {
      return shop(opened);
    }
    Optional<Fact> one = fact == null ? Optional.empty() : opened.facts().find(fact);
    if (one.isPresent() && form == null) {
      String title =
          Catalogue.of(Facts.MESSAGES, opened.log().head().locale()).text(one.get().title());
      result().println(title + ":");
      Explanation.tree(one.get(), opened.log(), opened.facts()).forEach(result()::println);
    } else {
      Collection<Fact> facts =
          one.<Collection<Fact>>map(List::of).orElseGet(() -> chosen(opened.facts()));
      if (facts.isEmpty() && fact != null) {
        talk().warn(unknown(fact, opened.facts()));
        return Main.USAGE;
      }
      print(facts, opened);
    }
    return opened.hasErrors() ? Main.PROBLEMS : Main.DONE;
  }

  private int quote(Path file, Workshop.Opened opened) {
    PriceReader.Reading reading = PriceReader.read(file, opened.log(), today());
    talk().problems(reading.problems());
    PricePlan plan = reading.plan();
    if (plan == null) {
      return Main.PROBLEMS;
    }
    NextBuild.Priced priced = NextBuild.price(plan, opened.log(), opened.facts());
    talk().problems(priced.problems());
    Quotation quotation = priced.quotation();
    if (quotation == null) {
      return Main.PROBLEMS;
    }
    Form wanted = form == null ? Form.TABLE : form;
    result()
        .print(
            switch (wanted) {
              case TABLE -> QuotationWriter.page(quotation, priced, opened.log());
              case CSV -> QuotationWriter.csv(quotation);
              case JSON -> QuotationWriter.json(quotation, priced);
            });
    result().flush();
    return opened.hasErrors() ? Main.PROBLEMS : Main.DONE;
  }

  private int shop(Workshop.Opened opened) {
    ShoppingList.Made list = ShoppingList.of(opened.log());
    talk().problems(list.problems());
    ShoppingList.text(list.lines(), opened.log()).forEach(result()::println);
    if (list.lines().isEmpty() && list.problems().isEmpty()) {
      talk().say("Nothing is to be bought, as far as the log says.");
    }
    result().flush();
    return opened.hasErrors() || !list.problems().isEmpty() ? Main.PROBLEMS : Main.DONE;
  }

  private Collection<Fact> chosen(Facts facts) {
    String wanted = fact == null ? "" : fact;
    String beginning = wanted.isEmpty() || wanted.endsWith(".") ? wanted : wanted + ".";
    return facts.inOrder().stream().filter(f -> f.name().startsWith(beginning)).toList();
  }

  private static Sentence unknown(String wanted, Facts facts) {
    return Sentence.of(
        "This log has no fact \u201c{0}\u201d. {1}",
        wanted,
        Suggestion.findNearest(wanted, facts.byName().keySet())
            .map(n -> Sentence.of("Did you mean \u201c{0}\u201d?", n))
            .orElseGet(() -> Sentence.of("Leave the name out to see them all.")));
  }

  private void print(Collection<Fact> facts, Workshop.Opened opened) {
    Form wanted = form == null ? Form.TABLE : form;
    String text =
        switch (wanted) {
          case TABLE -> FactWriter.table(facts, opened.log());
          case CSV -> FactWriter.csv(facts, opened.log());
          case JSON -> FactWriter.json(facts, opened.log());
        };
    result().print(text);
    result().flush();
  }
}
