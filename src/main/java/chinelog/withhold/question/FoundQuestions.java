package chinelog.withhold.question;

import chinelog.log.records.Answer;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The questions that were found for whatever readers, and what is left of them to be asked. */
final class FoundQuestions {

  /** Begins the names of these questions; others are asked elsewhere. */
  private static final String OWN = "q";

  private static final int MOST_NAMED = 5;

  private final LocalDate asOf;
  private final SortedMap<String, Question> found = new TreeMap<>();
  private final SortedMap<String, SortedSet<String>> readersOf = new TreeMap<>();
  private final SortedSet<CharSequence> unguarded = new TreeSet<>(CharSequence::compare);
  private int unguardedReckoned;

  /** Ids of the questions about each photograph that no note shows. */
  private final SortedMap<String, SortedSet<String>> doubtful = new TreeMap<>();

  FoundQuestions(LocalDate asOf) {
    this.asOf = asOf;
  }

  void add(Question question, String readers) {
    found.putIfAbsent(question.id(), question);
    readersOf.computeIfAbsent(question.id(), id -> new TreeSet<>()).add(readers);
  }

  /** Adds a question about a photograph that no note shows. */
  void addDoubt(String photograph, Question question, String readers) {
    add(question, readers);
    doubtful.computeIfAbsent(photograph, p -> new TreeSet<>()).add(question.id());
  }

  /** Notes what nothing looks for. */
  void unguarded(CharSequence what) {
    unguarded.add(what);
  }

  /** Notes how many figures that are worked out nothing looks for. */
  void unguardedReckoned(int many) {
    unguardedReckoned = Math.max(unguardedReckoned, many);
  }

  /**
   * What is left to be asked.
   *
   * @param all whether it was looked for all readers, so that what was not found is not there
   */
  Questions.Asked asked(List<Answer> answers, boolean all) {
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
    List<Questions.Asking> open = groups.values().stream().map(this::asking).toList();
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
    return new Questions.Asked(
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

  private Questions.Asking asking(List<Question> group) {
    Question first = group.get(0);
    List<String> ids = group.stream().map(Question::id).distinct().toList();
    return new Questions.Asking(ids, first.found().toString(), first.label(), problem(group));
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
