package chinelog.withhold;

import chinelog.edition.Edition;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.PostLength;
import chinelog.log.records.PostPlan;
import chinelog.reckon.Instalments;
import chinelog.reckon.Pace;
import chinelog.withhold.question.Sight;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Divides the entries that are told into the instalments of the series. */
final class PostMaker {

  /** So few entries are a post each where the log plans none. */
  private static final int MOST_BY_THEMSELVES = 3;

  private final Account account;
  private final Sight sight;
  private final PlateMaker plates;
  private final Quotes quotes;
  private final Map<String, Edition.Entry> told = new LinkedHashMap<>();
  private final Slugs slugs = new Slugs();

  /** Words of entries that were counted already, by their id. */
  private final Map<String, Integer> counted = new HashMap<>();

  private final List<Edition.Post> posts = new ArrayList<>();

  /**
   * @param entries those that are told, by date
   * @param told the same as the edition tells them
   * @param plates those that the readers see
   */
  PostMaker(
      Account account,
      List<Entry> entries,
      List<Edition.Entry> told,
      PlateMaker plates,
      Quotes quotes) {
    this.account = account;
    this.sight = account.sight();
    this.plates = plates;
    this.quotes = quotes;
    for (int i = 0; i < entries.size(); i++) {
      this.told.put(entries.get(i).id(), told.get(i));
    }
  }

  /**
   * The posts that the log plans; what none of them tells yet follows by itself. Where it plans
   * none, the entries are divided into posts of about equal length.
   */
  List<Edition.Post> make(Log log) {
    // What a withheld post would have told is told as if the log did not plan it.
    List<PostPlan> plans =
        log.posts().stream()
            .filter(p -> account.sees(p.label(), p.place(), Register.Kind.POST, ""))
            .toList();
    if (plans.isEmpty() && (log.head().postLength() != null || told.size() > MOST_BY_THEMSELVES)) {
      divide(List.copyOf(told.values()), log.head().postLength());
      return List.copyOf(posts);
    }
    Set<String> planned = new HashSet<>();
    for (PostPlan plan : plans) {
      planned.addAll(plan.entries());
      add(
          quotes.set(plan.title()),
          quotes.set(plan.standfirst()),
          plan.entries().stream()
              .flatMap(id -> Optional.ofNullable(told.get(id)).stream())
              .toList(),
          opening(plan),
          sight.under(plan.label()));
    }
    told.forEach(
        (id, entry) -> {
          if (!planned.contains(id)) {
            add(entry.title(), "", List.of(entry), null, entry.under());
          }
        });
    return List.copyOf(posts);
  }

  private int words(Edition.Entry entry) {
    return counted.computeIfAbsent(entry.id(), id -> words(entry.text()));
  }

  /** Number of words in blocks, footnotes and captions left out. */
  private static int words(List<Text.Block> blocks) {
    return blocks.stream()
        .mapToInt(
            block ->
                words(block.children())
                    + block.lines().stream()
                        .mapToInt(line -> Pace.words(Text.plainText(line, "")))
                        .sum())
        .sum();
  }

  private void divide(List<Edition.Entry> entries, @Nullable PostLength wanted) {
    List<Integer> words = entries.stream().map(this::words).toList();
    int from = 0;
    for (int size : Instalments.of(words, wanted)) {
      List<Edition.Entry> own = entries.subList(from, from + size);
      List<String> under =
          own.stream().flatMap(e -> e.under().stream()).distinct().sorted().toList();
      add(own.get(0).title(), "", own, null, under);
      from += size;
    }
  }

  private void add(
      String title,
      String standfirst,
      List<Edition.Entry> own,
      @Nullable Plate opening,
      List<String> under) {
    if (own.isEmpty()) {
      return;
    }
    int count = own.stream().mapToInt(this::words).sum();
    posts.add(
        new Edition.Post(
            slugs.make(title),
            posts.size() + 1,
            title,
            standfirst,
            own.stream().map(Edition.Entry::date).max(Comparator.naturalOrder()).orElseThrow(),
            opening == null ? firstPlate(own) : opening,
            own.stream().map(Edition.Entry::id).toList(),
            count,
            Pace.SILENT.wholeMinutes(count),
            under));
  }

  private @Nullable Plate opening(PostPlan plan) {
    Plate opening = plan.opening() == null ? null : plates.byPath().get(plan.opening());
    return opening == null || plates.isFitForHead(opening) ? opening : null;
  }

  private @Nullable Plate firstPlate(List<Edition.Entry> own) {
    return own.stream()
        .flatMap(
            e -> {
              Set<Plate> all = new LinkedHashSet<>(PlatesIn.blocks(e.text()));
              all.addAll(e.plates());
              return all.stream();
            })
        .filter(plates::isFitForHead)
        .findFirst()
        .orElse(null);
  }
}
