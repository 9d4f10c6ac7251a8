package chinelog.withhold.question;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Answer;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.log.records.Sheet;
import chinelog.log.records.Table;
import chinelog.photo.album.Album;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.reckon.Origin;
import chinelog.reckon.Similitude;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Asks about everything in a log that may need a mark, for some readers on a day. */
public final class Questions {

  private final Log log;
  private final Facts facts;
  private final Album album;
  private final LocalDate asOf;
  private final List<Passage> passages;
  private final Locator locator;
  private final Map<String, Reading> readings = new HashMap<>();
  private final Set<String> writtenSmall = new HashSet<>();
  private final SortedMap<String, Question> found = new TreeMap<>();
  private final SortedMap<String, SortedSet<String>> readersOf = new TreeMap<>();
  private final SortedSet<CharSequence> unguarded = new TreeSet<>(CharSequence::compare);
  private int unguardedReckoned;

  /** Ids of the questions about each photograph that no note shows. */
  private final SortedMap<String, SortedSet<String>> doubtful = new TreeMap<>();

  private Questions(Log log, Facts facts, Album album, LocalDate asOf) {
    this.log = log;
    this.facts = facts;
    this.album = album;
    this.asOf = asOf;
    this.passages = LogTexts.of(log, album);
    this.locator = new Locator(log.folder());
    for (Passage passage : passages) {
      if (passage.role() != Passage.Role.NAME) {
        passage.pieces().forEach(p -> small(p.text(), writtenSmall));
      }
    }
  }

  /**
   * What is asked.
   *
   * @param questions one for each thing found, with the places of all of its kind, worst first
   * @param reminders of answers that are about nothing any more, and of what nothing looks for
   * @param found how many things were found that no answer lets stand
   * @param standing what was found and may stand, by the maker's answers, such as "Mrs White"
   * @param sentences in which anything was found
   * @param settled those of them in which all that was found may stand
   * @param photographs paths of those of which the maker said that they may be shown
   */
  public record Asked(
      List<Asking> questions,
      List<Problem> reminders,
      int found,
      Set<String> standing,
      Set<String> sentences,
      Set<String> settled,
      Set<String> photographs) {

    /** Where nothing was asked. */
    public static final Asked NOTHING =
        new Asked(List.of(), List.of(), 0, Set.of(), Set.of(), Set.of(), Set.of());

    /** The questions in words. */
    public List<Problem> open() {
      return questions.stream().map(Asking::problem).toList();
    }
  }

  /**
   * One question, which one answer settles.
   *
   * @param ids to be named in the answer
   * @param found what stands at the place, such as "187 mm"
   * @param label what it may give away is under
   * @param problem the question in words, with its place
   */
  public record Asking(List<String> ids, String found, Label label, Problem problem) {}

  /**
   * Asks.
   *
   * @param readers those for whom editions are to be made
   * @param answers what the maker said before
   * @param asOf agreements are in force and releases are given as on this day
   * @param keptBack what {@link #keptBack} was then for some readers; nothing if never
   */
  public static Asked ask(
      Log log,
      Facts facts,
      Album album,
      Collection<Readers> readers,
      List<Answer> answers,
      LocalDate asOf,
      Function<Readers, SortedMap<String, String>> keptBack) {
    Questions questions = new Questions(log, facts, album, asOf);
    for (Readers group : readers) {
      Eyes eyes = new Eyes(log, group, asOf);
      questions.lookFor(eyes);
      KeptBack.lost(log, facts, album, questions.passages, eyes, keptBack.apply(group))
          .forEach(q -> questions.add(q, group.id()));
    }
    return questions.asked(answers, readers.containsAll(log.readers()));
  }

  /** Words of everyday speech, which name nobody by themselves even if a name holds them. */
  public static Set<String> everydayWords() {
    return CommonWords.listed();
  }

  /** What some readers do not see on a day, by hash, with the agreements it is under. */
  public static SortedMap<String, String> keptBack(
      Log log, Facts facts, Album album, Readers readers, LocalDate asOf) {
    return KeptBack.now(log, facts, album, LogTexts.of(log, album), new Eyes(log, readers, asOf));
  }

