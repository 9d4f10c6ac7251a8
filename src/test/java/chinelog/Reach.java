package chinelog;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaAnnotation;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaConstructor;
import com.tngtech.archunit.core.domain.JavaFieldAccess;
import com.tngtech.archunit.core.domain.JavaFieldAccess.AccessType;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a program's start reaches, by its byte code: methods that are called or referred to, those
 * that override them in classes that are made, and those that libraries call by an interface, an
 * annotation or, from a page's template, by name. After D. F. Bacon and P. F. Sweeney, "Fast static
 * analysis of C++ virtual function calls", OOPSLA 1996 (rapid type analysis).
 */
final class Reach {

  private final JavaClasses all;
  private final Predicate<JavaAnnotation<?>> calls;
  private final Set<String> byName;
  private final Set<JavaCodeUnit> reached = new HashSet<>();
  private final Set<JavaClass> begun = new HashSet<>();
  private final Set<JavaClass> made = new HashSet<>();
  private final Deque<JavaCodeUnit> waiting = new ArrayDeque<>();
  private final Map<JavaMethod, List<JavaMethod>> overridden = new HashMap<>();

  /**
   * @param calls annotations by which a library calls what bears them
   * @param byName names of methods without parameters that templates call
   */
  Reach(JavaClasses all, Predicate<JavaAnnotation<?>> calls, Set<String> byName) {
    this.all = all;
    this.calls = calls;
    this.byName = byName;
  }

  /** Follows what a method does. */
  Reach from(JavaMethod start) {
    reach(start);
    int before;
    do {
      before = reached.size();
      while (!waiting.isEmpty()) {
        follow(waiting.remove());
      }
      for (JavaClass type : List.copyOf(made)) {
        type.getMethods().stream().filter(this::isCalledFromElsewhere).forEach(this::reach);
      }
    } while (reached.size() > before);
    return this;
  }

  /** Classes and code that were not reached, those of a class that was not reached in one line. */
  Set<String> missed() {
    Set<String> missed = new TreeSet<>();
    for (JavaClass type : all) {
      List<JavaCodeUnit> own = type.getCodeUnits().stream().filter(Reach::isWritten).toList();
      List<JavaCodeUnit> left = own.stream().filter(u -> !reached.contains(u)).toList();
      if (left.size() == own.size() && !begun.contains(type)) {
        left.stream().findFirst().ifPresent(u -> missed.add(type.getName()));
      } else {
        left.forEach(u -> missed.add(type.getName() + "." + u.getName()));
      }
    }
    missed.removeIf(m -> missed.stream().anyMatch(o -> m.startsWith(o + "$")));
    return missed;
  }

  /** Not what the compiler adds, nor the constructor of a class of which nothing is made. */
  private static boolean isWritten(JavaCodeUnit unit) {
    boolean isOfEnum =
        unit.getOwner().isEnum() && Set.of("values", "valueOf", "<init>").contains(unit.getName());
    boolean isHidden =
        unit instanceof JavaConstructor
            && unit.getModifiers().contains(JavaModifier.PRIVATE)
            && unit.getRawParameterTypes().isEmpty();
    // Of one that only its own class knows, all components may serve as a key.
    boolean isOfOwnRecord =
        unit.getOwner().isRecord()
            && unit.getOwner().getModifiers().contains(JavaModifier.PRIVATE)
            && unit.getOwner().tryGetField(unit.getName()).isPresent();
    return !unit.getModifiers().contains(JavaModifier.SYNTHETIC)
        && !isOfOwnRecord
        && !unit.getModifiers().contains(JavaModifier.ABSTRACT)
        && !unit.getName().equals("<clinit>")
        && !unit.getOwner().isAnnotation()
        && !isOfEnum
        && !isHidden;
  }

  private void reach(JavaCodeUnit unit) {
    if (isOurs(unit.getOwner()) && reached.add(unit)) {
      waiting.add(unit);
      begin(unit.getOwner());
      if (unit instanceof JavaConstructor) {
        make(unit.getOwner());
      }
    }
  }

  private boolean isOurs(JavaClass type) {
    return all.contain(type.getName());
  }

  private void begin(JavaClass type) {
    if (isOurs(type) && begun.add(type)) {
      type.getStaticInitializer().ifPresent(this::reach);
    }
  }

  private void make(JavaClass type) {
    if (made.add(type)) {
      // A library makes the classes that such an annotation names.
      type.getAnnotations().stream()
          .filter(calls)
          .flatMap(annotation -> annotation.getProperties().values().stream())
          .filter(JavaClass.class::isInstance)
          .map(JavaClass.class::cast)
          .filter(this::isOurs)
          .flatMap(named -> named.getConstructors().stream())
          .forEach(this::reach);
      type.getAllRawInterfaces().stream().filter(this::isOurs).forEach(made::add);
    }
  }

  private void follow(JavaCodeUnit unit) {
    Stream.of(
            unit.getAccessesFromSelf(),
            unit.getMethodReferencesFromSelf(),
            unit.getConstructorReferencesFromSelf())
        .flatMap(Collection::stream)
        .filter(a -> !(a instanceof JavaFieldAccess f) || f.getAccessType() == AccessType.GET)
        .map(JavaAccess::getTarget)
        .distinct()
        .forEach(
            target -> {
              begin(target.getOwner());
              target.resolveMember().ifPresent(this::reachMember);
            });
  }

  private void reachMember(JavaMember member) {
    begin(member.getOwner());
    if (member instanceof JavaCodeUnit unit) {
      reach(unit);
    } else if (member.getOwner().isRecord()) {
      // A record reads its own components without asking.
      member.getOwner().tryGetMethod(member.getName()).ifPresent(this::reach);
    }
  }

  private boolean isCalledFromElsewhere(JavaMethod method) {
    return !reached.contains(method)
        && (method.getAnnotations().stream().anyMatch(calls)
            || method.getRawParameterTypes().isEmpty() && byName.contains(method.getName())
            || overridden(method).stream()
                .anyMatch(o -> !isOurs(o.getOwner()) || reached.contains(o)));
  }

  private List<JavaMethod> overridden(JavaMethod method) {
    return overridden.computeIfAbsent(method, Reach::findOverridden);
  }

  private static List<JavaMethod> findOverridden(JavaMethod method) {
    if (method.getModifiers().contains(JavaModifier.STATIC)) {
      return List.of();
    }
    return Stream.concat(
            method.getOwner().getAllRawSuperclasses().stream(),
            method.getOwner().getAllRawInterfaces().stream())
        .flatMap(t -> t.tryGetMethod(method.getName(), types(method)).stream())
        .filter(o -> !o.getModifiers().contains(JavaModifier.STATIC))
        .collect(Collectors.toList());
  }

  private static String[] types(JavaMethod method) {
    return method.getRawParameterTypes().stream().map(JavaClass::getName).toArray(String[]::new);
  }
}
