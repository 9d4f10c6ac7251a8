package chinelog.publish;

import chinelog.audit.AuditReport;
import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.edition.Letter;
import chinelog.label.Agreement;
import chinelog.log.records.Entry;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Readers;
import chinelog.log.records.Release;
import chinelog.log.records.Sheet;
import chinelog.markup.Theme;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.Sentence;
import chinelog.problem.Suggestion;
import chinelog.reckon.Fact;
import chinelog.withhold.Correspondence;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Prints what is put before the other side of an agreement: the agreement itself, or the asking of
 * a release. A form is made as an edition for that side alone, searched as one, and laid into the
 * workshop beside those that are there; none is ever overwritten.
 */
public final class Forms {

  /** Where they lie, below the log's folder. */
  static final String FOLDER = "workshop/forms";

  /** No readers of a log have this name. */
  private static final String SIDE = "form";

  private final Workshop.Opened opened;
  private final LocalDate today;
  private final Progress progress;

  public Forms(Workshop.Opened opened, LocalDate today, Progress progress) {
    this.opened = opened;
    this.today = today;
    this.progress = progress;
  }

  /**
   * A form that was made, or why it was not.
   *
   * @param file empty where it was not made
   * @param findings of its audit; if there are any, it was thrown away
   * @param line to be written into log.yaml once leave is given; empty for an agreement
   */
  public record Made(
      Optional<Path> file, List<Problem> problems, List<Outcome.Finding> findings, String line) {}

  /** The agreement between the workshop and another side, to be signed. */
  public Made agreement(String id) throws IOException {
    Optional<Problem> unknown = unknown(id);
    return unknown.isPresent()
        ? not(unknown.get())
        : make(new Correspondence.Form(id, null, "", ""), "agreement-" + id, "");
  }

  /**
   * Asks leave to show a thing.
   *
   * @param thing name of a fact, id of an entry, path of a photograph or of a sheet
   * @param wanted the agreement; empty where the thing is under one alone
   * @param readers ids of those who are to see it
   */
  public Made release(String thing, String wanted, List<String> readers) throws IOException {
    Log log = opened.log();
    SortedMap<Release.Kind, Set<String>> under = under(thing);
    if (under.isEmpty()) {
      return not(
          Problem.error(
              Place.of("log.yaml"),
              Sentence.of(
                  "This log has no fact, entry, photograph or sheet \u201c{0}\u201d.", thing),
              Suggestion.findNearest(thing, things())
                  .<CharSequence>map(Suggestion::of)
                  .orElse("Name it as a release does: hull.loa, photos/T20_0412.jpg.")));
    }
    Release.Kind kind = under.firstKey();
    Set<String> promises = new TreeSet<>(under.get(kind));
    promises.removeIf(Agreement::isOwn);
    String agreement =
        wanted.isEmpty() && promises.size() == 1 ? promises.iterator().next() : wanted;
    if (!promises.contains(agreement)) {
      return not(
          Problem.error(
              Place.of("log.yaml"),
              promises.isEmpty()
                  ? Sentence.of(
                      "\u201c{0}\u201d is under no agreement, so that nobody need be asked.", thing)
                  : Sentence.of(
                      "\u201c{0}\u201d is under {1}.", thing, String.join(", ", promises)),
              promises.isEmpty()
                  ? "Ask for something that is withheld; the register says what is."
                  : Sentence.of("Say whom to ask: --under {0}.", promises.iterator().next())));
    }
    List<String> whom = new ArrayList<>();
    for (String id : readers) {
      Optional<Readers> group = log.readers().stream().filter(r -> r.id().equals(id)).findFirst();
      if (group.isEmpty()) {
        return not(
            Problem.error(
                Place.of("log.yaml"),
                Sentence.of("This log names no readers \u201c{0}\u201d.", id),
                Suggestion.remedy(id, log.readers().stream().map(Readers::id).toList())));
      }
      whom.add(group.get().title());
    }
    String slug = thing.toLowerCase(java.util.Locale.ROOT).replaceAll("[^\\p{L}0-9]+", "-");
    return make(
        new Correspondence.Form(agreement, kind, thing, String.join(", ", whom)),
        "release-" + slug,
        "- {"
            + kind.name().toLowerCase(java.util.Locale.ROOT)
            + ": "
            + thing
            + ", under: "
            + agreement
            + ", by: \u2026, on: "
            + today
            + ", words: \"\u2026\", for: ["
            + String.join(", ", readers)
            + "]}");
  }

