package chinelog.book.writing;

import chinelog.edition.Plate;

/** Ids of the places that links, bookmarks and page numbers lead to. */
final class Anchors {

  private Anchors() {}

  static String entry(String id) {
    return "entry-" + id;
  }

  static String stage(String id) {
    return "stage-" + id;
  }

  static String figure(String name) {
    return "figure-" + name;
  }

  static String plate(Plate plate) {
    return "plate-" + plate.number();
  }
}
