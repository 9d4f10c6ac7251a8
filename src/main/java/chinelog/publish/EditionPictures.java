package chinelog.publish;

import chinelog.audit.AllowedPicture;
import chinelog.audit.FilledArea;
import chinelog.digest.Sha256;
import chinelog.edition.Edition;
import chinelog.edition.Pattern;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.log.records.PhotoFile;
import chinelog.photo.derivatives.Darkroom;
import chinelog.talk.FramePlace;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** The pictures of an edition as the audit is told of them: by their bytes. */
final class EditionPictures {

  /** A block of the compression, with the coarser one of its colours. */
  private static final int BLOCK_PX = 16;

  private EditionPictures() {}

  /** How the SHA-256 of a picture's bytes is learnt. */
  interface Hashing {
    String of(Picture.Bytes jpeg) throws IOException;
  }

  /** As below, every picture read afresh. */
  static List<AllowedPicture> of(Withholder.Withheld withheld) throws IOException {
    return of(withheld, EditionPictures::read);
  }

  private static String read(Picture.Bytes jpeg) throws IOException {
    try (InputStream in = jpeg.open()) {
      return Sha256.of(in);
    }
  }

  /** Every picture in every size, with the regions that were filled in it. */
  static List<AllowedPicture> of(Withholder.Withheld withheld, Hashing hashing) throws IOException {
    Map<String, List<PhotoFile.Region>> regions = new TreeMap<>();
    withheld.filled().forEach(f -> regions.put(f.picture(), f.regions()));
    try {
      Edition.Contents contents = withheld.edition().contents();
      Stream<Picture> scans =
          contents.patterns().parts().stream()
              .map(Pattern::scan)
              .filter(Objects::nonNull)
              .map(Pattern.Scan::picture);
      return Stream.concat(contents.plates().stream().map(Plate::picture), scans)
          .map(
              p ->
                  new AllowedPicture(
                      hashes(p, hashing), parts(regions.getOrDefault(p.id(), List.of()))))
          .toList();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  /**
   * The frames of a talk, with the regions that were filled in their pictures where they have come
   * to lie.
   *
   * @param hashes SHA-256 of a frame, by its path
   */
  static List<AllowedPicture> frames(
      Withholder.Withheld withheld, List<FramePlace> places, Map<String, String> hashes) {
    Map<String, List<PhotoFile.Region>> regions = new TreeMap<>();
    withheld.filled().forEach(f -> regions.put(f.picture(), f.regions()));
    List<AllowedPicture> frames = new ArrayList<>();
    for (FramePlace place : places) {
      String hash = hashes.get(place.file());
      if (hash != null) {
        List<FilledArea> filled =
            parts(regions.getOrDefault(place.picture(), List.of())).stream()
                .map(area -> within(place, area))
                .toList();
        frames.add(new AllowedPicture(Set.of(hash), filled));
      }
    }
    return frames;
  }

  /**
   * Where a filled part lies in a frame. What the compression of the rendition did along its edges,
   * within a block of it, has been scaled with it: that is looked at in the rendition itself.
   */
  private static FilledArea within(FramePlace place, FilledArea area) {
    double edge = BLOCK_PX * place.scale();
    return new FilledArea(
        (place.left() + area.left() * place.width() + (area.left() > 0 ? edge : 0))
            / place.frameWidth(),
        (place.top() + area.top() * place.height() + (area.top() > 0 ? edge : 0))
            / place.frameHeight(),
        (place.left() + area.right() * place.width() + (area.right() < 1 ? -edge : 0))
            / place.frameWidth(),
        (place.top() + area.bottom() * place.height() + (area.bottom() < 1 ? -edge : 0))
            / place.frameHeight(),
        area.rgb());
  }

  private static List<FilledArea> parts(List<PhotoFile.Region> regions) {
    return regions.stream()
        .map(r -> new FilledArea(r.left(), r.top(), r.right(), r.bottom(), Darkroom.FILL_RGB))
        .toList();
  }

  private static Set<String> hashes(Picture picture, Hashing hashing) {
    Set<String> hashes = new TreeSet<>();
    try {
      for (Picture.Rendition rendition : picture.renditions()) {
        hashes.add(hashing.of(rendition.jpeg()));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return hashes;
  }
}
