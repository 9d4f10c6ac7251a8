package chinelog.publish;

import chinelog.audit.Audit;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.log.PhotoFile;
import chinelog.photo.derivatives.Darkroom;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** The pictures of an edition as the audit is told of them: by their bytes. */
final class EditionPictures {

  private EditionPictures() {}

  /** Every picture in every size, with the regions that were filled in it. */
  static List<Audit.Picture> of(Withholder.Withheld withheld) throws IOException {
    Map<String, List<PhotoFile.Region>> regions = new TreeMap<>();
    withheld.filled().forEach(f -> regions.put(f.picture(), f.regions()));
    try {
      return withheld.edition().contents().plates().parallelStream()
          .map(Plate::picture)
          .map(p -> new Audit.Picture(hashes(p), parts(regions.getOrDefault(p.id(), List.of()))))
          .toList();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static List<Audit.Filled> parts(List<PhotoFile.Region> regions) {
    return regions.stream()
        .map(r -> new Audit.Filled(r.left(), r.top(), r.right(), r.bottom(), Darkroom.FILL_RGB))
        .toList();
  }

  private static Set<String> hashes(Picture picture) {
    Set<String> hashes = new TreeSet<>();
    picture.renditions().forEach(r -> hashes.add(Manifest.sha256(r.jpeg()::open)));
    return hashes;
  }
}