  private void add(Question question, String readers) {
    found.putIfAbsent(question.id(), question);
    readersOf.computeIfAbsent(question.id(), id -> new TreeSet<>()).add(readers);
  }

  private void lookFor(Eyes eyes) {
    if (log.agreements().keySet().stream().allMatch(a -> eyes.see(Label.of(a)))) {
      ended(eyes);
      return;
    }
    List<SeenText> seen = new ArrayList<>();
    for (Passage passage : passages) {
      String text = passage.seen(eyes);
      if (!text.isBlank()) {
        seen.add(new SeenText(passage, readings.computeIfAbsent(text, Reading::new)));
      }
    }
    CommonWords common = new CommonWords(seen);
    NameWatch names = new NameWatch(log.head().locale(), common);
    PassageWatch words = new PassageWatch(common);
    FigureWatch figures =
        new FigureWatch(log.head().locale(), log.head().closeness().doubleValue());
    DayWatch days = days(eyes);
    fill(eyes, seen, names, words, figures);
    for (SeenText text : seen) {
      if (text.passage().role() == Passage.Role.NAME) {
        // Who are party to one agreement know who gives leave in it, and none of the others.
        if (text.passage().pieces().stream().allMatch(p -> p.label().isNone())) {
          names.findInName(text).forEach(hit -> add(question(text, hit), eyes.readers()));
        }
        continue;
      }
      List<Hit> hits = new ArrayList<>(names.find(text));
      hits.addAll(words.find(text));
      hits.addAll(figures.find(text));
      hits.addAll(days.find(text));
      for (Hit hit : hits) {
        add(question(text, hit), eyes.readers());
      }
    }
    PhotoWatch.find(log, album, eyes)
        .forEach(
            (path, question) -> {
              add(question, eyes.readers());
              doubtful.computeIfAbsent(path, p -> new TreeSet<>()).add(question.id());
            });
    ParagraphWatch.find(log, eyes).forEach(q -> add(q, eyes.readers()));
    TableWatch tables = new TableWatch(log, eyes);
    tables.findIn(seen, (text, hit) -> add(question(text, hit), eyes.readers()));
    tables.findInTables().forEach(q -> add(q, eyes.readers()));
    new AliasWatch(log, facts, eyes).find().forEach(q -> add(q, eyes.readers()));
    ended(eyes);
    unguarded.addAll(names.unguarded());
    unguarded.addAll(figures.unguarded());
    unguardedReckoned = Math.max(unguardedReckoned, figures.unguardedReckoned());
  }

  private DayWatch days(Eyes eyes) {
    DayWatch days = new DayWatch();
    for (Entry entry : log.entries()) {
      if (eyes.see(Release.Kind.ENTRY, entry.id(), entry.label())) {
        days.show(entry.date());
      } else {
        days.withhold(
            entry.date(), Sentence.of("the day of the note {0}", entry.id()), entry.label());
      }
    }
    for (Agreement a : log.agreements().values()) {
      Label own = Label.of(a.id());
      if (!eyes.see(own)) {
        days.withhold(a.from(), Sentence.of("the day on which {0} was made", a.id()), own);
        days.withhold(a.until(), Sentence.of("the day on which {0} ends", a.id()), own);
      }
    }
    return days;
  }

  private Question question(SeenText text, Hit hit) {
    String found = text.text().substring(hit.start(), hit.end()).replaceAll("\\s+", " ").strip();
    String sentence = Letters.sentence(text.text(), hit.start(), hit.end()).strip();
    return Question.of(
        hit.kind(),
        log,
        locator.find(text.passage().place(), found),
        found,
        sentence,
        hit.secret(),
        hit.label());
  }

