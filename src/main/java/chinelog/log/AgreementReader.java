package chinelog.log;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Readers;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.wording.Catalogue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Reads the agreements of log.yaml, and who is party to them. */
final class AgreementReader {

  /** The agreement that sheets are under where the log names none; only the workshop is party. */
  static final String SHEETS = "sheets";

  private static final String WORD =
      "Write one word of small letters a to z, digits and hyphens, such as {0}.";
  private static final Set<String> RESERVED =
      Set.of("all", "none", "public", "never", Agreement.OWN_MONEY, Agreement.OWN_CLIENT);

  /** What the workshop keeps to itself unless it says which readers it tells. */
  private static final String[] TELL = {"money", "client"};

  private static final String READERS = "the name of readers of this log";

  /** In the order of {@link Readers.Output}. */
  private static final List<String> OUTPUTS =
      List.of(
          "site",
          "book",
          "handover",
          "handover-sheets",
          "print-ready",
          "patterns",
          "letter",
          "photo-sheet",
          "quotation",
          "talk");

  /**
   * What the workshop gets unless the log says otherwise: what is to be read, not to be printed.
   */
  private static final List<String> READABLE = OUTPUTS.subList(0, 3);

  private AgreementReader() {}

  static SortedMap<String, Agreement> agreements(Fields log, Scope scope) {
    SortedMap<String, Agreement> found = new TreeMap<>();
    for (Yaml.Pair pair : log.pairs("agreements")) {
      String id = pair.key().text();
      if (!id.matches("[a-z][a-z0-9_-]*") || RESERVED.contains(id)) {
        scope.error(
            pair.key().place(),
            Sentence.of("\"{0}\" cannot be the name of an agreement.", id),
            Sentence.of(WORD, Values.word(id, "-", "[a-z][a-z0-9-]*", "lines")));
        continue;
      }
      found.put(id, agreement(id, pair.value(), scope));
    }
    return found;
  }

  private static Agreement agreement(String id, Yaml yaml, Scope scope) {
    Fields fields =
        Fields.of(
            yaml, scope, Label.NONE, "with", "covers", "from", "until", "afterwards", "presence");
    fields.require("with", "Skerrick Yard");
    LocalDate from = fields.date("from");
    LocalDate until = until(fields, scope);
    if (from != null && until != null && until.isBefore(from)) {
      scope.error(
          fields.place("until"),
          Sentence.of("This agreement ends on {0}, before it begins on {1}.", until, from),
          "Correct the year of one of the two days.");
    }
    return new Agreement(
        id,
        fields.text("with", ""),
        fields.text("covers", ""),
        from,
        until,
        choice(fields, "afterwards", List.of("kept", "free")).equals("free"),
        choice(fields, "presence", List.of("note", "nothing")).equals("nothing")
            ? Presence.NOTHING
            : Presence.NOTE);
  }

  /**
   * Notes an error for each agreement that was over before the first note was written: it would
   * cover nothing of this build, so that its year is most likely wrong.
   */
  static void refuseOverBefore(
      LocalDate first, Fields log, SortedMap<String, Agreement> agreements, Scope scope) {
    for (Yaml.Pair pair : log.pairs("agreements")) {
      Agreement agreement = agreements.get(pair.key().text());
      LocalDate until = agreement == null ? null : agreement.until();
      if (until != null && until.isBefore(first)) {
        scope.error(
            pair.key().place(),
            Sentence.of(
                "This agreement ends on {0}, before the first note of this log, which is of"
                    + " {1}.",
                until, first),
            "Correct the year; if it was over before the build began, take it out.");
      }
    }
  }

  private static @Nullable LocalDate until(Fields fields, Scope scope) {
    Yaml yaml = fields.find("until");
    String word = yaml instanceof Yaml.Scalar s ? s.text() : "";
    if (word.matches("\\D+") && !word.equals("never")) {
      scope.error(
          fields.place("until"),
          Sentence.of("\"{0}\" is not a date as it is written here.", word),
          "Write \"until: never\" if the agreement has no end; else year-month-day, such as"
              + " 2027-03-14.");
      return null;
    }
    return yaml == null || word.equals("never") ? null : fields.values().date(yaml);
  }

  /** One of the words, of which the first is the default. */
  private static String choice(Fields fields, String key, List<String> words) {
    List<String> found = fields.knownWords(key, words, "a word for \"" + key + "\"");
    return found.isEmpty() ? words.get(0) : found.get(0);
  }

