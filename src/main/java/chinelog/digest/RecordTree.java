package chinelog.digest;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.StreamCorruptedException;
import java.lang.reflect.AccessibleObject;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Writes a tree of records and lists as bytes, and makes the same tree of them again: for what is
 * dear to work out and kept in a private cache. A text that occurs in many places is written once.
 */
public final class RecordTree {

  /** No list that is kept has as many items, so that a spoilt file asks for no memory. */
  private static final int MOST = 1 << 24;

  private static final ClassValue<Constructor<?>> CONSTRUCTORS =
      new ClassValue<>() {
        @Override
        protected Constructor<?> computeValue(Class<?> type) {
          try {
            Constructor<?> canonical =
                type.getDeclaredConstructor(
                    Arrays.stream(type.getRecordComponents())
                        .map(RecordComponent::getType)
                        .toArray(Class<?>[]::new));
            AccessibleObject.setAccessible(new AccessibleObject[] {canonical}, true);
            return canonical;
          } catch (NoSuchMethodException e) {
            throw new IllegalStateException("every record has its canonical constructor", e);
          }
        }
      };

  private RecordTree() {}

  /** Puts values that are no records, such as quantities, into text and back. */
  public interface Other {

    /** A text that says all that there is to know of a value; null for what it does not know. */
    @Nullable String text(Object value);

    /**
     * The value that a text was made of.
     *
     * @throws IOException if it is no such text
     */
    Object value(String text) throws IOException;
  }

  /**
   * A tree as bytes.
   *
   * @throws IllegalArgumentException if something in it is of an unknown kind
   */
  public static byte[] bytes(Object tree, Other other) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      new Writing(out, other).add(tree);
    } catch (IOException e) {
      throw new IllegalStateException("memory takes all bytes", e);
    }
    return bytes.toByteArray();
  }

  /**
   * The tree that {@link #bytes} were made of.
   *
   * @throws IOException if they are not of such a tree, or of another program's
   */
  public static Object tree(byte[] bytes, Other other) throws IOException {
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      Object tree = new Reading(in, other).next();
      if (tree == null || in.read() >= 0) {
        throw new StreamCorruptedException("no tree");
      }
      return tree;
    } catch (ReflectiveOperationException | RuntimeException e) {
      throw new IOException("not a tree of this program's records", e);
    }
  }

  private static final class Writing {

    private final DataOutputStream out;
    private final Other other;
    private final Map<String, Integer> texts = new HashMap<>();

    Writing(DataOutputStream out, Other other) {
      this.out = out;
      this.other = other;
    }

    void add(@Nullable Object value) throws IOException {
      if (value == null) {
        out.writeByte('N');
      } else if (value instanceof String text) {
        out.writeByte('S');
        text(text);
      } else if (value instanceof Double number) {
        out.writeByte('D');
        out.writeDouble(number);
      } else if (value instanceof Integer number) {
        out.writeByte('I');
        out.writeInt(number);
      } else if (value instanceof Boolean yes) {
        out.writeByte(yes ? 'T' : 'F');
      } else if (value instanceof Enum<?> constant) {
        out.writeByte('E');
        text(constant.getDeclaringClass().getName());
        text(constant.name());
      } else if (value instanceof List<?> items) {
        out.writeByte('L');
        out.writeInt(items.size());
        for (Object item : items) {
          add(item);
        }
      } else if (value instanceof Record record) {
        record(record);
      } else {
        String text = other.text(value);
        if (text == null) {
          throw new IllegalArgumentException("nothing says how to keep " + value.getClass());
        }
        out.writeByte('O');
        text(text);
      }
    }

    private void record(Record record) throws IOException {
      out.writeByte('R');
      text(record.getClass().getName());
      for (Object component : ContentHash.components(record)) {
        add(component);
      }
    }

    private void text(String text) throws IOException {
      Integer known = texts.putIfAbsent(text, texts.size());
      out.writeInt(known == null ? texts.size() - 1 : known);
      if (known == null) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(bytes.length);
        out.write(bytes);
      }
    }
  }

  private static final class Reading {

    private final DataInputStream in;
    private final Other other;
    private final List<String> texts = new ArrayList<>();
    private final Map<String, Class<?>> types = new HashMap<>();
    private final Map<String, Object> others = new HashMap<>();

    Reading(DataInputStream in, Other other) {
      this.in = in;
      this.other = other;
    }

    @Nullable Object next() throws IOException, ReflectiveOperationException {
      int kind = in.readUnsignedByte();
      return switch (kind) {
        case 'N' -> null;
        case 'S' -> text();
        case 'D' -> in.readDouble();
        case 'I' -> in.readInt();
        case 'T' -> true;
        case 'F' -> false;
        case 'E' -> constant(type(text()), text());
        case 'L' -> list();
        case 'R' -> record(type(text()));
        case 'O' -> other(text());
        default -> throw new StreamCorruptedException("no kind " + kind);
      };
    }

    private static Object constant(Class<?> type, String name) throws IOException {
      for (Object constant : type.getEnumConstants()) {
        if (((Enum<?>) constant).name().equals(name)) {
          return constant;
        }
      }
      throw new StreamCorruptedException("no " + name + " in " + type);
    }

    private List<Object> list() throws IOException, ReflectiveOperationException {
      int size = in.readInt();
      if (size > MOST) {
        throw new StreamCorruptedException("a list of " + size);
      }
      Object[] items = new Object[size];
      for (int i = 0; i < size; i++) {
        items[i] = next();
      }
      return List.of(items);
    }

    private Object record(Class<?> type) throws IOException, ReflectiveOperationException {
      Constructor<?> canonical = CONSTRUCTORS.get(type);
      Object[] components = new Object[canonical.getParameterCount()];
      for (int i = 0; i < components.length; i++) {
        components[i] = next();
      }
      return canonical.newInstance(components);
    }

    private Object other(String text) throws IOException {
      Object known = others.get(text);
      if (known == null) {
        known = other.value(text);
        others.put(text, known);
      }
      return known;
    }

    private Class<?> type(String name) throws IOException, ReflectiveOperationException {
      Class<?> known = types.get(name);
      if (known == null) {
        known = Class.forName(name, false, RecordTree.class.getClassLoader());
        if (!known.isRecord() && !known.isEnum()) {
          throw new StreamCorruptedException("neither a record nor a constant: " + name);
        }
        types.put(name, known);
      }
      return known;
    }

    private String text() throws IOException {
      int number = in.readInt();
      if (number < texts.size()) {
        return texts.get(number);
      }
      int length = in.readInt();
      byte[] bytes = in.readNBytes(length);
      if (bytes.length < length) {
        throw new StreamCorruptedException("a text is cut off");
      }
      String text = new String(bytes, StandardCharsets.UTF_8);
      texts.add(text);
      return text;
    }
  }
}