  /** Tells the watches what is shown by right and what is withheld. */
  private void fill(
      Eyes eyes, List<SeenText> seen, NameWatch names, PassageWatch words, FigureWatch figures) {
    for (SeenText text : seen) {
      if (text.passage().role() == Passage.Role.NAME) {
        names.show(text.text());
        words.show(text.text());
      }
    }
    for (Passage passage : passages) {
      for (Passage.Piece piece : passage.unseen(eyes)) {
        CharSequence what = passage.what();
        switch (passage.role()) {
          case NAME -> {
            names.withhold(piece.text(), what, piece.label());
            words.withholdNumbers(piece.text(), what, piece.label());
          }
          case TERM -> words.withholdNumbers(piece.text(), what, piece.label());
          case PROSE, PROMISE -> {
            boolean promise = passage.role() == Passage.Role.PROMISE;
            CharSequence of =
                promise
                    ? what
                    : Sentence.of("the passage under {0} of {1}", piece.label().inWords(), what);
            boolean guarded = words.withhold(piece.text(), of, piece.label());
            if (!guarded && !promise) {
              unguarded.add(of);
            }
            names.withholdNamesIn(piece.text(), of, piece.label(), writtenSmall);
            figures.withholdFiguresIn(piece.text(), of, piece.label());
          }
        }
      }
    }
    for (Sheet sheet : log.sheets()) {
      Label label = eyes.afterReleases(Release.Kind.SHEET, sheet.path(), sheet.label());
      if (!eyes.see(label)) {
        CharSequence what = Sentence.of("the sheet {0}", sheet.path());
        words.withholdNumbers(sheet.title(), what, label);
        if (sheet.title().contains(" ")) {
          words.withhold(sheet.title(), what, label);
        }
      }
    }
    figures(eyes, figures);
  }

  private static void small(String text, Set<String> small) {
    for (Letters.Word word : Letters.words(text)) {
      if (!word.hasCapital()) {
        small.add(word.letters());
      }
    }
  }

  private void figures(Eyes eyes, FigureWatch figures) {
    for (Table table : log.tables()) {
      cells(table, eyes, figures);
      columns(table, eyes, figures);
    }
    Optional<Quantity> scale = facts.find("scale").map(Fact::value);
    for (Fact fact : facts.byName().values()) {
      String titles = Kinds.called(fact);
      if (eyes.see(Release.Kind.FACT, fact.name(), fact.label())) {
        figures.show(fact.value(), titles);
        if (fact.origin() != Origin.RECKONED && Kinds.isSpokenOf(fact) && eyes.see(fact.label())) {
          boolean vessel = Kinds.isOfTheVessel(fact);
          figures
              .findTwin(fact.value(), titles, vessel)
              .ifPresent(t -> add(twin(fact, t), eyes.readers()));
        }
        continue;
      }
      Label label = eyes.afterReleases(Release.Kind.FACT, fact.name(), fact.label());
      if (fact.name().equals("scale")) {
        figures.withholdScale(fact.value().value(), label);
      } else if (Kinds.isSpokenOf(fact)) {
        CharSequence what =
            Sentence.of("the figure {0}, {1}", fact.name(), Kinds.show(log, fact.value()));
        boolean firm = fact.origin() != Origin.RECKONED;
        figures.withhold(what, fact.value(), label, titles, firm, false);
        if (Kinds.isOfTheVessel(fact) && scale.isPresent() && isOfTheShape(fact)) {
          boolean full = Kinds.isFullSize(fact);
          Optional<Quantity> other =
              full
                  ? Similitude.findModel(fact.value(), scale.get())
                  : Similitude.findFullSize(fact.value(), scale.get());
          other.ifPresent(
              q ->
                  figures.withhold(
                      Sentence.of(full ? "{0}, on the model" : "{0}, at full size", what),
                      q,
                      label,
                      titles,
                      false,
                      false));
        }
      }
    }
    Marked<Quantity> rate = log.head().rate();
    if (rate != null && !eyes.see(rate.label())) {
      figures.withhold("the rate", rate.value(), rate.label(), "rate hour", true, false);
    }
    for (Lot lot : log.stock()) {
      Marked<Quantity> price = lot.price();
      if (price != null && !eyes.see(lot.label().join(price.label()))) {
        String titles = "price " + lot.material() + " " + lot.title();
        Label label = lot.label().join(price.label());
        figures.withhold(
            Sentence.of("the price of {0}", lot.material()),
            price.value(),
            label,
            titles,
            true,
            false);
      }
    }
  }

