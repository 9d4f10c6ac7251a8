package chinelog.desk.files;

import chinelog.problem.Place;
import chinelog.problem.Problem;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The plain files of one log, changed so that nothing is ever lost: not by a kill, a full disk,
 * another program that writes them too, or a change of mind.
 *
 * <p>Paths are below the log's folder, such as {@code entries/2026-03-14-drawings.md}. One of these
 * serves all threads; two for the same log must not be open at once.
 */
public final class LogFiles {

  private static final int MOST_SEEN = 32;

  private final Path folder;
  private final Disk disk;
  private final Bounds bounds;
  private final Journal journal;
  private final Drafts drafts;

  /**
   * Texts read lately by their stamps, so that a change that comes too late can be told in full.
   */
  private final Map<String, String> seen =
      new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
          return size() > MOST_SEEN;
        }
      };

  private LogFiles(Path folder, Disk disk) throws IOException {
    this.folder = folder.toRealPath();
    this.disk = disk;
    this.bounds = new Bounds(this.folder);
    Path ours = this.folder.resolve(".chinelog").resolve("desk");
    this.journal = new Journal(ours.resolve("undo"), disk);
    this.drafts = new Drafts(ours.resolve("drafts"), disk);
    strikeOutWhatWasNotDone();
  }

  /** Opens the files of a log, and puts right what a kill left half done. */
  public static LogFiles open(Path folder) throws IOException {
    return open(folder, new Disk());
  }

  static LogFiles open(Path folder, Disk disk) throws IOException {
    return new LogFiles(folder, disk);
  }

  /** The real path of the log's folder. */
  public Path folder() {
    return folder;
  }

  /**
   * A file as it stands now; empty with the stamp {@link FileVersion#NONE} if there is none.
   *
   * @throws ProblemException if it is out of bounds
   */
  public synchronized FileVersion read(Path file) throws IOException {
    Path inside = bounds.require(file);
    String name = bounds.name(file);
    if (!Files.exists(inside, LinkOption.NOFOLLOW_LINKS)) {
      return FileVersion.absent(name);
    }
    FileVersion version = FileVersion.of(name, Files.readAllBytes(inside));
    seen.put(version.stamp(), version.text());
    return version;
  }

  /**
   * Puts a new text in a file's place, or makes the file.
   *
   * @param stampSeen of the version that the new text was made from
   * @param why what was done, in words, such as "Put a paragraph under lines"
   */
  public synchronized WriteOutcome write(Path file, String stampSeen, String newText, String why) {
    return guarded(
        file,
        () -> {
          FileVersion now = read(file);
          byte[] bytes = newText.getBytes(StandardCharsets.UTF_8);
          if (!now.stamp().equals(stampSeen)) {
            return new WriteOutcome.Changed(newText, now);
          }
          return put(now, bytes, why);
        });
  }

  /** The same by splices, of a file that is UTF-8; all other bytes stay. */
  synchronized WriteOutcome splice(Path file, String stampSeen, List<Splice> splices, String why) {
    return guarded(
        file,
        () -> {
          FileVersion now = read(file);
          if (!now.stamp().equals(stampSeen)) {
            String before = seen.get(stampSeen);
            return new WriteOutcome.Changed(
                before == null ? "" : Splice.apply(before, splices), now);
          }
          if (!now.utf8()) {
            throw new ProblemException(
                Problem.error(
                    Place.of(now.path()),
                    "This file is not UTF-8 text.",
                    "Open it as text and save it; it is UTF-8 then."));
          }
          String text = Splice.apply(now.text(), splices);
          return put(now, text.getBytes(StandardCharsets.UTF_8), why);
        });
  }

  /**
   * Changes a file as it stands now, such as one key of photos.yaml, whatever else was done to it
   * meanwhile.
   */
  public synchronized WriteOutcome edit(Path file, Edit edit, String why) {
    return guarded(
        file,
        () -> {
          FileVersion now = read(file);
          return put(now, edit.text(now).getBytes(StandardCharsets.UTF_8), why);
        });
  }

  /** Makes the new text of a file from what stands there. */
  @FunctionalInterface
  public interface Edit {

    /**
     * The new text.
     *
     * @throws ProblemException if it cannot be made; nothing is written then
     */
    String text(FileVersion now) throws IOException;
  }

  /** Takes a file away, such as an empty note; it can be had back. */
  public synchronized WriteOutcome remove(Path file, String stampSeen, String why) {
    return guarded(
        file,
        () -> {
          FileVersion now = read(file);
          if (!now.stamp().equals(stampSeen)) {
            return new WriteOutcome.Changed("", now);
          }
          return change(now, null, why);
        });
  }

  /** What {@link #undo} would take back, in words. */
  public synchronized Optional<String> findUndo() {
    List<Journal.Step> done = journal.done();
    return done.isEmpty() ? Optional.empty() : Optional.of(done.get(done.size() - 1).why());
  }

  /** What {@link #redo} would do again, in words. */
  public synchronized Optional<String> findRedo() {
    List<Journal.Step> undone = journal.undone();
    return undone.isEmpty() ? Optional.empty() : Optional.of(undone.get(undone.size() - 1).why());
  }

  /** Takes the last change back, across restarts; empty if there is none. */
  public synchronized Optional<WriteOutcome> undo() {
    List<Journal.Step> done = journal.done();
    if (done.isEmpty()) {
      return Optional.empty();
    }
    Journal.Step step = done.get(done.size() - 1);
    return Optional.of(turn(step, step.after(), step.before(), journal::back));
  }

  /** Makes the change again that was last taken back; empty if there is none. */
  public synchronized Optional<WriteOutcome> redo() {
    List<Journal.Step> undone = journal.undone();
    if (undone.isEmpty()) {
      return Optional.empty();
    }
    Journal.Step step = undone.get(undone.size() - 1);
    return Optional.of(turn(step, step.before(), step.after(), journal::again));
  }

  /**
   * Keeps what is being typed, so that a kill loses at most what was typed since.
   *
   * @return the problem if it could not be kept, such as on a full disk
   */
  public synchronized Optional<Problem> draft(Path file, String stampSeen, String text) {
    WriteOutcome outcome =
        guarded(
            file,
            () -> {
              bounds.require(file);
              drafts.keep(new TypedDraft(bounds.name(file), stampSeen, text));
              return new WriteOutcome.Written(FileVersion.absent(bounds.name(file)));
            });
    return outcome instanceof WriteOutcome.Refused refused
        ? Optional.of(refused.problem())
        : Optional.empty();
  }

  public synchronized void dropDraft(Path file) throws IOException {
    drafts.drop(bounds.name(file));
  }

  /** What was typed into a file and not written when the program ended. */
  public synchronized Optional<TypedDraft> findDraft(Path file) throws IOException {
    return drafts.find(bounds.name(file));
  }

  /** All drafts, by path. */
  public synchronized List<TypedDraft> drafts() throws IOException {
    return drafts.list();
  }

  private WriteOutcome put(FileVersion now, byte[] bytes, String why) throws IOException {
    Optional<TypedDraft> draft = drafts.find(now.path());
    WriteOutcome outcome = change(now, bytes, why);
    if (outcome instanceof WriteOutcome.Written written
        && draft.isPresent()
        && draft.get().text().equals(written.now().text())) {
      drafts.drop(now.path());
    }
    return outcome;
  }

  /**
   * @param bytes null to take the file away
   */
  private WriteOutcome change(FileVersion now, byte @Nullable [] bytes, String why)
      throws IOException {
    FileVersion next =
        bytes == null ? FileVersion.absent(now.path()) : FileVersion.of(now.path(), bytes);
    if (next.stamp().equals(now.stamp())) {
      return new WriteOutcome.Written(now);
    }
    Path file = bounds.require(Path.of(now.path()));
    if (now.exists()) {
      journal.keep(Files.readAllBytes(file));
    }
    if (bytes != null) {
      journal.keep(bytes);
    }
    return swap(
        now,
        next,
        bytes,
        () -> journal.did(new Journal.Step(now.path(), now.stamp(), next.stamp(), why)));
  }

  private WriteOutcome turn(Journal.Step step, String from, String to, Act line) {
    return guarded(
        Path.of(step.path()),
        () -> {
          FileVersion now = read(Path.of(step.path()));
          byte[] bytes = to.isEmpty() ? null : kept(step, to);
          FileVersion next =
              bytes == null ? FileVersion.absent(step.path()) : FileVersion.of(step.path(), bytes);
          return now.stamp().equals(from)
              ? swap(now, next, bytes, line)
              : new WriteOutcome.Changed(next.text(), now);
        });
  }

  private byte[] kept(Journal.Step step, String digest) throws IOException {
    try {
      return journal.kept(step, digest);
    } catch (IOException e) {
      throw new ProblemException(
          Problem.error(
              Place.of(step.path()),
              "The former text of this file is no longer kept.",
              "It lay in .chinelog, which may be deleted; edit the file as it stands."),
          e);
    }
  }

  /** The change itself: told in the journal, written beside the file, and put in its place. */
  private WriteOutcome swap(FileVersion now, FileVersion next, byte @Nullable [] bytes, Act line)
      throws IOException {
    Path file = bounds.require(Path.of(now.path()));
    Path beside = beside(file);
    try {
      line.run();
      if (bytes != null) {
        Files.createDirectories(parent(file));
        disk.write(beside, bytes);
        copyPermissions(file, beside);
      }
      // The last look before it: another program may have written meanwhile.
      FileVersion last = read(Path.of(now.path()));
      if (!last.stamp().equals(now.stamp())) {
        journal.never();
        return new WriteOutcome.Changed(next.text(), last);
      }
      if (bytes == null) {
        disk.delete(file);
      } else {
        disk.swap(beside, file);
      }
    } catch (IOException e) {
      strikeOutWhatWasNotDone();
      throw e;
    } finally {
      disk.drop(beside);
    }
    return new WriteOutcome.Written(next);
  }

  /** Where the disk is as before the last line of the journal, that change never came about. */
  private void strikeOutWhatWasNotDone() throws IOException {
    if (!journal.endsWithChange()) {
      return;
    }
    Journal.Step step = journal.lastStep();
    disk.drop(beside(folder.resolve(step.path())));
    FileVersion now;
    try {
      now = read(Path.of(step.path()));
    } catch (ProblemException e) {
      // Another program has put something else there; undoing will say so.
      return;
    }
    if (now.stamp().equals(step.before()) && !step.before().equals(step.after())) {
      journal.never();
    }
  }

  /** Hidden from the log's readers by its first letter. */
  private static Path beside(Path file) {
    return file.resolveSibling("." + file.getFileName() + ".next");
  }

  private Path parent(Path file) {
    Path parent = file.getParent();
    return parent == null ? folder : parent;
  }

  private static void copyPermissions(Path from, Path to) throws IOException {
    if (Files.exists(from, LinkOption.NOFOLLOW_LINKS)) {
      if (!Files.isWritable(from)) {
        throw new AccessDeniedException(from.toString());
      }
      PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
      PosixFileAttributeView now = Files.getFileAttributeView(to, PosixFileAttributeView.class);
      if (old != null && now != null) {
        now.setPermissions(old.readAttributes().permissions());
      }
    }
  }

  private WriteOutcome guarded(Path file, Change change) {
    try {
      return change.make();
    } catch (ProblemException e) {
      return new WriteOutcome.Refused(e.problem());
    } catch (AccessDeniedException e) {
      return refused(
          file, "This file may not be written.", "See that you may write in its folder.");
    } catch (IOException e) {
      return refused(
          file,
          "This could not be written; the file stands as it was.",
          "See that the disk is not full and is sound, then try again.");
    }
  }

  private WriteOutcome refused(Path file, String what, String remedy) {
    return new WriteOutcome.Refused(Problem.error(Place.of(bounds.name(file)), what, remedy));
  }

  private interface Change {
    WriteOutcome make() throws IOException;
  }

  private interface Act {
    void run() throws IOException;
  }
}
