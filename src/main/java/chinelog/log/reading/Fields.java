package chinelog.log.reading;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Marked;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.quantity.Quantity;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** A group of keys whose names are known; any other is a problem. */
public final class Fields {

  private final Yaml.Mapping mapping;
  private final Scope scope;
  private final Values values;
  private final Label label;

  /** Whether no group of keys stood where this was looked for, so that nothing is missed in it. */
  private boolean absent;

  /**
   * @param outer agreements of what the group belongs to
   */
  public Fields(Yaml.Mapping mapping, Scope scope, Label outer, String... known) {
    this.mapping = mapping;
    this.scope = scope;
    this.values = new Values(scope);
    Set<String> names = new TreeSet<>(List.of(known));
    for (Yaml.Pair pair : mapping.pairs()) {
      if (!names.contains(pair.key().text())) {
        unknown(pair.key(), names);
      }
    }
    Yaml under = names.contains("under") ? find("under") : null;
    this.label = under == null ? outer : outer.join(values.under(under));
  }

  /**
   * The group that {@code yaml} should be; an empty one, after the problem was noted, if it is
   * none.
   */
  public static Fields of(Yaml yaml, Scope scope, Label outer, String... known) {
    List<String> shown = List.of(known).stream().filter(OtherWords::hasExample).toList();
    String example = shown.isEmpty() ? "key: value" : OtherWords.example(shown.get(0));
    Fields fields = new Fields(mapping(yaml, scope, example), scope, outer, known);
    fields.absent = !(yaml instanceof Yaml.Mapping);
    return fields;
  }

  public static Yaml.Mapping mapping(Yaml yaml, Scope scope) {
    return mapping(yaml, scope, "key: value");
  }

  /**
   * @param example of a line that belongs here
   */
  private static Yaml.Mapping mapping(Yaml yaml, Scope scope, String example) {
    if (yaml instanceof Yaml.Mapping m) {
      return m;
    }
    scope.error(
        yaml.place(),
        Sentence.of("Here stands {0}, where a group of keys belongs.", Sentence.of(yaml.kind())),
        yaml instanceof Yaml.Scalar s && s.text().matches("[\\w-]+:[^/\\s].*")
            ? Sentence.of(
                "Write a space after the colon: \"{0}\".", s.text().replaceFirst(":", ": "))
            : Sentence.of("Write lines such as \"{0}\", indented by two spaces.", example));
    return new Yaml.Mapping(List.of(), yaml.place());
  }

  private void unknown(Yaml.Scalar key, Set<String> names) {
    MarkWatch.refuse(key.source(), scope.problems());
    CutShort cut = CutShort.findBefore(mapping, key);
    boolean nearKey = Suggestion.findNearest(key.text(), names).isPresent();
    if (cut != null && !nearKey) {
      scope.error(cut.place(), cut.what(), cut.remedy());
      return;
    }
    if (!nearKey && CutShort.isTold(mapping, key)) {
      return;
    }
    Sentence what = Sentence.of("\"{0}\" is not a key here.", key.text());
    String meant = OtherWords.findKey(key.text(), names).orElse("");
    CharSequence remedy =
        meant.isEmpty()
            ? OtherWords.findPlace(key.text(), names)
                .<CharSequence>map(p -> p)
                .orElseGet(() -> Suggestion.remedy(key.text(), names))
            : meant.equalsIgnoreCase(key.text())
                ? Sentence.of("Write it in small letters: \"{0}\".", meant)
                : Sentence.of("Write \"{0}\".", OtherWords.example(meant));
    if (meant.equals("under") || remedy.toString().contains("\"under\"")) {
      scope.error(key.place(), what, remedy);
    } else {
      scope.complain(key.place(), what, remedy);
    }
  }

  /** The agreements of this group and of what it belongs to. */
  public Label label() {
    return label;
  }

  public Place place() {
    return mapping.place();
  }

  public Place place(String key) {
    Yaml yaml = find(key);
    return yaml == null ? place() : yaml.place();
  }

  public boolean has(String key) {
    return find(key) != null;
  }

  public @Nullable Yaml find(String key) {
    for (Yaml.Pair pair : mapping.pairs()) {
      if (pair.key().text().equals(key)) {
        return pair.value();
      }
    }
    return null;
  }

  /** The value, or null after it was noted that it is missing. */
  public @Nullable Yaml require(String key, String example) {
    Yaml yaml = find(key);
    if (yaml == null && !absent) {
      scope.error(
          place(),
          Sentence.of("\"{0}\" is missing here.", key),
          Sentence.of("Write such as \"{0}: {1}\".", key, example));
    }
    return yaml;
  }

