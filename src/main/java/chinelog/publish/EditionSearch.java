package chinelog.publish;

import chinelog.audit.AllowedPicture;
import chinelog.audit.Audit;
import chinelog.audit.AuditReport;
import chinelog.audit.Before;
import chinelog.digest.Sha256;
import chinelog.edition.Edition;
import chinelog.talk.TalkWriter;
import chinelog.withhold.Withholder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** The audit of one edition, of what its readers may be given. */
final class EditionSearch {

  private EditionSearch() {}

  /** Searches an edition anew, whatever was found in its pictures before. */
  static AuditReport search(
      Path edition,
      Manifest manifest,
      Workshop.Opened opened,
      Withholder.Withheld withheld,
      Set<String> mayStand,
      String readers)
      throws IOException {
    List<AllowedPicture> pictures = new ArrayList<>(EditionPictures.of(withheld));
    pictures.addAll(framesAfresh(opened, withheld));
    return search(
        edition, manifest, opened, withheld, mayStand, readers, pictures, Before.nothing());
  }

  /** The frames that these readers may be shown, whichever stand in their edition. */
  private static List<AllowedPicture> framesAfresh(
      Workshop.Opened opened, Withholder.Withheld withheld) throws IOException {
    Edition edition = withheld.edition();
    Map<String, String> hashes = new TreeMap<>();
    TalkWriter.draw(
        edition,
        Workshop.theme(opened.log().folder(), edition.contents().theme()),
        (place, jpeg) -> hashes.put(place.file(), Sha256.of(jpeg)));
    return EditionPictures.frames(withheld, TalkWriter.places(edition), hashes);
  }

  static AuditReport search(
      Path edition,
      Manifest manifest,
      Workshop.Opened opened,
      Withholder.Withheld withheld,
      Set<String> mayStand,
      String readers,
      List<AllowedPicture> pictures,
      Before before)
      throws IOException {
    return Audit.search(
        edition,
        manifest.names(),
        opened.log(),
        readers,
        withheld.clearance(),
        Canaries.of(opened, withheld),
        mayStand,
        pictures,
        before);
  }
}
