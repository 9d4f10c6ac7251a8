package chinelog.talk;

import chinelog.edition.Edition;
import chinelog.edition.Edition.Entry;
import chinelog.markup.Wording;
import chinelog.wording.Catalogue;
import java.net.URI;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The text that goes beside a filmed instalment. */
final class Description {

  private Description() {}

  static String of(
      Edition.Contents edition,
      Instalment instalment,
      List<CaptionFiles.Chapter> chapters,
      Catalogue words) {
    Edition.Post post = instalment.post();
    StringBuilder text = new StringBuilder();
    text.append(edition.title()).append(": ").append(post.title()).append("\n");
    if (!post.standfirst().isBlank()) {
      text.append('\n').append(post.standfirst().strip()).append('\n');
    }
    head(text, words.text("chapters")).append(CaptionFiles.list(chapters));
    Set<String> materials = new LinkedHashSet<>();
    edition.entries().stream()
        .filter(e -> post.entries().contains(e.id()))
        .map(Entry::materials)
        .flatMap(List::stream)
        .map(Edition.Line::title)
        .forEach(materials::add);
    if (!materials.isEmpty()) {
      head(text, words.text("materials")).append(String.join(", ", materials)).append('\n');
    }
    if (!edition.cautions().isEmpty()) {
      head(text, words.text("cautions"));
      String shared = shared(edition.cautions().stream().map(Edition.Caution::text).toList());
      for (Edition.Caution caution : edition.cautions()) {
        String own = caution.text().substring(0, caution.text().length() - shared.length());
        text.append(caution.title()).append(": ").append(own.strip()).append('\n');
      }
      text.append(shared.isEmpty() ? "" : shared.strip() + "\n");
    }
    if (!edition.licence().isEmpty()) {
      head(text, words.text("licence")).append(edition.licence()).append('\n');
    }
    URI address = edition.address();
    if (address != null) {
      head(text, words.text("links")).append(address).append('\n');
    }
    if (edition.hasWithheld()) {
      text.append('\n').append(Wording.of(edition.locale()).text("withheld.note")).append('\n');
    }
    if (!edition.maker().isEmpty()) {
      text.append('\n').append(edition.maker()).append('\n');
    }
    return text.toString();
  }

  /** With what several texts end alike, from the beginning of a sentence on; empty for none. */
  private static String shared(List<String> texts) {
    String end = texts.size() < 2 ? "" : texts.get(0);
    for (String text : texts) {
      while (!text.endsWith(end)) {
        end = end.substring(1);
      }
    }
    int sentence = end.indexOf(". ");
    return sentence < 0 ? "" : end.substring(sentence + 1);
  }

  private static StringBuilder head(StringBuilder text, String words) {
    return text.append('\n').append(words).append('\n');
  }
}
