package chinelog.desk.files;

import chinelog.log.NoteParts;
import chinelog.log.records.NotePart;
import chinelog.log.records.NotePart.Kind;
import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A note, to be changed piece by piece: {@code NoteText.of(version).under(120, 133,
 * List.of("lines")).text()}.
 *
 * <p>After each change the note's parts are looked at again: what was to be under an agreement must
 * be, and nothing else may have come under one or out of it; or the change is refused. Offsets are
 * those of the file's text.
 */
public final class NoteText {

  private static final Pattern HEAD =
      Pattern.compile(
          "\\A\\ufeff?---[ ]*(?:\\r\\n|\\r|\\n)(?s:.*?)(?<=[\\r\\n])---[ ]*(?:\\r\\n|\\r|\\n|\\z)");
  private static final Pattern FOOTNOTE = Pattern.compile("\\[\\^([0-9]{1,6})]");

  private final FileVersion note;
  private final int bodyFrom;
  private final String body;

  /** Where each code unit of the body, with one for each line end, stands in the file. */
  private final int[] places;

  private NoteText(FileVersion note) {
    this.note = note;
    String text = note.text();
    Matcher head = HEAD.matcher(text);
    this.bodyFrom = head.find() ? head.end() : text.startsWith("\ufeff") ? 1 : 0;
    StringBuilder plain = new StringBuilder();
    int[] at = new int[text.length() - bodyFrom + 1];
    for (int i = bodyFrom; i < text.length(); i++) {
      char c = text.charAt(i);
      at[plain.length()] = i;
      if (c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n') {
        continue;
      }
      plain.append(c == '\r' ? '\n' : c);
    }
    at[plain.length()] = text.length();
    this.body = plain.toString();
    this.places = at;
  }

  public static NoteText of(FileVersion note) {
    return new NoteText(note);
  }

  /** The whole text of the file. */
  public String text() {
    return note.text();
  }

  /** Where the text below the keys begins. */
  public int bodyFrom() {
    return bodyFrom;
  }

  /** The parts that may be put under an agreement; see {@link NoteParts#of}. */
  public List<NotePart> parts() {
    return NoteParts.of(body).stream()
        .map(
            p ->
                new NotePart(
                    p.kind(),
                    p.level(),
                    places[p.from()],
                    end(p.to()),
                    p.marks().stream()
                        .map(m -> new NotePart.Mark(places[m.from()], end(m.to()), m.agreements()))
                        .toList()))
        .toList();
  }

  private int end(int to) {
    return to == 0 ? places[0] : places[to - 1] + 1;
  }

  /**
   * This with a selection under agreements: a phrase, a picture, or every paragraph that it covers
   * whole or in part when it covers more than one.
   *
   * @throws ProblemException if no mark can be put on just that
   */
  public NoteText under(int from, int to, List<String> agreements) throws ProblemException {
    List<NotePart> blocks =
        parts().stream()
            .filter(p -> p.kind() == Kind.PARAGRAPH || p.kind() == Kind.HEADING)
            .filter(p -> p.from() < to && p.to() > from)
            .toList();
    // What makes a line a heading or an item stays outside of the brackets.
    int first = blocks.isEmpty() ? from : Math.max(from, blocks.get(0).from());
    int last = blocks.isEmpty() ? to : Math.min(to, blocks.get(blocks.size() - 1).to());
    while (first < last && Character.isWhitespace(text().charAt(first))) {
      first++;
    }
    while (last > first && Character.isWhitespace(text().charAt(last - 1))) {
      last--;
    }
    int start = first;
    int end = last;
    boolean whole =
        blocks.size() > 1
            || blocks.size() == 1 && start <= blocks.get(0).from() && end >= blocks.get(0).to();
    if (start >= end || blocks.isEmpty()) {
      throw refused();
    }
    if (whole) {
      NoteText next = this;
      for (int i = blocks.size() - 1; i >= 0; i--) {
        next = next.marked(blocks.get(i), agreements);
      }
      return next;
    }
    Optional<NotePart> same =
        parts().stream()
            .filter(p -> p.kind() == Kind.PICTURE || p.kind() == Kind.PHRASE)
            .filter(p -> p.from() <= start && p.to() >= end && p.from() >= start - 2)
            .filter(p -> p.to() <= end + 1 || p.kind() == Kind.PICTURE)
            .findFirst();
    if (same.isPresent()) {
      return marked(same.get(), agreements);
    }
    NoteText next =
        with(List.of(Splice.insert(start, "["), Splice.insert(end, "]" + mark(agreements))));
    boolean right =
        next.parts().stream()
            .anyMatch(
                p ->
                    p.kind() == Kind.PHRASE
                        && p.from() == start
                        && p.to() == end + 2
                        && p.agreements().equals(agreements));
    if (!right || next.markedParts() != markedParts() + 1 || !next.shape().equals(shape())) {
      throw refused();
    }
    return next;
  }

