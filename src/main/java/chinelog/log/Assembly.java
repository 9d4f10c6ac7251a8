package chinelog.log;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.reading.Fields;
import chinelog.log.reading.Inventory;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Yaml;
import chinelog.log.reading.YamlParser;
import chinelog.log.records.Answer;
import chinelog.log.records.Entry;
import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Readers;
import chinelog.log.records.Stage;
import chinelog.problem.Place;
import chinelog.problem.Problems;
import chinelog.quantity.Unit;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Reads the files of a log in the order in which they need each other, and puts them together. */
final class Assembly {

  private static final String[] KEYS = {
    "title",
    "subject",
    "kind",
    "scale",
    "maker",
    "client",
    "language",
    "zone",
    "currency",
    "inches",
    "closeness",
    "rate",
    "about",
    "hero",
    "theme",
    "paper",
    "leaf",
    "chapters",
    "patterns",
    "printer",
    "talk",
    "address",
    "licence",
    "credit-photos",
    "clocks",
    "budgets",
    "stages",
    "sheets",
    "stock",
    "agreements",
    "readers",
    "tell",
    "releases",
    "limits",
    "figures",
    "posts",
    "handover",
    "letter",
    "tables"
  };

  private final Inventory inventory;
  private final PhotoDays photoDays;
  private final Problems problems;
  private final Scope scope;
  private final Fields log;
  private final SortedMap<String, Agreement> agreements;
  private final SheetsReader sheets;
  private final boolean settled;

  Assembly(
      Inventory inventory, LocalDate today, ZoneId zone, PhotoDays photoDays, Problems problems) {
    this.inventory = inventory;
    this.photoDays = photoDays;
    this.problems = problems;
    boolean loose = inventory.isLoose();
    Scope bare = new Scope(inventory, today, zone, HeadReader.CURRENCY, List.of(), loose, problems);
    Yaml root = loose ? null : yaml("log.yaml");
    boolean empty = root == null && !problems.hasErrorIn("log.yaml");
    boolean unreadable = !loose && !(root instanceof Yaml.Mapping);
    if (unreadable && root != null) {
      Fields.mapping(root, bare);
    } else if (unreadable && empty) {
      problems.error(
          Place.of("log.yaml"),
          "This file says nothing.",
          "Write at least the title, such as \"title: Building Merrow\".");
    }
    this.settled = !unreadable;
    Yaml.Mapping mapping =
        root instanceof Yaml.Mapping m ? m : new Yaml.Mapping(List.of(), Place.of("log.yaml"));
    Fields first = new Fields(mapping, bare, Label.NONE, KEYS);
    this.agreements = AgreementReader.agreements(first, bare);
    Collection<String> named = List.copyOf(agreements.keySet());
    this.scope =
        new Scope(
            inventory,
            today,
            HeadReader.zone(first, zone, bare),
            HeadReader.currency(first, bare),
            unreadable ? null : named,
            loose,
            problems);
    this.log = new Fields(mapping, scope, Label.NONE, KEYS);
    this.sheets = new SheetsReader(unreadable ? null : log, agreements, scope);
  }

  /** Whether log.yaml could be read, or is not there. */
  boolean isSettled() {
    return settled;
  }

