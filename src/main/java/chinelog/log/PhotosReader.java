package chinelog.log;

import chinelog.digest.Sha256;
import chinelog.label.Label;
import chinelog.log.markdown.MarkdownReader;
import chinelog.log.reading.Fields;
import chinelog.log.reading.FolderWalk;
import chinelog.log.reading.Scope;
import chinelog.log.reading.Source;
import chinelog.log.reading.Yaml;
import chinelog.log.reading.YamlParser;
import chinelog.log.records.PhotoFile;
import chinelog.problem.Place;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Lists the photographs, with what every photos.yaml says of those in its folder. */
final class PhotosReader {

  private static final DateTimeFormatter TAKEN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd[ ]['T']HH:mm[:ss]", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private final Scope scope;
  private final SortedMap<String, PhotoFile> photos = new TreeMap<>();

  PhotosReader(Scope scope) {
    this.scope = scope;
  }

  List<PhotoFile> read() {
    scope
        .inventory()
        .photos()
        .keySet()
        .forEach(
            path ->
                photos.put(
                    path,
                    new PhotoFile(
                        path,
                        List.of(),
                        "",
                        List.of(),
                        List.of(),
                        false,
                        null,
                        null,
                        null,
                        Label.NONE,
                        Place.of(path))));
    scope.inventory().remarks().forEach(this::remarks);
    return List.copyOf(photos.values());
  }

  private void remarks(String path, Path file) {
    Source source = scope.inventory().read(file, path, scope.problems());
    Yaml root = source == null ? null : YamlParser.parse(source, scope.problems());
    if (root == null) {
      return;
    }
    String folder = path.substring(0, path.lastIndexOf('/') + 1);
    for (Yaml.Pair pair : Fields.mapping(root, scope).pairs()) {
      String photo = find(folder + pair.key().text());
      if (photo == null) {
        reportMissing(pair.key(), folder);
      } else {
        photos.put(photo, photo(photo, folder, pair));
      }
    }
  }

  private @Nullable String find(String path) {
    return FolderWalk.findSame(photos.keySet(), path);
  }

  private void reportMissing(Yaml.Scalar key, String folder) {
    List<String> names =
        photos.keySet().stream()
            .filter(p -> p.startsWith(folder))
            .map(p -> p.substring(folder.length()))
            .filter(name -> !name.contains("/"))
            .toList();
    scope.error(
        key.place(),
        Sentence.of("There is no photograph \"{0}\" in this folder.", key.text()),
        Suggestion.findNearest(key.text(), names)
            .<CharSequence>map(Suggestion::of)
            .orElse("Correct the name, or remove what is said of it."));
  }

  private PhotoFile photo(String path, String folder, Yaml.Pair pair) {
    Fields fields =
        Fields.of(
            pair.value(),
            scope,
            Label.NONE,
            "caption",
            "alt",
            "parts",
            "regions",
            "sha256",
            "looked-at",
            "under",
            "leave-out",
            "taken");
    Yaml.Scalar caption = fields.scalar("caption");
    String base = folder.isEmpty() ? "" : folder.substring(0, folder.length() - 1);
    List<PhotoFile.Region> regions = new ArrayList<>();
    for (Yaml item : fields.items("regions")) {
      PhotoFile.Region region = region(item);
      if (region != null) {
        regions.add(region);
      }
    }
    // What is wrong with the pin of regions is told by checkPin.
    String written = fields.has("regions") ? fields.text("sha256") : hash(fields, "sha256");
    String pinned = written != null && isHash(written) ? written : null;
    if (fields.has("regions")) {
      checkPin(path, pinned, pair.key().place());
    }
    return new PhotoFile(
        path,
        caption == null ? List.of() : new MarkdownReader(caption.source(), base, scope).line(),
        fields.text("alt", ""),
        parts(fields),
        List.copyOf(regions),
        fields.flag("leave-out"),
        taken(fields),
        pinned,
        hash(fields, "looked-at"),
        fields.label(),
        pair.key().place());
  }

  private List<PhotoFile.Part> parts(Fields photo) {
    List<PhotoFile.Part> parts = new ArrayList<>();
    for (Yaml item : photo.items("parts")) {
      Fields fields = Fields.of(item, scope, Label.NONE, "at", "is");
      Yaml at = fields.require("at", "[0.4, 0.25]");
      fields.require("is", "Wheelhouse");
      if (at == null) {
        continue;
      }
      List<Double> point = RegionSides.point(fields, at);
      if (point != null) {
        parts.add(
            new PhotoFile.Part(point.get(0), point.get(1), fields.text("is", ""), at.place()));
      } else {
        scope.error(
            at.place(),
            "This is no place in the picture.",
            "Write [left, top] as parts of its width and height, such as [0.4, 0.25] or"
                + " [40 %, 25 %].");
      }
    }
    return List.copyOf(parts);
  }

  private PhotoFile.@Nullable Region region(Yaml item) {
    Fields fields = Fields.of(item, scope, Label.NONE, "box", "under");
    Yaml under = fields.require("under", "lines");
    Yaml box = fields.require("box", "[0, 0.37, 0.47, 1]");
    if (box == null || under == null) {
      return null;
    }
    RegionSides sides = RegionSides.find(fields, box);
    if (sides != null) {
      return sides.region(fields.label(), box.place());
    }
    scope.error(
        box.place(),
        "This box is not a part of the picture.",
        "Write [left, top, right, bottom] as parts of its width and height, such as"
            + " [0, 0.37, 0.47, 1] or [0, 37 %, 47 %, 100 %], or in pixels, such as"
            + " [0, 740 px, 1410 px, 2000 px].");
    return null;
  }

  private @Nullable String hash(Fields fields, String key) {
    String text = fields.text(key);
    if (text == null || isHash(text)) {
      return text;
    }
    scope.error(
        fields.place(key),
        "This is not the SHA-256 of a file.",
        "Write its 64 digits 0-9 and a-f; without them, you are told what to write.");
    return null;
  }

  private static boolean isHash(String text) {
    return text.matches("[0-9a-f]{64}");
  }

  /**
   * Regions drawn on another picture would cover the wrong part of this one. Whoever opens the
   * album checks it again and says the same, so that it is told once.
   */
  private void checkPin(String path, @Nullable String pinned, Place place) {
    Path file = scope.inventory().photos().get(path);
    String actual = file == null ? null : sha256(file);
    if (actual == null) {
      scope.error(
          Place.of(path),
          "This file cannot be read.",
          "See that you may read it and that its disk is sound.");
    } else if (pinned == null) {
      scope.error(
          place,
          Sentence.of(
              "The photograph {0} has regions, but no sha256 of 64 digits says which file"
                  + " they were drawn on.",
              path),
          Sentence.of(
              "See that the regions lie right, then write beside them: sha256: {0}", actual));
    } else if (!pinned.equals(actual)) {
      scope.error(
          place,
          Sentence.of("The photograph {0} has changed since its regions were drawn.", path),
          Sentence.of("Draw the regions again, then write: sha256: {0}", actual));
    }
  }

  private static @Nullable String sha256(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return Sha256.of(in);
    } catch (IOException e) {
      return null;
    }
  }

  private @Nullable LocalDateTime taken(Fields fields) {
    Yaml.Scalar scalar = fields.scalar("taken");
    if (scalar == null) {
      return null;
    }
    try {
      return LocalDateTime.parse(scalar.text(), TAKEN);
    } catch (DateTimeException e) {
      scope.error(
          scalar.place(),
          Sentence.of("\"{0}\" is not a date and time.", scalar.text()),
          "Write such as 2026-05-16 10:16:04.");
      return null;
    }
  }
}
