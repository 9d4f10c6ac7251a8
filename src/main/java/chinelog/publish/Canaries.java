package chinelog.publish;

import chinelog.audit.Canary;
import chinelog.log.records.Head;
import chinelog.log.records.PhotoFile;
import chinelog.photo.album.Written;
import chinelog.problem.Sentence;
import chinelog.quantity.NumberStyle;
import chinelog.withhold.Register;
import chinelog.withhold.Withholder;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Texts that the audit must look for but cannot find in the log itself: reckoned figures, and what
 * was written into photographs' files.
 */
final class Canaries {

  private static final int LEAST_WORDS = 3;

  private static final Set<Register.Kind> PICTURES =
      EnumSet.of(Register.Kind.PHOTOGRAPH, Register.Kind.REGION_OF_PHOTOGRAPH);

  private Canaries() {}

  /** The figures that are not shown to the readers, as they would be shown. */
  static List<Canary> of(Workshop.Opened opened, Withholder.Withheld withheld) {
    NumberStyle style = style(opened);
    Stream<Canary> figures =
        opened.facts().byName().values().stream()
            .filter(f -> withheld.hiddenFacts().contains(f.name()))
            .map(f -> new Canary(style.show(f.value()), Sentence.of("figure {0}", f.name())));
    Set<String> hidden = unseenPhotos(opened, withheld);
    Stream<Canary> written =
        opened.album().photographs().stream()
            .filter(p -> hidden.contains(p.file().path()))
            .flatMap(
                p ->
                    words(p.written())
                        .map(
                            t ->
                                new Canary(
                                    t, Sentence.of("a caption inside {0}", p.file().path()))));
    return Stream.concat(figures, written).toList();
  }

  private static Set<String> unseenPhotos(Workshop.Opened opened, Withholder.Withheld withheld) {
    Set<String> unseen = hiddenPhotos(opened, withheld);
    opened.log().photos().stream()
        .filter(PhotoFile::leaveOut)
        .map(PhotoFile::path)
        .forEach(unseen::add);
    return unseen;
  }

  /** Paths of photographs that the register names, whole or for a region. */
  static Set<String> hiddenPhotos(Workshop.Opened opened, Withholder.Withheld withheld) {
    return withheld.register().withheld().stream()
        .map(Register.Withheld::thing)
        .filter(t -> PICTURES.contains(t.kind()))
        .map(Register.Thing::name)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Words without figures, of which the same may stand elsewhere by right. */
  private static Stream<String> words(Written written) {
    return Stream.of(written.caption(), written.alt())
        .flatMap(t -> Arrays.stream(t.split("\\S*\\d\\S*")))
        .map(String::strip)
        .filter(t -> t.split("\\s+").length >= LEAST_WORDS);
  }

  /** What is not withheld, as shown: no canary can be made of the same text. */
  static Set<String> shown(Workshop.Opened opened, Withholder.Withheld withheld) {
    NumberStyle style = style(opened);
    Set<String> shown = new TreeSet<>(withheld.writtenFigures());
    withheld.printed().forEach(p -> shown.add(p.printed()));
    opened.facts().byName().values().stream()
        .filter(f -> !withheld.hiddenFacts().contains(f.name()))
        .forEach(f -> shown.add(style.show(f.value())));
    Set<String> hidden = unseenPhotos(opened, withheld);
    opened.album().photographs().stream()
        .filter(p -> !hidden.contains(p.file().path()))
        .forEach(p -> words(p.written()).forEach(shown::add));
    return shown;
  }

  private static NumberStyle style(Workshop.Opened opened) {
    Head head = opened.log().head();
    return new NumberStyle(head.locale(), head.inchDenominator());
  }
}
