package chinelog.log;

import chinelog.label.Label;
import chinelog.log.markdown.Targets;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Release;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Reads the releases of log.yaml; one that is not complete releases nothing.
 *
 * @param readers ids of the log's readers
 */
record ReleaseReader(Scope scope, Collection<String> readers) {

  List<Release> read(Fields log) {
    List<Release> releases = new ArrayList<>();
    for (Yaml item : log.items("releases")) {
      releases.addAll(releases(item));
    }
    return releases;
  }

  /** One for each thing that is named: several facts may be released at once. */
  private List<Release> releases(Yaml item) {
    Fields fields =
        Fields.of(
            item,
            scope,
            Label.NONE,
            "fact",
            "entry",
            "photo",
            "sheet",
            "under",
            "by",
            "on",
            "words",
            "for");
    for (String key : List.of("under", "by", "on", "words", "for")) {
      fields.require(key, example(key));
    }
    List<String> agreements = List.copyOf(fields.label().agreements());
    if (agreements.size() > 1) {
      scope.error(
          fields.place("under"),
          "A release frees from one agreement.",
          "Write one release for each.");
    }
    Set<String> whom =
        Collections.unmodifiableSet(
            new LinkedHashSet<>(
                fields.knownWords("for", readers, "a group of readers of this log")));
    LocalDate on = fields.pastDate("on");
    String by = fields.text("by");
    String words = fields.text("words");
    Release.Kind kind = kind(fields);
    List<String> names = kind == null ? List.of() : names(kind, fields);
    if (kind == null || by == null || words == null || on == null) {
      return List.of();
    }
    return agreements.size() != 1 || whom.isEmpty()
        ? List.of()
        : names.stream()
            .map(
                name ->
                    new Release(kind, name, agreements.get(0), by, on, words, whom, fields.place()))
            .toList();
  }

  private List<String> names(Release.Kind kind, Fields fields) {
    if (kind == Release.Kind.FACT) {
      return fields.words("fact").stream()
          .filter(fields.values()::isFactName)
          .map(Yaml.Scalar::text)
          .distinct()
          .toList();
    }
    String name = name(kind, fields);
    return name == null ? List.of() : List.of(name);
  }

  private static String example(String key) {
    return switch (key) {
      case "under" -> "lines";
      case "by" -> "Skerrick Yard";
      case "on" -> "2026-04-02";
      case "words" -> "You may show this.";
      default -> "[public]";
    };
  }

  private Release.@Nullable Kind kind(Fields fields) {
    List<Release.Kind> found = new ArrayList<>();
    for (Release.Kind kind : Release.Kind.values()) {
      if (fields.has(key(kind))) {
        found.add(kind);
      }
    }
    if (found.size() == 1) {
      return found.get(0);
    }
    scope.error(
        fields.place(),
        found.isEmpty()
            ? "This release does not say what is released."
            : "A release is for one thing; this one names several.",
        "Write exactly one of fact, entry, photo and sheet.");
    return null;
  }

  private static String key(Release.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT);
  }

  private @Nullable String name(Release.Kind kind, Fields fields) {
    Yaml.Scalar scalar = fields.scalar(key(kind));
    if (scalar == null) {
      return null;
    }
    return switch (kind) {
      case FACT -> fields.values().isFactName(scalar) ? scalar.text() : null;
      case ENTRY ->
          fields.values().known(scalar, scope.inventory().entryIds(), "an entry of this log");
      case PHOTO -> Targets.photo(scalar, scope);
      case SHEET -> sheet(scalar);
    };
  }

  /** A sheet's path with an optional page, such as {@code sheets/lines.pdf#1}. */
  private @Nullable String sheet(Yaml.Scalar scalar) {
    Set<String> sheets = scope.inventory().sheets().keySet();
    String path = scalar.text().replaceFirst("#[1-9][0-9]*$", "");
    if (sheets.contains(scalar.text()) || sheets.contains(path)) {
      return scalar.text();
    }
    scope.error(
        scalar.place(),
        Sentence.of("There is no sheet \"{0}\".", path),
        Suggestion.remedy(path, sheets));
    return null;
  }
}
