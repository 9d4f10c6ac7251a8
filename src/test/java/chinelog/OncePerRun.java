package chinelog;

import chinelog.site.Browser;
import java.util.Arrays;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.junit.platform.commons.support.ReflectionSupport;

/**
 * Gives all tests of a run that have a parameter of a closeable type the same one, made when the
 * first of them asks for it and closed when all have run. They read it and leave it as it was.
 *
 * <p>What tests change is lent to one class at a time, and is made again only where all are lent;
 * what bears {@link OncePerClass} is made for each class.
 */
public final class OncePerRun implements ParameterResolver {

  private static final ExtensionContext.Namespace OURS =
      ExtensionContext.Namespace.create(OncePerRun.class);

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext test) {
    return AutoCloseable.class.isAssignableFrom(parameter.getParameter().getType());
  }

  @Override
  public Object resolveParameter(ParameterContext parameter, ExtensionContext test) {
    Class<?> type = parameter.getParameter().getType();
    if (type == Browser.class) {
      return classOf(test)
          .getStore(OURS)
          .computeIfAbsent(Lease.class, lease -> idle(test).lend(), Lease.class)
          .browser;
    }
    return one(type, type.isAnnotationPresent(OncePerClass.class) ? classOf(test) : test.getRoot());
  }

  private static ExtensionContext classOf(ExtensionContext test) {
    return test.getTestMethod().isPresent() ? classOf(test.getParent().orElseThrow()) : test;
  }

  /** Of what it is made from there is but one, too. */
  private static Object one(Class<?> type, ExtensionContext whose) {
    Object[] from =
        Arrays.stream(type.getDeclaredConstructors()[0].getParameterTypes())
            .map(other -> one(other, whose.getRoot()))
            .toArray();
    return whose
        .getStore(OURS)
        .computeIfAbsent(type, made -> ReflectionSupport.newInstance(type, from));
  }

  private static Idle idle(ExtensionContext test) {
    return test.getRoot().getStore(OURS).computeIfAbsent(Idle.class, i -> new Idle(), Idle.class);
  }

  /** The browsers that no class has. */
  private static final class Idle implements AutoCloseable {

    private final Queue<Browser> browsers = new ConcurrentLinkedQueue<>();

    Lease lend() {
      Browser browser = browsers.poll();
      return new Lease(this, browser == null ? new Browser() : browser);
    }

    @Override
    public void close() {
      browsers.forEach(Browser::close);
    }
  }

  /** A browser that a class of tests has until all of them have run. */
  private record Lease(Idle of, Browser browser) implements AutoCloseable {

    @Override
    public void close() {
      of.browsers.add(browser);
    }
  }
}
