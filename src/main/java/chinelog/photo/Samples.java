package chinelog.photo;

/**
 * 8-bit samples of a picture, row by row, the channels of each pixel beside one another.
 *
 * @param channels 3 for blue, green and red; 1 for one plane
 */
record Samples(int widthPx, int heightPx, int channels, byte[] bytes) {

  Samples {
    if (bytes.length != channels * widthPx * heightPx) {
      throw new IllegalArgumentException(
          bytes.length + " bytes for " + widthPx + " × " + heightPx + " × " + channels);
    }
  }

  static Samples plane(int widthPx, int heightPx, byte[] bytes) {
    return new Samples(widthPx, heightPx, 1, bytes);
  }

  /** The mean of one channel, 0 to 255. */
  double mean(int channel) {
    long sum = 0;
    for (int i = channel; i < bytes.length; i += channels) {
      sum += bytes[i] & 0xFF;
    }
    return (double) sum * channels / bytes.length;
  }
}
