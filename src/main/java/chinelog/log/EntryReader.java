package chinelog.log;

import chinelog.label.Label;
import chinelog.log.markdown.MarkdownReader;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Kind;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Values;
import chinelog.log.reading.Yaml;
import chinelog.log.records.Entry;
import chinelog.log.records.Marked;
import chinelog.log.text.Block;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Reads one note.
 *
 * @param stages ids of the plan; null where the log has no plan
 * @param materials unit in which each was bought; null where that is not known
 */
record EntryReader(
    Scope scope, @Nullable Collection<String> stages, @Nullable Map<String, Unit> materials) {

  private static final String[] KEYS = {
    "title", "date", "stage", "time", "used", "measured", "weighed", "under"
  };

  private static final List<String> OF_USE = List.of("amount", "where", "material", "under");

  /**
   * The entry, as far as it can be read; several where a loose note without a date tells of several
   * days.
   *
   * @param missing asked for a date, with the note's text, where none is written
   */
  List<Entry> read(
      String path, Source source, Function<List<Block>, @Nullable FallbackDate> missing) {
    FrontMatter note = FrontMatter.split(source, scope);
    Fields fields = new Fields(note.fields(), scope, Label.NONE, KEYS);
    String id = scope.inventory().entryId(path);
    String folder = path.contains("/") ? path.substring(0, path.lastIndexOf('/')) : "";
    List<Block> text = new MarkdownReader(note.text(), folder, scope).blocks(Label.NONE);
    EntryDate dates = new EntryDate(scope, path, fields);
    LocalDate date = dates.find();
    boolean undated = date == null && !dates.isWrong();
    remindOfUnclearDay(text);
    List<Diary.Day> days =
        undated && scope.loose() ? Diary.days(text, scope.today()) : List.<Diary.Day>of();
    if (!days.isEmpty()) {
      return days(days, fields, id, path);
    }
    if (undated) {
      date = date(path, missing.apply(text), dates.betterName());
    }
    if (date != null) {
      remindOfOtherDays(text, date);
    }
    EntryTitle title = EntryTitle.of(fields, text, id, Place.of(path));
    return List.of(
        entry(
            id, title, date == null ? scope.today() : date, stage(fields, id, path), fields, path));
  }

  private void remindOfUnclearDay(List<Block> text) {
    Diary.findUnclear(text)
        .ifPresent(
            u ->
                scope.reminder(
                    u.place(),
                    Sentence.of(
                        "This heading may mean {0} or {1}.", u.days().first(), u.days().last()),
                    "Write its date as year-month-day."));
  }

  /** A note is of one day, even where its headings tell of several. */
  private void remindOfOtherDays(List<Block> text, LocalDate date) {
    Diary.days(text, scope.today()).stream()
        .filter(d -> !d.date().equals(date))
        .findFirst()
        .ifPresent(
            d ->
                scope.reminder(
                    d.place(),
                    Sentence.of(
                        "This heading is dated {0}, but all of this note counts as written on {1}.",
                        d.date(), date),
                    Sentence.of(
                        "Put what was done then into a note of its own, such as {0}-drawings.md.",
                        d.date())));
  }

  /** What the keys say of work and material belongs to the first day. */
  private List<Entry> days(List<Diary.Day> days, Fields fields, String id, String path) {
    Fields none = new Fields(new Yaml.Mapping(List.of(), Place.of(path)), scope, Label.NONE, KEYS);
    String stage = stage(fields, id, path);
    List<Entry> entries = new ArrayList<>();
    Map<LocalDate, Integer> told = new TreeMap<>();
    for (Diary.Day day : days) {
      int count = told.merge(day.date(), 1, Integer::sum);
      String name = id + "#" + day.date() + (count == 1 ? "" : "-" + count);
      EntryTitle title =
          day.title().isEmpty()
              ? EntryTitle.of(none, day.text(), day.date().toString(), Place.of(path))
              : new EntryTitle(new Marked<>(day.title(), Label.NONE, Place.of(path)), day.text());
      entries.add(
          entry(
              name,
              title,
              day.date(),
              fields.has("stage") || day.stage().isEmpty() ? stage : stageName(day.stage()),
              entries.isEmpty() ? fields : none,
              path));
    }
    return entries;
  }

  private Entry entry(
      String id, EntryTitle title, LocalDate day, String stage, Fields fields, String path) {
    return new Entry(
        id,
        title.title(),
        day,
        stage,
        List.copyOf(title.text()),
        worked(fields, day),
        used(fields),
        measured(fields),
        weighed(fields),
        fields.label(),
        Place.of(path));
  }

  /**
   * The day found for a note that has none; null, after the problem was noted, if there is none.
   */
  private @Nullable LocalDate date(String path, @Nullable FallbackDate found, String likely) {
    String example = likely.isEmpty() ? "2026-03-14-drawings.md" : likely + "-drawings.md";
    if (found == null) {
      scope.error(
          Place.of(path),
          "This note has no date.",
          Sentence.of(
              "Begin its name with its date, such as {0}, or write \"date: 2026-03-14\""
                  + " between two lines \"---\" at its top.",
              example));
      return null;
    }
    scope.reminder(
        Place.of(path),
        Sentence.of("This note has no date; {0} is taken, {1}.", found.date(), found.reason()),
        Sentence.of("Begin its name with its date, such as {0}.", example));
    return found.date();
  }

  private String stage(Fields fields, String id, String path) {
    Yaml.Scalar written = fields.scalar("stage");
    Collection<String> plan = stages;
    if (written != null) {
      if (plan != null && !plan.contains(written.text())) {
        fields.values().known(written, plan, "a stage of this log");
      }
      return plan == null ? stageName(written.text()) : written.text();
    }
    if (!id.contains("/")) {
      return "";
    }
    String folder = id.substring(0, id.indexOf('/'));
    if (plan != null && !plan.contains(folder)) {
      Place place = Place.of(path);
      fields
          .values()
          .known(
              new Yaml.Scalar(folder, true, Source.near(place, folder)),
              plan,
              "a stage of this log, though a folder below entries is named so");
    }
    return plan == null ? stageName(folder) : folder;
  }

  /** An id that can stand in an address, where no plan gives one. */
  private static String stageName(String words) {
    return words.strip().replaceAll("[^\\p{L}\\p{M}\\p{N}_.]+", "-").replaceAll("^-|-$", "");
  }

  private List<Entry.Worked> worked(Fields fields, LocalDate date) {
    Yaml yaml = fields.find("time");
    if (yaml == null) {
      return List.of();
    }
    Values.Held held = fields.values().held(yaml, fields.label());
    WorkedReader reader = new WorkedReader(date, scope.zone(), scope.problems());
    List<Entry.Worked> worked = new ArrayList<>();
    for (Yaml.Scalar part : fields.values().words(held.value())) {
      worked.addAll(reader.read(part, held.label()));
    }
    return List.copyOf(worked);
  }

  private List<Entry.Use> used(Fields fields) {
    List<Entry.Use> used = new ArrayList<>();
    Yaml yaml = fields.find("used");
    if (yaml instanceof Yaml.Sequence list) {
      for (Yaml item : list.items()) {
        Fields use = Fields.of(item, scope, fields.label(), "material", "amount", "where", "under");
        use.require("material", "cedar_strip");
        Yaml.Scalar material = use.scalar("material");
        if (material != null) {
          add(use(material, use), used);
        }
      }
      return List.copyOf(used);
    }
    for (Yaml.Pair pair : fields.pairs("used")) {
      String word = pair.key().text();
      if (OF_USE.contains(word)) {
        scope.error(
            pair.key().place(),
            Sentence.of("\"{0}\" is said of one material, not beside it.", word),
            "Write such as used: {cedar_strip: {amount: 6, where: keel}}.");
      } else if (pair.value() instanceof Yaml.Mapping mapping) {
        add(
            use(pair.key(), new Fields(mapping, scope, fields.label(), "amount", "where", "under")),
            used);
      } else {
        Quantity amount = fields.values().quantity(pair.value(), Kind.ANY);
        if (amount != null) {
          add(use(pair.key(), amount, "", fields.label(), pair.value().place()), used);
        }
      }
    }
    return List.copyOf(used);
  }

  private static void add(Entry.@Nullable Use use, List<Entry.Use> used) {
    if (use != null) {
      used.add(use);
    }
  }

  private Entry.@Nullable Use use(Yaml.Scalar material, Fields fields) {
    fields.require("amount", "6");
    Marked<Quantity> amount = fields.quantity("amount", Kind.ANY);
    return amount == null
        ? null
        : use(material, amount.value(), fields.text("where", ""), fields.label(), amount.place());
  }

  private Entry.@Nullable Use use(
      Yaml.Scalar material, Quantity amount, String where, Label label, Place place) {
    Map<String, Unit> known = materials;
    String word = material.text();
    if (known != null) {
      if (new Values(scope).known(material, known.keySet(), "a material of stock.yaml") == null) {
        return null;
      }
      Unit bought = known.get(word);
      if (bought != null && !bought.isCompatible(amount.unit())) {
        scope.error(
            place,
            Sentence.of(
                "\"{0}\" was bought in {1}, but is used here in {2}.",
                word, StockReader.name(Quantity.of(1, bought)), StockReader.name(amount)),
            "Write the amount in a unit of the same kind.");
        return null;
      }
    }
    if (amount.value().signum() <= 0) {
      scope.error(place, "Nothing is used up here.", "Write an amount above 0.");
      return null;
    }
    return new Entry.Use(word, amount, where, label, material.place());
  }

  private List<Entry.Measurement> measured(Fields fields) {
    List<Entry.Measurement> measured = new ArrayList<>();
    for (Yaml.Pair pair : fields.pairs("measured")) {
      Fields inner = inner(pair, fields.label(), "is", "title", "under");
      Marked<Quantity> value = inner.quantity("is", Kind.ANY);
      if (fields.values().isFactName(pair.key()) && value != null) {
        measured.add(
            new Entry.Measurement(
                pair.key().text(),
                value.value(),
                inner.text("title", ""),
                inner.label(),
                pair.key().place()));
      }
    }
    return List.copyOf(measured);
  }

  private List<Entry.Weighing> weighed(Fields fields) {
    List<Entry.Weighing> weighed = new ArrayList<>();
    for (Yaml.Pair pair : fields.pairs("weighed")) {
      Fields inner = inner(pair, fields.label(), "is", "title", "x", "z", "under");
      Marked<Quantity> mass = inner.quantity("is", Kind.MASS);
      Marked<Quantity> x = inner.quantity("x", Kind.LENGTH);
      Marked<Quantity> z = inner.quantity("z", Kind.LENGTH);
      if (!fields.values().isFactName(pair.key()) || mass == null) {
        continue;
      }
      if (mass.value().value().signum() < 0) {
        scope.error(mass.place(), "A mass cannot be below 0.", "Correct the figure.");
        continue;
      }
      weighed.add(
          new Entry.Weighing(
              pair.key().text(),
              mass.value(),
              inner.text("title", ""),
              x == null ? null : x.value(),
              z == null ? null : z.value(),
              inner.label(),
              pair.key().place()));
    }
    return List.copyOf(weighed);
  }

  /** The group of keys that a value is, or stands for: {@code 412 g} is {@code {is: 412 g}}. */
  private Fields inner(Yaml.Pair pair, Label outer, String... keys) {
    if (pair.value() instanceof Yaml.Mapping mapping) {
      Fields fields = new Fields(mapping, scope, outer, keys);
      fields.require("is", "412 g");
      return fields;
    }
    Place place = pair.value().place();
    Yaml.Scalar is = new Yaml.Scalar("is", true, Source.near(place, "is"));
    Yaml.Mapping one = new Yaml.Mapping(List.of(new Yaml.Pair(is, pair.value())), place);
    return new Fields(one, scope, outer, keys);
  }
}
