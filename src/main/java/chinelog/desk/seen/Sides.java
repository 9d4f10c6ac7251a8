package chinelog.desk.seen;

import chinelog.desk.bench.Snapshot;
import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.label.Agreement;
import chinelog.label.Label;
import chinelog.log.records.Entry;
import chinelog.log.records.Readers;
import chinelog.log.records.Sheet;
import chinelog.photo.album.Photograph;
import chinelog.quantity.NumberStyle;
import chinelog.reckon.Fact;
import chinelog.reckon.Facts;
import chinelog.withhold.PrintedFigure;
import chinelog.withhold.Register;
import chinelog.withhold.Withholder;
import chinelog.wording.Catalogue;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;

/** Holds what the log has against what some readers would get of it today. */
final class Sides {

  /** A contact sheet's pictures need no more pixels across. */
  private static final int CONTACT_PX = 400;

  private final Snapshot now;
  private final Readers readers;
  private final Locale locale;
  private final Withholder.Prepared theirs;

  /** What is withheld, by its kind and name, and the agreements that it is under. */
  private final Map<Register.Thing, Label> withheld = new HashMap<>();

  /**
   * @param locale of the workshop's own side
   */
  Sides(Snapshot now, Readers readers, Locale locale) throws IOException {
    this.now = now;
    this.readers = readers;
    this.locale = locale;
    this.theirs = now.prepared(readers);
    theirs.register().withheld().forEach(w -> withheld.merge(w.thing(), w.label(), Label::join));
  }

  /**
   * One thing on both sides.
   *
   * @param address of the page where it is changed
   * @param ours what the workshop has: words, or a picture's address
   * @param theirs the same for the readers; empty if they get nothing of it
   * @param why the word for what they do not get, such as {@code withheld} or {@code filled}; empty
   *     if they get it whole
   * @param under the agreements that keep it from them
   */
  public record Pair(
      String title, String address, String ours, String theirs, String why, List<String> under) {}

  /** Notes by their day, the youngest first. */
  List<Pair> notes() {
    Map<String, String> told = new HashMap<>();
    theirs.edition().contents().entries().forEach(e -> told.put(e.id(), e.title()));
    List<Pair> pairs = new ArrayList<>();
    for (Entry entry : now.log().entries()) {
      String title = told.get(theirs.entryIds().getOrDefault(entry.id(), ""));
      String ours = entry.title().value();
      boolean isCalledOtherwise =
          title != null && withheld.containsKey(thing(Register.Kind.TITLE_OF_ENTRY, entry.id()));
      Register.Kind kind = isCalledOtherwise ? Register.Kind.TITLE_OF_ENTRY : Register.Kind.ENTRY;
      pairs.add(
          0,
          new Pair(
              entry.date().toString(),
              "/notes/edit?file=" + encoded(entry.place().file()),
              ours,
              title == null ? "" : title,
              title == null ? "withheld" : isCalledOtherwise ? "untitled" : "",
              title == null || isCalledOtherwise
                  ? under(withheld.getOrDefault(thing(kind, entry.id()), entry.label()))
                  : List.of()));
    }
    return pairs;
  }

  /**
   * Photographs in the album's order.
   *
   * @param only the path of one; empty for all
   */
  List<Pair> photographs(String only) {
    Map<String, Entry> entries = new HashMap<>();
    now.log().entries().forEach(e -> entries.put(e.id(), e));
    List<Pair> pairs = new ArrayList<>();
    for (Photograph photo : now.opened().album().photographs()) {
      String path = photo.file().path();
      if (only.isEmpty() || only.equals(path)) {
        pairs.add(photograph(photo, entries, only.isEmpty() ? CONTACT_PX : 2 * CONTACT_PX));
      }
    }
    return pairs;
  }

  private Pair photograph(Photograph photo, Map<String, Entry> entries, int widthPx) {
    String path = photo.file().path();
    String address = "/photographs/look?photo=" + encoded(path);
    String ours = "/photographs/print?photo=" + encoded(path) + "&edge=" + widthPx;
    Plate plate = theirs.plates().get(path);
    Label regions = withheld.get(thing(Register.Kind.REGION_OF_PHOTOGRAPH, path));
    if (plate != null) {
      return regions == null
          ? new Pair(path, address, ours, picture(plate.picture(), widthPx), "", List.of())
          : new Pair(
              path, address, ours, picture(plate.picture(), widthPx), "filled", under(regions));
    }
    if (photo.link() == Photograph.Link.LEFT_OUT) {
      return new Pair(path, address, ours, "", "left-out", List.of());
    }
    Label own = withheld.get(thing(Register.Kind.PHOTOGRAPH, path));
    if (own == null) {
      own = regions;
    }
    if (own != null) {
      return new Pair(path, address, ours, "", "withheld", under(own));
    }
    Entry entry = entries.get(photo.entry() == null ? "" : photo.entry());
    return entry == null
        ? new Pair(path, address, ours, "", "not-told", List.of())
        : new Pair(path, address, ours, "", "with-note", under(entry.label()));
  }

