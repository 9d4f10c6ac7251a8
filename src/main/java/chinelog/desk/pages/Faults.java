package chinelog.desk.pages;

import chinelog.desk.bench.DeskSection;
import chinelog.desk.bench.Frame;
import chinelog.desk.web.Reply;
import chinelog.desk.web.Server;
import chinelog.desk.web.WebRequest;
import chinelog.problem.ProblemException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.util.Locale;
import java.util.Map;

/** Tells in a sentence what went wrong with a request, and that nothing is lost. */
public final class Faults implements Server.Faults {

  private final Frame frame;

  public Faults(Frame frame) {
    this.frame = frame;
  }

  @Override
  public Reply of(WebRequest request, Exception thrown) {
    IOException io =
        thrown instanceof IOException e
            ? e
            : thrown instanceof UncheckedIOException u ? u.getCause() : null;
    return io == null
        ? page(request, 500, "fault.own", String.valueOf(thrown.getMessage()))
        : page(request, 409, key(io), detail(io, request.locale()));
  }

  /** What the system says of it is not said in everybody's language. */
  private static String detail(IOException e, Locale locale) {
    return e instanceof ProblemException p
        ? p.problem().words(locale)
        : e instanceof FileSystemException f ? String.valueOf(f.getFile()) : "";
  }

  @Override
  public Reply missing(WebRequest request) {
    return page(request, 404, "fault.missing", "");
  }

  private Reply page(WebRequest request, int status, String key, String detail) {
    try {
      Reply page =
          frame.page(
              request, DeskSection.TODAY, "fault.ftlh", Map.of("key", key, "detail", detail));
      return new Reply(status, page.type(), page.headers(), page.body());
    } catch (IOException e) {
      return Reply.refused(status, detail);
    }
  }

  private static String key(IOException e) {
    if (e instanceof ProblemException) {
      return "fault.problem";
    }
    return e instanceof AccessDeniedException
        ? "fault.denied"
        : e instanceof FileSystemException ? "fault.file" : "fault.disk";
  }
}
