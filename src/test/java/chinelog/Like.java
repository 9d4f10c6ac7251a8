package chinelog;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Makes records that are like others but for some parts. */
public final class Like {

  private Like() {}

  /**
   * A record like another.
   *
   * @param parts name and value, by turns, of what is another
   */
  public static <R extends Record> R but(R other, @Nullable Object... parts) {
    List<@Nullable Object> changed = new ArrayList<>(Arrays.asList(parts));
    RecordComponent[] all = other.getClass().getRecordComponents();
    @Nullable Object[] values = new Object[all.length];
    try {
      for (int i = 0; i < all.length; i++) {
        int at = changed.indexOf(all[i].getName());
        values[i] = at < 0 ? all[i].getAccessor().invoke(other) : changed.get(at + 1);
        if (at >= 0) {
          changed.subList(at, at + 2).clear();
        }
      }
      if (!changed.isEmpty()) {
        throw new IllegalArgumentException("no such parts: " + changed);
      }
      @SuppressWarnings("unchecked")
      Constructor<R> made =
          (Constructor<R>)
              other
                  .getClass()
                  .getDeclaredConstructor(
                      Arrays.stream(all).map(RecordComponent::getType).toArray(Class<?>[]::new));
      return made.newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }
}