  public Yaml.@Nullable Scalar scalar(String key) {
    Yaml yaml = find(key);
    return yaml == null ? null : values.scalar(yaml);
  }

  public @Nullable String text(String key) {
    Yaml yaml = find(key);
    return yaml == null ? null : values.text(yaml);
  }

  public String text(String key, String otherwise) {
    String text = text(key);
    return text == null ? otherwise : text;
  }

  public @Nullable Marked<String> marked(String key) {
    Yaml yaml = find(key);
    return yaml == null ? null : marked(yaml);
  }

  public @Nullable Marked<String> marked(Yaml yaml) {
    Values.Held held = values.held(yaml, label);
    String text = values.text(held.value());
    return text == null ? null : new Marked<>(text, held.label(), held.value().place());
  }

  public @Nullable Marked<Quantity> quantity(String key, Kind kind) {
    Yaml yaml = find(key);
    return yaml == null ? null : quantity(yaml, kind);
  }

  public @Nullable Marked<Quantity> quantity(Yaml yaml, Kind kind) {
    Values.Held held = values.held(yaml, label);
    Quantity quantity = values.quantity(held.value(), kind);
    return quantity == null
        ? null
        : new Marked<>(quantity, own(quantity, held.label()), held.value().place());
  }

  /** Money of which nothing else is said is the workshop's own. */
  private static Label own(Quantity quantity, Label label) {
    return label.isNone() && quantity.unit().isMoney() ? Label.of(Agreement.OWN_MONEY) : label;
  }

  public @Nullable LocalDate date(String key) {
    Yaml yaml = find(key);
    return yaml == null ? null : values.date(yaml);
  }

  public @Nullable LocalDate pastDate(String key) {
    Yaml yaml = find(key);
    return yaml == null ? null : values.pastDate(yaml);
  }

  public boolean flag(String key) {
    Yaml yaml = find(key);
    Boolean flag = yaml == null ? null : values.flag(yaml);
    return flag != null && flag;
  }

  public List<Yaml.Pair> pairs(String key) {
    Yaml yaml = find(key);
    if (yaml == null) {
      return List.of();
    }
    String example = OtherWords.hasExample(key) ? OtherWords.example(key) : "key: value";
    List<Yaml.Pair> whole = new ArrayList<>();
    for (Yaml.Pair pair : mapping(yaml, scope, example).pairs()) {
      if (!isRestOf(pair)) {
        whole.add(pair);
      } else if (!whole.isEmpty()) {
        partedByComma(whole.remove(whole.size() - 1), pair.key());
      }
    }
    return whole;
  }

  /** Between braces a comma parts values, so that {@code 19,5 cm} leaves {@code 5 cm} alone. */
  private static boolean isRestOf(Yaml.Pair pair) {
    return pair.key().text().matches("[0-9].*")
        && pair.value() instanceof Yaml.Scalar value
        && value.isEmpty();
  }

  private void partedByComma(Yaml.Pair before, Yaml.Scalar rest) {
    String number = before.value() instanceof Yaml.Scalar value ? value.text() : "";
    if (number.isEmpty()) {
      scope.error(
          rest.place(),
          Sentence.of("A comma parts the values here, and \"{0}\" stands alone.", rest.text()),
          Sentence.of(
              "Write a colon between a name and its figure: {0}: {1}.",
              before.key().text(), rest.text()));
      return;
    }
    scope.error(
        before.value().place(),
        Sentence.of("A comma parts the values here, and \"{0}\" stands alone.", rest.text()),
        number.matches("[0-9]+")
            ? Sentence.of("Write decimals after a point: {0}.{1}.", number, rest.text())
            : "Write decimals after a point, such as 19.5 cm.");
  }

  public List<Yaml> items(String key) {
    Yaml yaml = find(key);
    return yaml == null ? List.of() : items(yaml);
  }

  public List<Yaml> items(Yaml yaml) {
    if (yaml instanceof Yaml.Sequence s) {
      return s.items();
    }
    scope.error(
        yaml.place(),
        Sentence.of("Here stands {0}, where a list belongs.", Sentence.of(yaml.kind())),
        "Write each item on a line of its own that begins with \"- \".");
    return List.of();
  }

  public List<Yaml.Scalar> words(String key) {
    Yaml yaml = find(key);
    return yaml == null ? List.of() : values.words(yaml);
  }

  public List<String> knownWords(String key, Collection<String> known, String what) {
    List<String> found = new ArrayList<>();
    for (Yaml.Scalar word : words(key)) {
      String id = values.knownOfSeveral(word, known, what);
      if (id != null) {
        found.add(id);
      }
    }
    return found;
  }

  public Values values() {
    return values;
  }
}
