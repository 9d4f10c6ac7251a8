package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.Like;
import chinelog.edition.Diagram;
import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.log.records.Sheet;
import chinelog.log.records.Statement;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.View;
import chinelog.reckon.Facts;
import chinelog.reckon.Reckoner;
import chinelog.withhold.question.Sight;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;

/**
 * Non-interference (Goguen and Meseguer, 1982; tested by pairs as in Hritcu and others, "Testing
 * Noninterference, Quickly", 2013): two logs that differ only in what readers may not see give
 * those readers the same edition.
 */
@Order(2)
class TwoRunTest {

  private static final int PAIRS = Integer.getInteger("chinelog.pairs", 160);
  private static final int HISTORIES = Math.max(40, PAIRS / 50);
  private static final long FIRST = Long.getLong("chinelog.first-pair", 0);
  private static final AtomicInteger COMPARED = new AtomicInteger();
  private static final Coverage COVERAGE = new Coverage();
  private static final Map<Class<?>, List<Method>> PARTS = new ConcurrentHashMap<>();

  @Test
  void editionsOfTwinsAreEqual() {
    List<String> mismatches =
        LongStream.range(FIRST, FIRST + PAIRS)
            .parallel()
            .mapToObj(TwoRunTest::compare)
            .flatMap(Optional::stream)
            .toList();
    System.out.print(System.getProperty("chinelog.coverage") == null ? "" : COVERAGE.inWords());
    assertThat(COMPARED.get()).isGreaterThan(PAIRS * 2 / 3);
    assertThat(COVERAGE.missing()).as("places where no secret lay").isEmpty();
    assertThat(mismatches.size()).as(() -> String.join("\n", mismatches)).isZero();
  }

