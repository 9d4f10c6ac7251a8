package chinelog.photo.album;

import chinelog.photo.pixels.Decoder;
import chinelog.photo.pixels.PhotoKind;
import chinelog.photo.pixels.PhotoLoader;
import java.io.IOException;
import java.nio.file.Path;

/**
 * What a photograph's file tells, before the log has its say.
 *
 * @param sha256 of the whole file, 64 hex digits
 * @param widthPx as stored
 * @param heightPx as stored
 * @param exif what the camera wrote
 */
public record Exposure(String sha256, PhotoKind kind, int widthPx, int heightPx, Exif exif) {

  /** Metadata, and a look at the pixels only where the file's own end is missing. */
  static Exposure read(Path folder, String path) throws IOException {
    PhotoLoader.Loaded loaded = PhotoLoader.load(folder, path);
    Decoder.Size size = Decoder.size(loaded.decodable(), loaded.bytes());
    if (!Decoder.looksWhole(loaded.decodable(), loaded.bytes())) {
      Decoder.decode(loaded.decodable(), loaded.bytes());
    }
    return new Exposure(
        loaded.sha256(), loaded.kind(), size.widthPx(), size.heightPx(), Exif.of(loaded));
  }

  int uprightWidthPx() {
    return exif.orientation().swapsSides() ? heightPx : widthPx;
  }

  int uprightHeightPx() {
    return exif.orientation().swapsSides() ? widthPx : heightPx;
  }
}
