package chinelog;

import com.sun.source.tree.CaseTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import javax.lang.model.element.Modifier;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** The texts against which source code matches other texts: by methods, patterns and switches. */
final class MatchedWords {

  /**
   * @param file relative to the sources, with slashes
   */
  record Found(String file, String text) {}

  private static final Set<String> MATCHING =
      Set.of(
          "equals",
          "equalsIgnoreCase",
          "startsWith",
          "endsWith",
          "contains",
          "indexOf",
          "lastIndexOf",
          "matches",
          "compile",
          "replace",
          "replaceAll",
          "replaceFirst",
          "split");

  private final Map<String, Tree> constants = new HashMap<>();
  private final Set<Found> found = new HashSet<>();

  private MatchedWords() {}

  /** Reads all sources below a folder. */
  static Set<Found> in(Path sources) throws IOException {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    Set<Found> all = new HashSet<>();
    try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null);
        Stream<Path> walked = Files.walk(sources)) {
      List<Path> java = walked.filter(f -> f.toString().endsWith(".java")).toList();
      JavacTask task =
          (JavacTask)
              compiler.getTask(
                  null, files, null, null, null, files.getJavaFileObjectsFromPaths(java));
      for (CompilationUnitTree unit : task.parse()) {
        String file =
            sources
                .toAbsolutePath()
                .relativize(Path.of(unit.getSourceFile().toUri()))
                .toString()
                .replace('\\', '/');
        all.addAll(new MatchedWords().read(unit, file));
      }
    }
    return all;
  }

  private Set<Found> read(CompilationUnitTree unit, String file) {
    new TreeScanner<Void, Void>() {
      @Override
      public Void visitVariable(VariableTree variable, Void nothing) {
        if (variable.getInitializer() != null
            && variable.getInitializer().getKind() != Tree.Kind.NEW_CLASS
            && variable.getModifiers().getFlags().contains(Modifier.STATIC)) {
          constants.put(variable.getName().toString(), variable.getInitializer());
        }
        return super.visitVariable(variable, nothing);
      }
    }.scan(unit, null);
    new TreeScanner<Void, Void>() {
      @Override
      public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
        if (call.getMethodSelect() instanceof MemberSelectTree member
            && MATCHING.contains(member.getIdentifier().toString())) {
          if (!member.getIdentifier().contentEquals("split")) {
            take(member.getExpression(), file);
          }
          // What a match is replaced by is no match.
          take(call.getArguments().isEmpty() ? null : call.getArguments().get(0), file);
        }
        return super.visitMethodInvocation(call, nothing);
      }

      @Override
      public Void visitCase(CaseTree branch, Void nothing) {
        branch.getExpressions().forEach(e -> take(e, file));
        return super.visitCase(branch, nothing);
      }
    }.scan(unit, null);
    return found;
  }

  private void take(ExpressionTree expression, String file) {
    List<Tree> waiting = new ArrayList<>();
    waiting.add(expression);
    Set<String> seen = new HashSet<>();
    while (!waiting.isEmpty()) {
      new TreeScanner<Void, Void>() {
        @Override
        public Void visitLiteral(LiteralTree literal, Void nothing) {
          if (literal.getValue() instanceof String text) {
            found.add(new Found(file, text));
          }
          return null;
        }

        @Override
        public Void visitIdentifier(IdentifierTree name, Void nothing) {
          Tree constant = constants.get(name.getName().toString());
          if (constant != null && seen.add(name.getName().toString())) {
            waiting.add(constant);
          }
          return null;
        }
      }.scan(waiting.remove(waiting.size() - 1), null);
    }
  }
}
