package chinelog;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** All of the program is there for those who use it, nothing for its tests alone. */
@AnalyzeClasses(packages = "chinelog", importOptions = ImportOption.DoNotIncludeTests.class)
class ReachTest {

  /** What no command reaches yet. */
  private static final Set<String> NOT_YET =
      Set.of("chinelog.desk.files.LogFiles.splice", "chinelog.desk.files.NoteText.bodyFrom");

  @ArchTest
  void everythingIsReachedFromTheCommandLine(JavaClasses all) throws IOException {
    Reach reach =
        new Reach(all, a -> a.getRawType().getPackageName().startsWith("picocli"), asked())
            .from(all.get("chinelog.cli.Main").getMethod("main", String[].class));
    assertThat(reach.missed()).isSubsetOf(NOT_YET);
  }

  /** Names that the templates ask for. */
  private static Set<String> asked() throws IOException {
    Set<String> names = new TreeSet<>();
    for (String folder : new String[] {"site-template", "src/main/resources/chinelog/desk"}) {
      try (Stream<Path> templates = Files.list(Path.of(folder))) {
        for (Path file : templates.filter(f -> f.toString().endsWith(".ftlh")).toList()) {
          Matcher name = Pattern.compile("\\.\\s*([a-z]\\w*)").matcher(Files.readString(file));
          while (name.find()) {
            names.add(name.group(1));
          }
        }
      }
    }
    assertThat(names).hasSizeGreaterThan(50);
    return names;
  }
}
