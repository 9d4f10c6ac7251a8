package chinelog.site;

import chinelog.edition.Picture;
import chinelog.edition.Picture.Rendition;
import chinelog.edition.Plate;
import chinelog.edition.Text.PlateHere.Layout;
import chinelog.markup.HatchDrawing;
import chinelog.markup.HtmlWriter;
import chinelog.markup.PartsDrawing;
import chinelog.markup.TextMarkup;
import chinelog.markup.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** How text is written on one page of the site. */
final class SiteManner implements TextMarkup.Manner {

  /** Width by height of the lowest picture that the broad frame cuts. */
  private static final double TALL = 1.25;

  private final String root;
  private final Uses uses;
  private final Wording wording;
  private final List<String> notes = new ArrayList<>();
  private int noteCount;
  private @Nullable Plate opening;

  SiteManner(String root, Uses uses, Wording wording) {
    this.root = root;
    this.uses = uses;
    this.wording = wording;
  }

  /** Names the plate that opens the page, which the text need not show a second time. */
  void openWith(@Nullable Plate plate) {
    this.opening = plate;
  }

  @Override
  public void plate(HtmlWriter html, Plate plate, Layout layout) {
    if (!plate.equals(opening)) {
      Use beside = layout == Layout.BESIDE ? Use.BESIDE : Use.TEXT;
      figure(html, plate, layout == Layout.WIDE ? Use.WIDE : beside);
    }
  }

  /** A plate with its caption, linked to its enlarged view. */
  void figure(HtmlWriter html, Plate plate, Use use) {
    html.open("figure", "class", kind(plate, use));
    html.open("a", "href", root + Addresses.plate(plate));
    image(html, plate, use);
    html.close("a").open("figcaption");
    html.element(
        "span",
        wording.text("plate.number", wording.number(plate.number())),
        "class",
        "plate-number");
    if (!plate.caption().isEmpty()) {
      html.text(" ");
      TextMarkup.writeRuns(plate.caption(), this, html);
    }
    if (!plate.under().isEmpty()) {
      html.text(" ");
      mark(html, plate.under());
    }
    html.close("figcaption").close("figure");
  }

  private static String kind(Plate plate, Use use) {
    String kind = plate.picture().isPortrait() ? "plate portrait" : "plate";
    if (use == Use.BESIDE || use == Use.WIDE) {
      return kind + " " + use.name().toLowerCase(Locale.ROOT);
    }
    return use == Use.HERO && isTall(plate) ? kind + " tall" : kind;
  }

  /** Whether a picture would lose too much in the broad frame of a page's head. */
  static boolean isTall(Plate plate) {
    return plate.picture().shape() < TALL;
  }

  /** The picture alone, in as many sizes as there are, with a hatch over what is filled. */
  void image(HtmlWriter html, Plate plate, Use use) {
    Picture picture = plate.picture();
    boolean isNumbered = use == Use.WHOLE && !plate.parts().isEmpty();
    if (picture.filled().isEmpty() && !isNumbered) {
      plainImage(html, plate, use);
      return;
    }
    html.open("span", "class", "overlaid");
    plainImage(html, plate, use);
    if (!picture.filled().isEmpty()) {
      HatchDrawing.write(html, picture, wording.text("withheld.word"), use != Use.WHOLE);
    }
    if (isNumbered) {
      PartsDrawing.write(html, plate, wording);
    }
    html.close("span");
  }

  private void plainImage(HtmlWriter html, Plate plate, Use use) {
    Picture picture = plate.picture();
    Rendition usual = picture.atLeast(use.usualWidthPx);
    String sizes =
        picture.renditions().stream()
            .map(r -> root + Addresses.picture(picture, r) + " " + r.widthPx() + "w")
            .collect(Collectors.joining(", "));
    html.empty(
        "img",
        "src",
        root + Addresses.picture(picture, usual),
        "srcset",
        picture.renditions().size() > 1 ? sizes : null,
        "sizes",
        picture.renditions().size() > 1 ? use.sizes(picture.isPortrait()) : null,
        "width",
        String.valueOf(picture.largest().widthPx()),
        "height",
        String.valueOf(picture.largest().heightPx()),
        "alt",
        plate.alt(),
        "loading",
        use.isAboveTheFold ? null : "lazy",
        "fetchpriority",
        use.isAboveTheFold ? "high" : null,
        "decoding",
        use.isAboveTheFold ? null : "async");
  }

