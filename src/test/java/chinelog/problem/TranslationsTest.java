package chinelog.problem;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MemberSelectTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** What is wrong with a log is told in its language. */
class TranslationsTest {

  private static final List<String> LANGUAGES = List.of("de", "nl", "fr", "es");
  private static final Path SOURCES = Path.of("src/main/java/chinelog");
  private static final Pattern PART = Pattern.compile("\\{[0-9]}");

  private static final Set<String> TELLING =
      Set.of(
          "error",
          "question",
          "reminder",
          "complain",
          "wrong",
          "general",
          "damaged",
          "caution",
          "say",
          "warn",
          "worded",
          "counted",
          "ask",
          "at");

  private static final Set<String> THROWN =
      Set.of(
          "ProblemException",
          "QuantityException",
          "RefusedException",
          "TradeException",
          "UnusablePhoto");

  /** A sign between parts, which every language writes alike. */
  private static final Pattern BARE = Pattern.compile("[^\\p{L}]*");

  @Test
  void everySentenceIsThereInEveryLanguageWithTheSameParts() throws IOException {
    Map<String, Map<String, String>> all = tables();
    assertThat(all).hasSizeGreaterThan(700);
    all.forEach(
        (english, others) -> {
          assertThat(others.keySet()).as(english).containsExactlyInAnyOrderElementsOf(LANGUAGES);
          others.forEach((l, text) -> assertThat(parts(text)).as(text).isEqualTo(parts(english)));
          assertThat(others.get("fr")).as("spaces").doesNotContainPattern("\\p{L} [;!?]");
        });
  }

  @Test
  void everySentenceThatIsToldIsTranslatedAndNoOtherIs() throws IOException {
    Told told = Told.in(SOURCES);
    Set<String> translated = tables().keySet();
    assertThat(told.sentences.stream().filter(s -> !translated.contains(s))).isEmpty();
    assertThat(translated.stream().filter(s -> !told.literals.contains(s))).isEmpty();
  }

  @Test
  void aPartIsTranslatedAsWellAndAnAuthorsWordsAreNot() {
    Sentence sentence =
        Sentence.of("\"{0}\" is not {1}.", "planking", Sentence.of("a stage of this log"));
    assertThat(sentence).hasToString("\"planking\" is not a stage of this log.");
    assertThat(sentence.in(Locale.forLanguageTag("de-AT")))
        .isEqualTo("„planking“ ist nicht ein Bauabschnitt dieses Logs.");
    assertThat(Sentence.of("A word of mine, {0}.", 3).in(Locale.FRENCH))
        .isEqualTo("A word of mine, 3.");
  }

  private static List<String> parts(String text) {
    return PART.matcher(text).results().map(MatchResult::group).distinct().sorted().toList();
  }

  /** By the English, by language. */
  private static Map<String, Map<String, String>> tables() throws IOException {
    Map<String, Map<String, String>> all = new TreeMap<>();
    try (Stream<Path> files = Files.list(Path.of("src/main/resources/chinelog/problem"))) {
      for (Path file : files.sorted().toList()) {
        Map<String, String> others = Map.of();
        for (String line : Files.readAllLines(file)) {
          if (line.startsWith("  ")) {
            assertThat(others.put(line.substring(2, 4), line.substring(5))).as(line).isNull();
          } else if (!line.isEmpty()) {
            others = new TreeMap<>();
            assertThat(all.put(line, others)).as(line).isNull();
          }
        }
      }
    }
    return all;
  }

  /**
   * What source code says.
   *
   * @param sentences what is told of problems
   * @param literals every text
   */
  private record Told(Set<String> sentences, Set<String> literals) {

    static Told in(Path sources) throws IOException {
      Told told = new Told(new TreeSet<>(), new TreeSet<>());
      JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
      try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null);
          Stream<Path> walked = Files.walk(sources)) {
        List<Path> java = walked.filter(f -> f.toString().endsWith(".java")).toList();
        JavacTask task =
            (JavacTask)
                compiler.getTask(
                    null, files, null, null, null, files.getJavaFileObjectsFromPaths(java));
        for (CompilationUnitTree unit : task.parse()) {
          told.read(unit);
        }
      }
      return told;
    }

    private void read(CompilationUnitTree unit) {
      new TreeScanner<Void, Void>() {
        @Override
        public Void visitLiteral(LiteralTree literal, Void nothing) {
          if (literal.getValue() instanceof String text) {
            literals.add(text);
          }
          return null;
        }

        @Override
        public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
          String name =
              call.getMethodSelect() instanceof MemberSelectTree member
                  ? member.getIdentifier().toString()
                  : call.getMethodSelect().toString();
          if (call.getMethodSelect().toString().equals("Sentence.of")) {
            take(call.getArguments().subList(0, 1));
          } else if (TELLING.contains(name)) {
            take(call.getArguments());
          }
          return super.visitMethodInvocation(call, nothing);
        }

        @Override
        public Void visitNewClass(NewClassTree made, Void nothing) {
          if (THROWN.contains(made.getIdentifier().toString())) {
            take(made.getArguments());
          }
          return super.visitNewClass(made, nothing);
        }
      }.scan(unit, null);
    }

    /** The texts among arguments, but not those given to a call among them. */
    private void take(List<? extends ExpressionTree> arguments) {
      List<String> found = new ArrayList<>();
      TreeScanner<Void, Void> texts =
          new TreeScanner<>() {
            @Override
            public Void visitLiteral(LiteralTree literal, Void nothing) {
              if (literal.getValue() instanceof String text) {
                found.add(text);
              }
              return null;
            }

            @Override
            public Void visitMethodInvocation(MethodInvocationTree call, Void nothing) {
              return null;
            }
          };
      arguments.forEach(a -> texts.scan(a, null));
      sentences.addAll(
          found.stream()
              .filter(t -> t.contains(" ") || PART.matcher(t).find())
              .filter(t -> !BARE.matcher(PART.matcher(t).replaceAll("")).matches())
              .collect(Collectors.toSet()));
    }
  }
}
