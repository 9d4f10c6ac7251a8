package chinelog.audit;

import static chinelog.audit.SampleEdition.encode;
import static chinelog.audit.SampleEdition.page;
import static chinelog.audit.SampleEdition.pdf;
import static chinelog.audit.SampleEdition.picture;
import static chinelog.audit.SampleEdition.utf8;
import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Leaks planted in the files of a talk, one in each kind of them. */
class TalkLeaksTest {

  private static final String TALK = "talk/01-the-drawings-come-out/";
  private static final String CUE =
      "WEBVTT\n\n00:00:01.000 --> 00:00:04.000\nWe set the moulds up on the board.\n";

  @TempDir Path folder;

  private static BufferedImage frame(boolean isFilled) {
    BufferedImage frame = new BufferedImage(640, 360, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = frame.createGraphics();
    g.setColor(new Color(0xfaf7f1));
    g.fillRect(0, 0, 640, 360);
    g.drawImage(picture(480, 360, 4), 80, 0, null);
    if (isFilled) {
      g.setColor(new Color(0x8a8a8a));
      g.fillRect(160, 96, 160, 176);
    }
    g.dispose();
    return frame;
  }

  private static Map<String, byte[]> files() {
    Map<String, byte[]> files = new TreeMap<>();
    files.put(TALK + "captions.vtt", utf8(CUE));
    files.put(
        TALK + "captions.srt",
        utf8("1\n00:00:01,000 --> 00:00:04,000\nWe set the moulds up on the board.\n"));
    files.put(
        TALK + "chapters.vtt",
        utf8("WEBVTT\n\n00:00:00.000 --> 00:00:09.000\nThe drawings come out\n"));
    files.put(TALK + "chapters.txt", utf8("0:00 The drawings come out\n"));
    files.put(TALK + "description.txt", utf8("Building Merrow: The drawings come out\n"));
    files.put(
        TALK + "script.html",
        utf8(
            page("", "<p>We set the moulds up on the board.</p>")
                .replaceAll("<link[^>]*>|<script.*</script>", "")));
    files.put(TALK + "script.pdf", pdf("We set the moulds up on the board."));
    files.put(TALK + "frames/001.jpg", encode(frame(true), "jpeg"));
    return files;
  }

  private List<Finding> audit(Map<String, byte[]> files, byte[] frame) throws IOException {
    Path edition = Files.createDirectory(folder.resolve("edition"));
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path path = edition.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
    List<AllowedPicture> pictures = new ArrayList<>(SampleEdition.pictures());
    pictures.add(
        SampleEdition.told(
            frame, new FilledArea(160 / 640.0, 96 / 360.0, 320 / 640.0, 272 / 360.0, 0x8a8a8a)));
    Path log = Files.createDirectory(folder.resolve("log"));
    return Audit.search(
            edition,
            files().keySet(),
            SampleLog.in(log),
            "public",
            SampleLog.PUBLIC,
            List.of(),
            Set.of(),
            pictures,
            Before.nothing())
        .findings();
  }

  @Test
  void aCleanTalkIsClean() throws IOException {
    assertThat(audit(files(), files().get(TALK + "frames/001.jpg"))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "captions.vtt | board | length of eleven point two metres | full.loa",
        "captions.vtt | board. | board of Skerrick~Yard. | other party",
        "captions.vtt | the board. | the board.~~NOTE as drawn | no caption",
        "captions.vtt | --> 00:00:04.000 | --> 00:00:04.000 align:start | no caption",
        "captions.vtt | 00:00:04.000 | 00:00:00.500 | go back",
        "captions.srt | board | onze virgule deux mètres | full.loa",
        "captions.srt | 1~00 | 7~00 | not numbered",
        "chapters.vtt | The drawings come out | How the pantograph was cheated | post",
        "chapters.txt | The drawings come out | elf Komma zwei Meter | full.loa",
        "description.txt | Building | For Marrowby Ferries. Building | client",
        "description.txt | Building | https://elsewhere.example/ Building | not the edition's",
        "description.txt | Building | elf komma twee meter lang, Building | full.loa",
        "script.html | board. | board. Eleven point two metres. | full.loa",
        "script.html | board. | board, once coma dos metros. | full.loa",
        "script.html | board. | board, four hundred and forty point nine four inches. | full.loa",
        "script.html | board. | board. Twenty-one pounds sixty-three. | price"
      })
  void whatIsPlantedInAFileIsFoundInIt(String file, String from, String to, String told)
      throws IOException {
    Map<String, byte[]> files = files();
    String text = new String(files.get(TALK + file), StandardCharsets.UTF_8);
    String before = from.replace('~', '\n');
    assertThat(text).contains(before);
    files.put(TALK + file, utf8(text.replace(before, to.replace('~', '\n'))));
    assertThat(audit(files, files().get(TALK + "frames/001.jpg")))
        .anyMatch(
            f -> f.file().equals(TALK + file) && (f.what().toString() + f.where()).contains(told));
  }

  @Test
  void spelledFiguresInAPrintedScriptAreFound() throws IOException {
    Map<String, byte[]> files = files();
    files.put(TALK + "script.pdf", pdf("She is eleven point two metres long."));
    assertThat(audit(files, files().get(TALK + "frames/001.jpg")))
        .anyMatch(f -> f.file().endsWith("script.pdf") && f.what().toString().contains("full.loa"));
  }

  @Test
  void aFrameThatIsNotTheEditionsIsFound() throws IOException {
    Map<String, byte[]> files = files();
    files.put(TALK + "frames/001.jpg", encode(picture(640, 360, 9), "jpeg"));
    assertThat(audit(files, files().get(TALK + "frames/001.jpg")))
        .anyMatch(f -> f.what().toString().contains("none of the pictures"));
  }

  @Test
  void aFrameWhoseRegionIsOpenIsFoundEvenIfItIsTheEditions() throws IOException {
    Map<String, byte[]> files = files();
    byte[] open = encode(frame(false), "jpeg");
    files.put(TALK + "frames/001.jpg", open);
    assertThat(audit(files, open)).anyMatch(f -> f.what().toString().contains("not filled"));
  }

  @Test
  void bytesBehindAFrameAreFound() throws IOException {
    Map<String, byte[]> files = files();
    byte[] frame = files.get(TALK + "frames/001.jpg");
    byte[] longer = java.util.Arrays.copyOf(frame, frame.length + 40);
    files.put(TALK + "frames/001.jpg", longer);
    assertThat(audit(files, longer)).anyMatch(f -> f.file().endsWith("001.jpg"));
  }
}