  /** This with the paragraph or heading at an offset under agreements. */
  public NoteText paragraphUnder(int at, List<String> agreements) throws ProblemException {
    return marked(block(at), agreements);
  }

  /** This with the section that an offset lies in under agreements, by a mark on its heading. */
  public NoteText sectionUnder(int at, List<String> agreements) throws ProblemException {
    NotePart heading = null;
    for (NotePart part : parts()) {
      if (part.kind() == Kind.HEADING && part.from() <= Math.max(at, bodyFrom)) {
        heading = part;
      }
    }
    if (heading == null) {
      throw new ProblemException(
          Problem.error(
              Place.of(note.path()),
              "No heading stands before this place, so that it lies in no section.",
              "Put the paragraph or the whole note under the agreement."));
    }
    return marked(heading, agreements);
  }

  /** This with the whole note under agreements; under none, with an empty list. */
  public NoteText noteUnder(List<String> agreements) throws ProblemException {
    YamlText head = YamlText.ofHead(note);
    List<String> at = List.of("under");
    if (agreements.isEmpty() && !head.has(at)) {
      return this;
    }
    return of(
        agreements.isEmpty()
            ? head.without(at).text()
            : head.with(at, YamlValue.under(agreements)).text());
  }

  /** This without the mark of the smallest marked part that an offset lies in. */
  public NoteText notUnder(int at) throws ProblemException {
    NotePart part =
        parts().stream()
            .filter(p -> !p.marks().isEmpty() && p.from() <= at)
            .filter(p -> at <= p.endWithMarks())
            .reduce((a, b) -> b.to() - b.from() <= a.to() - a.from() ? b : a)
            .orElseThrow(this::refused);
    List<Splice> splices = new ArrayList<>();
    int from = part.to();
    splices.add(Splice.delete(from, part.endWithMarks()));
    boolean bare =
        part.kind() == Kind.PHRASE
            && text().charAt(part.from()) == '['
            && text().charAt(part.to() - 1) == ']';
    if (bare) {
      splices.add(Splice.delete(part.from(), part.from() + 1));
      splices.add(Splice.delete(part.to() - 1, part.to()));
    }
    NoteText next = with(splices);
    if (next.markedParts() != markedParts() - 1 || !next.shape().equals(shape())) {
      throw refused();
    }
    return next;
  }

  /**
   * This with a photograph as a paragraph of its own, after the paragraph at an offset.
   *
   * @param photo path below the log's folder
   */
  public NoteText withPicture(int at, String photo, String caption) {
    String up = "../".repeat((int) note.path().chars().filter(c -> c == '/').count());
    String target = up + photo;
    String written = target.matches("[\\p{L}\\p{N}_./~-]+") ? target : "<" + target + ">";
    return withBlock(at, "![" + escaped(caption) + "](" + written + ")");
  }

  /** This with a fact named at an offset, whose figure is filled in. */
  public NoteText withFact(int at, String fact) {
    return with(List.of(Splice.insert(inBody(at), "[](fact:" + fact + ")")));
  }

  /** This with a footnote called at an offset and written at the end. */
  public NoteText withFootnote(int at, String words) {
    int next = 1;
    for (Matcher used = FOOTNOTE.matcher(body); used.find(); ) {
      next = Math.max(next, Integer.parseInt(used.group(1)) + 1);
    }
    String name = "[^" + next + "]";
    String end = lineEnd();
    String gap =
        body.endsWith("\n\n") || body.isEmpty() ? "" : body.endsWith("\n") ? end : end + end;
    return with(
        List.of(
            Splice.insert(inBody(at), name),
            Splice.insert(text().length(), gap + name + ": " + words.replace("\n", " ") + end)));
  }

