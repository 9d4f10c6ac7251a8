package chinelog.audit;

import static chinelog.audit.SampleEdition.BOOK;
import static chinelog.audit.SampleEdition.PAGE;
import static chinelog.audit.SampleEdition.PLATE;
import static chinelog.audit.SampleEdition.encode;
import static chinelog.audit.SampleEdition.page;
import static chinelog.audit.SampleEdition.pdf;
import static chinelog.audit.SampleEdition.picture;
import static chinelog.audit.SampleEdition.utf8;
import static chinelog.audit.SampleEdition.write;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDInlineImage;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionJavaScript;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationText;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * Leaks planted in a clean edition, each numbered as in a catalogue of 74 ways in which a publisher
 * that withholds can leak; every one must be found, by its file.
 */
class PlantedLeaksTest {

  private static final byte[] ORIGINAL = encode(picture(256, 192, 3), "jpeg");
  private static final byte[] SHEET = encode(picture(64, 64, 9), "jpeg");
  private static final String SECRET =
      "Nobody may hear that the stem knee is laminated from ropewalk elm offcuts.";

  @TempDir Path folder;

  /** Spoils the files of an edition. */
  private interface Spoil {
    void apply(Map<String, byte[]> files) throws IOException;
  }

  /**
   * A leak.
   *
   * @param threat its number
   * @param file in which it must be found
   * @param told a part of what the report must say
   */
  private record Leak(String threat, String name, String file, String told, Spoil spoil) {}

  private static final List<Leak> LEAKS = new ArrayList<>();

  private static void leak(String threat, String name, String file, String told, Spoil spoil) {
    LEAKS.add(new Leak(threat, name, file, told, spoil));
  }

  private static void onPage(String threat, String name, String told, String html) {
    leak(threat, name, PAGE, told, f -> f.put(PAGE, utf8(page("../", html))));
  }

  private static void inBook(String threat, String name, String told, SampleEdition.Change change) {
    leak(threat, name, BOOK, told, f -> f.put(BOOK, pdf("We set the moulds up.", change)));
  }

  private static void inPlate(String threat, String name, String told, byte[] jpeg) {
    leak(threat, name, PLATE, told, f -> f.put(PLATE, jpeg));
  }

  static {
    text();
    names();
    pages();
    pictures();
    documents();
  }

  private static void text() {
    onPage("T01", "a withheld paragraph", "2026-03-14-drawings", "<p>" + SECRET + "</p>");
    leak(
        "T01",
        "a withheld paragraph in the feed",
        "site/feed.xml",
        "2026-03-14-drawings",
        f ->
            f.put(
                "site/feed.xml",
                utf8(SampleEdition.feed().replace("We set the moulds up on the board.", SECRET))));
    onPage(
        "T02",
        "a marked phrase within a public sentence",
        "2026-03-14-drawings",
        "<p>We set the moulds up, with the sheer hollowed four hairs below the batten.</p>");
    onPage("T03", "a stated figure under an agreement", "full.loa", "<p>She is 11.20 m long.</p>");
    leak(
        "T25",
        "withheld words in the search index",
        "site/search.js",
        "2026-03-17",
        f ->
            f.put(
                "site/search.js",
                utf8("const words = [\"the propeller aperture was widened after\"];")));
    leak(
        "T25",
        "withheld words between addresses in the search index",
        "site/search.js",
        "2026-03-17",
        f ->
            f.put(
                "site/search.js",
                utf8(
                    "window.pagesToSearch = [{\"a\": \"javascript:alert(1) https://a.example the"
                        + " propeller aperture was widened after\"}];")));
    onPage(
        "T36",
        "a table's cell in a chart",
        "offsets",
        "<svg viewBox=\"0 0 9 9\"><text x=\"1\" y=\"1\">231.56 mm</text></svg>");
    onPage("T37", "a figure in another unit", "full.loa", "<p>She is 440.94 in long.</p>");
    onPage("T37", "a figure in another metric unit", "full.loa", "<p>She is 11,200 mm long.</p>");
    onPage("T37", "a mass in ounces", "mass of hull", "<p>The hull weighs 14.55 oz.</p>");
    onPage(
        "T42",
        "the other party's name",
        "other party to \"lines\"",
        "<p>Withheld for Skerrick Yard.</p>");
    onPage("T43", "a single telling name", "Quillfeather", "<p>As Mr Quillfeather would say.</p>");
    onPage("T43", "a drawing's number", "SK-1142/3", "<p>See SK-1142/3.</p>");
    onPage("T54", "a supplier", "supplier", "<p>Bought of Ottersby Timber.</p>");
    onPage("T54", "a price", "price", "<p>The lot was £21.63.</p>");
    onPage("T54", "a round price", "price", "<p>It comes to £1,480 with the cloth.</p>");
    onPage("T38", "the rate", "the rate", "<p>At £34.75/h.</p>");
    onPage("T14", "the client", "client", "<p>For Marrowby Ferries.</p>");
    onPage("T26", "a withheld post's title", "post", "<p>Next: How the pantograph was cheated</p>");
    disguises();
  }

