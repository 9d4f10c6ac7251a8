package chinelog.log.reading;

import chinelog.label.Label;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import chinelog.quantity.QuantityException;
import chinelog.wording.Accents;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Takes YAML values for what should stand there; each method notes a problem where it cannot. */
public final class Values {

  private static final Pattern DATE = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
  public static final Pattern FACT = Pattern.compile("[a-z][a-z0-9_]*(\\.[a-z0-9][a-z0-9_]*)*");

  private final Scope scope;
  private final Problems problems;

  public Values(Scope scope) {
    this.scope = scope;
    this.problems = scope.problems();
  }

  /** A value that may be written {@code {value: …, under: AGREEMENT}}. */
  public record Held(Yaml value, Label label) {}

  public Held held(Yaml yaml, Label outer) {
    if (!(yaml instanceof Yaml.Mapping mapping)
        || mapping.pairs().stream().noneMatch(p -> p.key().text().equals("value"))) {
      return new Held(yaml, outer);
    }
    Fields fields = new Fields(mapping, scope, outer, "value", "under");
    Yaml inner = fields.find("value");
    return new Held(inner == null ? yaml : inner, fields.label());
  }

  public Yaml.@Nullable Scalar scalar(Yaml yaml) {
    if (yaml instanceof Yaml.Scalar scalar && !scalar.isEmpty()) {
      return scalar;
    }
    problems.error(
        yaml.place(),
        Sentence.of("Here stands {0}, where a single value belongs.", Sentence.of(yaml.kind())),
        yaml instanceof Yaml.Scalar
            ? "Write the value, or remove the key."
            : "Write one value; put it in quotes if it begins with [ or {.");
    return null;
  }

  public @Nullable String text(Yaml yaml) {
    Yaml.Scalar scalar = scalar(yaml);
    if (scalar == null) {
      return null;
    }
    MarkWatch.refuse(scalar.source(), problems);
    return scalar.text().strip();
  }

  public @Nullable LocalDate date(Yaml yaml) {
    Yaml.Scalar scalar = scalar(yaml);
    if (scalar == null) {
      return null;
    }
    // Other programs write a time behind the date.
    boolean timed = scope.loose() && scalar.text().matches("\\d{4}-\\d{2}-\\d{2}[T ].*");
    return date(timed ? scalar.text().substring(0, 10) : scalar.text(), scalar.place());
  }

  private @Nullable LocalDate date(String text, Place place) {
    if (DATE.matcher(text).matches()) {
      try {
        return LocalDate.parse(text);
      } catch (DateTimeException e) {
        problems.error(place, Sentence.of("There is no day {0}.", text), "Look at the calendar.");
        return null;
      }
    }
    problems.error(
        place,
        Sentence.of("\"{0}\" is not a date as it is written here.", text),
        WrittenDate.remedy(text));
    return null;
  }

  /** A date of something that has happened. */
  public @Nullable LocalDate pastDate(Yaml yaml) {
    LocalDate date = date(yaml);
    if (date != null && date.isAfter(scope.today())) {
      problems.error(
          yaml.place(),
          Sentence.of("{0} has not come yet; today is {1}.", date, scope.today()),
          "Write the day it happened, or set the clock of this computer right.");
      return null;
    }
    return date;
  }

  @Nullable Boolean flag(Yaml yaml) {
    Yaml.Scalar scalar = scalar(yaml);
    if (scalar == null || scalar.text().equals("true") || scalar.text().equals("false")) {
      return scalar == null ? null : scalar.text().equals("true");
    }
    if (YamlParser.isLooseTruth(scalar)) {
      return null;
    }
    problems.error(
        scalar.place(),
        Sentence.of("\"{0}\" does not say whether or not.", scalar.text()),
        "Write true or false.");
    return null;
  }

  public @Nullable Quantity quantity(Yaml yaml, Kind kind) {
    Yaml.Scalar scalar = scalar(yaml);
    if (scalar == null) {
      return null;
    }
    try {
      Quantity quantity = Quantity.parse(scalar.text());
      CharSequence complaint = kind.complaint(quantity);
      if (complaint == null) {
        return quantity;
      }
      problems.error(scalar.place(), complaint, kind.remedy());
    } catch (QuantityException e) {
      // What is asked for in general helps less than what is asked for here.
      boolean general = kind.unit() != null && e.isGeneral();
      problems.error(scalar.source().at(e.index()), e.what(), general ? kind.remedy() : e.remedy());
    }
    return null;
  }

