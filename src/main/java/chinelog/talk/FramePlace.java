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
 */
public record FramePlace(
    String file,
    String picture,
    int left,
    int top,
    int width,
    int height,
    int frameWidth,
    int frameHeight) {

  static FramePlace of(String file, Sight sight, Talk talk) {
    int w = talk.widthPx();
    int h = talk.heightPx();
    if (!(sight instanceof Sight.Shot shot)) {
      return new FramePlace(file, "", 0, 0, 0, 0, w, h);
    }
    Picture picture = shot.plate().picture();
    double across = picture.largest().widthPx();
    double down = picture.largest().heightPx();
    double scale = Math.min(w / across, h / down);
    int width = (int) Math.min(w, Math.round(across * scale));
    int height = (int) Math.min(h, Math.round(down * scale));
    return new FramePlace(
        file, picture.id(), (w - width) / 2, (h - height) / 2, width, height, w, h);
  }

  static FramePlace of(String folder, int number, Sight sight, Edition.Contents edition) {
    return of("talk/" + folder + "/frames/" + Instalment.frame(number), sight, edition.talk());
  }
}
