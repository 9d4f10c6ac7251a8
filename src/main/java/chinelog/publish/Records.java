package chinelog.publish;

import chinelog.audit.AuditReport;
import chinelog.label.Agreement;
import chinelog.log.records.Release;
import chinelog.withhold.Register;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The private papers about one readers' editions: register, audit report, and what was published
 * when.
 */
record Records(Shelf shelf, String readers) {

  void write(RenderedEdition draft, LocalDate asOf) throws IOException {
    Path folder = Files.createDirectories(shelf.records(readers));
    replace(folder.resolve("register.txt"), register(draft.withheld().register(), asOf));
    shelf.announce(readers, draft.manifest());
    Files.writeString(
        folder.resolve("published.txt"),
        asOf + "  " + draft.manifest().files().size() + " files\n",
        StandardOpenOption.CREATE,
        StandardOpenOption.APPEND);
    replace(folder.resolve("audit.txt"), audit(draft, asOf, "was published"));
  }

  /** Writes a file whole or, on a full disk, not at all. */
  static void replace(Path file, List<String> lines) throws IOException {
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.write(fresh, lines);
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
    } finally {
      Files.deleteIfExists(fresh);
    }
  }

  /** The report of an audit that stopped the publishing. */
  void writeRefusal(RenderedEdition draft, LocalDate asOf) throws IOException {
    Path folder = Files.createDirectories(shelf.records(readers));
    replace(
        folder.resolve("audit.txt"),
        audit(draft, asOf, "was not published; what stood before still stands"));
  }

  /** The report of an audit of what stands. */
  void writeAudit(RenderedEdition draft, LocalDate asOf) throws IOException {
    Path folder = Files.createDirectories(shelf.records(readers));
    replace(folder.resolve("audit.txt"), audit(draft, asOf, "stands published"));
  }

  private List<String> register(Register register, LocalDate asOf) {
    List<String> lines = new ArrayList<>();
    lines.add("Register of the edition for " + readers + ", as of " + asOf + ". Private.");
    lines.add("");
    lines.add("Withheld (" + register.withheld().size() + ")");
    register
        .withheld()
        .forEach(
            w ->
                lines.add(
                    "  "
                        + w.place()
                        + ": "
                        + w.thing().words()
                        + ", under "
                        + w.label().inWords()));
    lines.add("");
    lines.add("Released (" + register.released().size() + ")");
    register.released().forEach(r -> lines.add("  " + line(r.release())));
    return lines;
  }

  private static String inWords(Agreement agreement) {
    String from = agreement.from() == null ? "" : ", made on " + agreement.from();
    String until =
        agreement.until() == null
            ? ", without an end"
            : ", until "
                + agreement.until()
                + (agreement.freeAfterwards() ? ", free afterwards" : ", kept afterwards");
    return agreement.id() + ": " + agreement.covers() + "; with " + agreement.with() + from + until;
  }

  private static String line(Release release) {
    return release.place()
        + ": "
        + release.kind().name().toLowerCase(Locale.ROOT)
        + " "
        + release.name()
        + ", released from "
        + release.agreement()
        + " by "
        + release.by()
        + " on "
        + release.on()
        + ": \u201c"
        + release.words()
        + "\u201d";
  }

  private List<String> audit(RenderedEdition draft, LocalDate asOf, String fate)
      throws IOException {
    AuditReport report = draft.report();
    List<String> lines = new ArrayList<>();
    lines.add("Audit of the edition for " + readers + ", as of " + asOf + ". Private.");
    lines.add("The edition " + fate + ".");
    lines.add("");
    lines.add("Agreements that these readers are not party to");
    draft.agreements().stream()
        .filter(a -> !draft.withheld().clearance().agreements().contains(a.id()))
        .forEach(a -> lines.add("  " + inWords(a)));
    lines.add("");
    lines.add("Withheld from these readers");
    SortedMap<String, Integer> counts = new TreeMap<>();
    draft
        .withheld()
        .register()
        .withheld()
        .forEach(l -> counts.merge(l.label().inWords().toString(), 1, Integer::sum));
    counts.forEach((label, count) -> lines.add("  under " + label + ": " + count));
    if (counts.isEmpty()) {
      lines.add("  nothing");
    }
    lines.add("  Each is named, with its place, in register.txt.");
    lines.add("");
    lines.add("Editions that went out");
    Path published = shelf.records(readers).resolve("published.txt");
    List<String> before = Files.exists(published) ? Files.readAllLines(published) : List.of();
    lines.addAll(
        before.isEmpty() ? List.of("  none before") : before.stream().map("  "::concat).toList());
    lines.add("");
    lines.add("Searched");
    report.searched().forEach(s -> lines.add("  " + s));
    lines.add("");
    if (report.isClean()) {
      lines.add("Found: nothing that must not be there.");
    } else {
      lines.add("Found (" + report.findings().size() + ")");
      report
          .findings()
          .forEach(f -> lines.add("  " + f.file() + ", " + f.where() + ": " + f.what()));
    }
    return lines;
  }
}
