package chinelog.audit;

import chinelog.label.Clearance;
import chinelog.log.Head;
import chinelog.log.Log;
import chinelog.log.Marked;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Searches the written bytes of an edition for what it must not hold.
 *
 * <p>What may be there is known by name: the files themselves, the segments of a picture, the keys
 * of a PDF, the elements and addresses of a page. Whatever cannot be read, and whatever is of an
 * unknown kind, is a finding. Then everything that the log holds under agreements beyond the
 * readers' clearance is looked for, in every disguise that {@link Disguises} and {@link Folded}
 * undo. Words drawn as pixels are beyond it.
 */
public final class Audit {

  private final Addresses addresses;
  private final Originals originals;
  private final Search search;
  private final Pictures pictures;
  private final List<Finding> found = new ArrayList<>();

  private Audit(Addresses addresses, Originals originals, Search search, Pictures pictures) {
    this.addresses = addresses;
    this.originals = originals;
    this.search = search;
    this.pictures = pictures;
  }

  /**
   * Searches every file below a folder.
   *
   * @param folder an edition as written, such as {@code published/public}
   * @param files path of every file that should be there, below {@code folder}, with '/'
   * @param log the full log
   * @param readers id of the readers
   * @param clearance of those readers
   * @param more texts that must not appear and that the log does not hold as such: reckoned figures
   *     that are withheld, as they would be shown
   * @param shown texts that the edition shows by right: every figure that is not withheld, as it is
   *     shown, and released ones; no canary is made of them
   * @param pictures all that the edition may hold, in files or in documents
   * @param decodable SHA-256 of pictures that need not be decoded again, since nothing was found in
   *     them before; all else is done for them, too
   * @throws IOException if a file cannot be read at all
   */
  public static Report search(
      Path folder,
      Set<String> files,
      Log log,
      String readers,
      Clearance clearance,
      List<Canary> more,
      Set<String> shown,
      List<Picture> pictures,
      Set<String> decodable)
      throws IOException {
    LogWalk walk = new LogWalk(log, readers, clearance);
    walk.walk();
    Secrets secrets = walk.secrets();
    more.forEach(c -> secrets.withholdReckoned(c.text(), c.what()));
    shown.forEach(secrets::show);
    Search search = secrets.search();
    Originals originals = Originals.of(log, clearance);
    Audit audit =
        new Audit(
            new Addresses(new TreeSet<>(files), walk.links(), log.head().address()),
            originals,
            search,
            new Pictures(pictures, decodable, credit(log.head(), clearance), originals, search));
    return audit.report(folder, files, secrets);
  }

