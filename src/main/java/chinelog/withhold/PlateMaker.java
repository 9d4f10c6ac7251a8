package chinelog.withhold;

import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Entry;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Release;
import chinelog.log.records.Sheet;
import chinelog.log.text.Inline;
import chinelog.photo.album.Photograph;
import chinelog.photo.album.Written;
import chinelog.photo.derivatives.Darkroom;
import chinelog.problem.Problem;
import chinelog.withhold.Register.Kind;
import chinelog.withhold.question.Sight;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Chooses the photographs that readers may see, numbers them, and has them printed. */
final class PlateMaker {

  private final PhotoPlaces places;
  private final PictureSource pictures;
  private final Account account;
  private final Sight sight;
  private final Catalogue words;
  private final PhotoUses uses;

  /** Prints of the plates in which nothing is filled, by their numbers. */
  private final Map<Integer, Darkroom.Prints> heads = new HashMap<>();

  /** Photographs of the same plates. */
  private final Map<Integer, Photograph> wholes = new HashMap<>();

  private final Map<String, Plate> byPath = new LinkedHashMap<>();
  private final List<Problem> problems = new ArrayList<>();
  private final SortedSet<String> whole = new TreeSet<>();
  private final List<Withholder.FilledRegions> printed = new ArrayList<>();

  PlateMaker(
      PhotoPlaces places,
      PictureSource pictures,
      Account account,
      Catalogue words,
      PhotoUses uses) {
    this.places = places;
    this.pictures = pictures;
    this.account = account;
    this.sight = account.sight();
    this.words = words;
    this.uses = uses;
  }

  List<Withholder.FilledRegions> printedRegions() {
    return List.copyOf(printed);
  }

  /**
   * Paths of the photographs that the readers do not see, or not whole. One that waits for an
   * answer is not among them: it may be shown.
   */
  SortedSet<String> keptBack() {
    SortedSet<String> keptBack = new TreeSet<>();
    places.all().stream()
        .filter(p -> p.link() != Photograph.Link.LEFT_OUT)
        .map(p -> p.file().path())
        .filter(path -> !whole.contains(path) && places.doubt(path).isNone())
        .forEach(keptBack::add);
    return keptBack;
  }

  /** A problem for each photograph that should be shown and could not be made. */
  List<Problem> problems() {
    return List.copyOf(problems);
  }

  /** Plates by the photograph's path, in their order. */
  Map<String, Plate> byPath() {
    return byPath;
  }

  /**
   * Makes the plates of all photographs that may be seen: those of the entries given, in the order
   * shown, then those that belong to no entry.
   *
   * @param captions copies a caption for the readers
   * @param entryIds the edition's id of each entry, by the log's
   */
  void make(List<Entry> entries, Map<String, String> entryIds, CaptionCopier captions)
      throws IOException {
    Map<String, Photograph> photographs = new HashMap<>();
    places.all().stream()
        .filter(p -> p.link() != Photograph.Link.LEFT_OUT)
        .forEach(p -> photographs.put(p.file().path(), p));
    List<Chosen> chosen = new ArrayList<>();
    for (Entry entry : entries) {
      uses.all().stream()
          .filter(u -> u.entry().equals(entry.id()))
          .forEach(
              u ->
                  choose(
                      photographs.remove(u.image().path()),
                      entry,
                      sight.allows(u.label()) ? u.image() : null,
                      chosen));
      places.all().stream()
          .filter(p -> entry.id().equals(p.entry()))
          .map(p -> photographs.remove(p.file().path()))
          .forEach(p -> choose(p, entry, null, chosen));
    }
    // Of what is left, only photographs that belong to no entry stand by themselves.
    places.all().stream()
        .filter(p -> p.entry() == null && !uses.isUsed(p.file().path()))
        .map(p -> photographs.remove(p.file().path()))
        .forEach(p -> choose(p, null, null, chosen));
    List<Darkroom.Order> orders =
        chosen.stream().map(c -> new Darkroom.Order(c.photograph(), c.filled())).toList();
    Darkroom.Development development = pictures.develop(orders);
    problems.addAll(development.problems());
    for (int i = 0; i < chosen.size(); i++) {
      Darkroom.Prints prints = development.prints().get(orders.get(i));
      if (prints != null) {
        add(chosen.get(i), prints, entryIds, captions);
      }
    }
  }

  private void choose(
      @Nullable Photograph photograph,
      @Nullable Entry entry,
      Inline.@Nullable Image image,
      List<Chosen> chosen) {
    if (photograph == null
        || photograph.taken() != null && photograph.taken().toLocalDate().isAfter(sight.asOf())) {
      return;
    }
    PhotoFile file = photograph.file();
    Label label = file.label().join(uses.labelOf(file.path())).join(places.doubt(file.path()));
    if (entry != null) {
      // A release of the entry is none of the photographs taken for it.
      label = label.join(entry.label());
    }
    Label left = account.afterReleases(Release.Kind.PHOTO, file.path(), label);
    if (!account.sees(left, file.place(), Kind.PHOTOGRAPH, file.path())) {
      return;
    }
    List<PhotoFile.Region> filled =
        file.regions().stream()
            .filter(
                r -> !account.sees(r.label(), r.place(), Kind.REGION_OF_PHOTOGRAPH, file.path()))
            .toList();
    if (filled.stream().anyMatch(r -> sight.presence(r.label()) == Presence.NOTHING)) {
      // A filled region shows that there is something.
      return;
    }
    chosen.add(new Chosen(photograph, entry, image, label, filled));
  }

  private record Chosen(
      Photograph photograph,
      @Nullable Entry entry,
      Inline.@Nullable Image image,
      Label label,
      List<PhotoFile.Region> filled) {}

