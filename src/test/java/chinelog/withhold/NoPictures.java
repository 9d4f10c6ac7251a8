package chinelog.withhold;

import chinelog.log.records.Sheet;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.View;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** For logs without photographs and sheets. */
final class NoPictures implements PictureSource {

  @Override
  public Darkroom.Development develop(List<Darkroom.Order> orders) {
    return new Darkroom.Development(Map.of(), List.of());
  }

  @Override
  public boolean looksLikeDrawing(Darkroom.Prints prints) {
    return false;
  }

  @Override
  public Optional<View> look(Photograph photograph) {
    return Optional.empty();
  }

  @Override
  public int pages(Sheet sheet) {
    return 0;
  }

  @Override
  public Darkroom.Prints print(Sheet sheet, int page) {
    throw new IllegalArgumentException("there is no sheet");
  }
}
