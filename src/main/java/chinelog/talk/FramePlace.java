package chinelog.talk;

import chinelog.edition.Edition;
import chinelog.edition.Picture;
import chinelog.edition.Talk;

/**
 * A frame and where the picture lies in it.
 *
 * @param file below the folder of the edition, such as {@code talk/01-keel/frames/003.jpg}
 * @param picture id of the edition's picture; empty for a card
 * @param left in px, of the picture
 * @param top in px, of the picture
 * @param scale from the rendition that was drawn to the frame
 */
public record FramePlace(
    String file,
    String picture,
    int left,
    int top,
    int width,
    int height,
    int frameWidth,
    int frameHeight,
    double scale) {

  static FramePlace of(String file, FrameContent sight, Talk talk) {
    int w = talk.widthPx();
    int h = talk.heightPx();
    if (!(sight instanceof FrameContent.Shot shot)) {
      return new FramePlace(file, "", 0, 0, 0, 0, w, h, 1);
    }
    Picture picture = shot.plate().picture();
    double across = picture.largest().widthPx();
    double down = picture.largest().heightPx();
    double fit = Math.min(w / across, h / down);
    int width = (int) Math.min(w, Math.round(across * fit));
    int height = (int) Math.min(h, Math.round(down * fit));
    return new FramePlace(
        file,
        picture.id(),
        (w - width) / 2,
        (h - height) / 2,
        width,
        height,
        w,
        h,
        (double) width / picture.atLeast(width).widthPx());
  }

  static FramePlace of(String folder, int number, FrameContent sight, Edition.Contents edition) {
    return of("talk/" + folder + "/frames/" + Instalment.frame(number), sight, edition.talk());
  }
}
