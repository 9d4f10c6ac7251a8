package chinelog.site;

import chinelog.OncePerRun;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.extension.ExtendWith;

/** Tests that look at pages in a {@link Browser}; the first of all, since they take long. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(OncePerRun.class)
@Order(1)
public @interface InBrowser {}
