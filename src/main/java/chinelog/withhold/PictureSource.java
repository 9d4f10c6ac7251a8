package chinelog.withhold;

import chinelog.log.records.Sheet;
import chinelog.photo.derivatives.Darkroom;
import java.io.IOException;
import java.util.List;

/** Makes the pictures of an edition. */
public interface PictureSource {

  /** Derivatives of photographs with regions filled; those that cannot be made are problems. */
  Darkroom.Development develop(List<Darkroom.Order> orders) throws IOException;

  /** Whether a photograph, as its readers see it, looks like a drawing. */
  boolean looksLikeDrawing(Darkroom.Prints prints) throws IOException;

  /** Number of pages of a sheet. */
  int pages(Sheet sheet) throws IOException;

  /**
   * The longer edge of a page of a sheet as it lies there, in mm.
   *
   * @param page from 1
   */
  double longEdgeMm(Sheet sheet, int page) throws IOException;

  /**
   * A page of a sheet as fresh pixels.
   *
   * @param page from 1
   */
  Darkroom.Prints print(Sheet sheet, int page) throws IOException;
}