  private Question twin(Fact fact, FigureWatch.Twin twin) {
    String found = fact.name() + ", " + Kinds.show(log, fact.value());
    return Question.of(
        Question.Kind.ALIAS, log, fact.place(), found, found, twin.what(), twin.label());
  }

  /** Whether a fact has a counterpart at the other size. */
  private boolean isOfTheShape(Fact fact) {
    return Kinds.isFullSize(fact) || Similitude.hasCounterpart(fact, log);
  }

  private static void cells(Table table, Eyes eyes, FigureWatch figures) {
    for (Table.Row row : table.rows()) {
      for (int i = 0; i < row.cells().size(); i++) {
        Quantity value = row.cells().get(i).quantity();
        Table.Column column = table.columns().get(i);
        Label label = table.label().join(row.label()).join(column.label());
        if (value != null && !eyes.see(label)) {
          figures.withhold(
              Sentence.of(
                  "a cell of the table {0}, {1} {2}",
                  table.name(), value.value(), value.unit().symbol()),
              value,
              label,
              table.name() + " " + column.name(),
              true,
              true);
        }
      }
    }
  }

  /** What the figures of a column come to that is withheld, in whole or in part. */
  private static void columns(Table table, Eyes eyes, FigureWatch figures) {
    for (int i = 0; i < table.columns().size(); i++) {
      Table.Column column = table.columns().get(i);
      List<Quantity> values = new ArrayList<>();
      Label hidden = Label.NONE;
      for (Table.Row row : table.rows()) {
        Quantity value = row.cells().get(i).quantity();
        Label label = table.label().join(row.label()).join(column.label());
        if (value != null) {
          values.add(value);
          hidden = eyes.see(label) ? hidden : hidden.join(label);
        }
      }
      if (!hidden.isNone() && values.size() > 1) {
        figures.withholdColumn(table.name(), column.name(), values, hidden);
      }
    }
  }

  /** An agreement that has ended frees what it covered: a wrong year or clock would, too. */
  private void ended(Eyes eyes) {
    for (Agreement agreement : log.agreements().values()) {
      boolean party =
          log.readers().stream()
              .anyMatch(r -> r.id().equals(eyes.readers()) && r.partyTo().contains(agreement.id()));
      if (!party && agreement.isFreeOn(asOf)) {
        Label label = Label.of(agreement.id());
        add(
            Question.of(
                Question.Kind.ENDED,
                log,
                Place.of("log.yaml"),
                Sentence.of(
                    "the end of {0} on {1}", agreement.id(), String.valueOf(agreement.until())),
                "",
                "what it covered, which nothing keeps back since that day",
                label),
            eyes.readers());
      }
    }
  }

