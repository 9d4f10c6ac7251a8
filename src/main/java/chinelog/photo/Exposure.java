package chinelog.photo;

/**
 * What a photograph's file tells, before the log has its say.
 *
 * @param sha256 of the whole file, 64 hex digits
 * @param widthPx as stored
 * @param heightPx as stored
 * @param exif what the camera wrote
 */
record Exposure(String sha256, PhotoKind kind, int widthPx, int heightPx, Exif exif) {

  int uprightWidthPx() {
    return exif.orientation().swapsSides() ? heightPx : widthPx;
  }

  int uprightHeightPx() {
    return exif.orientation().swapsSides() ? widthPx : heightPx;
  }
}