  /** One word, or a list of words. */
  public List<Yaml.Scalar> words(Yaml yaml) {
    List<Yaml.Scalar> words = new ArrayList<>();
    List<Yaml> items = yaml instanceof Yaml.Sequence s ? s.items() : List.of(yaml);
    for (Yaml item : items) {
      Yaml.Scalar word = scalar(item);
      if (word != null) {
        words.add(word);
      }
    }
    return words;
  }

  /** The word if it is one of those known; {@code what} is such as "a stage of this log". */
  public @Nullable String known(Yaml.Scalar word, Collection<String> known, String what) {
    if (known.contains(word.text())) {
      return word.text();
    }
    problems.error(
        word.place(),
        Sentence.of("\"{0}\" is not {1}.", word.text(), Sentence.of(what)),
        Suggestion.remedy(word.text(), known));
    return null;
  }

  /** As {@link #known}, where a list may stand. */
  @Nullable String knownOfSeveral(Yaml.Scalar word, Collection<String> known, String what) {
    List<String> parts =
        Pattern.compile("\\s*(?:[,;&+]|\\s(?:and|und|en|et|y)\\s|\\s)\\s*")
            .splitAsStream(word.text().strip())
            .filter(p -> !p.isEmpty())
            .toList();
    if (known.contains(word.text()) || parts.size() < 2 || !known.containsAll(parts)) {
      return known(word, known, what);
    }
    problems.error(
        word.place(),
        Sentence.of("\"{0}\" names several in one.", word.text()),
        Sentence.of("Write them as a list: [{0}].", String.join(", ", parts)));
    return null;
  }

  public Label under(Yaml yaml) {
    List<String> ids = new ArrayList<>();
    List<Yaml.Scalar> words = words(yaml);
    if (yaml instanceof Yaml.Sequence && words.isEmpty()) {
      problems.error(
          yaml.place(), "This list names no agreement.", "Name one, or remove \"under\".");
    }
    for (Yaml.Scalar word : words) {
      if (scope.agreements() == null) {
        ids.add(word.text());
      } else if (word.text().matches("[^,]+[, ].+")) {
        problems.error(
            word.place(),
            "Several agreements are named in one word.",
            "Write them as a list: [lines, client].");
      } else if (scope.agreementsOrNone().isEmpty()) {
        problems.error(
            word.place(),
            Sentence.of("\"{0}\" is no agreement: the log names none.", word.text()),
            "Name it in log.yaml: \"agreements: {lines: {with: Skerrick Yard}}\".");
      } else if (known(word, scope.agreementsOrNone(), "an agreement of this log") != null) {
        ids.add(word.text());
      }
    }
    return Label.of(ids);
  }

  public boolean isFactName(Yaml.Scalar name) {
    MarkWatch.refuse(name.source(), problems);
    if (FACT.matcher(name.text()).matches()) {
      return true;
    }
    problems.error(
        name.place(),
        Sentence.of("\"{0}\" cannot be the name of a fact.", name.text()),
        Sentence.of(
            "Write small letters, digits and _, its parts joined by dots, such as {0}.",
            word(name.text(), "_", "[a-z][a-z0-9_]*(\\.[a-z0-9][a-z0-9_]*)*", "hull.loa")));
    return false;
  }

  /**
   * A name made into one of the form that is allowed, such as {@code my-client} out of {@code My
   * client}; {@code otherwise} where none comes of it.
   */
  public static String word(String name, String joint, String allowed, String otherwise) {
    String plain =
        Accents.off(name.toLowerCase(Locale.ROOT))
            .replace("ß", "ss")
            .replaceAll("[^a-z0-9.]+", joint)
            .replaceAll("^[-_.0-9]+|[-_.]+$", "");
    return plain.matches(allowed) ? plain : otherwise;
  }
}
