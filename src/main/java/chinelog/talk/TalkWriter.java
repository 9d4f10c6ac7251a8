package chinelog.talk;

import chinelog.edition.Edition;
import chinelog.markup.Theme;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes what is wanted to film the series of an edition: the same edition and theme give the same
 * bytes.
 */
public final class TalkWriter {

  private TalkWriter() {}

  /** Takes a frame as it was drawn. */
  @FunctionalInterface
  public interface Darkroom {
    void take(FramePlace place, byte[] jpeg) throws IOException;
  }

  /** Prints a script. */
  @FunctionalInterface
  public interface Printing {
    void print(ScriptPages script, Path pdf) throws IOException;
  }

  /**
   * Writes {@code talk}, with a folder for each instalment.
   *
   * @param folder of the edition
   * @throws IOException if a picture cannot be read or a file not written
   */
  public static void write(Edition edition, Theme theme, Path folder, Printing printing)
      throws IOException {
    ScriptMaker maker = new ScriptMaker(edition);
    Path talk = Files.createDirectory(folder.resolve("talk"));
    List<Instalment> all = maker.all();
    for (Instalment instalment : all) {
      Path own = Files.createDirectory(talk.resolve(instalment.folder()));
      Files.createDirectory(own.resolve("frames"));
      Timing timing = Timing.of(instalment, edition.contents().talk());
      List<CaptionFiles.Cue> cues = CaptionFiles.captions(instalment, timing);
      List<CaptionFiles.Chapter> chapters = CaptionFiles.chapters(instalment, timing);
      text(own, "captions.vtt", CaptionFiles.webVtt(cues));
      text(own, "captions.srt", CaptionFiles.subRip(cues));
      text(own, "chapters.vtt", CaptionFiles.chaptersVtt(chapters));
      text(own, "chapters.txt", CaptionFiles.list(chapters));
      text(
          own,
          "description.txt",
          Description.of(edition.contents(), instalment, chapters, maker.words()));
      ScriptPages pages =
          ScriptPages.of(edition.contents(), theme, instalment, timing, maker.words());
      text(own, "script.html", pages.html());
      printing.print(pages, own.resolve("script.pdf"));
    }
    draw(
        edition,
        theme,
        all,
        (place, jpeg) ->
            Files.write(folder.resolve(place.file()), jpeg, StandardOpenOption.CREATE_NEW));
  }

  /** Where the picture lies in each frame of an edition. */
  public static List<FramePlace> places(Edition edition) {
    List<FramePlace> places = new ArrayList<>();
    if (edition.contents().talk().isTold()) {
      new ScriptMaker(edition).all().forEach(i -> places.addAll(places(edition, i)));
    }
    return places;
  }

  private static List<FramePlace> places(Edition edition, Instalment instalment) {
    List<FramePlace> places = new ArrayList<>();
    for (Shot scene : instalment.scenes()) {
      places.add(
          FramePlace.of(instalment.folder(), places.size() + 1, scene.sight(), edition.contents()));
    }
    return places;
  }

  /**
   * Draws all frames afresh.
   *
   * @throws IOException if a picture cannot be read
   */
  public static void draw(Edition edition, Theme theme, Darkroom darkroom) throws IOException {
    if (edition.contents().talk().isTold()) {
      draw(edition, theme, new ScriptMaker(edition).all(), darkroom);
    }
  }

  private static void draw(Edition edition, Theme theme, List<Instalment> all, Darkroom darkroom)
      throws IOException {
    Frames frames = new Frames(edition, theme);
    for (Instalment instalment : all) {
      List<FramePlace> places = places(edition, instalment);
      for (int i = 0; i < places.size(); i++) {
        darkroom.take(places.get(i), frames.draw(instalment.scenes().get(i).sight()));
      }
    }
  }

  private static void text(Path folder, String name, String text) throws IOException {
    Files.writeString(
        folder.resolve(name), text, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
  }
}
