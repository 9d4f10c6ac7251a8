package chinelog.withhold;

import chinelog.log.records.Sheet;
import chinelog.photo.album.Photograph;
import chinelog.photo.derivatives.Darkroom;
import chinelog.photo.derivatives.View;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Makes the pictures of an edition. */
public interface PictureSource {

  /** Derivatives of photographs with regions filled; those that cannot be made are problems. */
  Darkroom.Development develop(List<Darkroom.Order> orders) throws IOException;

  /** Whether a photograph, as its readers see it, looks like a drawing. */
  boolean looksLikeDrawing(Darkroom.Prints prints) throws IOException;

  /** How a whole photograph looks, nothing filled; empty if it cannot be told. */
  Optional<View> look(Photograph photograph) throws IOException;

  /** Number of pages of a sheet. */
  int pages(Sheet sheet) throws IOException;

  /**
   * A page of a sheet as fresh pixels.
   *
   * @param page from 1
   */
  Darkroom.Prints print(Sheet sheet, int page) throws IOException;
}
