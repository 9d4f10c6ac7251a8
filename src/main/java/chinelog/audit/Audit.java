package chinelog.audit;

import chinelog.digest.Sha256;
import chinelog.label.Clearance;
import chinelog.log.records.Head;
import chinelog.log.records.Log;
import chinelog.log.records.Marked;
import chinelog.problem.Sentence;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Collectors;

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

  private static final Sentence NOT_OF_AN_EDITION =
      Sentence.of("A file of this kind does not belong in an edition.");

  /** The same order whatever language it is told in. */
  private static final Comparator<Sentence> IN_ENGLISH = Comparator.comparing(Sentence::toString);

  private static final Set<String> PICTURES = Set.of("jpg", "jpeg", "png");
  private static final String CLEAN_OF_ITS_NAME = " ";
  private static final String CLEAN_WITH_CREDIT = " with ";

  private final KnownAddresses addresses;
  private final Originals originals;
  private final Search search;
  private final Pictures pictures;
  private final Before before;
  private final AuditScope scope;

  /** The originals that no earlier audit looked for. */
  private final Originals fresh;

  private final boolean mayStand;

  /** What was found clean of all that is looked for now, but for the fresh originals. */
  private final Set<String> cleanBefore;

  private final Set<String> clean = ConcurrentHashMap.newKeySet();
  private final AtomicInteger stood = new AtomicInteger();
  private final List<Finding> found = new ArrayList<>();

  private Audit(
      KnownAddresses addresses,
      Originals originals,
      Search search,
      Pictures pictures,
      Before before,
      AuditScope scope) {
    this.addresses = addresses;
    this.originals = originals;
    this.search = search;
    this.pictures = pictures;
    this.before = before;
    this.scope = scope;
    this.fresh = originals.without(before.searched().lookedFor());
    boolean wasLookedFor = scope.wasLookedFor(before.searched());
    this.mayStand = wasLookedFor && scope.allowsAsMuchAs(before.searched());
    this.cleanBefore = wasLookedFor ? before.searched().clean() : Set.of();
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
   *     shown, and released ones, what the program words itself, words of everyday speech, and what
   *     the maker said may stand; no canary is made of them
   * @param pictures all that the edition may hold, in files or in documents
   * @param before what is known from earlier audits: a file of the same name and bytes in which
   *     nothing was found is searched again only if something is looked for that was not then, or
   *     something is no longer allowed that was allowed then
   * @throws IOException if a file cannot be read at all
   */
  public static AuditReport search(
      Path folder,
      Set<String> files,
      Log log,
      String readers,
      Clearance clearance,
      List<Canary> more,
      Set<String> shown,
      List<AllowedPicture> pictures,
      Before before)
      throws IOException {
    LogWalk walk = walk(log, readers, clearance, more, shown);
    Secrets secrets = walk.secrets();
    Search search = secrets.search();
    Originals originals = Originals.of(log, clearance);
    KnownAddresses addresses =
        new KnownAddresses(new TreeSet<>(files), walk.links(), log.head().address());
    CreditLine credit = credit(log.head(), clearance);
    Audit audit =
        new Audit(
            addresses,
            originals,
            search,
            new Pictures(pictures, before.decoded(), credit, originals, search),
            before,
            AuditScope.of(search, originals, addresses, pictures, credit));
    return audit.report(folder, files, secrets);
  }

  /**
   * What {@link #search} would find wherever one of these texts comes to stand, such as "the beam"
   * or "the name of the client", for each of them.
   *
   * @param texts that the maker wrote and readers get
   */
  public static List<SortedSet<Sentence>> openly(
      List<String> texts,
      Log log,
      String readers,
      Clearance clearance,
      List<Canary> more,
      Set<String> shown) {
    Search search = walk(log, readers, clearance, more, shown).secrets().search();
    boolean any = !held(String.join("\f", texts), search).isEmpty();
    return texts.stream()
        .map(text -> any ? held(text, search) : Collections.<Sentence>emptySortedSet())
        .toList();
  }

  private static SortedSet<Sentence> held(String text, Search search) {
    Findings findings = new Findings("");
    search.text(text, findings, Sentence.of(""));
    return findings.list().stream()
        .map(Finding::what)
        .collect(Collectors.toCollection(() -> new TreeSet<>(IN_ENGLISH)));
  }

  private static LogWalk walk(
      Log log, String readers, Clearance clearance, List<Canary> more, Set<String> shown) {
    LogWalk walk = new LogWalk(log, readers, clearance);
    walk.walk();
    more.forEach(c -> walk.secrets().withholdReckoned(c.text(), c.what()));
    shown.forEach(walk.secrets()::show);
    return walk;
  }

  private AuditReport report(Path folder, Set<String> files, Secrets secrets) throws IOException {
    if (secrets.withheld() > 0 && search.size() == 0) {
      found.add(
          new Finding(
              "",
              Sentence.of("the log"),
              Sentence.of(
                  "Things are withheld, but none of them can be told from what the readers see, so that nothing could be looked for.")));
    }
    SortedMap<String, Path> there = FileSet.list(folder, files, found);
    for (Findings findings :
        SideBySide.all(there.entrySet(), f -> opened(f.getKey(), f.getValue()))) {
      found.addAll(findings.list());
    }
    found.sort(
        Comparator.comparing(Finding::file)
            .thenComparing(Finding::where, IN_ENGLISH)
            .thenComparing(Finding::what, IN_ENGLISH));
    return new AuditReport(
        List.copyOf(found),
        searched(there.keySet(), secrets),
        pictures.clean(),
        new Searched(scope.lookedFor(), scope.allowed(), Set.copyOf(clean)));
  }

  private Findings opened(String name, Path file) throws IOException {
    Findings findings = new Findings(name);
    String sha256 = before.hashes().get(name);
    String mark = sha256 == null ? "" : mark(name, sha256);
    search.name(name, findings);
    if (sha256 != null && mayStand(name, sha256) && cleanBefore.contains(mark)) {
      again(name, file, findings);
    } else {
      inspect(name, Files.readAllBytes(file), findings);
    }
    if (sha256 != null && findings.list().isEmpty()) {
      clean.add(mark);
    }
    return findings;
  }

  /** What is kept of a file in which nothing was found. */
  private String mark(String name, String sha256) {
    return sha256
        + (isPicture(name) ? CLEAN_WITH_CREDIT + scope.credit() : CLEAN_OF_ITS_NAME + name);
  }

  /** A picture names no other file, so that it is the same whatever it is called. */
  private boolean mayStand(String name, String sha256) {
    return isPicture(name) ? scope.wasShown(sha256, before.searched()) : mayStand;
  }

  private CleanParts parts(String name) {
    return new CleanParts(name, cleanBefore, fresh);
  }

  /** What has to be done for a file that was found clean of all that is looked for in texts. */
  private void again(String name, Path file, Findings findings) throws IOException {
    if (fresh.known() == 0) {
      stood.incrementAndGet();
      if (ending(name).equals("pdf")) {
        clean.addAll(parts(name).marksBefore());
      }
    } else if (ending(name).equals("pdf")) {
      inspect(name, Files.readAllBytes(file), findings);
    } else {
      stood.incrementAndGet();
      fresh.find(Files.readAllBytes(file), findings, Sentence.of("the file"));
    }
  }

  private static boolean isPicture(String name) {
    return PICTURES.contains(ending(name));
  }

  private static String ending(String name) {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private void inspect(String name, byte[] bytes, Findings findings) {
    String ending = ending(name);
    switch (ending) {
      case "jpg", "jpeg" -> {
        String sha256 = before.hashes().get(name);
        pictures.jpeg(
            bytes,
            sha256 == null ? Sha256.of(bytes) : sha256,
            findings,
            Sentence.of("the picture"));
        return;
      }
      case "png" -> {
        pictures.png(bytes, findings, Sentence.of("the picture"));
        return;
      }
      default -> originals.find(bytes, findings, Sentence.of("the file"));
    }
    switch (ending) {
      case "pdf" -> document(name, bytes, findings);
      case "ttf" -> FontFile.inspectTrueType(bytes, findings);
      case "woff2" -> FontFile.inspectWoff2(bytes, findings);
      case "html", "css", "js", "xml", "svg", "json", "webmanifest", "txt", "vtt", "srt" ->
          PlainFile.decode(bytes, findings).ifPresent(text -> text(name, ending, text, findings));
      case "csv" -> table(name, bytes, findings);
      default -> findings.add(Sentence.of("its name"), NOT_OF_AN_EDITION);
    }
  }

  /** Patterns alone have tables to take into a spreadsheet. */
  private void table(String name, byte[] bytes, Findings findings) {
    if (!name.startsWith("patterns/")) {
      findings.add(Sentence.of("its name"), NOT_OF_AN_EDITION);
    }
    PlainFile.decode(bytes, findings)
        .ifPresent(
            text -> {
              if (Spreadsheet.hasFormula(text)) {
                findings.add(
                    Sentence.of("a cell"),
                    Sentence.of("It begins like a formula, which a spreadsheet would run."));
              }
              text(name, "csv", text, findings);
            });
  }

  private void document(String name, byte[] bytes, Findings findings) {
    CleanParts parts = parts(name);
    new PdfFile(bytes, addresses, originals, search, pictures, parts, before.same(), findings)
        .inspect();
    if (findings.list().isEmpty()) {
      clean.addAll(parts.marks());
    }
  }

  private void text(String name, String ending, String text, Findings findings) {
    switch (ending) {
      case "html" -> HtmlFile.inspect(text, addresses, search, findings);
      case "css" -> PlainFile.inspectStyle(text, name, addresses, search, findings);
      case "js" -> PlainFile.inspectScript(text, addresses, search, findings);
      case "xml", "svg" -> PlainFile.inspectXml(text, addresses, search, findings);
      case "vtt", "srt" -> CaptionFile.inspect(text, ending, search, findings);
      default -> PlainFile.inspectText(text, addresses, search, findings);
    }
  }

  private static CreditLine credit(Head head, Clearance clearance) {
    Set<String> texts = new TreeSet<>();
    if (head.creditPhotos()) {
      for (Marked<String> text :
          java.util.Arrays.asList(head.maker(), head.licence(), head.title())) {
        if (text != null && clearance.allows(text.label())) {
          texts.add(text.value());
        }
      }
    }
    return new CreditLine(texts);
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
    if (stood.get() > 0) {
      lines.add(
          stood.get()
              + " of them are as they were when an earlier audit searched them for all of the"
              + " following, and were not searched again.");
    }
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
    List<String> passedOver = new ArrayList<>(secrets.tooCommon());
    int reckoned = secrets.reckonedTooCommon().size();
    if (reckoned > 0) {
      passedOver.add(reckoned == 1 ? "a reckoned figure" : reckoned + " reckoned figures");
    }
    if (!passedOver.isEmpty()) {
      lines.add(
          "Too short or too common to be looked for by themselves: "
              + String.join(", ", passedOver)
              + ".");
    }
    return List.copyOf(lines);
  }
}