  /**
   * Pages of the sheets.
   *
   * @param only the path of one; empty for all
   * @param page of that one; 0 for all
   */
  List<Pair> sheets(String only, int page) {
    List<Pair> pairs = new ArrayList<>();
    for (Sheet sheet : now.log().sheets()) {
      if (!only.isEmpty() && !only.equals(sheet.path())) {
        continue;
      }
      for (int n = Math.max(1, page); ; n++) {
        Plate plate = theirs.plates().get(sheet.path() + "#" + n);
        if (n > Math.max(1, page) && (plate == null || page > 0)) {
          break;
        }
        String below = "sheet=" + encoded(sheet.path()) + "&page=" + n;
        pairs.add(
            new Pair(
                sheet.title(),
                "/sheets/look?" + below,
                "/sheets/print?" + below + "&edge=800",
                plate == null ? "" : picture(plate.picture(), 2 * CONTACT_PX),
                plate == null ? "unreleased" : "",
                plate == null ? under(sheet.label()) : List.of()));
      }
    }
    return pairs;
  }

  /** Facts by their names, then limits. */
  List<Pair> facts() {
    Map<String, String> printed = new HashMap<>();
    for (PrintedFigure figure : theirs.printed()) {
      printed.put(figure.fact(), figure.printed());
    }
    Catalogue titles = Catalogue.of(Facts.MESSAGES, locale);
    NumberStyle style = new NumberStyle(locale, now.log().head().inchDenominator());
    List<Pair> pairs = new ArrayList<>();
    for (Fact fact : now.opened().facts().inOrder()) {
      String shown = printed.getOrDefault(fact.name(), "");
      Label label = withheld.get(thing(Register.Kind.FIGURE, fact.name()));
      boolean isHidden = shown.isEmpty() && (label != null || !isOpen(fact.label()));
      pairs.add(
          new Pair(
              titles.text(fact.title()),
              "#" + fact.name(),
              style.show(fact.value()),
              shown,
              isHidden ? "withheld" : shown.isEmpty() ? "not-told" : "",
              isHidden ? under(label == null ? fact.label() : label) : List.of()));
    }
    limits(style, pairs);
    return pairs;
  }

  private void limits(NumberStyle style, List<Pair> pairs) {
    Map<String, String> told = new HashMap<>();
    for (Edition.LimitLine line : theirs.edition().contents().limits()) {
      told.put(line.title(), line.value());
    }
    for (Facts.LimitCheck check : now.opened().facts().limits()) {
      Label label = withheld.get(thing(Register.Kind.LIMIT, check.limit().id()));
      String title = check.limit().title();
      pairs.add(
          new Pair(
              title,
              "#limit-" + check.limit().id(),
              style.show(check.value()),
              label == null ? told.getOrDefault(title, "") : "",
              label != null ? "withheld" : told.containsKey(title) ? "" : "not-told",
              label == null ? List.of() : under(label)));
    }
  }

  private boolean isOpen(Label label) {
    return readers.partyTo().containsAll(label.agreements());
  }

  /** The agreements of a label that these readers are not party to; all of it if that is none. */
  private List<String> under(Label label) {
    List<String> those =
        new TreeSet<>(label.agreements())
            .stream().filter(a -> !readers.partyTo().contains(a)).toList();
    List<String> named = those.isEmpty() ? List.copyOf(label.agreements()) : those;
    return named.stream().filter(a -> !Agreement.isOwn(a)).toList();
  }

  private String picture(Picture picture, int widthPx) {
    return "/as/"
        + readers.id()
        + "/pictures/"
        + picture.id()
        + "-"
        + picture.atLeast(widthPx).widthPx()
        + ".jpg";
  }

  private static Register.Thing thing(Register.Kind kind, String name) {
    return new Register.Thing(kind, name);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
