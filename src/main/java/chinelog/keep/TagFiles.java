package chinelog.keep;

import chinelog.digest.Sha256;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** The files of a bag that tell about those in {@code data} (RFC 8493, section 2). */
final class TagFiles {

  static final String DECLARATION = "bagit.txt";
  static final String INFO = "bag-info.txt";
  static final String MANIFEST = "manifest-sha256.txt";
  static final String TAG_MANIFEST = "tagmanifest-sha256.txt";
  static final String DATE = "Bagging-Date: ";
  private static final String READ_ME = "READ-ME.txt";

  private TagFiles() {}

  /** By name. */
  static SortedMap<String, byte[]> of(List<KeptFile> files, Keep.Request request) {
    SortedMap<String, byte[]> tags = new TreeMap<>();
    put(tags, DECLARATION, "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
    put(
        tags,
        INFO,
        "Bag-Software-Agent: "
            + request.program()
            + "\n"
            + DATE
            + request.today()
            + "\nExternal-Description: The log of a model's build. Private: it holds what is under"
            + " agreements.\nPayload-Oxum: "
            + files.stream().mapToLong(KeptFile::size).sum()
            + "."
            + files.size()
            + "\n");
    put(
        tags,
        READ_ME,
        """
        PRIVATE. This is a whole copy of a build log: it holds everything, what is under
        agreements of confidentiality as well. Keep it where nobody else can read it.

        To restore the log, copy the folder "data" to where you work, and give it back the
        log's name. Editions and caches are not in it; chinelog makes them again.

        To verify this copy: chinelog keep --check FOLDER_OR_ZIP; or any program that reads
        bags (RFC 8493); or, in this folder, sha256sum --check manifest-sha256.txt
        """);
    StringBuilder manifest = new StringBuilder();
    files.forEach(f -> line(manifest, f.sha256(), f.inBag()));
    put(tags, MANIFEST, manifest.toString());
    StringBuilder tagManifest = new StringBuilder();
    tags.forEach((name, bytes) -> line(tagManifest, Sha256.of(bytes), name));
    put(tags, TAG_MANIFEST, tagManifest.toString());
    return tags;
  }

  private static void put(SortedMap<String, byte[]> tags, String name, String text) {
    tags.put(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private static void line(StringBuilder manifest, String sha256, String name) {
    manifest.append(sha256).append("  ").append(encoded(name)).append('\n');
  }

  /**
   * A name as a manifest has it: "If a filepath includes a Line Feed (LF), a Carriage Return (CR) …
   * or a percent sign (%), those characters MUST be percent-encoded" (section 2.1.3).
   */
  private static String encoded(String name) {
    return name.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A");
  }

  static String decoded(String name) {
    return name.replaceAll("(?i)%0D", "\r").replaceAll("(?i)%0A", "\n").replace("%25", "%");
  }
}