  private static Optional<String> compare(long seed) {
    String readers = seed % 3 == 0 ? "client" : "public";
    try {
      Made one = make(seed, 1000 + seed, readers);
      Made other = make(seed, 900_000 + seed, readers);
      if (one.stopped() || other.stopped() || !one.named().equals(other.named())) {
        // A text of one of them names a fact that is nowhere, or nowhere that may be told of.
        return Optional.empty();
      }
      COMPARED.incrementAndGet();
      return one.text().equals(other.text())
          ? Optional.empty()
          : Optional.of(
              "pair " + seed + " for " + readers + firstDifference(one.text(), other.text()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String firstDifference(String one, String other) {
    int at = 0;
    while (at < Math.min(one.length(), other.length()) && one.charAt(at) == other.charAt(at)) {
      at++;
    }
    int from = Math.max(0, at - 300);
    return " differs after\n"
        + one.substring(from, at)
        + "\n--- one:\n"
        + one.substring(at, Math.min(one.length(), at + 200))
        + "\n--- other:\n"
        + other.substring(at, Math.min(other.length(), at + 200));
  }

  /**
   * The same for a second edition, for which the figures of the first are known: between the two,
   * entries come, a release is given and one taken back, formulas change, an agreement ends.
   */
  @Test
  void editionsAndMessagesOfTwinsAreEqualTheSecondTime() {
    AtomicInteger compared = new AtomicInteger();
    AtomicInteger published = new AtomicInteger();
    List<String> mismatches =
        LongStream.range(FIRST, FIRST + HISTORIES)
            .parallel()
            .mapToObj(seed -> compareTwice(seed, compared, published))
            .flatMap(Optional::stream)
            .toList();
    assertThat(compared.get()).isGreaterThan(HISTORIES / 2);
    assertThat(published.get()).isGreaterThan(HISTORIES / 10);
    assertThat(mismatches.size()).as(() -> String.join("\n", mismatches)).isZero();
  }

  private static Optional<String> compareTwice(
      long seed, AtomicInteger compared, AtomicInteger published) {
    String readers = seed % 3 == 0 ? "client" : "public";
    try {
      Twice one = twice(seed, 1000 + seed, readers);
      Twice other = twice(seed, 900_000 + seed, readers);
      if (one.stopped() || other.stopped() || !one.named().equals(other.named())) {
        return Optional.empty();
      }
      compared.incrementAndGet();
      boolean out = one.errors().isEmpty() && other.errors().isEmpty();
      if (out) {
        published.incrementAndGet();
      }
      String mine = one.text() + (out ? one.reminders() : "");
      String theirs = other.text() + (out ? other.reminders() : "");
      return mine.equals(theirs)
          ? Optional.empty()
          : Optional.of("pair " + seed + " for " + readers + firstDifference(mine, theirs));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Two editions, one after the other, with the figures that each adds to the ledger.
   *
   * @param errors for which they would not be published, or not without a change to the log
   */
  private record Twice(
      String text,
      List<String> named,
      boolean stopped,
      List<String> errors,
      List<String> reminders) {}

  private static Twice twice(long seed, long secretSeed, String id) throws IOException {
    Set<String> cleared = id.equals("client") ? Set.of("lines") : Set.of();
    RandomBuild.Build build = new RandomBuild(seed, secretSeed, cleared, new Coverage()).make();
    Map<LocalDate, Log> days = new TreeMap<>();
    days.put(RandomBuild.EARLY, build.log().until(RandomBuild.EARLY));
    days.put(RandomBuild.AS_OF, later(build.log(), seed));
    StringBuilder text = new StringBuilder();
    List<String> named = new ArrayList<>();
    List<String> errors = new ArrayList<>();
    List<String> reminders = new ArrayList<>();
    List<PrintedFigure> known = new ArrayList<>();
    boolean stopped = false;
    for (Map.Entry<LocalDate, Log> day : days.entrySet()) {
      Log log = day.getValue();
      Readers readers = readers(log, id);
      Facts facts = Reckoner.reckon(log).facts();
      EditionMaker maker =
          new EditionMaker(
              new WholeLog(log, facts),
              build.album(),
              new Blank(),
              readers,
              day.getKey(),
              build.mayShow(),
              Correspondence.NONE);
      Withholder.Withheld made = maker.account(maker.edition(), known);
      known.addAll(made.printed());
      tell(made.edition().contents(), text);
      tell(made.printed(), text);
      named.addAll(named(build, facts));
      stopped |= !maker.holes().isEmpty() || isOnlyTold(build, log, facts, readers, day.getKey());
      made.problems().forEach(p -> (p.isError() ? errors : reminders).add(p.toString()));
    }
    return new Twice(text.toString(), named, stopped, errors, reminders);
  }

  /** A log in which formulas were changed, and a release taken back. */
  private static Log later(Log log, long seed) {
    List<Release> releases = new ArrayList<>(log.releases());
    if (seed % 2 == 0) {
      releases.stream()
          .filter(r -> r.readers().contains("public"))
          .findFirst()
          .ifPresent(releases::remove);
    }
    List<Statement> statements =
        log.statements().stream()
            .map(s -> seed % 3 == 0 ? s : with(s, s.expression().replace("2 * ", "4 * ")))
            .map(s -> seed % 5 == 0 ? s : with(s, s.expression().replace("3 * ", "5 * ")))
            .toList();
    return Like.but(log, "releases", releases, "statements", statements);
  }

  private static Statement with(Statement s, String is) {
    return Like.but(s, "expression", is);
  }

  private static Readers readers(Log log, String id) {
    return log.readers().stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow();
  }

  @Test
  void twinsReallyDiffer() throws IOException {
    int differing = 0;
    for (long seed = 0; seed < 100; seed++) {
      Set<String> cleared = seed % 3 == 0 ? Set.of("lines") : Set.of();
      String one = full(new RandomBuild(seed, 1000 + seed, cleared, new Coverage()).make());
      String other = full(new RandomBuild(seed, 900_000 + seed, cleared, new Coverage()).make());
      differing += one.equals(other) ? 0 : 1;
    }
    assertThat(differing).isGreaterThan(95);
  }

  @Test
  void aPublicChangeShows() throws IOException {
    String before = edition(0, 1, "public");
    for (long seed = 1; seed <= 100; seed++) {
      String edition = edition(seed, 1, "public");
      assertThat(edition).isNotEqualTo(before);
      before = edition;
    }
  }

  /**
   * An edition as text.
   *
   * @param named of the facts that texts may name, those that there are
   * @param stopped whether it would not be published
   */
  private record Made(String text, List<String> named, boolean stopped) {}

  private static String edition(long seed, long secretSeed, String readers) throws IOException {
    return make(seed, secretSeed, readers).text();
  }

  private static Made make(long seed, long secretSeed, String readers) throws IOException {
    Set<String> cleared = readers.equals("client") ? Set.of("lines") : Set.of();
    return edition(new RandomBuild(seed, secretSeed, cleared, COVERAGE).make(), readers);
  }

  /** Of some builds everybody gets drawings, of others the workshop alone. */
  @Test
  void someBuildsHaveHullsThatAreDrawn() throws IOException {
    int drawn = 0;
    int keptBack = 0;
    for (long seed = 0; seed < 120; seed++) {
      RandomBuild.Build build = new RandomBuild(seed, seed, Set.of(), new Coverage()).make();
      if (build.log().requests().stream().noneMatch(r -> r.prefix().equals("moulds"))) {
        continue;
      }
      boolean isDrawn = isDrawn(build, "public");
      assertThat(isDrawn(build, "workshop")).isTrue();
      drawn += isDrawn ? 1 : 0;
      keptBack += isDrawn ? 0 : 1;
    }
    assertThat(drawn).as("drawn for everybody").isGreaterThan(1);
    assertThat(keptBack).as("kept back from everybody").isGreaterThan(3);
  }

  private static boolean isDrawn(RandomBuild.Build build, String readers) throws IOException {
    Edition.Contents told =
        maker(build, readers, Reckoner.reckon(build.log()).facts()).edition().contents();
    return told.drawings().stream().anyMatch(Diagram.class::isInstance)
        || !told.patterns().parts().isEmpty();
  }

  private static String full(RandomBuild.Build build) throws IOException {
    return edition(build, "workshop").text();
  }

  private static Made edition(RandomBuild.Build build, String id) throws IOException {
    Log log = build.log();
    Readers readers = readers(log, id);
    Facts facts = Reckoner.reckon(log).facts();
    EditionMaker maker = maker(build, id, facts);
    StringBuilder text = new StringBuilder();
    tell(maker.edition().contents(), text);
    return new Made(
        text.toString(),
        named(build, facts),
        !maker.holes().isEmpty() || isOnlyTold(build, log, facts, readers, RandomBuild.AS_OF));
  }

  private static EditionMaker maker(RandomBuild.Build build, String readers, Facts facts) {
    return new EditionMaker(
        new WholeLog(build.log(), facts),
        build.album(),
        new Blank(),
        readers(build.log(), readers),
        RandomBuild.AS_OF,
        build.mayShow(),
        Correspondence.NONE);
  }

  private static List<String> named(RandomBuild.Build build, Facts facts) {
    return build.linked().stream().filter(n -> facts.find(n).isPresent()).toList();
  }

  /** Whether a fact is there only where something is left out: naming it stops the whole log. */
  private static boolean isOnlyTold(
      RandomBuild.Build build, Log log, Facts facts, Readers readers, LocalDate day) {
    List<String> nowhere = build.linked().stream().filter(n -> facts.find(n).isEmpty()).toList();
    VisibleLog told =
        nowhere.isEmpty()
            ? VisibleLog.all(new WholeLog(log, facts))
            : VisibleLog.of(new WholeLog(log, facts), new Account(new Sight(log, readers, day)));
    return nowhere.stream().anyMatch(n -> told.facts().find(n).isPresent());
  }

  /** Everything an edition holds, as text. */
  private static void tell(Object value, StringBuilder text) {
    if (value instanceof Picture.Bytes) {
      text.append(value);
    } else if (value instanceof Record) {
      text.append(value.getClass().getSimpleName()).append('(');
      for (Method accessor : PARTS.computeIfAbsent(value.getClass(), TwoRunTest::parts)) {
        text.append(accessor.getName()).append('=');
        try {
          Object part = accessor.invoke(value);
          tell(part == null ? "none" : part, text);
        } catch (ReflectiveOperationException e) {
          throw new IllegalStateException(e);
        }
        text.append('\n');
      }
      text.append(')');
    } else if (value instanceof List<?> list) {
      text.append('[');
      list.forEach(item -> tell(item, text));
      text.append(']');
    } else {
      text.append(value);
    }
  }

  private static List<Method> parts(Class<?> type) {
    return Arrays.stream(type.getRecordComponents()).map(RecordComponent::getAccessor).toList();
  }

  /** Pictures without pixels, of the size of their photograph, telling which regions are filled. */
  private static final class Blank implements PictureSource {

    @Override
    public Darkroom.Development develop(List<Darkroom.Order> orders) {
      Map<Darkroom.Order, Darkroom.Prints> prints = new LinkedHashMap<>();
      for (Darkroom.Order order : orders) {
        Photograph photograph = order.photograph();
        prints.put(
            order,
            new Darkroom.Prints(
                List.of(
                    new Darkroom.Print(
                        photograph.widthPx(),
                        photograph.heightPx(),
                        Path.of("filled-" + order.filled().size())))));
      }
      return new Darkroom.Development(prints, List.of());
    }

    @Override
    public boolean looksLikeDrawing(Darkroom.Prints prints) {
      return false;
    }

    @Override
    public double longEdgeMm(Sheet sheet, int page) {
      return 210;
    }

    @Override
    public Optional<View> look(Photograph photograph) {
      return Optional.empty();
    }

    @Override
    public int pages(Sheet sheet) {
      return 1;
    }

    @Override
    public Darkroom.Prints print(Sheet sheet, int page) {
      return new Darkroom.Prints(List.of(new Darkroom.Print(1, 1, Path.of("x"))));
    }
  }
}
