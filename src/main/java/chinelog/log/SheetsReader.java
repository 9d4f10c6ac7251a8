package chinelog.log;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Sheet;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Reads under which agreements the sheets are: one for all of them, {@code sheets: {under: lines}},
 * and others for sheets and pages that are named, {@code sails.pdf: {under: sails, pages: {2:
 * lines}}}.
 */
final class SheetsReader {

  private static final String UNDER = "under";
  private static final String FOLDER = "sheets/";

  private final Scope scope;

  /** What a sheet is under that is not named; null where that is not known. */
  private final @Nullable Label rest;

  private final SortedMap<String, Named> named = new TreeMap<>();

  private record Named(@Nullable Label under, List<Sheet.Page> pages) {}

  /**
   * @param log null where log.yaml cannot be read
   * @param agreements to which that of the sheets is added where the log has none
   */
  SheetsReader(@Nullable Fields log, SortedMap<String, Agreement> agreements, Scope scope) {
    this.scope = scope;
    Yaml yaml = log == null ? null : log.find("sheets");
    if (log == null) {
      this.rest = null;
    } else if (yaml != null) {
      this.rest = read(yaml);
    } else if (agreements.size() == 1) {
      this.rest = Label.of(agreements.firstKey());
    } else if (agreements.isEmpty()) {
      String sheets = AgreementReader.SHEETS;
      agreements.put(
          sheets, new Agreement(sheets, "", "the sheets", null, null, false, Presence.NOTHING));
      this.rest = Label.of(sheets);
    } else {
      this.rest = null;
      if (!names().isEmpty()) {
        scope.error(
            log.place(),
            "The log has sheets and several agreements, but does not say which the sheets are"
                + " under.",
            Sentence.of("Write such as \"sheets: {under: {0}}\".", agreements.firstKey()));
      }
    }
  }

  private SortedSet<String> names() {
    SortedSet<String> names = new TreeSet<>();
    scope.inventory().sheets().keySet().forEach(p -> names.add(p.substring(FOLDER.length())));
    return names;
  }

  private @Nullable Label read(Yaml yaml) {
    Set<String> known = names();
    known.add(UNDER);
    Fields fields = Fields.of(yaml, scope, Label.NONE, known.toArray(String[]::new));
    for (String name : names()) {
      Yaml value = fields.find(name);
      if (value != null) {
        named.put(FOLDER + name, named(value));
      }
    }
    boolean all =
        !named.isEmpty()
            && named.keySet().containsAll(scope.inventory().sheets().keySet())
            && named.values().stream().allMatch(n -> n.under() != null);
    if (!all) {
      fields.require(UNDER, "lines");
    }
    Label label = fields.label();
    return label.isNone() ? null : label;
  }

  private Named named(Yaml value) {
    if (!(value instanceof Yaml.Mapping)) {
      return new Named(under(value), List.of());
    }
    Fields fields = Fields.of(value, scope, Label.NONE, UNDER, "pages");
    List<Sheet.Page> pages = new ArrayList<>();
    for (Yaml.Pair pair : fields.pairs("pages")) {
      if (!pair.key().text().matches("[1-9][0-9]{0,5}")) {
        scope.error(
            pair.key().place(),
            Sentence.of("\"{0}\" is not the number of a page.", pair.key().text()),
            "Write such as pages: {2: lines}.");
        continue;
      }
      Yaml of = pair.value();
      Label label =
          of instanceof Yaml.Mapping ? Fields.of(of, scope, Label.NONE, UNDER).label() : under(of);
      if (label.isNone()) {
        scope.error(
            of.place(),
            "This page is under no agreement.",
            "Name one; a sheet is always under one.");
      }
      pages.add(new Sheet.Page(Integer.parseInt(pair.key().text()), label));
    }
    return new Named(fields.has(UNDER) ? fields.label() : null, pages);
  }

  private Label under(Yaml value) {
    return new Values(scope).under(value);
  }

  /**
   * All sheets.
   *
   * @param everything all agreements, which hold where the one is not known; that problem is noted
   */
  List<Sheet> sheets(Label everything) {
    List<Sheet> sheets = new ArrayList<>();
    for (String path : scope.inventory().sheets().keySet()) {
      Named own = named.get(path);
      Label label = own == null ? null : own.under();
      if (label == null || label.isNone()) {
        label = rest;
      }
      String name = path.substring(path.lastIndexOf('/') + 1);
      sheets.add(
          new Sheet(
              path,
              LogReader.title(name.substring(0, name.lastIndexOf('.'))),
              label == null ? everything : label,
              own == null ? List.of() : own.pages(),
              Place.of(path)));
    }
    return sheets;
  }
}
