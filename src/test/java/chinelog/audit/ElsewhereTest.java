package chinelog.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures, documents and drawings from elsewhere: none may pass for one of ours. */
class ElsewhereTest {

  private static final Set<String> KINDS = Set.of("jpg", "jpeg", "png", "pdf", "svg");

  @TempDir Path folder;

  @ParameterizedTest
  @Timeout(300)
  @ValueSource(
      strings = {
        "01-exif-cameras",
        "02-orientation",
        "03-gps",
        "04-multi-picture-depth",
        "05-after-eoi",
        "06-crop-bug-png-gif",
        "07-malformed-images",
        "08-metadata-script",
        "09-pdf-failed-redaction",
        "10-pdf-hidden-content",
        "11-pdf-hostile",
        "15-svg-xml"
      })
  void everyFileFromElsewhereIsRefused(String group) throws IOException {
    Path corpus = Path.of(System.getProperty("chinelog.shared", "../shared"), "corpus", group);
    assumeTrue(Files.isDirectory(corpus), "the files from elsewhere are not here");
    Set<String> files = new TreeSet<>();
    List<AllowedPicture> pictures = new ArrayList<>();
    try (Stream<Path> all = Files.list(corpus)) {
      for (Path file : all.filter(Files::isRegularFile).sorted().toList()) {
        String name = file.getFileName().toString();
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        if (KINDS.contains(ending)) {
          String plain = "f" + files.size() + "." + ending;
          Files.copy(file, folder.resolve(plain));
          files.add(plain);
          // Told as the edition's own, so that it is refused for its form alone.
          pictures.add(SampleEdition.told(Files.readAllBytes(file)));
        }
      }
    }
    AuditReport report =
        Audit.search(
            folder,
            files,
            SampleLog.in(folder.resolve("none")),
            "public",
            SampleLog.WORKSHOP,
            List.of(),
            Set.of(),
            pictures,
            Before.nothing());
    Set<String> refused = report.findings().stream().map(Finding::file).collect(Collectors.toSet());
    Set<String> passed = new TreeSet<>(files);
    passed.removeAll(refused);
    assertThat(files).isNotEmpty();
    assertThat(passed).isEmpty();
  }
}
