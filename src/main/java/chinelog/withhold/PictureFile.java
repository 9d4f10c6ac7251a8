package chinelog.withhold;

import chinelog.edition.Picture;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** The bytes of a picture that lies in the log's private cache; no renderer can name this type. */
public record PictureFile(Path file) implements Picture.Bytes {

  @Override
  public InputStream open() throws IOException {
    return Files.newInputStream(file);
  }
}