  private static String base64(String text) {
    return java.util.Base64.getEncoder().encodeToString(utf8(text));
  }

  private static void disguises() {
    onPage(
        "T57",
        "soft hyphens and zero-width spaces",
        "other party",
        "<p>Sker\u00adrick \u200bYa\u200brd</p>");
    onPage(
        "T57",
        "characters encoded twice",
        "other party",
        "<p>Sker%2572ick Yard</p><p>Sker&amp;#114;ick&amp;#32;Yard</p>");
    onPage("T57", "text that is shown reversed", "other party", "<p>\u202edraY kcirrekS\u202c</p>");
    onPage(
        "T57",
        "figures in the digits of another script",
        "full.loa",
        "<p>She is \u0967\u0967.\u0968\u0966 m long.</p>");
    onPage(
        "T57",
        "base 64 in base 64",
        "other party",
        "<p>" + base64(base64("By Skerrick Yard, as always")) + "</p>");
    leak(
        "T57",
        "a name in the escapes of a style",
        "site/style.css",
        "other party",
        f -> f.put("site/style.css", utf8("p::after { content: \"\\53 kerrick\\20Yard\" }")));
    leak(
        "T57",
        "a remark in a style",
        "site/style.css",
        "remark",
        f -> f.put("site/style.css", utf8("/* as they like it */ p { color: black }")));
    leak(
        "T57",
        "a name by the numbers of its letters",
        "site/search.js",
        "other party",
        f ->
            f.put(
                "site/search.js",
                utf8(
                    "const of = String.fromCharCode(83,107,101,114,114,105,99,107,32,89,97,114,100);")));
    onPage("T57", "accents taken apart", "other party", "<p>Ske\u0301rrick Yard</p>");
    onPage(
        "T57", "letters of another script", "other party", "<p>Sk\u0435rri\u0441k Y\u0430rd</p>");
    onPage("T57", "tags within a word", "other party", "<p>Sker<b>rick</b> Y<i>ard</i></p>");
    onPage("T57", "entities", "other party", "<p>&#83;kerrick &#x59;ard</p>");
    onPage(
        "T57",
        "percent signs",
        "other party",
        "<p><a href=\"#p\" id=\"p\">Sk%65rrick%20Yard</a></p>");
    leak(
        "T57",
        "escapes in a script",
        "site/search.js",
        "other party",
        f -> f.put("site/search.js", utf8("const a = \"Sk\\u0065rrick\\x20Yard\";")));
    leak(
        "T57",
        "base 64",
        "site/search.js",
        "other party",
        f ->
            f.put(
                "site/search.js",
                utf8(
                    "const a = \""
                        + Base64.getEncoder().encodeToString(utf8("by Skerrick Yard"))
                        + "\";")));
    onPage("T57", "full-width letters", "other party", "<p>Ｓｋｅｒｒｉｃｋ Ｙａｒｄ</p>");
    inPlate(
        "T57",
        "two bytes to a letter in a picture",
        "other party",
        insert(2, segment(0xFE, "by Skerrick Yard".getBytes(StandardCharsets.UTF_16BE))));
  }