  Log log() {
    String name = String.valueOf(inventory.folder().toAbsolutePath().normalize().getFileName());
    Marked<String> title = new Marked<>(LogReader.title(name), Label.NONE, Place.of("log.yaml"));
    Head head = new HeadReader(log, scope).read(title);
    PlanReader plan = new PlanReader(log, scope);
    List<Stage> stages = plan.stages();
    List<Lot> stock = stock();
    FactsReader facts = new FactsReader(scope);
    Yaml factsRoot = yaml("facts.yaml");
    if (factsRoot != null) {
      facts.read(factsRoot);
    }
    List<PhotoFile> photos = new PhotosReader(scope).read();
    MissingDate missing = new MissingDate(scope, photoDays, photos, head);
    List<Entry> entries = entries(stages, stock, missing);
    if (!entries.isEmpty()) {
      AgreementReader.refuseOverBefore(entries.get(0).date(), log, agreements, scope);
    }
    List<Readers> readers = AgreementReader.readers(log, Set.copyOf(agreements.keySet()), scope);
    AgreementReader.own().forEach(a -> agreements.put(a.id(), a));
    List<String> readerIds = readers.stream().map(Readers::id).toList();
    return new Log(
        inventory.folder(),
        head,
        stages.isEmpty() ? stagesOf(entries) : stages,
        agreements,
        readers,
        new ReleaseReader(scope, readerIds).read(log),
        plan.limits(),
        plan.posts(),
        plan.handover(),
        facts.statements(),
        facts.requests(),
        stock,
        new TableReader(log, scope).read(),
        entries,
        photos,
        // Where nothing can be read, all agreements hold; the problem is noted already.
        sheets.sheets(Label.of(agreements.keySet())));
  }

  /** What the maker said to questions. */
  List<Answer> answers() {
    Yaml root = yaml("answers.yaml");
    return root == null ? List.of() : new AnswersReader(scope).read(root);
  }

  private @Nullable Yaml yaml(String name) {
    Path file = inventory.settings().get(name);
    Source source = file == null ? null : inventory.read(file, name, problems);
    return source == null ? null : YamlParser.parse(source, problems);
  }

  private List<Lot> stock() {
    Yaml root = yaml("stock.yaml");
    return root == null ? List.of() : new StockReader(scope).read(root);
  }

  private List<Entry> entries(List<Stage> stages, List<Lot> stock, MissingDate missing) {
    List<String> ids = stages.stream().map(Stage::id).toList();
    boolean planned = !ids.isEmpty() && scope.agreements() != null;
    EntryReader reader = new EntryReader(scope, planned ? ids : null, materials(stock));
    List<Entry> entries = new ArrayList<>();
    for (Map.Entry<String, Path> file : inventory.entries().entrySet()) {
      Source source = inventory.read(file.getValue(), file.getKey(), problems);
      if (source != null) {
        Path path = file.getValue();
        List<Entry> read =
            reader.read(file.getKey(), source, text -> missing.find(path, text, entries));
        if (!NewLog.isFirstNote(source.text())) {
          entries.addAll(read);
        }
      }
    }
    Comparator<Entry> order = Comparator.comparing(Entry::date).thenComparing(Entry::id);
    entries.sort(order);
    List<Entry> all = withHours(entries, stages);
    all.sort(order);
    WorkedReader.refuseOverlaps(all, problems);
    return all;
  }

  private List<Entry> withHours(List<Entry> entries, List<Stage> stages) {
    Path file = inventory.settings().get(Entry.HOURS_FILE);
    Source source = file == null ? null : inventory.read(file, Entry.HOURS_FILE, problems);
    return source == null ? entries : new HoursReader(scope, stages).addTo(entries, source);
  }

  /** The unit of each material; null where there is no stock.yaml to know them by. */
  private @Nullable Map<String, Unit> materials(List<Lot> stock) {
    if (stock.isEmpty()) {
      return null;
    }
    Map<String, Unit> units = new TreeMap<>();
    stock.forEach(lot -> units.putIfAbsent(lot.material(), lot.bought().unit()));
    return units;
  }

  /** Without a plan, the stages are those that the entries name, in the order begun. */
  private List<Stage> stagesOf(List<Entry> entries) {
    List<Stage> stages = new ArrayList<>();
    for (Entry entry : entries) {
      String id = entry.stage();
      if (!id.isEmpty() && stages.stream().noneMatch(s -> s.id().equals(id))) {
        stages.add(
            new Stage(id, stageTitle(id), List.of(), null, null, null, Label.NONE, entry.place()));
      }
    }
    return stages;
  }

  /** A number that only puts folders in order is no part of a stage's name. */
  private static String stageTitle(String id) {
    String words = id.replaceFirst("^[0-9]+[-_. ]+", "");
    return LogReader.title(words.isEmpty() ? id : words);
  }
}
