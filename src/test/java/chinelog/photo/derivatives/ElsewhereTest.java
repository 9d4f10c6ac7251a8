package chinelog.photo.derivatives;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.photo.JpegWalk;
import chinelog.photo.Logs;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Shared;
import chinelog.photo.album.Album;
import chinelog.photo.derivatives.Darkroom.Print;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures that nobody here made: refused in words, or printed clean. */
@Timeout(120)
class ElsewhereTest {

  /** Sound by their classes' names, but their pictures break off: libjpeg warns of it. */
  private static final List<String> BREAK_OFF =
      List.of("pillow__ultrahdr.jpg", "payloadsallthethings__onclick-xss-ecs.jpeg");

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "01-exif-cameras",
        "02-orientation",
        "03-gps",
        "04-multi-picture-depth",
        "05-after-eoi",
        "06-crop-bug-png-gif",
        "07-malformed-images",
        "08-metadata-script"
      })
  void everyPictureIsRefusedInWordsOrPrintedClean(String kind) throws IOException {
    List<String> refused = new ArrayList<>();
    for (Path file : Shared.files("corpus/" + kind)) {
      String path = "photos/" + file.getFileName();
      Album album = new Logs(folder).photo(path, Files.readAllBytes(file)).open();
      if (album.photographs().isEmpty()) {
        assertThat(album.problems()).singleElement().matches(p -> p.isError());
        refused.add(file.getFileName() + " " + album.problems().get(0).what());
        continue;
      }
      Darkroom.Order order = new Darkroom.Order(album.photographs().get(0), List.of());
      Darkroom.Development made =
          new Darkroom(folder).develop(List.of(order), PhotoProgress.SILENT);
      made.problems().forEach(p -> refused.add(file.getFileName() + " " + p.what()));
      for (Darkroom.Prints prints : made.prints().values()) {
        for (Print print : prints.prints()) {
          JpegWalk.assertClean(Files.readAllBytes(print.jpeg()));
        }
      }
    }
    if (!kind.startsWith("07")) {
      assertThat(refused).allMatch(r -> BREAK_OFF.contains(r.split(" ")[0]));
    }
  }
}