  @Override
  public @Nullable String figureAddress(String figure) {
    return below(uses.figureAddress(figure));
  }

  @Override
  public @Nullable String entryAddress(String entry) {
    return below(uses.entryAddress(entry));
  }

  private @Nullable String below(@Nullable String path) {
    return path == null ? null : root + path;
  }

  @Override
  public void footnote(HtmlWriter html, String markup) {
    noteCount++;
    notes.add(markup);
    html.open("sup", "class", "note-mark")
        .element(
            "a",
            wording.number(noteCount),
            "href",
            "#note-" + noteCount,
            "id",
            "note-mark-" + noteCount,
            "aria-label",
            wording.text("note.number", wording.number(noteCount)))
        .close("sup");
  }

  /** The footnotes since the last call. */
  void notes(HtmlWriter html) {
    if (notes.isEmpty()) {
      return;
    }
    int first = noteCount - notes.size() + 1;
    html.open("ol", "class", "notes", "start", String.valueOf(first));
    for (int i = 0; i < notes.size(); i++) {
      int number = first + i;
      html.open("li", "id", "note-" + number)
          .raw(notes.get(i))
          .text(" ")
          .element(
              "a", "↩", "href", "#note-mark-" + number, "aria-label", wording.text("note.back"))
          .close("li");
    }
    html.close("ol");
    notes.clear();
  }

  /** A numbered seal for each, which leads to the key at the foot of the page. */
  @Override
  public void mark(HtmlWriter html, List<String> agreements) {
    for (String agreement : agreements) {
      String number = wording.number(uses.agreementNumber(agreement));
      String words = wording.text("under.seal", number);
      html.element(
          "a",
          number,
          "class",
          "seal",
          "href",
          "#agreement-" + number,
          "title",
          words,
          "aria-label",
          words);
    }
  }

  @Override
  public int firstHeading() {
    return 3;
  }

  @Override
  public Wording wording() {
    return wording;
  }

  /** Where a picture is put, and so how wide it will be on the reader's screen. */
  enum Use {
    // On a phone's finest screens a finer picture is not seen, but waited for.
    HERO(
        960,
        "(max-width: 39.99rem) and (min-resolution: 2.5dppx) 70vw, (min-width: 81rem) 1224px, (min-width: 40rem) calc(100vw - 72px), 100vw",
        true),
    // It fills the window.
    FRONT(
        960,
        "(max-width: 39.99rem) and (min-resolution: 2.5dppx) 70vw, (min-width: 81rem) 780px, (min-width: 60rem) 62vw, (min-width: 40rem) calc(100vw - 72px), 100vw",
        true),
    WINDOW(1600, "(max-width: 39.99rem) and (min-resolution: 2.5dppx) 70vw, 100vw", true),
    // The same within the text, out to the edge of the window.
    WIDE(1600, "auto, 100vw", false),
    BESIDE(480, "auto, (min-width: 60rem) 20rem, (min-width: 40rem) 540px, 100vw", false),
    TEXT(
        960, "auto, (min-width: 60rem) 50rem, (min-width: 40rem) calc(100vw - 72px), 100vw", false),
    CARD(480, "auto, (min-width: 60rem) 25rem, (min-width: 40rem) 45vw, 100vw", false),
    SMALL(480, "auto, (min-width: 40rem) 20rem, 50vw", false),
    WHOLE(1600, "100vw", true);

    private final int usualWidthPx;
    private final String sizes;
    private final boolean isAboveTheFold;

    Use(int usualWidthPx, String sizes, boolean isAboveTheFold) {
      this.usualWidthPx = usualWidthPx;
      this.sizes = sizes;
      this.isAboveTheFold = isAboveTheFold;
    }

    /** A portrait in the text is shown narrower than the column. */
    private String sizes(boolean portrait) {
      return portrait && this == TEXT ? "auto, (min-width: 40rem) 540px, 100vw" : sizes;
    }
  }
}
