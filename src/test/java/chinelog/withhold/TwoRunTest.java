package chinelog.withhold;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.edition.Picture;
import chinelog.log.Log;
import chinelog.log.Readers;
import chinelog.log.Sheet;
import chinelog.photo.Darkroom;
import chinelog.photo.Photograph;
import chinelog.reckon.Facts;
import chinelog.reckon.Reckoner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * Non-interference (Goguen and Meseguer, 1982; tested by pairs as in Hritcu and others, "Testing
 * Noninterference, Quickly", 2013): two logs that differ only in what readers may not see give
 * those readers the same edition.
 */
class TwoRunTest {

  private static final int PAIRS = Integer.getInteger("chinelog.pairs", 2000);
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
    assertThat(COMPARED.get()).isGreaterThan(PAIRS / 2);
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
    for (long seed = 0; seed < 100; seed++) {
      assertThat(edition(seed + 1, 1, "public")).isNotEqualTo(edition(seed, 1, "public"));
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

  private static String full(RandomBuild.Build build) throws IOException {
    return edition(build, "workshop").text();
  }

  private static Made edition(RandomBuild.Build build, String id) throws IOException {
    Log log = build.log();
    Readers readers =
        log.readers().stream().filter(r -> r.id().equals(id)).findFirst().orElseThrow();
    Facts facts = Reckoner.reckon(log).facts();
    EditionMaker maker =
        new EditionMaker(log, facts, build.album(), new Blank(), readers, RandomBuild.AS_OF);
    StringBuilder text = new StringBuilder();
    tell(maker.edition().contents(), text);
    return new Made(
        text.toString(),
        RandomBuild.LINKED.stream().filter(n -> facts.find(n).isPresent()).toList(),
        !maker.holes().isEmpty() || isOnlyTold(log, facts, readers));
  }

  /** Whether a fact is there only where something is left out: naming it stops the whole log. */
  private static boolean isOnlyTold(Log log, Facts facts, Readers readers) {
    List<String> nowhere =
        RandomBuild.LINKED.stream().filter(n -> facts.find(n).isEmpty()).toList();
    Told told =
        nowhere.isEmpty()
            ? new Told(log, facts, Set.of())
            : Told.of(log, facts, new Sight(log, readers, RandomBuild.AS_OF));
    return nowhere.stream().anyMatch(n -> told.facts().find(n).isPresent());
  }

  /** Everything an edition holds, as text. */
  private static void tell(Object value, StringBuilder text) {
    if (value instanceof Picture.Bytes) {
      text.append("bytes");
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
                    new Darkroom.Print(photograph.widthPx(), photograph.heightPx(), Path.of("x"))),
                "#80808" + order.filled().size()));
      }
      return new Darkroom.Development(prints, List.of());
    }

    @Override
    public int pages(Sheet sheet) {
      return 1;
    }

    @Override
    public Darkroom.Prints print(Sheet sheet, int page) {
      return new Darkroom.Prints(List.of(new Darkroom.Print(1, 1, Path.of("x"))), "#808080");
    }
  }
}
