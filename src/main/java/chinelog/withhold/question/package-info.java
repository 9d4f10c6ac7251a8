/**
 * What nobody marked but looks as if it should be: {@link chinelog.withhold.question.Questions}.
 *
 * <p>Every text that readers get is compared with everything that is withheld from them; what is
 * found is a question, which stops the publishing until the maker has marked it, taken it out, or
 * said in answers.yaml that it may stand. Nothing here reaches an edition.
 *
 * <p>Nothing here is ever null unless marked {@code @Nullable}.
 */
@NullMarked
package chinelog.withhold.question;

import org.jspecify.annotations.NullMarked;