  private static void names() {
    leak(
        "T10",
        "a file of an earlier publish",
        "site/old.html",
        "did not write",
        f -> f.put("site/old.html", utf8(page("", "<p>Old.</p>"))));
    leak(
        "T17",
        "an editor's copy",
        "site/index.html~",
        "does not belong",
        f -> f.put("site/index.html~", utf8(page("", "<p>Old.</p>"))));
    leak(
        "T17",
        "version control",
        "site/.git/HEAD",
        "did not write",
        f -> f.put("site/.git/HEAD", utf8("ref: refs/heads/main\n")));
    leak(
        "T18",
        "a withheld photo's name",
        "site/plates/T20_0458.jpg",
        "T20_0458",
        f -> f.put("site/plates/T20_0458.jpg", f.get(PLATE)));
    leak(
        "T18",
        "a withheld entry's name",
        "site/posts/2026-03-17-keelson-scarf.html",
        "2026-03-17-keelson-scarf",
        f -> f.put("site/posts/2026-03-17-keelson-scarf.html", utf8(page("../", "<p>.</p>"))));
    leak(
        "T46",
        "a private report",
        "site/register.log",
        "this kind",
        f -> f.put("site/register.log", utf8("withheld: 3")));
    leak(
        "T73",
        "a table to be opened in a spreadsheet",
        "site/hours.csv",
        "this kind",
        f -> f.put("site/hours.csv", utf8("=1+1,2\n")));
    leak(
        "T73",
        "a cell that a spreadsheet would run",
        "patterns/cutting-list.csv",
        "formula",
        f -> f.put("patterns/cutting-list.csv", utf8("Part,Sheet\r\n\"=1+1\",2\r\n")));
    leak(
        "T70",
        "a packed copy of an old page",
        "site/index.html.gz",
        "this kind",
        f -> f.put("site/index.html.gz", new byte[] {31, (byte) 139, 8}));
    leak(
        "T56",
        "a page that was written but is gone",
        "site/index.html",
        "not there",
        f -> f.remove("site/index.html"));
    leak(
        "T22",
        "an original beside the edition",
        "site/plates/full.jpg",
        "T20_0412.jpg",
        f -> f.put("site/plates/full.jpg", ORIGINAL));
  }

