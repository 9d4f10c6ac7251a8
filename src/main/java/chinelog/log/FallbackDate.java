package chinelog.log;

import java.time.LocalDate;

/**
 * The date of a note that has none, in a folder without log.yaml.
 *
 * @param reason why this one, such as "the date of the note before it"
 */
record FallbackDate(LocalDate date, String reason) {}