  /** This with an empty table after the paragraph at an offset. */
  public NoteText withTable(int at, int rows, int columns) {
    String row = "|" + "   |".repeat(columns);
    List<String> lines = new ArrayList<>(List.of(row, "|" + "---|".repeat(columns)));
    for (int i = 0; i < rows; i++) {
      lines.add(row);
    }
    return withBlock(at, String.join(lineEnd(), lines));
  }

  private NoteText withBlock(int at, String block) {
    String end = lineEnd();
    int after = bodyFrom;
    for (NotePart part : parts()) {
      boolean isBlock = part.kind() == Kind.PARAGRAPH || part.kind() == Kind.HEADING;
      if (isBlock && part.from() <= at) {
        int last = part.endWithMarks();
        after = Math.max(after, last);
      }
    }
    int line = after;
    while (line < text().length() && "\r\n".indexOf(text().charAt(line)) < 0) {
      line++;
    }
    boolean first = after == bodyFrom;
    String written = first ? block + end + (line == text().length() ? "" : end) : end + end + block;
    boolean open = !first && line == text().length();
    return with(List.of(Splice.insert(first ? bodyFrom : line, written + (open ? end : ""))));
  }

  private NoteText marked(NotePart part, List<String> agreements) throws ProblemException {
    List<String> all = new ArrayList<>(part.agreements());
    agreements.stream().filter(a -> !all.contains(a)).forEach(all::add);
    boolean tight = part.kind() == Kind.PHRASE || part.kind() == Kind.PICTURE;
    int end = part.endWithMarks();
    NoteText next = with(List.of(new Splice(part.to(), end, (tight ? "" : " ") + mark(all))));
    boolean right =
        next.parts().stream()
            .anyMatch(
                p ->
                    p.kind() == part.kind()
                        && p.from() == part.from()
                        && p.to() == part.to()
                        && p.agreements().equals(all));
    if (!right
        || next.markedParts() != markedParts() + (part.marks().isEmpty() ? 1 : 0)
        || !next.shape().equals(shape())) {
      throw refused();
    }
    return next;
  }

  /**
   * What no mark may alter: headings, paragraphs, pictures, emphasis and links, by their number.
   */
  private String shape() {
    StringBuilder shape = new StringBuilder().append(NoteParts.stretches(body));
    for (NotePart part : parts()) {
      if (part.kind() != Kind.PHRASE) {
        shape.append(' ').append(part.kind()).append(part.level());
      }
    }
    return shape.toString();
  }

  private long markedParts() {
    return parts().stream().filter(p -> !p.marks().isEmpty()).count();
  }

  private NotePart block(int at) throws ProblemException {
    return parts().stream()
        .filter(p -> p.kind() == Kind.PARAGRAPH || p.kind() == Kind.HEADING)
        .filter(p -> p.from() <= at && at <= p.endWithMarks())
        .findFirst()
        .orElseThrow(this::refused);
  }

  private int inBody(int at) {
    return Math.max(at, bodyFrom);
  }

  private NoteText with(List<Splice> splices) {
    return of(Splice.apply(text(), splices));
  }

  private NoteText of(String text) {
    return new NoteText(new FileVersion(note.path(), text, note.stamp(), true));
  }

  private String lineEnd() {
    return text().contains("\r\n") ? "\r\n" : "\n";
  }

  private static String mark(List<String> agreements) {
    return "{under=" + String.join(",", agreements) + "}";
  }

  private static String escaped(String caption) {
    return caption.replace("\\", "\\\\").replace("[", "\\[").replace("]", "\\]").replace("\n", " ");
  }

  private ProblemException refused() {
    return new ProblemException(
        Problem.error(
            Place.of(note.path()),
            "No mark can be put on, or taken off, just what is chosen.",
            "Choose whole words within one paragraph, or put the whole paragraph under it."));
  }
}
