package chinelog.digest;

import java.lang.reflect.AccessibleObject;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.temporal.Temporal;
import java.util.Arrays;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * One digest for all that a tree of records, lists and maps holds, down to the last letter: equal
 * trees have the same, others have not (but for collisions of SHA-256).
 *
 * <p>Every part is written with its kind and its length, so that no two trees run together into the
 * same bytes. A record that occurs in many places is gone through once. Not for use by several
 * threads at once.
 */
public final class ContentHash {

  private static final ClassValue<Method[]> ACCESSORS =
      new ClassValue<>() {
        @Override
        protected Method[] computeValue(Class<?> type) {
          Method[] accessors =
              Arrays.stream(type.getRecordComponents())
                  .map(RecordComponent::getAccessor)
                  .toArray(Method[]::new);
          AccessibleObject.setAccessible(accessors, true);
          return accessors;
        }
      };

  private final Other other;
  private final Map<Record, byte[]> known = new IdentityHashMap<>();

  /** Tells what stands for a value that cannot be gone through, such as the bytes of a picture. */
  @FunctionalInterface
  public interface Other {

    /** A text that differs whenever the value does; null for all other values. */
    @Nullable String text(Object value);
  }

  public ContentHash(Other other) {
    this.other = other;
  }

  /**
   * The digest of a tree, in hexadecimal.
   *
   * @throws IllegalArgumentException if something in it is of an unknown kind
   */
  public String of(@Nullable Object tree) {
    MessageDigest digest = Sha256.digest();
    add(tree, digest);
    return Sha256.hex(digest.digest());
  }

  private void add(@Nullable Object value, MessageDigest digest) {
    if (value == null) {
      digest.update((byte) 'N');
    } else if (value instanceof String s) {
      add('S', s, digest);
    } else if (value instanceof Record record && other.text(value) == null) {
      digest.update((byte) 'R');
      digest.update(of(record));
    } else if (value instanceof Map<?, ?> map) {
      map(map, digest);
    } else if (value instanceof List<?> || value instanceof java.util.SortedSet<?>) {
      Collection<?> items = (Collection<?>) value;
      size('L', items.size(), digest);
      items.forEach(item -> add(item, digest));
    } else if (value instanceof Enum<?> e) {
      add('E', e.getDeclaringClass().getName() + " " + e.name(), digest);
    } else if (value instanceof Locale locale) {
      add('C', locale.toLanguageTag(), digest);
    } else if (value instanceof Number
        || value instanceof Boolean
        || value instanceof Temporal
        || value instanceof java.net.URI) {
      add('V', value.getClass().getName() + " " + value, digest);
    } else {
      String text = other.text(value);
      if (text == null) {
        throw new IllegalArgumentException("no digest of " + value.getClass());
      }
      add('O', text, digest);
    }
  }

  private byte[] of(Record record) {
    byte[] found = known.get(record);
    if (found == null) {
      MessageDigest digest = Sha256.digest();
      add('T', record.getClass().getName(), digest);
      for (Object component : components(record)) {
        add(component, digest);
      }
      found = digest.digest();
      known.put(record, found);
    }
    return found;
  }

  /** What a record holds, in order; null for what is not there. */
  static Object[] components(Record record) {
    Method[] accessors = ACCESSORS.get(record.getClass());
    Object[] components = new Object[accessors.length];
    for (int i = 0; i < accessors.length; i++) {
      components[i] = component(record, accessors[i]);
    }
    return components;
  }

  private static @Nullable Object component(Record record, Method accessor) {
    try {
      return accessor.invoke(record);
    } catch (IllegalAccessException | InvocationTargetException e) {
      throw new IllegalStateException("a record keeps its components to itself", e);
    }
  }

  private void map(Map<?, ?> map, MessageDigest digest) {
    SortedMap<String, Object> sorted = new TreeMap<>();
    map.forEach(
        (key, value) -> {
          if (!(key instanceof String name)) {
            throw new IllegalArgumentException("no digest of keys that are no text");
          }
          sorted.put(name, value);
        });
    size('M', sorted.size(), digest);
    sorted.forEach(
        (key, value) -> {
          add('S', key, digest);
          add(value, digest);
        });
  }

  private static void add(char kind, String text, MessageDigest digest) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    size(kind, bytes.length, digest);
    digest.update(bytes);
  }

  private static void size(char kind, int size, MessageDigest digest) {
    digest.update((byte) kind);
    digest.update(ByteBuffer.allocate(Integer.BYTES).putInt(size).array());
  }
}
