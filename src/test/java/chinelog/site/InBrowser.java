package chinelog.site;

import chinelog.OncePerRun;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.parallel.ResourceLock;

/** Tests that have the one {@link Browser} of the run to themselves, class after class. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(OncePerRun.class)
@ResourceLock("browser")
public @interface InBrowser {}
