package chinelog.photo.album;

import chinelog.label.Clearance;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.photo.FileStamp;
import chinelog.photo.PhotoProgress;
import chinelog.photo.Workers;
import chinelog.photo.pixels.PhotoLoader;
import chinelog.photo.pixels.UnusablePhoto;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Opens an album: reads what is new, links photographs to entries, and says what is wrong. */
final class AlbumOpening {

  private static final Comparator<Photograph> IN_TIME =
      Comparator.comparing(
              Photograph::taken, Comparator.nullsLast(Comparator.<LocalDateTime>naturalOrder()))
          .thenComparing(p -> p.file().path());

  private final Log log;
  private final Matching matching;
  private final AlbumChecks checks = new AlbumChecks();
  private final SortedMap<String, List<PhotoFile>> copies = new TreeMap<>();

  AlbumOpening(Log log) {
    this.log = log;
    this.matching = new Matching(log.notes());
  }

  Album open(PhotoProgress progress) {
    SortedMap<String, Exposure> exposures = exposures(progress);
    List<PhotoFile> files = new ArrayList<>();
    for (PhotoFile file : log.photos()) {
      Exposure exposure = exposures.get(file.path());
      files.add(exposure == null ? file : inParts(file, exposure));
    }
    for (PhotoFile file : files) {
      Exposure exposure = exposures.get(file.path());
      if (exposure != null) {
        copies.computeIfAbsent(exposure.sha256(), s -> new ArrayList<>()).add(file);
        checks.regions(file, exposure);
      }
    }
    copies.values().forEach(same -> checks.copies(same, kept(same)));
    List<Photograph> photographs = new ArrayList<>();
    for (PhotoFile file : files) {
      Exposure exposure = exposures.get(file.path());
      if (exposure != null) {
        photographs.add(place(file, exposure));
      }
    }
    photographs.sort(IN_TIME);
    checks.credit(log.head(), new Clearance(new TreeSet<>(log.agreements().keySet())));
    checks.days(photographs, log.entries());
    return new Album(photographs, checks.problems());
  }

  /**
   * Regions that are written in pixels, as parts; one that reaches beyond the picture is all of it.
   */
  private PhotoFile inParts(PhotoFile file, Exposure exposure) {
    double w = exposure.uprightWidthPx();
    double h = exposure.uprightHeightPx();
    List<PhotoFile.Region> regions = new ArrayList<>();
    for (PhotoFile.Region r : file.regions()) {
      if (r.measure() == PhotoFile.Measure.PARTS) {
        regions.add(r);
      } else if (r.right() <= w && r.bottom() <= h) {
        regions.add(
            new PhotoFile.Region(
                r.left() / w, r.top() / h, r.right() / w, r.bottom() / h, r.label(), r.place()));
      } else {
        checks.beyond(r, exposure);
        regions.add(new PhotoFile.Region(0, 0, 1, 1, r.label(), r.place()));
      }
    }
    return regions.equals(file.regions()) ? file : file.withRegions(regions);
  }

  private SortedMap<String, Exposure> exposures(PhotoProgress progress) {
    PhotoIndex index = PhotoIndex.open(log.folder());
    SortedMap<String, Exposure> known = new TreeMap<>();
    SortedMap<String, String> stamps = new TreeMap<>();
    List<PhotoFile> fresh = new ArrayList<>();
    for (PhotoFile file : log.photos()) {
      try {
        String stamp = FileStamp.of(PhotoLoader.inside(log.folder(), file.path())).text();
        Exposure exposure = index.find(file.path(), stamp);
        if (exposure == null) {
          stamps.put(file.path(), stamp);
          fresh.add(file);
        } else {
          known.put(file.path(), exposure);
        }
      } catch (IOException e) {
        checks.add(trouble(file, e));
      }
    }
    try {
      for (Finding found : Workers.all(fresh, this::look, progress)) {
        if (found.exposure != null) {
          known.put(found.path, found.exposure);
          index.note(found.path, stamps.getOrDefault(found.path, ""), found.exposure);
        }
        found.problems.forEach(checks::add);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    if (!fresh.isEmpty()) {
      index.save(known.keySet());
    }
    return known;
  }

  private record Finding(String path, @Nullable Exposure exposure, List<Problem> problems) {}

  private Finding look(PhotoFile file) {
    try {
      return new Finding(file.path(), Exposure.read(log.folder(), file.path()), List.of());
    } catch (IOException e) {
      return new Finding(file.path(), null, List.of(trouble(file, e)));
    }
  }

  private static Problem trouble(PhotoFile file, IOException e) {
    Place place = Place.of(file.path());
    return e instanceof UnusablePhoto unusable
        ? unusable.at(place)
        : Problem.error(
            place, "The file cannot be read.", "See that it is there and that you may read it.");
  }

  /** Of equal files the one that an entry shows, else the one with the shortest name. */
  private PhotoFile kept(List<PhotoFile> same) {
    return same.stream()
        .min(
            Comparator.comparing((PhotoFile f) -> f.leaveOut())
                .thenComparing(f -> matching.shownBy(f.path()) == null)
                .thenComparing(f -> f.path().length())
                .thenComparing(PhotoFile::path))
        .orElseThrow();
  }

  private Photograph place(PhotoFile file, Exposure exposure) {
    LocalDateTime taken = file.taken() == null ? exposure.exif().taken(log.head()) : file.taken();
    LocalDate day = taken == null ? Matching.dayInName(file.path()) : taken.toLocalDate();
    String entry = matching.shownBy(file.path());
    Photograph.Link link = Photograph.Link.REFERENCED;
    boolean spare = kept(copies.getOrDefault(exposure.sha256(), List.of(file))) != file;
    if (file.leaveOut() || entry == null && spare) {
      link = Photograph.Link.LEFT_OUT;
    } else if (entry == null) {
      entry = day == null ? null : matching.byDay(file, day, taken);
      link = entry == null ? Photograph.Link.UNPLACED : Photograph.Link.BY_TIME;
    }
    return new Photograph(
        file,
        exposure.sha256(),
        exposure.uprightWidthPx(),
        exposure.uprightHeightPx(),
        exposure.exif().orientation().tag(),
        taken,
        exposure.exif().camera(),
        entry,
        link,
        exposure.exif().written());
  }
}
