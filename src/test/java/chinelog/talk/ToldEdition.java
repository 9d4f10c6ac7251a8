package chinelog.talk;

import chinelog.edition.Edition;
import chinelog.edition.Talk;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;

/** An edition for readers who get a talk as well. */
final class ToldEdition {

  private ToldEdition() {}

  static Edition of(Edition edition, Talk talk) {
    try {
      RecordComponent[] parts = Edition.Contents.class.getRecordComponents();
      Object[] values = new Object[parts.length];
      for (int i = 0; i < parts.length; i++) {
        values[i] =
            parts[i].getType() == Talk.class
                ? talk
                : parts[i].getAccessor().invoke(edition.contents());
      }
      Class<?>[] types =
          Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
      return Edition.seal(Edition.Contents.class.getDeclaredConstructor(types).newInstance(values));
    } catch (NoSuchMethodException
        | InstantiationException
        | IllegalAccessException
        | InvocationTargetException e) {
      throw new AssertionError(e);
    }
  }
}
