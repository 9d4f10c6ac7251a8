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
record EditionSearch(
    Path edition,
    Manifest manifest,
    Workshop.Opened opened,
    Withholder.Withheld withheld,
    Set<String> mayStand,
    String readers) {

  /** Searches it anew, whatever was found in its pictures before. */
  AuditReport afresh() throws IOException {
    List<AllowedPicture> pictures = new ArrayList<>(EditionPictures.of(withheld));
    pictures.addAll(framesAfresh());
    return search(pictures, Before.nothing());
  }

  /** The frames that these readers may be shown, whichever stand in their edition. */
  private List<AllowedPicture> framesAfresh() throws IOException {
    Edition made = withheld.edition();
    Map<String, String> hashes = new TreeMap<>();
    TalkWriter.draw(
        made,
        Workshop.theme(opened.log().folder(), made.contents().theme()),
        (place, jpeg) -> hashes.put(place.file(), Sha256.of(jpeg)));
    return EditionPictures.frames(withheld, TalkWriter.places(made), hashes);
  }

  AuditReport search(List<AllowedPicture> pictures, Before before) throws IOException {
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
