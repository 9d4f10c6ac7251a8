package chinelog.log.text;

/** The words of a run, without its form. */
final class Words implements Inline.Visitor<String> {

  @Override
  public String text(Inline.Text text) {
    return text.text();
  }

  @Override
  public String emphasis(Inline.Emphasis emphasis) {
    return Inline.plainText(emphasis.text());
  }

  @Override
  public String strong(Inline.Strong strong) {
    return Inline.plainText(strong.text());
  }

  @Override
  public String code(Inline.Code code) {
    return code.text();
  }

  @Override
  public String link(Inline.Link link) {
    return Inline.plainText(link.text());
  }

  @Override
  public String factLink(Inline.FactLink factLink) {
    return factLink.written();
  }

  @Override
  public String image(Inline.Image image) {
    return Inline.plainText(image.caption());
  }

  @Override
  public String phrase(Inline.Phrase phrase) {
    return Inline.plainText(phrase.text());
  }

  @Override
  public String footnote(Inline.Footnote footnote) {
    return "";
  }

  @Override
  public String lineBreak(Inline.Break lineBreak) {
    return " ";
  }
}
