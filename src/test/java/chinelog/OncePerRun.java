package chinelog;

import chinelog.site.Browser;
import chinelog.site.InBrowser;
import java.util.Arrays;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.junit.platform.commons.support.AnnotationSupport;
import org.junit.platform.commons.support.ReflectionSupport;

/**
 * Gives all tests of a run that have a parameter of a closeable type the same one, made when the
 * first of them asks for it and closed when all have run. They read it and leave it as it was. A
 * browser is given only to those who take turns with it: {@link InBrowser}.
 */
public final class OncePerRun implements ParameterResolver {

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext test) {
    Class<?> type = parameter.getParameter().getType();
    boolean isInTurn =
        type != Browser.class
            || AnnotationSupport.isAnnotated(test.getRequiredTestClass(), InBrowser.class);
    return AutoCloseable.class.isAssignableFrom(type) && isInTurn;
  }

  @Override
  public Object resolveParameter(ParameterContext parameter, ExtensionContext test) {
    return one(parameter.getParameter().getType(), test);
  }

  /** Of what it is made from there is but one, too. */
  private static Object one(Class<?> type, ExtensionContext test) {
    Object[] from =
        Arrays.stream(type.getDeclaredConstructors()[0].getParameterTypes())
            .map(other -> one(other, test))
            .toArray();
    return test.getRoot()
        .getStore(ExtensionContext.Namespace.create(OncePerRun.class))
        .computeIfAbsent(
            type == Browser.class ? InBrowser.Turn.of(test.getRequiredTestClass()) : type,
            which -> ReflectionSupport.newInstance(type, from));
  }
}
