package chinelog.site;

import chinelog.OncePerRun;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.util.Set;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.parallel.ResourceLock;
import org.junit.jupiter.api.parallel.ResourceLocksProvider;

/**
 * Tests that have a {@link Browser} to themselves, class after class; the first of all, since they
 * are long rows. One browser looks at the desk, another at all else.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(OncePerRun.class)
@ResourceLock(providers = InBrowser.Turn.class)
@Order(1)
public @interface InBrowser {

  /** Who waits for whom. */
  final class Turn implements ResourceLocksProvider {

    @Override
    public Set<Lock> provideForClass(Class<?> tests) {
      return Set.of(new Lock(of(tests)));
    }

    /** The name of the browser that a class of tests uses. */
    public static String of(Class<?> tests) {
      return tests.getName().startsWith("chinelog.desk.") ? "browser at the desk" : "browser";
    }
  }
}
