package chinelog.publish;

import chinelog.book.Press;
import chinelog.edition.Edition;
import chinelog.label.Clearance;
import chinelog.log.records.Readers;
import chinelog.markup.Theme;
import chinelog.withhold.Correspondence;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;

/**
 * The printed matter of a log's editions as publishing prints it, in a theme and on paper of one's
 * choosing, each group's in a folder of its name: {@code DemoPrints sample-log FOLDER slipway
 * LETTER public client}.
 */
public final class DemoPrints {

  /** The day for which the demo's editions are made. */
  static final LocalDate DAY = LocalDate.of(2026, 6, 1);

  private DemoPrints() {}

  public static void main(String[] arguments) throws IOException {
    List<String> all = List.of(arguments);
    Press.Options options = new Press.Options(Edition.Paper.valueOf(all.get(3)), false);
    print(
        Path.of(all.get(0)), all.subList(4, all.size()), all.get(2), options, Path.of(all.get(1)));
  }

  /** Prints book, booklet and the booklet's sheets for each of the readers. */
  public static void print(
      Path log, List<String> readers, String theme, Press.Options options, Path to)
      throws IOException {
    Workshop.Opened opened = Workshop.open(log, DAY, DAY, ZoneOffset.UTC, Progress.SILENT);
    Theme look = Theme.load(theme, null);
    for (Readers group : opened.log().readers()) {
      if (readers.contains(group.id())) {
        Edition edition = edition(opened, group);
        Path folder = Files.createDirectories(to.resolve(group.id()));
        Press.printBuildBook(edition, look, options, folder.resolve("build-book.pdf"));
        Press.printHandover(edition, look, options, folder.resolve("handover.pdf"));
        Press.printHandoverSheets(edition, look, options, folder.resolve("handover-sheets.pdf"));
      }
    }
  }

  /** An edition as publishing makes it. */
  static Edition edition(Workshop.Opened opened, Readers group) throws IOException {
    Clearance clearance = Clearance.of(group.partyTo(), opened.log().agreements().values(), DAY);
    return Withholder.prepare(
            opened.log(),
            opened.facts(),
            opened.album(),
            new LogPictures(opened.log(), clearance, Progress.SILENT),
            group,
            DAY,
            java.util.Set.of(),
            Correspondence.NONE)
        .against(List.of())
        .edition();
  }
}
