package chinelog;

import chinelog.site.Browser;
import chinelog.site.InBrowser;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;
import org.junit.platform.commons.support.AnnotationSupport;
import org.junit.platform.commons.support.ReflectionSupport;

/**
 * Gives all tests of a run that have a parameter of a closeable type the same one, made when the
 * first of them asks for it and closed when all have run. They read it and leave it as it was. The
 * browser is given only to those who take their turn: {@link InBrowser}.
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
    Class<?> type = parameter.getParameter().getType();
    return test.getRoot()
        .getStore(ExtensionContext.Namespace.create(OncePerRun.class))
        .computeIfAbsent(type, ReflectionSupport::newInstance);
  }
}