  /** What the workshop keeps to itself in every log. */
  static List<Agreement> own() {
    return List.of(
        Agreement.own(Agreement.OWN_MONEY, "prices, rates, costs and all other money"),
        Agreement.own(Agreement.OWN_CLIENT, "the client's name"));
  }

  /**
   * Who gets an edition.
   *
   * @param agreements ids of those that the log names
   */
  static List<Readers> readers(Fields log, Set<String> agreements, Scope scope) {
    List<Readers> found = named(log, agreements, scope);
    List<String> ids = found.stream().map(Readers::id).toList();
    Yaml written = log.find("tell");
    Yaml.Mapping nothing = new Yaml.Mapping(List.of(), log.place());
    Fields tell = Fields.of(written == null ? nothing : written, scope, Label.NONE, TELL);
    List<String> money = tell.knownWords("money", ids, READERS);
    List<String> client = tell.knownWords("client", ids, READERS);
    return found.stream()
        .map(r -> money.contains(r.id()) ? r.with(Agreement.OWN_MONEY) : r)
        .map(r -> client.contains(r.id()) ? r.with(Agreement.OWN_CLIENT) : r)
        .toList();
  }

  private static List<Readers> named(Fields log, Set<String> agreements, Scope scope) {
    List<Readers> found = new ArrayList<>();
    Catalogue titles = GivenTitles.of(log);
    for (Yaml.Pair pair : log.pairs("readers")) {
      String id = pair.key().text();
      if (id.matches("[a-z][a-z0-9-]*") && !id.equals("forms")) {
        found.add(readers(id, pair, agreements, titles, scope));
      } else {
        scope.error(
            pair.key().place(),
            Sentence.of("\"{0}\" cannot be the name of readers.", id),
            Sentence.of(
                "Write one word of small letters a to z, digits and hyphens, such as {0}; how they are"
                    + " called otherwise goes into \"title\".",
                Values.word(id, "-", "[a-z][a-z0-9-]*", "client")));
      }
    }
    if (found.stream().noneMatch(r -> r.id().equals("public"))) {
      found.add(
          0,
          new Readers(
              "public",
              titles.text("readers.public"),
              Set.of(),
              outputs(List.of("site", "book")),
              Place.of("log.yaml")));
    }
    if (found.stream().noneMatch(r -> r.id().equals("workshop"))) {
      found.add(
          new Readers(
              "workshop",
              titles.text("readers.workshop"),
              everything(agreements),
              outputs(READABLE),
              Place.of("log.yaml")));
    }
    return found;
  }

  private static Readers readers(
      String id, Yaml.Pair pair, Set<String> agreements, Catalogue titles, Scope scope) {
    Fields fields = Fields.of(pair.value(), scope, Label.NONE, "title", "party-to", "gets");
    List<Yaml.Scalar> words = fields.words("party-to");
    boolean all =
        words.size() == 1 && words.get(0).text().equals("all")
            || id.equals("workshop") && !fields.has("party-to");
    Set<String> partyTo =
        all
            ? everything(agreements)
            : sorted(fields.knownWords("party-to", agreements, "an agreement of this log"));
    if (id.equals("public") && !partyTo.isEmpty()) {
      scope.error(
          fields.place("party-to"),
          "The public cannot be party to an agreement: what everybody may see is under none.",
          "Write \"party-to: []\", and record a release for what may be shown.");
    }
    boolean workshop = id.equals("workshop");
    List<String> gets =
        fields.has("gets")
            ? fields.knownWords("gets", OUTPUTS, "a thing that readers can get")
            : workshop ? READABLE : List.of("site", "book");
    String title =
        id.equals("public") || workshop ? titles.text("readers." + id) : LogReader.title(id);
    return new Readers(id, fields.text("title", title), partyTo, outputs(gets), pair.key().place());
  }

  private static Set<String> everything(Set<String> agreements) {
    Set<String> all = new TreeSet<>(agreements);
    own().forEach(a -> all.add(a.id()));
    return sorted(all);
  }

  private static Set<String> sorted(Collection<String> ids) {
    return Collections.unmodifiableSet(new LinkedHashSet<>(new TreeSet<>(ids)));
  }

  private static Set<Readers.Output> outputs(List<String> words) {
    Set<Readers.Output> outputs = EnumSet.noneOf(Readers.Output.class);
    for (String word : words) {
      outputs.add(Readers.Output.values()[OUTPUTS.indexOf(word)]);
    }
    return Collections.unmodifiableSet(outputs);
  }
}
