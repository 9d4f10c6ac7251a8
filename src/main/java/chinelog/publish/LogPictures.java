package chinelog.publish;

import chinelog.label.Clearance;
import chinelog.log.records.Log;
import chinelog.log.records.Sheet;
import chinelog.photo.album.Credit;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.SheetPrinter;
import chinelog.photo.derivatives.Signature;
import chinelog.photo.derivatives.View;
import chinelog.photo.likeness.DrawingLike;
import chinelog.withhold.PictureSource;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Pictures made from the files of a log. */
final class LogPictures implements PictureSource {

  private final Path folder;
  private final Darkroom darkroom;
  private final SheetPrinter printer;
  private final Progress progress;

  /**
   * @param clearance of those who will see them
   */
  LogPictures(Log log, Clearance clearance, Progress progress) {
    this.folder = log.folder();
    this.darkroom = new Darkroom(folder, Credit.of(log.head(), clearance));
    this.printer = new SheetPrinter(folder);
    this.progress = progress;
  }

  @Override
  public Darkroom.Development develop(List<Darkroom.Order> orders) throws IOException {
    return darkroom.develop(
        orders, (done, of) -> progress.count(Step.of(Step.Kind.MAKING_PHOTOGRAPHS), done, of));
  }

  @Override
  public boolean looksLikeDrawing(Darkroom.Prints prints) throws IOException {
    return DrawingLike.isLikely(prints, folder);
  }

  @Override
  public Optional<View> look(Photograph photograph) throws IOException {
    return darkroom.look(photograph).stream().map(Signature::view).findFirst();
  }

  @Override
  public int pages(Sheet sheet) throws IOException {
    return printer.pages(sheet.path());
  }

  @Override
  public Darkroom.Prints print(Sheet sheet, int page) throws IOException {
    return printer.print(sheet.path(), page);
  }
}