  private static Made not(Problem problem) {
    return new Made(Optional.empty(), List.of(problem), List.of(), "");
  }

  private Optional<Problem> unknown(String id) {
    List<String> promises = opened.log().promises();
    return promises.contains(id)
        ? Optional.empty()
        : Optional.of(
            Problem.error(
                Place.of("log.yaml"),
                Sentence.of("This log names no agreement \u201c{0}\u201d.", id),
                promises.isEmpty()
                    ? "Name it in log.yaml: \"agreements: {lines: {with: Skerrick Yard}}\"."
                    : Suggestion.remedy(id, promises)));
  }

  /** What a thing of that name is, and the agreements that it is under. */
  private SortedMap<Release.Kind, Set<String>> under(String thing) {
    SortedMap<Release.Kind, Set<String>> found = new TreeMap<>();
    Log log = opened.log();
    Optional<Fact> fact = opened.facts().find(thing);
    fact.ifPresent(f -> found.put(Release.Kind.FACT, f.label().agreements()));
    for (Entry entry : log.notes()) {
      if (entry.id().equals(thing)) {
        found.put(Release.Kind.ENTRY, entry.label().agreements());
      }
    }
    for (PhotoFile photo : log.photos()) {
      if (photo.path().equals(thing)) {
        Set<String> all = new TreeSet<>(photo.label().agreements());
        photo.regions().forEach(r -> all.addAll(r.label().agreements()));
        found.put(Release.Kind.PHOTO, all);
      }
    }
    for (Sheet sheet : log.sheets()) {
      if (sheet.path().equals(thing.replaceFirst("#.*", ""))) {
        found.put(Release.Kind.SHEET, sheet.label(thing).agreements());
      }
    }
    return found;
  }

  private Collection<String> things() {
    Log log = opened.log();
    return Stream.of(
            opened.facts().byName().keySet().stream(),
            log.notes().stream().map(Entry::id),
            log.photos().stream().map(PhotoFile::path),
            log.sheets().stream().map(Sheet::path))
        .flatMap(s -> s)
        .toList();
  }

  private Made make(Correspondence.Form form, String name, String line) throws IOException {
    Readers side =
        new Readers(SIDE, SIDE, Set.of(form.agreement()), Set.of(), Place.of("log.yaml"));
    progress.begin(Step.of(Step.Kind.WITHHOLDING_FORM));
    Withholder.Withheld withheld =
        opened.prepare(side, today, Set.of(), form, progress).against(List.of());
    Edition edition = withheld.edition();
    Letter letter = edition.contents().letters().get(0);
    Path folder = opened.log().folder();
    Theme theme = Workshop.theme(folder, edition.contents().theme());
    Path forms = Files.createDirectories(folder.resolve(FOLDER));
    Path making = Files.createTempDirectory(forms, ".making");
    Path pdf = making.resolve(name + ".pdf");
    try {
      progress.begin(Step.of(Step.Kind.PRINTING_FORM));
      Press.printLetter(edition, theme, letter, pdf);
      FileTimes.set(making, today);
      progress.begin(Step.of(Step.Kind.AUDITING_FORM));
      AuditReport report =
          new EditionSearch(
                  making,
                  Manifest.of(making),
                  opened,
                  withheld,
                  opened.ask(List.of(), today).standing(),
                  SIDE)
              .afresh();
      List<Outcome.Finding> findings =
          report.findings().stream()
              .map(f -> new Outcome.Finding(f.file(), f.where(), f.what()))
              .toList();
      Optional<Path> file =
          findings.isEmpty() ? Optional.of(place(forms, name, pdf)) : Optional.empty();
      return new Made(file, List.of(), findings, line);
    } finally {
      Files.deleteIfExists(pdf);
      Files.deleteIfExists(making);
    }
  }

  /** Moves it beside those that are there: one may have been filled in. */
  private static Path place(Path forms, String name, Path pdf) throws IOException {
    Path file = forms.resolve(name + ".pdf");
    for (int n = 2; Files.exists(file); n++) {
      if (Files.mismatch(file, pdf) < 0) {
        return file;
      }
      file = forms.resolve(name + "-" + n + ".pdf");
    }
    return Files.move(pdf, file);
  }
}
