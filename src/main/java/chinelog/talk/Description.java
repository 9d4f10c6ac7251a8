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
      edition
          .cautions()
          .forEach(c -> text.append(c.title()).append(": ").append(c.text()).append('\n'));
    }
    if (!edition.licence().isEmpty()) {
      head(text, words.text("licence")).append(edition.licence()).append('\n');
    }
    URI address = edition.address();
    if (address != null) {
      head(text, words.text("links")).append(address).append('\n');
    }
    if (edition.hasWithheld()) {
      text.append('\n')
          .append(Wording.of(edition.locale()).text("withheld.note"))
          .append('\n');
    }
    if (!edition.maker().isEmpty()) {
      text.append('\n').append(edition.maker()).append('\n');
    }
    return text.toString();
  }

  private static StringBuilder head(StringBuilder text, String words) {
    return text.append('\n').append(words).append('\n');
  }
}