  private Report report(Path folder, Set<String> files, Secrets secrets) throws IOException {
    if (secrets.withheld() > 0 && search.size() == 0) {
      found.add(
          new Finding(
              "",
              "the log",
              "Things are withheld, but none of them can be told from what the readers see, so that"
                  + " nothing could be looked for."));
    }
    SortedMap<String, Path> there = FileSet.list(folder, files, found);
    try {
      there.entrySet().parallelStream()
          .map(file -> opened(file.getKey(), file.getValue()))
          .forEachOrdered(findings -> found.addAll(findings.list()));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    found.sort(
        Comparator.comparing(Finding::file)
            .thenComparing(Finding::where)
            .thenComparing(Finding::what));
    return new Report(List.copyOf(found), searched(there.keySet(), secrets), pictures.clean());
  }

  private Findings opened(String name, Path file) {
    Findings findings = new Findings(name);
    search.name(name, findings);
    try {
      inspect(name, Files.readAllBytes(file), findings);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return findings;
  }

  private static String ending(String name) {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private void inspect(String name, byte[] bytes, Findings findings) {
    String ending = ending(name);
    switch (ending) {
      case "jpg", "jpeg" -> {
        pictures.jpeg(bytes, findings, "the picture");
        return;
      }
      case "png" -> {
        pictures.png(bytes, findings, "the picture");
        return;
      }
      default -> originals.find(bytes, findings, "the file");
    }
    switch (ending) {
      case "pdf" -> PdfFile.inspect(bytes, addresses, originals, search, pictures, findings);
      case "ttf" -> FontFile.inspectTrueType(bytes, findings);
      case "woff2" -> FontFile.inspectWoff2(bytes, findings);
      case "html", "css", "js", "xml", "svg", "json", "webmanifest", "txt" ->
          PlainFile.decode(bytes, findings).ifPresent(text -> text(name, ending, text, findings));
      default -> findings.add("its name", "A file of this kind does not belong in an edition.");
    }
  }

  private void text(String name, String ending, String text, Findings findings) {
    switch (ending) {
      case "html" -> HtmlFile.inspect(text, addresses, search, findings);
      case "css" -> PlainFile.inspectStyle(text, name, addresses, search, findings);
      case "js" -> PlainFile.inspectScript(text, addresses, search, findings);
      case "xml", "svg" -> PlainFile.inspectXml(text, addresses, search, findings);
      default -> PlainFile.inspectText(text, search, findings);
    }
  }

  private static Credit credit(Head head, Clearance clearance) {
    Set<String> texts = new TreeSet<>();
    if (head.creditPhotos()) {
      for (Marked<String> text :
          java.util.Arrays.asList(head.maker(), head.licence(), head.title())) {
        if (text != null && clearance.allows(text.label())) {
          texts.add(text.value());
        }
      }
    }
    return new Credit(texts);
  }

  private List<String> searched(Set<String> files, Secrets secrets) {
    SortedMap<String, Integer> kinds = new TreeMap<>();
    files.forEach(name -> kinds.merge(ending(name), 1, Integer::sum));
    List<String> lines = new ArrayList<>();
    lines.add(
        files.size()
            + " files were opened: "
            + String.join(
                ", ", kinds.entrySet().stream().map(k -> k.getValue() + " " + k.getKey()).toList())
            + ".");
    lines.add(
        secrets.withheld()
            + " texts and figures are withheld from these readers; "
            + search.size()
            + " pieces of them were looked for in every file and every file's name.");
    lines.add(originals.known() + " photographs and sheets were looked for, byte by byte.");
    lines.add(
        pictures.filledParts()
            + " filled parts of "
            + pictures.filledPictures()
            + " pictures were looked at.");
    if (!secrets.tooCommon().isEmpty()) {
      lines.add(
          "Too short or too common to be looked for by themselves: "
              + String.join(", ", kinds(secrets.tooCommon()))
              + ".");
    }
    return List.copyOf(lines);
  }

  /** How many there are of each kind, such as "12 titles". */
  private static List<String> kinds(Set<String> things) {
    SortedMap<String, Integer> kinds = new TreeMap<>();
    for (String thing : things) {
      String kind =
          thing.startsWith("figure ")
              ? "reckoned figures"
              : thing.startsWith("the title of ")
                  ? "titles"
                  : thing.startsWith("the fact ") ? "stated figures" : thing;
      kinds.merge(kind, 1, Integer::sum);
    }
    return kinds.entrySet().stream()
        .map(k -> k.getValue() == 1 ? k.getKey() : k.getValue() + " " + k.getKey())
        .toList();
  }

  /**
   * A text that must not appear.
   *
   * @param text as it would be shown
   * @param what it is, for the private report
   */
  public record Canary(String text, String what) {}

  /**
   * A picture that the edition may hold, told by its bytes wherever it stands.
   *
   * @param sha256 in hexadecimal, of each of its sizes
   * @param filled parts that must be of one colour in all of them
   */
  public record Picture(Set<String> sha256, List<Filled> filled) {}

  /**
   * A part of a picture that must be of one colour, as fractions (0 to 1) of its width and height
   * from its left top corner.
   *
   * @param rgb such as {@code 0x8a8a8a}
   */
  public record Filled(double left, double top, double right, double bottom, int rgb) {}

  /**
   * Something that must not be there, or that could not be searched.
   *
   * @param file below the edition's folder
   * @param where in the file, in words
   * @param what was found, in words the maker understands
   */
  public record Finding(String file, String where, String what) {}

  /**
   * What was searched and found.
   *
   * @param searched lines for the report: kinds of files, counts, what was looked for
   * @param cleanPictures SHA-256 of all pictures in which nothing was found
   */
  public record Report(List<Finding> findings, List<String> searched, Set<String> cleanPictures) {

    public boolean isClean() {
      return findings.isEmpty();
    }
  }
}
