package chinelog.photo;

import java.io.IOException;

/** A decoded picture, in the form that its way of decoding leaves it in. */
interface Picture {

  int widthPx();

  int heightPx();

  /** The same at this size; itself if it has it already. */
  Picture scaled(int widthPx, int heightPx);

  /** The same turned upright. */
  Picture upright(Orientation orientation);

  /** Luma of every pixel, 0 to 255 (ITU-R BT.601: 0.299, 0.587, 0.114). */
  Samples luma();

  /** The mean colour, such as {@code #8a7f70}. */
  String tint();

  /** As a JPEG file, always of the same quality and with the standard's own tables. */
  byte[] encoded() throws IOException;
}
