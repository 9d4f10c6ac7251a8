package chinelog.desk;

import chinelog.publish.Demo;
import chinelog.site.Browser;
import chinelog.site.Patience;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Takes pictures of the demo's pages at the desk, to be looked at: {@code DeskPictures FOLDER
 * [PAGE...]}, each page narrow, middling and wide, light and dark, in the language of {@code
 * -Dchinelog.language=de}.
 */
public final class DeskPictures {

  private static final List<Integer> WIDTHS = List.of(360, 1024, 1440);

  private DeskPictures() {}

  private static Map<String, String> pages() {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("today", "/");
    pages.put("notes", "/notes");
    pages.put("note", "/notes/edit?file=entries/2026-04-26-shaft.md");
    pages.put("text", "/text?file=log.yaml");
    pages.put("photographs", "/photographs");
    pages.put("photograph", "/photographs/look?photo=photos/T20_0463.jpg");
    pages.put("words", "/photographs/words?only=all");
    pages.put("sheets", "/sheets");
    pages.put("sheet", "/sheets/look?sheet=sheets/lines.pdf&page=1");
    pages.put("facts", "/facts");
    pages.put("agreements", "/agreements");
    pages.put("seen", "/agreements/seen?for=public");
    pages.put("publishing", "/publishing");
    return pages;
  }

  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    List<String> wanted = List.of(args).subList(1, args.length);
    try (Demo published = new Demo();
        OpenDemo demo = new OpenDemo(published);
        Browser browser = new Browser()) {
      browser.fresh();
      browser.language(System.getProperty("chinelog.language", "en"));
      demo.open(browser, "/");
      for (Map.Entry<String, String> page : pages().entrySet()) {
        if (!wanted.isEmpty() && !wanted.contains(page.getKey())) {
          continue;
        }
        for (String side : List.of("", "public")) {
          boolean hasSides = !List.of("note", "text", "words", "seen").contains(page.getKey());
          if (!side.isEmpty() && !hasSides) {
            continue;
          }
          browser.evaluate("sessionStorage.setItem('as-seen', '" + side + "')");
          demo.open(browser, page.getValue());
          browser.await("!document.querySelector('[aria-busy]')");
          Patience.pause();
          for (String scheme : List.of("light", "dark")) {
            browser.scheme(scheme);
            for (int width : WIDTHS) {
              browser.size(width, width == 360 ? 740 : 900, 1);
              browser.evaluate("new Promise(r => setTimeout(r, 300))");
              String name = page.getKey() + (side.isEmpty() ? "" : "-beside");
              Files.write(
                  folder.resolve(name + "-" + width + "-" + scheme + ".png"),
                  browser.picture(width == 360));
            }
          }
        }
      }
    }
  }
}
