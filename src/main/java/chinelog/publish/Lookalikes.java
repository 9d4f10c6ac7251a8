package chinelog.publish;

import chinelog.digest.Sha256;
import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.log.records.Log;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.Release;
import chinelog.log.records.Sheet;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.SheetPrinter;
import chinelog.photo.likeness.Likeness;
import chinelog.photo.likeness.Original;
import chinelog.photo.likeness.Recognition;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import chinelog.problem.Sentence;
import chinelog.withhold.Withholder;
import chinelog.withhold.question.Questions;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;

/** Asks the maker to look at photographs in which something that is kept back is to be seen. */
public final class Lookalikes {

  private static final int ID_DIGITS = 10;

  private final Workshop.Opened opened;
  private final Clearance clearance;
  private final Darkroom darkroom;
  private final Progress progress;
  private final LocalDate asOf;
  private final List<Problem> reminders = new ArrayList<>();
  private final List<Questions.Asking> asked = new ArrayList<>();

  private Lookalikes(
      Workshop.Opened opened, Clearance clearance, LocalDate asOf, Progress progress) {
    this.asOf = asOf;
    this.opened = opened;
    this.clearance = clearance;
    this.darkroom = new Darkroom(opened.log().folder());
    this.progress = progress;
  }

  /**
   * A question about each photograph, as an edition shows it, in which its readers would see a
   * drawing or a photograph that is kept back from them, unless the maker has looked at this very
   * file.
   *
   * @param readers id of those whom the edition is for
   */
  static List<Problem> inEdition(
      Workshop.Opened opened,
      String readers,
      Withholder.Withheld withheld,
      LocalDate asOf,
      Progress progress)
      throws IOException {
    Log log = opened.log();
    Lookalikes lookalikes = new Lookalikes(opened, withheld.clearance(), asOf, progress);
    Map<String, List<PhotoFile.Region>> shown = new TreeMap<>();
    for (Photograph photograph : opened.album().photographs()) {
      PhotoFile file = photograph.file();
      if (photograph.link() == Photograph.Link.LEFT_OUT) {
        continue;
      }
      if (!withheld.keptBack().contains(file.path())) {
        shown.put(file.path(), List.of());
      }
      withheld.filled().stream()
          .map(Withholder.FilledRegions::regions)
          .filter(filled -> !filled.isEmpty() && file.regions().containsAll(filled))
          .forEach(filled -> shown.put(file.path(), filled));
    }
    lookalikes.search(
        shown,
        withheld.keptBack(),
        page ->
            log.releases().stream()
                .filter(r -> r.kind() == Release.Kind.SHEET && r.readers().contains(readers))
                .filter(page::isNamedBy)
                .map(Release::agreement)
                .toList());
    return lookalikes.problems();
  }

  /**
   * As if an edition were made for readers who are party to nothing, to whom nothing was released.
   *
   * @throws IOException if a picture cannot be read or the cache cannot be written
   */
  public static List<Problem> inLog(Workshop.Opened opened, LocalDate asOf, Progress progress)
      throws IOException {
    return ofLog(opened, asOf, progress).problems();
  }

  /** The questions of {@link #inLog} alone, each with its name. */
  static List<Questions.Asking> asked(Workshop.Opened opened, LocalDate asOf, Progress progress)
      throws IOException {
    return List.copyOf(ofLog(opened, asOf, progress).asked);
  }

  private static Lookalikes ofLog(Workshop.Opened opened, LocalDate asOf, Progress progress)
      throws IOException {
    Lookalikes lookalikes = new Lookalikes(opened, new Clearance(new TreeSet<>()), asOf, progress);
    Map<String, List<PhotoFile.Region>> shown = new TreeMap<>();
    Set<String> keptBack = new TreeSet<>();
    for (Photograph photograph : opened.album().photographs()) {
      PhotoFile file = photograph.file();
      if (!file.label().isNone() || !file.regions().isEmpty()) {
        keptBack.add(file.path());
      }
      if (file.label().isNone() && photograph.link() != Photograph.Link.LEFT_OUT) {
        shown.put(file.path(), file.regions());
      }
    }
    lookalikes.search(shown, keptBack, page -> List.of());
    return lookalikes;
  }

  /** A page of a sheet. */
  private record Page(Sheet sheet, int number) {

    boolean isNamedBy(Release release) {
      return release.name().equals(sheet.path())
          || release.name().equals(sheet.path() + "#" + number);
    }
  }

  /** Names the agreements from which a page was released. */
  private interface Releases {
    Collection<String> of(Page page);
  }

  private List<Problem> problems() {
    List<Problem> all = new ArrayList<>(reminders);
    asked.forEach(a -> all.add(a.problem()));
    return all;
  }

