package chinelog.site;

import chinelog.edition.Chart;
import chinelog.edition.Drawing;
import chinelog.edition.Edition.Post;
import chinelog.edition.Figure;
import chinelog.edition.Picture;
import chinelog.edition.Plate;
import chinelog.edition.Text;
import chinelog.markup.ChartSvg;
import chinelog.markup.DrawingSvg;
import chinelog.markup.HtmlWriter;
import chinelog.markup.Particulars;
import chinelog.markup.Parts;
import chinelog.markup.Sources;
import chinelog.markup.TextMarkup;
import chinelog.markup.Theme;
import chinelog.markup.Ways;
import chinelog.markup.Wording;
import chinelog.site.SiteManner.Use;
import freemarker.core.HTMLOutputFormat;
import freemarker.template.TemplateMethodModelEx;
import freemarker.template.TemplateModel;
import freemarker.template.TemplateModelException;
import freemarker.template.utility.DeepUnwrap;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** What templates may call; {@code site-template/README.md} tells of each. */
final class TemplateFunctions {

  /** A function of a template: what it is given, and what it gives back. */
  @FunctionalInterface
  private interface Function {
    @Nullable Object of(List<Object> given);
  }

  private final Theme theme;
  private final Wording wording;

  TemplateFunctions(Theme theme, Wording wording) {
    this.theme = theme;
    this.wording = wording;
  }

  /**
   * The functions for one page, by name.
   *
   * @param root what leads from the page to the site's root
   * @param uses notes what the page takes from its edition
   */
  Map<String, Object> forPage(String root, Uses uses) {
    SiteManner manner = new SiteManner(root, uses, wording);
    Map<String, Object> all = new TreeMap<>();
    words(all);
    places(all, root, uses);
    put(all, "entry", g -> uses.entry(text(g, 0)));
    put(all, "stage", g -> uses.stage(text(g, 0)));
    put(all, "cell", g -> uses.figureCell(text(g, 0)));
    put(all, "text", g -> markup(h -> TextMarkup.write(blocks(g), manner, h)));
    put(all, "runs", g -> markup(h -> TextMarkup.writeRuns(runs(g), manner, h)));
    put(all, "plain", g -> TextMarkup.plain(runs(g), wording));
    put(all, "byGroup", g -> Parts.byGroup(list(g, Figure.class)));
    put(all, "parts", g -> Parts.of(list(g, Figure.class)));
    put(all, "ways", g -> Ways.of(list(g, Figure.class), (Sources) g.get(1), wording));
    put(all, "column", g -> ((Parts) g.get(0)).column(text(g, 1), wording));
    put(all, "lines", g -> Ways.lines((Ways.Way) g.get(1), (Sources) g.get(0)));
    put(all, "sourcesOf", g -> Sources.of(list(g, Figure.class)));
    put(
        all,
        "working",
        g ->
            markup(
                h ->
                    ((Sources) g.get(0))
                        .write(h, (Figure) g.get(1), n -> wording.text("note.number", n))));
    put(all, "particulars", g -> Particulars.of(list(g, Figure.class)));
    put(all, "typeset", g -> TextMarkup.typeset(text(g, 0)));
    put(all, "commonEnd", g -> TextMarkup.commonEnd(list(g, String.class)));
    put(all, "notes", g -> markup(manner::notes));
    put(all, "seal", g -> markup(h -> manner.mark(h, list(g, String.class))));
    put(
        all,
        "openWith",
        g -> {
          manner.openWith((Plate) g.get(0));
          return "";
        });
    put(all, "isTall", g -> SiteManner.isTall((Plate) g.get(0)));
    put(all, "figure", g -> markup(h -> manner.figure(h, (Plate) g.get(0), use(g))));
    put(all, "picture", g -> markup(h -> manner.image(h, (Plate) g.get(0), use(g))));
    put(
        all,
        "chart",
        g -> markup(h -> h.raw(ChartSvg.forScreen((Chart) g.get(0), theme, wording))));
    put(
        all,
        "drawing",
        g -> markup(h -> h.raw(DrawingSvg.forScreen((Drawing) g.get(0), theme, wording))));
    return all;
  }

  private void words(Map<String, Object> all) {
    put(
        all,
        "say",
        g -> wording.text(text(g, 0), g.stream().skip(1).map(String::valueOf).toArray()));
    put(all, "count", g -> wording.count(text(g, 0), ((Number) g.get(1)).intValue()));
    put(all, "number", g -> wording.number((Number) g.get(0)));
    put(all, "date", g -> wording.date((LocalDate) g.get(0)));
    put(all, "day", g -> wording.date(LocalDate.parse(text(g, 0))));
  }

  private static void places(Map<String, Object> all, String root, Uses uses) {
    put(all, "to", g -> root + text(g, 0));
    put(all, "toPost", g -> root + Addresses.post((Post) g.get(0)));
    put(all, "toPlate", g -> root + Addresses.plate((Plate) g.get(0)));
    put(
        all,
        "toLargest",
        g -> {
          Picture picture = ((Plate) g.get(0)).picture();
          return root + Addresses.picture(picture, picture.largest());
        });
    put(all, "toEntry", g -> below(root, uses.entryAddress(text(g, 0))));
    put(all, "toFigure", g -> below(root, uses.figureAddress(text(g, 0))));
    put(all, "anchor", g -> Addresses.anchor(text(g, 0)));
  }

  private static @Nullable String below(String root, @Nullable String path) {
    return path == null ? null : root + path;
  }

  private static Use use(List<Object> given) {
    return Use.valueOf(text(given, 1).toUpperCase(Locale.ROOT));
  }

  private static String text(List<Object> given, int index) {
    return String.valueOf(given.get(index));
  }

  private static List<Text.Block> blocks(List<Object> given) {
    return list(given, Text.Block.class);
  }

  private static List<Text.Run> runs(List<Object> given) {
    return list(given, Text.Run.class);
  }

  private static <T> List<T> list(List<Object> given, Class<T> type) {
    return ((List<?>) given.get(0)).stream().map(type::cast).toList();
  }

  private static Object markup(java.util.function.Consumer<HtmlWriter> writing) {
    HtmlWriter html = new HtmlWriter();
    writing.accept(html);
    try {
      return HTMLOutputFormat.INSTANCE.fromMarkup(html.toString());
    } catch (TemplateModelException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void put(Map<String, Object> all, String name, Function function) {
    TemplateMethodModelEx method =
        arguments -> {
          List<Object> given = new ArrayList<>();
          for (Object argument : arguments) {
            given.add(DeepUnwrap.unwrap((TemplateModel) argument));
          }
          try {
            return function.of(given);
          } catch (IllegalArgumentException
              | MissingResourceException
              | ClassCastException
              | DateTimeException
              | IndexOutOfBoundsException e) {
            throw new TemplateModelException(name + "(…) cannot do this: " + e.getMessage(), e);
          }
        };
    all.put(name, method);
  }
}
