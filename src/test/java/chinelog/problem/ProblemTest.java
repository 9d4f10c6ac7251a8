package chinelog.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProblemTest {

  private static final List<String> KEYS =
      List.of("title", "scale", "stages", "under", "readers", "hull-form");

  @Test
  void aProblemIsToldInOneLineWithItsPlace() {
    assertThat(
            Problem.error(
                Place.of("log.yaml", 4, 3), "\"scael\" is not a key here.", "Write \"scale\"."))
        .hasToString("log.yaml:4:3: error: \"scael\" is not a key here. Write \"scale\".");
    assertThat(Problem.reminder(Place.of("photos/x.jpg"), "It is small.", "Look at it."))
        .hasToString("photos/x.jpg: reminder: It is small. Look at it.");
    assertThat(Place.of("a.md", 4, 0)).hasToString("a.md:4");
  }

  @Test
  void problemsAreToldOnceTheWorstFirstAndThenByPlace() {
    Problems problems = new Problems();
    problems.reminder(Place.of("a.md", 1, 1), "A.", "B.");
    problems.error(Place.of("b.md", 10, 1), "A.", "B.");
    problems.error(Place.of("b.md", 9, 2), "A.", "B.");
    problems.error(Place.of("b.md", 9, 2), "A.", "B.");
    problems.error(Place.of("a.md"), "A.", "B.");
    assertThat(problems.list())
        .extracting(p -> p.place().toString())
        .containsExactly("a.md", "b.md:9:2", "b.md:10:1", "a.md:1:1");
    assertThat(problems.hasErrors()).isTrue();
  }

  @Test
  void remindersAreNoErrors() {
    Problems problems = new Problems();
    problems.reminder(Place.of("a.md"), "A.", "B.");
    assertThat(problems.hasErrors()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "scael,scale",
    "titel,title",
    "Under,under",
    "udner,under",
    "stage,stages",
    "reders,readers",
    "hull,hull-form"
  })
  void aMisspeltWordSuggestsTheOneMeant(String word, String meant) {
    assertThat(Suggestion.findNearest(word, KEYS)).contains(meant);
    assertThat(Suggestion.remedy(word, KEYS)).hasToString("Did you mean \"" + meant + "\"?");
  }

  @Test
  void aWordLikeNoOtherIsAnsweredWithAllThereAre() {
    assertThat(Suggestion.remedy("ballast", KEYS))
        .hasToString("Write one of: hull-form, readers, scale, stages, title, under.");
    assertThat(Suggestion.remedy("ballast", List.of())).startsWith("Remove it;");
    assertThat(Suggestion.findNearest("x".repeat(1_000_000), KEYS)).isEmpty();
  }

  @Test
  void ofTwoWordsEquallyNearTheFirstInOrderIsSuggested() {
    assertThat(Suggestion.findNearest("mist", List.of("must", "mast", "most"))).contains("mast");
  }
}
