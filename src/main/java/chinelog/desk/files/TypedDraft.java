package chinelog.desk.files;

/**
 * A text that was typed but not yet written into its file.
 *
 * @param stampSeen stamp of the file when the typing began
 */
public record TypedDraft(String path, String stampSeen, String text) {}