  private static void pages() {
    onPage("T23", "a comment", "comment", "<!-- ask again in May -->");
    onPage("T23", "a hidden block", "hidden", "<div hidden>Ask again in May.</div>");
    onPage("T23", "letters turned round", "<bdo>", "<p><bdo dir=\"rtl\">draY kcirrekS</bdo></p>");
    onPage(
        "T23",
        "letters turned round by a style",
        "order of letters",
        "<style>b { unicode-bidi: bidi-override; direction: rtl }</style><p><b>draY kcirrekS</b></p>");
    onPage("T23", "a template", "<template>", "<template><p>Ask again in May.</p></template>");
    onPage(
        "T24",
        "a withheld caption as alternative text",
        "caption",
        "<img src=\"../plates/plate-001-800.jpg\" alt=\"The rabbet drawn full size beside the brass batten rule.\">");
    onPage(
        "T24",
        "a withheld title in an attribute of data",
        "title",
        "<p data-next=\"The scarf in the keelson\">Next.</p>");
    for (String attribute : List.of("title", "aria-label", "data-find")) {
      onPage(
          "T24",
          "a withheld caption as " + attribute,
          "caption",
          "<p "
              + attribute
              + "=\"The rabbet drawn full size beside the brass batten rule.\">.</p>");
      onPage(
          "T24",
          "the other party's name behind an address, as " + attribute,
          "other party",
          "<p " + attribute + "=\"javascript:alert('Skerrick%20Yard')\">.</p>");
    }
    onPage(
        "T52",
        "an address as what a page is about",
        "not the edition's",
        "<meta name=\"description\" content=\"//elsewhere.example/a?b\">");
    onPage(
        "T11",
        "a larger picture that is not there",
        "does not have",
        "<img src=\"../plates/plate-001-800.jpg\" srcset=\"../plates/plate-001-2400.jpg 2400w\" alt=\"\">");
    onPage(
        "T45",
        "a link to a withheld entry",
        "does not have",
        "<p><a href=\"2026-03-20-quiet.html\">See.</a></p>");
    onPage("T52", "a script in the page", "script", "<script>alert(1)</script>");
    onPage("T52", "a script in an attribute", "script", "<p onclick=\"alert(1)\">.</p>");
    onPage(
        "T52", "a script as an address", "outside", "<p><a href=\"javascript:alert(1)\">.</a></p>");
    onPage(
        "T52",
        "a picture from elsewhere",
        "outside",
        "<img src=\"https://elsewhere.example/a.png\" alt=\"\">");
    onPage(
        "T52",
        "a link that no text shows",
        "no text here shows",
        "<p><a href=\"https://elsewhere.example/\">.</a></p>");
    leak(
        "T52",
        "a script that sends something",
        "site/search.js",
        "send or fetch",
        f -> f.put("site/search.js", utf8("navigator.sendBeacon('x');")));
    for (String script :
        List.of(
            "window.location = [\"javascript:alert(1)\"];",
            "window.location = [\"//elsewhere.example\"];",
            "window.pagesToSearch = [fetch(\"//elsewhere.example\")];",
            "window.pagesToSearch = [\"a\"]; location.href = \"//elsewhere.example\";",
            "location.replace('//elsewhere.example');")) {
      leak(
          "T52",
          "a script that leads away: " + script,
          "site/search.js",
          "send or fetch",
          f -> f.put("site/search.js", utf8(script)));
    }
    leak(
        "T52",
        "a style that fetches",
        "site/style.css",
        "fetches",
        f ->
            f.put("site/style.css", utf8("body { background: url(https://elsewhere.example/a) }")));
    onPage(
        "T81",
        "a drawing that can be measured",
        "a drawing of what \"form\"",
        "<svg class=\"drawing\" data-of=\"form\" viewBox=\"0 0 9 9\"><path d=\"M1 2L3 4\"/></svg>");
    onPage(
        "T80",
        "a withheld waterline to another scale, turned over and end for end",
        "drawn through a column of table waterlines",
        "<svg viewBox=\"0 0 99 99\"><path d=\"" + path(1, 400, -0.5, 90, -0.5) + "\"/></svg>");
    onPage(
        "T80",
        "a withheld waterline drawn upright within a longer outline",
        "drawn through a column of table waterlines",
        "<svg viewBox=\"0 0 99 99\"><polygon points=\"0,0 "
            + points(3, 0, 1.25, 50, 1.25).replaceAll("(\\S+),(\\S+)", "$2,$1")
            + " 0,760\"/></svg>");
    onPage(
        "T81",
        "withheld waterlines drawn broader than long",
        "drawn through a column of table waterlines",
        "<svg viewBox=\"0 0 99 99\"><path d=\""
            + IntStream.rangeClosed(1, 3)
                .mapToObj(c -> path(c, 6, 0.6, 200, -1.8))
                .collect(Collectors.joining(" "))
            + "\"/></svg>");
    leak(
        "T80",
        "a withheld waterline as a pattern",
        "site/part.svg",
        "drawn through a column of table waterlines",
        f ->
            f.put(
                "site/part.svg",
                utf8(
                    "<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\""
                        + path(2, 0, 1, 0, 1)
                        + "\"/></svg>")));
    inBook(
        "T80",
        "a withheld waterline in the book",
        "drawn through a column of table waterlines",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  c.setLineWidth(0.5f);
                  int[][] all = SampleLog.WATERLINES;
                  c.moveTo(60, 200 + 0.7f * all[0][1]);
                  for (int i = 1; i < all.length; i++) {
                    c.lineTo(60 + 0.7f * all[i][0], 200 + 0.7f * all[i][1]);
                  }
                  c.stroke();
                }));
    leak(
        "T26",
        "a site map of pages that are not there",
        "site/feed.xml",
        "out of the edition",
        f ->
            f.put(
                "site/feed.xml",
                utf8(SampleEdition.feed().replace("posts/the-drawings-come-out", "posts/quiet"))));
  }

  /** A column of the withheld waterlines as a path, moved and stretched. */
  private static String path(int column, double x, double along, double y, double across) {
    return "M" + points(column, x, along, y, across).replace(" ", " L");
  }

  private static String points(int column, double x, double along, double y, double across) {
    return Arrays.stream(SampleLog.WATERLINES)
        .map(row -> (x + along * row[0]) + "," + (y + across * row[column]))
        .collect(Collectors.joining(" "));
  }

  private static void pictures() {
    inPlate(
        "T06",
        "a preview in the header",
        "preview",
        replaceJfif(new byte[] {'J', 'F', 'I', 'F', 0, 1, 2, 0, 0, 1, 0, 1, 1, 1, 9, 9, 9}));
    inPlate(
        "T06",
        "the camera's metadata",
        "APP1",
        insert(20, segment(0xE1, utf8("Exif\0\0MM\0*\0\0\0\b\0\0"))));
    inPlate(
        "T07", "a second picture's index", "APP2", insert(20, segment(0xE2, utf8("MPF\0II*\0"))));
    inPlate("T07", "a second picture", "bytes follow", join(plate(), plate()));
    inPlate("T08", "bytes after the end", "bytes follow", join(plate(), utf8("ftypmp42")));
    inPlate("T27", "a comment", "comment", insert(20, segment(0xFE, utf8("camera 00417"))));
    inPlate("T20", "the original itself", "T20_0412.jpg", ORIGINAL);
    inPlate("T60", "a picture that breaks off", "breaks off", Arrays.copyOf(plate(), 900));
    leak(
        "T32",
        "a picture's old end behind the new one",
        "site/paper.png",
        "bytes follow",
        f -> f.put("site/paper.png", join(f.get("site/paper.png"), new byte[900])));
    leak(
        "T32",
        "text in a picture",
        "site/paper.png",
        "besides the picture",
        f -> f.put("site/paper.png", withText(f.get("site/paper.png"))));
    inPlate("T67", "a page that calls itself a picture", "not a JPEG", utf8("<html>"));
  }

  private static void documents() {
    leak("T09", "a sheet as it is in the log", BOOK, "sheets/lines.pdf", f -> f.put(BOOK, SHEET));
    leak(
        "T19",
        "an earlier version",
        BOOK,
        "earlier version",
        f -> f.put(BOOK, revised(f.get(BOOK))));
    leak("T19", "an object that nothing uses", BOOK, "not in use", f -> f.put(BOOK, withStray()));
    leak(
        "T19",
        "bytes between the objects",
        BOOK,
        "between its objects",
        f -> f.put(BOOK, beforeEnd(f.get(BOOK))));
    inBook(
        "T20",
        "the camera's bytes in the book",
        "T20_0412.jpg",
        (pdf, font) -> draw(pdf, ORIGINAL));
    inBook(
        "T20",
        "metadata in the book's picture",
        "comment",
        (pdf, font) -> draw(pdf, insert(20, segment(0xFE, utf8("camera 00417")))));
    inBook(
        "T28",
        "a keyword in the information",
        "other party",
        (pdf, font) -> pdf.getDocumentInformation().setKeywords("Skerrick Yard"));
    inBook(
        "T28",
        "an unknown entry in the information",
        "Client",
        (pdf, font) -> pdf.getDocumentInformation().setCustomMetadataValue("Client", "x"));
    inBook("T28", "an attached file", "EmbeddedFiles", (pdf, font) -> attach(pdf));
    inBook(
        "T28", "metadata with the other party's name", "other party", (pdf, font) -> metadata(pdf));
    inBook(
        "T29",
        "a script",
        "OpenAction",
        (pdf, font) -> pdf.getDocumentCatalog().setOpenAction(new PDActionJavaScript("x")));
    inBook(
        "T29",
        "a note on a page",
        "besides its links",
        (pdf, font) -> pdf.getPage(0).getAnnotations().add(new PDAnnotationText()));
    inBook(
        "T29",
        "a program's own data",
        "PieceInfo",
        (pdf, font) -> pdf.getPage(0).getCOSObject().setItem("PieceInfo", new COSDictionary()));
    inBook(
        "T29",
        "text beside the page",
        "outside the page",
        (pdf, font) -> onFirstPage(pdf, c -> write(c, font, "up", 900, 40)));
    inBook(
        "T29",
        "text that is not shown",
        "not shown",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  c.setRenderingMode(RenderingMode.NEITHER);
                  write(c, font, "up", 90, 40);
                }));
    inBook(
        "T09",
        "a withheld paragraph on a page",
        "2026-03-14-drawings",
        (pdf, font) -> onFirstPage(pdf, c -> write(c, font, SECRET, 20, 40)));
    inBook(
        "T30",
        "letters that no page shows",
        "letters that no page shows",
        (pdf, font) -> {
          font.encode("JQXZ");
          for (int letter : "JQXZ".toCharArray()) {
            font.addToSubset(letter);
          }
        });
    hidden();
    inBook("T28", "a link that no text shows", "no text here shows", (pdf, font) -> link(pdf));
    leak(
        "T67",
        "a document that cannot be read",
        BOOK,
        "cannot be read",
        f -> f.put(BOOK, utf8("%PDF-1.7\nstartxref\n9\n%%EOF\n")));
  }

  /** What is on a page and cannot be seen there. */
  private static void hidden() {
    inBook(
        "T09",
        "text under a box",
        "under a picture or a box",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  write(c, font, "up", 90, 40);
                  c.addRect(80, 30, 60, 30);
                  c.fill();
                }));
    inBook(
        "T09",
        "text under a picture",
        "under a picture or a box",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  write(c, font, "up", 90, 140);
                  c.drawImage(JPEGFactory.createFromByteArray(pdf, plate()), 60, 100);
                }));
    inBook(
        "T29",
        "white text on white paper",
        "in the colour of what is under it",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  c.setNonStrokingColor(Color.WHITE);
                  write(c, font, "up", 90, 40);
                }));
    inBook(
        "T29",
        "text in the colour of its box",
        "in the colour of what is under it",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  c.setNonStrokingColor(new Color(0x2a4b60));
                  c.addRect(80, 30, 60, 30);
                  c.fill();
                  c.setNonStrokingColor(new Color(0x2c4d61));
                  write(c, font, "up", 90, 40);
                }));
    inBook(
        "T29",
        "text that shines through",
        "in the colour of what is under it",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  PDExtendedGraphicsState faint = new PDExtendedGraphicsState();
                  faint.setNonStrokingAlphaConstant(0.02f);
                  c.setGraphicsStateParameters(faint);
                  write(c, font, "up", 90, 40);
                }));
    inBook(
        "T29",
        "text outside what the page shows of itself",
        "cut off",
        (pdf, font) -> {
          onFirstPage(pdf, c -> write(c, font, "up", 90, 40));
          pdf.getPage(0).setCropBox(new PDRectangle(0, 100, 595, 742));
        });
    inBook(
        "T29",
        "text outside the part that is drawn",
        "cut off",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  c.addRect(0, 100, 500, 500);
                  c.clip();
                  write(c, font, "up", 90, 40);
                }));
    inBook(
        "T29",
        "text that is cut off and stands on the next page, but not at its head",
        "cut off",
        (pdf, font) -> cutOffAndThen(pdf, font, "One goes up"));
    inBook(
        "T29",
        "text too small to be read",
        "too small",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> {
                  c.transform(Matrix.getScaleInstance(0.1f, 0.1f));
                  write(c, font, "up", 900, 400);
                }));
    inBook(
        "T29",
        "a picture within a page's commands",
        "within the page's own commands",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c ->
                    c.drawImage(
                        new PDInlineImage(
                            inlineHead(), new byte[] {0, 0, 0}, pdf.getPage(0).getResources()),
                        90,
                        40)));
    inBook(
        "T20",
        "a picture in another form than the edition's",
        "not JPEG",
        (pdf, font) ->
            onFirstPage(
                pdf,
                c -> c.drawImage(LosslessFactory.createFromImage(pdf, picture(9, 9, 2)), 60, 40)));
  }

  /** Cuts "up" off the first page, and adds a second one. */
  static void cutOffAndThen(PDDocument pdf, PDFont font, String next) throws IOException {
    onFirstPage(
        pdf,
        c -> {
          c.addRect(0, 100, 500, 500);
          c.clip();
          write(c, font, "up", 90, 40);
        });
    PDPage second = new PDPage(PDRectangle.A4);
    pdf.addPage(second);
    try (PDPageContentStream content = new PDPageContentStream(pdf, second)) {
      write(content, font, next, 60, 700);
    }
  }

  private static COSDictionary inlineHead() {
    COSDictionary head = new COSDictionary();
    head.setInt(COSName.W, 1);
    head.setInt(COSName.H, 1);
    head.setInt(COSName.BPC, 8);
    head.setName(COSName.CS, "RGB");
    return head;
  }

  @TestFactory
  Stream<DynamicTest> everyPlantedLeakIsFound() {
    return LEAKS.stream()
        .map(
            leak ->
                DynamicTest.dynamicTest(
                    leak.threat + ": " + leak.name,
                    () -> find(leak, bytes -> false, Searched.NOTHING)));
  }

  /** What was found clean before it was spoilt, page by page, lets nothing new pass. */
  @TestFactory
  Stream<DynamicTest> leaksInADocumentThatWasCleanBeforeAreFound() throws IOException {
    Map<String, byte[]> clean = SampleEdition.files();
    clean.put(BOOK, pdf("We set the moulds up.", (pdf, font) -> {}));
    AuditReport report = search(clean, clean.keySet(), bytes -> false, Searched.NOTHING);
    assertThat(report.findings()).isEmpty();
    assertThat(report.outcome().clean()).anyMatch(mark -> mark.endsWith("@" + BOOK));
    return LEAKS.stream()
        .filter(leak -> leak.file.equals(BOOK))
        .map(
            leak ->
                DynamicTest.dynamicTest(
                    leak.threat + ": " + leak.name,
                    () -> find(leak, bytes -> true, report.outcome())));
  }

  /** Only decoding may be left out, whatever is said of a picture's bytes. */
  @TestFactory
  Stream<DynamicTest> leaksInPicturesThatNeedNotBeDecodedAreFound() {
    return LEAKS.stream()
        .filter(leak -> leak.file.endsWith(".jpg"))
        .map(
            leak ->
                DynamicTest.dynamicTest(
                    leak.threat + ": " + leak.name,
                    () -> find(leak, bytes -> true, Searched.NOTHING)));
  }

  private void find(Leak leak, Predicate<byte[]> isDecodable, Searched before) throws IOException {
    Map<String, byte[]> files = SampleEdition.files();
    Set<String> manifest = new TreeSet<>(files.keySet());
    leak.spoil.apply(files);
    AuditReport report = search(files, manifest, isDecodable, before);
    assertThat(report.findings())
        .anySatisfy(
            finding -> {
              assertThat(finding.file()).isEqualTo(leak.file);
              assertThat(finding.what()).contains(leak.told);
            });
    // A leak is told where it is, and nothing else is blamed.
    assertThat(report.findings())
        .allMatch(f -> f.file().startsWith(leak.file) || leak.file.startsWith(f.file()));
  }

  private AuditReport search(
      Map<String, byte[]> files,
      Set<String> manifest,
      Predicate<byte[]> isDecodable,
      Searched before)
      throws IOException {
    Path place = Files.createTempDirectory(folder, "leak");
    Path log = place.resolve("log");
    put(log, Map.of("photos/T20_0412.jpg", ORIGINAL, "sheets/lines.pdf", SHEET));
    put(place.resolve("public"), files);
    return Audit.search(
        place.resolve("public"),
        manifest,
        SampleLog.in(log),
        "public",
        SampleLog.PUBLIC,
        List.of(),
        Set.of(),
        SampleEdition.pictures(),
        new Before(
            new Decoded(
                files.values().stream().filter(isDecodable).map(SampleEdition::sha256).toList()),
            Map.of(),
            before,
            bytes -> null));
  }

  private static void put(Path folder, Map<String, byte[]> files) throws IOException {
    for (Map.Entry<String, byte[]> file : new TreeMap<>(files).entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
  }

  private static byte[] plate() {
    return SampleEdition.files().get(PLATE);
  }

  private static byte[] segment(int marker, byte[] content) {
    int length = content.length + 2;
    return join(
        new byte[] {(byte) 0xFF, (byte) marker, (byte) (length >> 8), (byte) length}, content);
  }

  private static byte[] insert(int at, byte[] segment) {
    byte[] plate = plate();
    return join(
        Arrays.copyOf(plate, at), join(segment, Arrays.copyOfRange(plate, at, plate.length)));
  }

  private static byte[] replaceJfif(byte[] content) {
    byte[] plate = plate();
    return join(
        Arrays.copyOf(plate, 2),
        join(segment(0xE0, content), Arrays.copyOfRange(plate, 20, plate.length)));
  }

  private static byte[] join(byte[] a, byte[] b) {
    byte[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  private static byte[] withText(byte[] png) {
    byte[] body = utf8("tEXtAuthor\0x");
    java.util.zip.CRC32 crc = new java.util.zip.CRC32();
    crc.update(body);
    byte[] chunk =
        java.nio.ByteBuffer.allocate(body.length + 8)
            .putInt(body.length - 4)
            .put(body)
            .putInt((int) crc.getValue())
            .array();
    return join(Arrays.copyOf(png, 33), join(chunk, Arrays.copyOfRange(png, 33, png.length)));
  }

  private static void draw(PDDocument pdf, byte[] jpeg) throws IOException {
    onFirstPage(
        pdf,
        c -> c.drawImage(JPEGFactory.createFromStream(pdf, new ByteArrayInputStream(jpeg)), 9, 9));
  }

  /** Draws on a page. */
  private interface Drawing {
    void on(PDPageContentStream content) throws IOException;
  }

  private static void onFirstPage(PDDocument pdf, Drawing drawing) throws IOException {
    try (PDPageContentStream content =
        new PDPageContentStream(pdf, pdf.getPage(0), PDPageContentStream.AppendMode.APPEND, true)) {
      drawing.on(content);
    }
  }

  private static void attach(PDDocument pdf) throws IOException {
    PDComplexFileSpecification file = new PDComplexFileSpecification();
    file.setFile("a.txt");
    file.setEmbeddedFile(new PDEmbeddedFile(pdf, new ByteArrayInputStream(utf8("x"))));
    PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
    tree.setNames(Map.of("a.txt", file));
    PDDocumentNameDictionary names = new PDDocumentNameDictionary(pdf.getDocumentCatalog());
    names.setEmbeddedFiles(tree);
    pdf.getDocumentCatalog().setNames(names);
  }

  private static void metadata(PDDocument pdf) throws IOException {
    String xmp =
        SampleEdition.metadata(
            "<dc:source xmlns:dc=\"http://purl.org/dc/elements/1.1/\">Skerrick Yard</dc:source>");
    pdf.getDocumentCatalog().setMetadata(new PDMetadata(pdf, new ByteArrayInputStream(utf8(xmp))));
  }

  private static void link(PDDocument pdf) throws IOException {
    COSDictionary action = new COSDictionary();
    action.setName(COSName.S, "URI");
    action.setItem(COSName.URI, new COSString("https://elsewhere.example/"));
    pdf.getPage(0).getCOSObject().setItem("A", action);
  }

  private static byte[] revised(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf);
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.addPage(new PDPage(PDRectangle.A4));
      document.getDocumentCatalog().getCOSObject().setNeedToBeUpdated(true);
      document.getPages().getCOSObject().setNeedToBeUpdated(true);
      document.saveIncremental(out);
      return out.toByteArray();
    }
  }

  private static byte[] beforeEnd(byte[] pdf) {
    return new String(pdf, StandardCharsets.ISO_8859_1)
        .replace("startxref", "%old\nstartxref")
        .getBytes(StandardCharsets.ISO_8859_1);
  }

  /** A page that was taken out of the document but not out of its file. */
  private static byte[] withStray() throws IOException {
    byte[] clean =
        pdf(
            "We set the moulds up.",
            (pdf, font) -> {
              COSStream stray = pdf.getDocument().createCOSStream();
              try (var out = stray.createOutputStream()) {
                out.write(utf8("stray"));
              }
              pdf.getPage(0).getCOSObject().setItem(COSName.getPDFName("Qx"), stray);
            });
    // The reference to it is overwritten by as many bytes of white space.
    String text = new String(clean, StandardCharsets.ISO_8859_1);
    try (PDDocument document = Loader.loadPDF(clean);
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.save(out, org.apache.pdfbox.pdfwriter.compress.CompressParameters.NO_COMPRESSION);
      text = out.toString(StandardCharsets.ISO_8859_1);
    }
    java.util.regex.Matcher m = java.util.regex.Pattern.compile("/Qx \\d+ 0 R").matcher(text);
    return m.replaceAll(r -> " ".repeat(r.group().length())).getBytes(StandardCharsets.ISO_8859_1);
  }
}
