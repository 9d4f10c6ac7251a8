package chinelog.talk;

import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.edition.Text;
import chinelog.markup.HtmlWriter;
import chinelog.markup.Theme;
import chinelog.markup.Wording;
import chinelog.wording.Catalogue;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.BiFunction;

/**
 * A script, as a page and as what is to be printed.
 *
 * @param title of the page
 * @param style for both
 * @param body for print, with pictures by their ids as {@code picture:plate-012.jpg}
 * @param html the page
 * @param pictures that the body shows, by id
 */
public record ScriptPages(
    String title, String style, String body, String html, Map<String, Picture> pictures) {

  private static final int SPOKEN_LINE = 44;

  static ScriptPages of(
      Edition.Contents edition,
      Theme theme,
      Instalment instalment,
      Timing timing,
      Catalogue words) {
    Map<String, Picture> pictures = new LinkedHashMap<>();
    String title = words.text("script") + ": " + edition.title() + ", " + instalment.post().title();
    Writing writing = new Writing(edition, instalment, timing, words);
    String printed =
        writing.body(
            (shot, number) -> {
              Picture picture = shot.plate().picture();
              pictures.put(picture.id(), picture);
              return "picture:" + picture.id() + ".jpg";
            });
    String page = writing.body((shot, number) -> "frames/" + Instalment.frame(number));
    Wording wording = Wording.of(edition.locale());
    String style = style(theme);
    HtmlWriter html = new HtmlWriter();
    html.raw("<!DOCTYPE html>\n")
        .open("html", "lang", edition.locale().toLanguageTag(), "dir", wording.direction())
        .open("head")
        .empty("meta", "charset", "utf-8")
        .element("title", title)
        .empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
        .empty("meta", "name", "robots", "content", "noindex")
        .open("style")
        .raw(style)
        .close("style")
        .close("head")
        .open("body")
        .raw(page)
        .close("body")
        .close("html");
    return new ScriptPages(title, style, printed, html + "\n", Map.copyOf(pictures));
  }

  private static String style(Theme theme) {
    return String.join(
        "\n",
        "",
        "body { margin: 0 auto; max-width: 44rem; padding: 1rem; color: "
            + theme.value("ink")
            + "; background: "
            + theme.value("paper")
            + "; font-family: "
            + theme.value("sans")
            + "; }",
        "h1, h2 { font-family: " + theme.value("heading") + "; font-weight: 400; }",
        ".scene { border-top: 1px solid " + theme.value("rule") + "; padding: 1em 0; }",
        ".frame { color: " + theme.value("soft") + "; margin: 0 0 .5em; }",
        ".frame img { display: block; width: 12em; margin: 0 0 .4em; }",
        ".card { display: block; width: 16em; padding: .6em; margin: 0 0 .4em; border: 1px solid "
            + theme.value("rule")
            + "; }",
        ".said { font-size: 1.5em; line-height: 1.4; margin: 0 0 .5em; }",
        ".said span { display: block; }",
        ".pause { color: " + theme.value("accent") + "; margin: 0 0 .8em; }",
        "table { border-collapse: collapse; width: 100%; }",
        "td:last-child { white-space: nowrap; }",
        "th, td { text-align: left; padding: .2em .6em .2em 0; vertical-align: top; }",
        "");
  }

  /** The pages of one instalment, written twice. */
  private record Writing(
      Edition.Contents edition, Instalment instalment, Timing timing, Catalogue words) {

    String body(BiFunction<FrameContent.Shot, Integer, String> address) {
      HtmlWriter out = new HtmlWriter();
      Edition.Post post = instalment.post();
      out.element("p", edition.title(), "class", "frame")
          .element("h1", post.title())
          .element("p", time(), "class", "frame");
      for (int i = 0; i < instalment.scenes().size(); i++) {
        scene(out, i, address);
      }
      frames(out);
      return out.toString();
    }

    private String time() {
      String all = CaptionFiles.clock(timing.endMs());
      return timing.isRecorded()
          ? words.text("time.recorded", all)
          : words.text("time", all, String.valueOf(edition.talk().wordsAMinute()));
    }

    private void scene(
        HtmlWriter out, int i, BiFunction<FrameContent.Shot, Integer, String> address) {
      Shot scene = instalment.scenes().get(i);
      int number = i + 1;
      out.open("div", "class", "scene");
      if (!scene.chapter().isBlank()) {
        out.element("h2", scene.chapter());
      }
      out.open("div", "class", "frame");
      if (scene.sight() instanceof FrameContent.Shot shot) {
        out.empty("img", "src", address.apply(shot, number), "alt", shot.plate().alt());
      } else {
        card(out, scene.sight());
      }
      out.text(
          CaptionFiles.clock(timing.scenes().get(i).beginMs())
              + " · "
              + words.text("frame.number")
              + " "
              + number
              + (scene.sight() instanceof FrameContent.Shot shot
                  ? " · " + words.text("seen", shot.plate().alt())
                  : ""));
      out.close("div");
      boolean afterPause = false;
      for (Shot.Part part : scene.parts()) {
        boolean isPause = part instanceof Shot.Pause;
        if (isPause && afterPause) {
          continue;
        }
        afterPause = isPause;
        if (part instanceof Shot.Said said) {
          out.open("p", "class", "said");
          for (String line : Caption.lines(said.spoken(), SPOKEN_LINE)) {
            out.element("span", line).text(" ");
          }
          out.close("p");
        } else {
          out.element("p", words.text("pause"), "class", "pause");
        }
      }
      out.close("div");
    }

    private static void card(HtmlWriter out, FrameContent sight) {
      out.open("div", "class", "card");
      if (sight instanceof FrameContent.Card card) {
        out.element("div", card.over()).open("div").element("strong", card.title()).close("div");
        for (FrameContent.Line line : card.lines()) {
          String text = (line.text() + " " + line.shown()).strip();
          if (!text.isEmpty()) {
            out.element("div", text);
          }
        }
      } else if (sight instanceof FrameContent.Table table) {
        out.element("div", table.over())
            .open("div")
            .element("strong", String.join(" · ", table.head()))
            .close("div");
        table.rows().forEach(row -> out.element("div", String.join(" · ", row)));
      } else if (sight instanceof FrameContent.Graph graph) {
        out.element("strong", graph.chart().title());
      }
      out.close("div");
    }

    private void frames(HtmlWriter out) {
      out.open("div", "class", "scene")
          .element("h2", words.text("frames"))
          .element(
              "p",
              words.text(
                  "frames.about",
                  String.valueOf(edition.talk().widthPx()),
                  String.valueOf(edition.talk().heightPx())))
          .open("table")
          .open("thead")
          .open("tr");
      for (String key : List.of("frame.number", "frame.begins", "frame.shows", "frame.place")) {
        out.element("th", words.text(key), "scope", "col");
      }
      out.close("tr").close("thead").open("tbody");
      for (int i = 0; i < instalment.scenes().size(); i++) {
        FrameContent sight = instalment.scenes().get(i).sight();
        FramePlace place = FramePlace.of("", sight, edition.talk());
        out.open("tr")
            .element("td", String.format(Locale.ROOT, "%03d", i + 1))
            .element("td", CaptionFiles.clock(timing.scenes().get(i).beginMs()))
            .element("td", shows(sight))
            .element(
                "td",
                place.picture().isEmpty()
                    ? "–"
                    : place.left()
                        + ", "
                        + place.top()
                        + ": "
                        + place.width()
                        + " × "
                        + place.height())
            .close("tr");
      }
      out.close("tbody").close("table").close("div");
    }

    private String shows(FrameContent sight) {
      if (sight instanceof FrameContent.Shot shot) {
        String caption = Text.plainText(shot.plate().caption(), "…").strip();
        String plate = words.text("plate", String.valueOf(shot.plate().number()));
        return caption.isEmpty() ? plate : plate + ": " + caption;
      }
      return words.text("card");
    }
  }
}
