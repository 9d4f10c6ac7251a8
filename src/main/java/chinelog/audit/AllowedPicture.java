package chinelog.audit;

import java.util.List;
import java.util.Set;

/**
 * A picture that the edition may hold, told by its bytes wherever it stands.
 *
 * @param sha256 in hexadecimal, of each of its sizes
 * @param filled parts that must be of one colour in all of them
 */
public record AllowedPicture(Set<String> sha256, List<FilledArea> filled) {}
