package chinelog.site;

import chinelog.OncePerRun;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.parallel.ResourceLock;

/**
 * Tests that have the one {@link Browser} of the run to themselves, class after class; the first of
 * all, since it is one long row.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(OncePerRun.class)
@ResourceLock("browser")
@Order(1)
public @interface InBrowser {}
