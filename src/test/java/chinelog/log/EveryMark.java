package chinelog.log;

import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Log;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.problem.Place;
import chinelog.quantity.Quantity;
import chinelog.quantity.Unit;
import java.lang.reflect.Constructor;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.math.BigDecimal;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Logs in which every component of every record is filled, by reflection, and one place alone is
 * under an agreement: one log for each place that can be. So a component that is new is tried too.
 */
public final class EveryMark {

  /** The agreement of the one place; nothing may show of it. */
  public static final String SECRET = "secret";

  private static final int DEEPEST = 1;

  private final int marked;
  private final List<String> places = new ArrayList<>();
  private int words;

  private EveryMark(int marked) {
    this.marked = marked;
  }

  /** The log without a mark. */
  public static Log unmarked() {
    return new EveryMark(-1).log();
  }

  /** Each log by where it is marked, such as {@code entries.worked.label}. */
  public static Map<String, Log> all() {
    EveryMark counting = new EveryMark(-1);
    counting.log();
    Map<String, Log> logs = new TreeMap<>();
    for (int i = 0; i < counting.places.size(); i++) {
      logs.put(counting.places.get(i), new EveryMark(i).log());
    }
    return logs;
  }

  private Log log() {
    return (Log) make(Log.class, Map.of(), "", 0);
  }

  private Object make(Type type, Map<TypeVariable<?>, Type> bound, String path, int depth) {
    if (type instanceof TypeVariable<?> variable) {
      return make(bound.get(variable), Map.of(), path, depth);
    }
    if (type instanceof ParameterizedType generic) {
      return generic(generic, bound, path, depth);
    }
    Class<?> c = (Class<?>) type;
    if (c == Label.class) {
      places.add(path);
      return places.size() - 1 == marked ? Label.of(SECRET) : Label.NONE;
    }
    if (c.isSealed()) {
      return make(c.getPermittedSubclasses()[0], Map.of(), path, depth);
    }
    return c.isRecord() && c != Place.class ? made(c, Map.of(), path, depth) : value(c, path);
  }

  private Object generic(
      ParameterizedType type, Map<TypeVariable<?>, Type> bound, String path, int depth) {
    Type[] of = type.getActualTypeArguments();
    Class<?> raw = (Class<?>) type.getRawType();
    if (raw == List.class) {
      return list(of[0], bound, path, depth);
    }
    if (raw == Set.class) {
      return Set.of(make(of[0], bound, path, depth));
    }
    if (raw == SortedMap.class && of[1] == Agreement.class) {
      return new TreeMap<>(
          Map.of(
              SECRET,
              new Agreement(
                  SECRET, "Oxlade Yard", "drawings", null, null, false, Presence.NOTHING)));
    }
    if (raw == SortedMap.class) {
      return new TreeMap<>(Map.of("key", make(of[1], bound, path, depth)));
    }
    return made(raw, Map.of(raw.getTypeParameters()[0], of[0]), path, depth);
  }

  /** One of each kind of a closed family, as deep as anybody nests them. */
  private List<Object> list(Type of, Map<TypeVariable<?>, Type> bound, String path, int depth) {
    if (of == Readers.class) {
      return List.of(new Readers("public", "Public", Set.of(), Set.of(), Place.of("log.yaml")));
    }
    if (of == Release.class) {
      return List.of();
    }
    if (of instanceof Class<?> c && c.isSealed()) {
      // Of these, the first is a heading, and in it plain text.
      return Arrays.stream(c.getPermittedSubclasses())
          .limit(depth > DEEPEST ? 1 : c.getPermittedSubclasses().length)
          .map(p -> make(p, Map.of(), path + "." + p.getSimpleName(), depth + 1))
          .toList();
    }
    return List.of(make(of, bound, path, depth));
  }

  private Object made(Class<?> record, Map<TypeVariable<?>, Type> bound, String path, int depth) {
    RecordComponent[] components = record.getRecordComponents();
    Object[] values = new Object[components.length];
    Class<?>[] types = new Class<?>[components.length];
    for (int i = 0; i < components.length; i++) {
      types[i] = components[i].getType();
      String inside =
          path.isEmpty() ? components[i].getName() : path + "." + components[i].getName();
      values[i] = make(components[i].getGenericType(), bound, inside, depth);
    }
    try {
      Constructor<?> constructor = record.getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new AssertionError(path, e);
    }
  }

  private Object value(Class<?> c, String path) {
    words++;
    String word = "Zorvek" + (char) ('a' + words / 26 % 26) + (char) ('a' + words % 26);
    BigDecimal number = new BigDecimal(3000 + 7 * words).movePointLeft(1);
    Map<Class<?>, Object> plain =
        Map.ofEntries(
            Map.entry(String.class, word + "quist " + number + " mm"),
            Map.entry(BigDecimal.class, number),
            Map.entry(Quantity.class, Quantity.of(number, Unit.MILLIMETRE)),
            Map.entry(Unit.class, Unit.MILLIMETRE),
            Map.entry(LocalDate.class, LocalDate.of(2026, 3, 14)),
            Map.entry(LocalTime.class, LocalTime.NOON),
            Map.entry(LocalDateTime.class, LocalDateTime.of(2026, 3, 14, 12, 0)),
            Map.entry(
                ZonedDateTime.class, ZonedDateTime.of(2026, 3, 14, 12, 0, 0, 0, ZoneId.of("UTC"))),
            Map.entry(Duration.class, Duration.ofMinutes(30)),
            Map.entry(Locale.class, Locale.UK),
            Map.entry(ZoneId.class, ZoneId.of("UTC")),
            Map.entry(URI.class, URI.create("https://merrow.example/")),
            Map.entry(Path.class, Path.of("log")),
            Map.entry(Place.class, Place.of(path + ".yaml")),
            Map.entry(int.class, 1),
            Map.entry(long.class, 1L),
            Map.entry(Long.class, 1L),
            Map.entry(double.class, 1.0),
            Map.entry(boolean.class, false),
            Map.entry(Boolean.class, false));
    if (c.isEnum()) {
      return c.getEnumConstants()[0];
    }
    Object value = plain.get(c);
    if (value == null) {
      throw new AssertionError("No value is known here for " + c + " at " + path);
    }
    return value;
  }
}
