package chinelog.log.text;

import chinelog.label.Label;
import chinelog.problem.Place;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A run of text inside a block. */
public sealed interface Inline {

  <R> R accept(Visitor<R> visitor);

  /** The runs that it directly holds. */
  default List<Inline> children() {
    return List.of();
  }

  /** The agreements of its own mark. */
  default Label label() {
    return Label.NONE;
  }

  /** Its words alone, without footnotes; a written figure stands for its fact. */
  default String plainText() {
    return plainText(children());
  }

  record Text(String text) implements Inline {
    @Override
    public String plainText() {
      return text;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.text(this);
    }
  }

  record Emphasis(List<Inline> text) implements Inline {
    @Override
    public List<Inline> children() {
      return text;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.emphasis(this);
    }
  }

  record Strong(List<Inline> text) implements Inline {
    @Override
    public List<Inline> children() {
      return text;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.strong(this);
    }
  }

  record Code(String text) implements Inline {
    @Override
    public String plainText() {
      return text;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.code(this);
    }
  }

  /**
   * A link to an address of the web, to another entry's file, or within the page.
   *
   * @param target as written
   */
  record Link(String target, List<Inline> text, Place place) implements Inline {
    @Override
    public List<Inline> children() {
      return text;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.link(this);
    }
  }

  /**
   * A named fact, {@code [1.19 m](fact:hull.loa)}.
   *
   * @param written the figure to be checked; empty where it is to be filled in
   */
  record FactLink(String fact, String written, Place place) implements Inline {
    @Override
    public String plainText() {
      return written;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.factLink(this);
    }
  }

  /**
   * A photograph.
   *
   * @param path below the log's folder
   * @param caption may be empty
   * @param label the agreements of its mark, without those of photos.yaml
   * @param layout how it is laid out
   */
  record Image(String path, List<Inline> caption, Label label, Layout layout, Place place)
      implements Inline {

    /** How a photograph is laid out: by its shape, unless its note has a class for it. */
    public enum Layout {
      BY_SHAPE,
      /** As wide as the text, and alone. */
      PLAIN,
      /** Smaller, with text beside it. */
      BESIDE,
      /** As large as there is room. */
      WIDE
    }

    @Override
    public List<Inline> children() {
      return caption;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.image(this);
    }
  }

  /** A bracketed phrase under an agreement. */
  record Phrase(List<Inline> text, Label label, Place place) implements Inline {
    @Override
    public List<Inline> children() {
      return text;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.phrase(this);
    }
  }

  /** A footnote, told where it is called. */
  record Footnote(List<Inline> text, Label label, Place place) implements Inline {
    @Override
    public List<Inline> children() {
      return text;
    }

    @Override
    public String plainText() {
      return "";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.footnote(this);
    }
  }

  /** A line end. */
  record Break(boolean hard) implements Inline {
    @Override
    public String plainText() {
      return " ";
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.lineBreak(this);
    }
  }

  /** Every run of a line at any depth: each is followed by those that it holds. */
  static Stream<Inline> runs(List<Inline> line) {
    return line.stream().flatMap(run -> Stream.concat(Stream.of(run), runs(run.children())));
  }

  /** The words alone, without footnotes; a written figure stands for its fact. */
  static String plainText(List<Inline> runs) {
    return runs.stream().map(Inline::plainText).collect(Collectors.joining());
  }

  /** One method for each kind, so that the compiler finds a forgotten one. */
  interface Visitor<R> {
    R text(Text text);

    R emphasis(Emphasis emphasis);

    R strong(Strong strong);

    R code(Code code);

    R link(Link link);

    R factLink(FactLink factLink);

    R image(Image image);

    R phrase(Phrase phrase);

    R footnote(Footnote footnote);

    R lineBreak(Break lineBreak);
  }
}