  private void search(
      Map<String, List<PhotoFile.Region>> shown, Set<String> keptBack, Releases releases)
      throws IOException {
    List<Likeness> alike =
        Likeness.find(
            opened.album(), darkroom, keptBack, progressOf(Step.Kind.COMPARING_PHOTOGRAPHS));
    List<Darkroom.Order> orders = new ArrayList<>();
    for (Photograph photograph : opened.album().photographs()) {
      List<PhotoFile.Region> filled = shown.get(photograph.file().path());
      if (filled != null && !isSettled(photograph)) {
        orders.add(new Darkroom.Order(photograph, filled));
      }
    }
    List<Original> originals = new ArrayList<>(pages(releases));
    boolean sheets = !originals.isEmpty();
    originals.addAll(photographs(shown, keptBack));
    Set<String> told = new TreeSet<>();
    for (Likeness likeness : alike) {
      if (!likeness.isSettled()) {
        ask(likeness.open(), likeness.withheld().sha256(), likeness.what());
        told.add(likeness.open().file().path());
      }
    }
    if (!originals.isEmpty()) {
      Recognition.search(
              darkroom, orders, originals, sheets, progressOf(Step.Kind.SEARCHING_PHOTOGRAPHS))
          .stream()
          .filter(Predicate.not(f -> told.contains(f.photograph().file().path())))
          .filter(f -> f.kind() != Recognition.Kind.DRAWING || isUnmarked(f.photograph()))
          .forEach(f -> ask(f.photograph(), f.kind() + " " + f.original(), what(f)));
    }
  }

  /**
   * Asks what only the maker can tell: whether a photograph shows too much.
   *
   * @param original what it was found to show; another is another question
   */
  private void ask(Photograph photograph, String original, CharSequence what) {
    String id = "p" + Sha256.of(photograph.sha256() + " " + original).substring(0, ID_DIGITS);
    boolean answered = opened.answers().stream().anyMatch(a -> a.questions().contains(id));
    if (!answered) {
      Problem problem =
          Problem.question(
              photograph.file().place(),
              what,
              Sentence.of(
                  "Look at it. Put it under the agreement, or draw a region over what is to"
                      + " be hidden; or, if it shows nothing of it, write \u201clooked-at:"
                      + " {0}\u201d beside it in photos.yaml, or into answers.yaml: {1}",
                  photograph.sha256(),
                  "- {questions: ["
                      + id
                      + "], answer: may-stand, reason: \u2026, on: "
                      + asOf
                      + "}"));
      String path = photograph.file().path();
      asked.add(new Questions.Asking(List.of(id), path, Label.NONE, problem));
    }
  }

  private chinelog.photo.PhotoProgress progressOf(Step.Kind kind) {
    return (done, of) -> progress.count(Step.of(kind), done, of);
  }

  private static boolean isSettled(Photograph photograph) {
    return photograph.sha256().equals(photograph.file().lookedAt());
  }

  private static boolean isUnmarked(Photograph photograph) {
    return photograph.file().label().isNone() && photograph.file().regions().isEmpty();
  }

  /** Pages that these readers may not see; of a sheet that cannot be drawn the maker is told. */
  private List<Original> pages(Releases releases) throws IOException {
    SheetPrinter printer = new SheetPrinter(opened.log().folder());
    List<Original> pages = new ArrayList<>();
    for (Sheet sheet : opened.log().sheets()) {
      try {
        for (int n = printer.pages(sheet.path()); n > 0; n--) {
          Set<String> open = new TreeSet<>(clearance.agreements());
          open.addAll(releases.of(new Page(sheet, n)));
          if (!open.containsAll(sheet.label(n).agreements())) {
            pages.add(Original.page(printer, sheet.path(), n));
          }
        }
      } catch (ProblemException e) {
        reminders.add(
            Problem.reminder(
                e.problem().place(),
                Sentence.of(
                    "Photographs cannot be searched for this sheet. {0}", e.problem().what()),
                e.problem().remedy()));
      }
    }
    return pages;
  }

  /** Photographs that are not shown, and the parts that are filled in those that are. */
  private List<Original> photographs(
      Map<String, List<PhotoFile.Region>> shown, Set<String> keptBack) throws IOException {
    List<Original> originals = new ArrayList<>();
    for (Photograph photograph : opened.album().photographs()) {
      PhotoFile file = photograph.file();
      if (keptBack.contains(file.path()) || !clearance.allows(file.label())) {
        List<PhotoFile.Region> parts = shown.getOrDefault(file.path(), List.of());
        Original.findPhotograph(darkroom, photograph, parts).ifPresent(originals::add);
      }
    }
    return originals;
  }

  private static Sentence what(Recognition.Finding finding) {
    String path = finding.photograph().file().path();
    CharSequence where =
        finding.mirrored()
            ? Sentence.of("{0}, mirrored", finding.area())
            : finding.area().toString();
    String original = finding.original();
    int page = original.lastIndexOf('#');
    return switch (finding.kind()) {
      case SHEET ->
          Sentence.of(
              "The photograph {0} shows page {1} of {2} at about {3}; that sheet is withheld.",
              path, original.substring(page + 1), original.substring(0, page), where);
      case PHOTOGRAPH ->
          Sentence.of(
              "The photograph {0} looks like {1} at about {2}, which is withheld, or in part.",
              path, original, where);
      case DRAWING ->
          Sentence.of(
              "The photograph {0} looks as if it shows a drawing at about {1}, and the drawings of"
                  + " this log are withheld.",
              path, where);
    };
  }
}