  private Asked asked(List<Answer> answers, boolean all) {
    List<Problem> reminders = new ArrayList<>();
    Set<String> answered = new HashSet<>();
    for (Answer answer : answers) {
      List<String> gone =
          answer.questions().stream()
              .filter(id -> !found.containsKey(id) && id.startsWith(OWN))
              .sorted()
              .toList();
      answered.addAll(answer.questions());
      if (all && gone.size() == answer.questions().size()) {
        reminders.add(
            Problem.reminder(
                answer.place(),
                "This answer is void: what it was about has changed or is gone.",
                "Take it out."));
      }
    }
    Map<String, List<Question>> groups = new LinkedHashMap<>();
    found.values().stream()
        .filter(q -> !answered.contains(q.id()))
        .sorted(Comparator.comparing(Question::kind).thenComparing(Question::place))
        .forEach(
            q ->
                groups
                    .computeIfAbsent(
                        q.kind() + "\0" + q.secret() + "\0" + Letters.fold(q.found().toString()),
                        k -> new ArrayList<>())
                    .add(q));
    List<Asking> open = groups.values().stream().map(this::asking).toList();
    if (all && (!unguarded.isEmpty() || unguardedReckoned > 0)) {
      reminders.add(
          Problem.reminder(
              Place.of("log.yaml"),
              Sentence.of(
                  "Nothing looks in open texts for what is too short or too common to be told"
                      + " from other words: {0}.",
                  String.join("; ", notLookedFor())),
              "See for yourself that no open text holds it."));
    }
    return new Asked(
        open,
        List.copyOf(reminders),
        groups.values().stream().mapToInt(List::size).sum(),
        found.values().stream()
            .filter(q -> answered.contains(q.id()))
            .map(q -> q.found().toString())
            .collect(Collectors.toUnmodifiableSet()),
        sentences(q -> true),
        settled(answered),
        doubtful.entrySet().stream()
            .filter(d -> answered.containsAll(d.getValue()))
            .map(Map.Entry::getKey)
            .collect(Collectors.toUnmodifiableSet()));
  }

  /** The sentences about which nothing is left to be asked. */
  private Set<String> settled(Set<String> answered) {
    Set<String> settled = new HashSet<>(sentences(q -> true));
    settled.removeAll(sentences(q -> !answered.contains(q.id())));
    return Set.copyOf(settled);
  }

  private Set<String> sentences(Predicate<Question> which) {
    return found.values().stream()
        .filter(q -> q.kind() != Question.Kind.PICTURE && !q.about().isEmpty())
        .filter(which)
        .map(Question::about)
        .collect(Collectors.toUnmodifiableSet());
  }

  private List<CharSequence> notLookedFor() {
    List<CharSequence> all = new ArrayList<>(unguarded.stream().limit(MOST_NAMED).toList());
    if (unguarded.size() > MOST_NAMED) {
      all.add(Sentence.of("{0} more of what is written", unguarded.size() - MOST_NAMED));
    }
    if (unguardedReckoned > 0) {
      all.add(
          unguardedReckoned == 1
              ? "1 figure that is worked out"
              : Sentence.of("{0} figures that are worked out", unguardedReckoned));
    }
    return all;
  }

  /** Begins the names of these questions; others are asked elsewhere. */
  private static final String OWN = "q";

  private static final int MOST_NAMED = 5;

  private Asking asking(List<Question> group) {
    Question first = group.get(0);
    List<String> ids = group.stream().map(Question::id).distinct().toList();
    return new Asking(ids, first.found().toString(), first.label(), problem(group));
  }

  private Problem problem(List<Question> group) {
    Question first = group.get(0);
    SortedSet<String> readers = new TreeSet<>();
    group.forEach(q -> readers.addAll(readersOf.getOrDefault(q.id(), new TreeSet<>())));
    String ids = group.stream().map(Question::id).distinct().collect(Collectors.joining(", "));
    String places =
        group.stream()
            .skip(1)
            .map(q -> q.place().toString())
            .distinct()
            .limit(MOST_NAMED)
            .collect(Collectors.joining(", "));
    Sentence what =
        Sentence.of("{0} Seen by {1}.", QuestionWords.what(first), String.join(", ", readers));
    if (!places.isEmpty()) {
      boolean more = group.size() - 1 > MOST_NAMED;
      what =
          Sentence.of(
              "{0} {1}",
              what, Sentence.of(more ? "Also at {0} and elsewhere." : "Also at {0}.", places));
    }
    Sentence remedy =
        Sentence.of(
            group.size() == 1
                ? "{0} If it may stand, write into answers.yaml: {1}"
                : "{0} If each of the {2} may stand, write into answers.yaml: {1}",
            QuestionWords.remedy(first),
            "- {questions: [" + ids + "], answer: may-stand, reason: \u2026, on: " + asOf + "}",
            group.size());
    return Problem.question(first.place(), what, remedy);
  }
}
