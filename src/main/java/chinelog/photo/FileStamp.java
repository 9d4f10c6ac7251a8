package chinelog.photo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.util.concurrent.TimeUnit;

/**
 * What changes whenever a file does, told without opening it: its size, the time of the last change
 * of its content and, where the system tells them, the time of the last change of anything about it
 * and its identity.
 *
 * @param text to be compared with the same file's text at another time
 * @param changedMillis when it last changed, by the clock of its file system, since 1970
 */
public record FileStamp(String text, long changedMillis) {

  /** A file changed this shortly before it was looked at may change again unseen. */
  public static final long UNSURE_MILLIS = 2000;

  /** The stamp of a file, or of a link itself. */
  public static FileStamp of(Path file) throws IOException {
    BasicFileAttributes basic =
        Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    FileTime modified = basic.lastModifiedTime();
    FileTime changed = modified;
    if (file.getFileSystem().supportedFileAttributeViews().contains("unix")) {
      changed = (FileTime) Files.getAttribute(file, "unix:ctime", LinkOption.NOFOLLOW_LINKS);
    }
    String text =
        basic.size()
            + " "
            + modified.to(TimeUnit.NANOSECONDS)
            + " "
            + changed.to(TimeUnit.NANOSECONDS)
            + " "
            + basic.fileKey();
    return new FileStamp(text, changed.toMillis());
  }
}