  private void add(
      Chosen chosen, Darkroom.Prints prints, Map<String, String> entryIds, CaptionCopier captions) {
    int number = byPath.size() + 1;
    PhotoFile file = chosen.photograph().file();
    Inline.Image image = chosen.image();
    List<Inline> own =
        image != null && !image.caption().isEmpty() ? image.caption() : file.caption();
    List<Text.Run> caption = captions.copy(own);
    // What stands in the file may speak of the part that is filled, or say what the caption that
    // the log gives says under an agreement.
    Written written = chosen.filled().isEmpty() ? chosen.photograph().written() : Written.NONE;
    if (own.isEmpty() && !written.caption().isEmpty()) {
      caption = List.of(new Text.Plain(written.caption()));
    }
    var taken = chosen.photograph().taken();
    Entry entry = chosen.entry();
    String alt = file.alt().isBlank() ? written.alt() : file.alt();
    if (alt.isBlank()) {
      alt = Text.plainText(caption, "").strip();
    }
    if (alt.isBlank()) {
      alt =
          taken == null
              ? words.text("plate.alt.undated")
              : words.text("plate.alt", words.date(taken.toLocalDate()));
    }
    if (!chosen.filled().isEmpty()) {
      alt += (alt.matches("(?s).*\\p{Punct}") ? " " : ". ") + words.text("plate.filled");
    }
    Picture picture = picture(number, prints, filled(chosen));
    if (chosen.filled().isEmpty()) {
      heads.put(number, prints);
      wholes.put(number, chosen.photograph());
      whole.add(file.path());
    } else {
      printed.add(new Withholder.FilledRegions(picture.id(), chosen.filled()));
    }
    byPath.put(
        file.path(),
        new Plate(
            number,
            picture,
            caption,
            alt,
            taken == null ? null : taken.toLocalDate(),
            entry == null ? "" : entry.stage(),
            entry == null ? null : entryIds.get(entry.id()),
            parts(file, picture),
            sight.under(chosen.label())));
  }

  /** What lies where something is filled is not named. */
  private List<Plate.Part> parts(PhotoFile file, Picture picture) {
    return file.parts().stream()
        .filter(p -> picture.filled().stream().noneMatch(f -> isWithin(p, f)))
        .map(p -> new Plate.Part(p.x(), p.y(), p.name()))
        .toList();
  }

  private static boolean isWithin(PhotoFile.Part part, Picture.Part filled) {
    return part.x() >= filled.left()
        && part.x() <= filled.right()
        && part.y() >= filled.top()
        && part.y() <= filled.bottom();
  }

  private static List<Picture.Part> filled(Chosen chosen) {
    Photograph photograph = chosen.photograph();
    return FilledParts.of(
        Darkroom.filled(photograph, chosen.filled()), photograph.widthPx(), photograph.heightPx());
  }

  private static Picture picture(int number, Darkroom.Prints prints, List<Picture.Part> filled) {
    String id = String.format(Locale.ROOT, "plate-%03d", number);
    return new Picture(
        id,
        prints.prints().stream()
            .map(p -> new Picture.Rendition(p.widthPx(), p.heightPx(), new PictureFile(p.jpeg())))
            .toList(),
        filled);
  }

  /** Plates of the sheets that were released to these readers, as fresh pixels. */
  List<Plate> sheets(List<Sheet> sheets) throws IOException {
    List<Plate> plates = new ArrayList<>();
    for (Sheet sheet : sheets) {
      for (int page = 1; page <= pictures.pages(sheet); page++) {
        String name = sheet.path() + "#" + page;
        Label label = sheet.label(page);
        boolean pageReleased = !sight.releases(Release.Kind.SHEET, name, label).isEmpty();
        String released = pageReleased ? name : sheet.path();
        // A sheet is never shown without a release, whatever its readers are party to.
        if (sight.releases(Release.Kind.SHEET, released, label).isEmpty()
            || !account.sees(
                account.afterReleases(Release.Kind.SHEET, released, label),
                sheet.place(),
                Kind.SHEET,
                name)) {
          continue;
        }
        int number = byPath.size() + 1;
        String title = words.text("sheet.caption", sheet.title());
        Plate plate =
            new Plate(
                number,
                picture(number, pictures.print(sheet, page), List.of()),
                List.of(new Text.Plain(title)),
                title,
                null,
                "",
                null,
                List.of(),
                sight.under(label));
        byPath.put(name, plate);
        plates.add(plate);
      }
    }
    return plates;
  }

  /**
   * Whether a plate may stand where it is seen first, on the cover or at the head of a post:
   * nothing is filled in it, and it does not look like a drawing.
   */
  boolean isFitForHead(Plate plate) {
    Darkroom.Prints prints = heads.get(plate.number());
    try {
      return prints != null && !pictures.looksLikeDrawing(prints);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Plates from nearly one viewpoint, by day; empty if there are none. Only photographs that the
   * readers see whole, and that no agreement is noted at, are looked at.
   */
  List<Plate> sameView() throws IOException {
    List<SameView.Seen> seen = new ArrayList<>();
    for (Plate plate : all()) {
      Photograph whole = wholes.get(plate.number());
      if (whole != null && plate.date() != null && plate.under().isEmpty()) {
        pictures.look(whole).ifPresent(view -> seen.add(new SameView.Seen(plate, view)));
      }
    }
    List<Plate> series = SameView.longest(seen);
    return series.stream().allMatch(this::isFitForHead) ? series : List.of();
  }

  /** In the order of their numbers. */
  List<Plate> all() {
    return byPath.values().stream().sorted(Comparator.comparingInt(Plate::number)).toList();
  }

  /** Copies a caption for the readers. */
  interface CaptionCopier {
    List<Text.Run> copy(List<Inline> caption);
  }
}
