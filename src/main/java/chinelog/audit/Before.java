package chinelog.audit;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What is known from earlier audits by the same program.
 *
 * @param decoded pictures that need not be decoded again; all else is done for them, too
 * @param hashes SHA-256 of the files of the edition, by name, as far as they are known
 * @param searched the last audit of the same readers' edition
 * @param same learns the SHA-256 of bytes by comparing them
 */
public record Before(Decoded decoded, Map<String, String> hashes, Searched searched, Same same) {

  /** Knows files by their SHA-256. */
  public interface Same {

    /** The SHA-256 of a known file that holds these very bytes; null if there is none. */
    @Nullable String sha256(byte[] bytes) throws IOException;
  }

  /** Nothing is known: every file is read, decoded and searched. */
  public static Before nothing() {
    return new Before(new Decoded(List.of()), Map.of(), Searched.NOTHING, bytes -> null);
  }
}
