package chinelog.log.records;

import chinelog.log.text.Block;
import chinelog.quantity.Quantity;
import java.math.BigDecimal;
import java.net.URI;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import org.jspecify.annotations.Nullable;

/**
 * What log.yaml says of the whole build.
 *
 * @param title of the series and the book
 * @param subject name of what is modelled
 * @param kind what sort of thing the subject is, such as "harbour pilot launch"
 * @param about a few paragraphs about subject and model
 * @param scale the denominator: 16 for 1:16; null where the log states none
 * @param locale language of text, dates and numbers
 * @param zone of the workshop
 * @param maker who builds it
 * @param client who it is built for
 * @param currency ISO 4217 code of all money in the log
 * @param inchDenominator inches are shown to this fraction, a power of two; 0 for decimals
 * @param closeness how near a figure must be worked out to count as known, such as 0.05
 * @param rate what an hour costs, in money per hour
 * @param budgets planned facts by name, such as {@code mass: 2.1 kg}, {@code hours: 120 h}
 * @param address where the site will stand
 * @param licence under which it is shown, in the maker's words
 * @param theme name of a folder in themes
 * @param paper of book and booklet
 * @param leafMm how thick a leaf of the build book is
 * @param chapters what the chapters of the build book follow
 * @param clocks how far each camera's clock is fast, by camera model
 * @param hero path of the photograph for cover and home page
 * @param creditPhotos whether maker and licence are written into derivatives as metadata
 * @param valuation of material bought at several prices
 * @param patternSheets how patterns are printed and cut
 * @param talk how the series is told aloud, and what was recorded of it
 * @param letter the next one to those who follow the build
 * @param postLength wanted where the log leaves the division into posts to the tool; null if it
 *     does not say
 * @param figureGroups headings of figures, in the order in which they are shown
 */
public record Head(
    Marked<String> title,
    @Nullable Marked<String> subject,
    @Nullable Marked<String> kind,
    List<Block> about,
    @Nullable Marked<BigDecimal> scale,
    Locale locale,
    ZoneId zone,
    @Nullable Marked<String> maker,
    @Nullable Marked<String> client,
    String currency,
    int inchDenominator,
    BigDecimal closeness,
    @Nullable Marked<Quantity> rate,
    SortedMap<String, Marked<Quantity>> budgets,
    @Nullable URI address,
    @Nullable Marked<String> licence,
    String theme,
    Paper paper,
    double leafMm,
    BookChapters chapters,
    SortedMap<String, Duration> clocks,
    @Nullable Marked<String> hero,
    boolean creditPhotos,
    Valuation valuation,
    PatternSheets patternSheets,
    TalkPlan talk,
    @Nullable PostLength postLength,
    LetterPlan letter,
    List<FigureGroup> figureGroups) {

  /** This with other figures. */
  public Head withFigures(
      @Nullable Marked<BigDecimal> otherScale,
      @Nullable Marked<Quantity> otherRate,
      SortedMap<String, Marked<Quantity>> otherBudgets) {
    return new Head(
        title,
        subject,
        kind,
        about,
        otherScale,
        locale,
        zone,
        maker,
        client,
        currency,
        inchDenominator,
        closeness,
        otherRate,
        otherBudgets,
        address,
        licence,
        theme,
        paper,
        leafMm,
        chapters,
        clocks,
        hero,
        creditPhotos,
        valuation,
        patternSheets,
        talk,
        postLength,
        letter,
        figureGroups);
  }
}
