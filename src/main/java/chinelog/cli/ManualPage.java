package chinelog.cli;

import chinelog.publish.ProgramVersion;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The manual page, in the macros of man(7), from what the commands say of themselves. */
final class ManualPage {

  private final List<String> lines = new ArrayList<>();

  private ManualPage() {}

  static String of(CommandLine chinelog, ProgramVersion version) {
    ManualPage page = new ManualPage();
    page.write(chinelog, version);
    return String.join("\n", page.lines) + "\n";
  }

  private void write(CommandLine chinelog, ProgramVersion version) {
    CommandSpec top = chinelog.getCommandSpec();
    lines.add(".TH CHINELOG 1 \"" + version.date() + "\" \"chinelog " + version.number() + "\"");
    heading("NAME");
    text("chinelog - the build log of a scale model: figures reckoned, promises kept");
    heading("SYNOPSIS");
    lines.add(".B chinelog");
    lines.add(".I COMMAND");
    text("[OPTIONS] [--help]");
    heading("DESCRIPTION");
    text(String.join(" ", top.usageMessage().description()));
    text("What is under an agreement is left out of every edition whose readers may not see it.");
    heading("COMMANDS");
    chinelog.getSubcommands().values().forEach(c -> command(c.getCommandSpec()));
    heading("EXIT STATUS");
    item("0", "Done.");
    item("1", "The log, or the copy, has problems; each was told.");
    item("2", "Wrong usage.");
    item("3", "The audit found a leak; the edition that stood before still stands.");
    item("70", "A fault of chinelog itself.");
    heading("ENVIRONMENT");
    item("NO_COLOR", "If it is set, nothing is printed bold or in colour.");
    item("CHINELOG_JAVA_OPTIONS", "Options for Java, where chinelog runs from its source.");
    heading("FILES");
    item("published/READERS", "What may leave the workshop, and nothing else.");
    item("workshop/READERS", "The editions of those who are party to everything: the maker's own.");
    item("records", "Private: registers, reports, what was published when, and by which version.");
    item(".chinelog", "Caches; may be deleted at any time.");
    heading("OUTPUT OF CHECK --JSON");
    CheckReport.FORM.lines().forEach(this::text);
  }

  private void command(CommandSpec command) {
    lines.add(".SS chinelog " + escaped(command.name()));
    text(String.join(" ", command.usageMessage().description()));
    for (PositionalParamSpec parameter : command.positionalParameters()) {
      item(parameter.paramLabel(), String.join(" ", parameter.description()));
    }
    for (OptionSpec option : command.options()) {
      String names = String.join(", ", option.names());
      item(
          option.arity().max() == 0 ? names : names + "=" + option.paramLabel(),
          String.join(" ", option.description()));
    }
    lines.add(".PP");
    lines.add(".nf");
    for (String line : command.usageMessage().footer()) {
      if (!line.isBlank()) {
        text(line.replaceAll("\\$\\{[^}]*\\}", "chinelog"));
      }
    }
    lines.add(".fi");
  }

  private void heading(String heading) {
    lines.add(".SH " + escaped(heading));
  }

  private void item(String name, String text) {
    lines.add(".TP");
    lines.add(".B " + escaped(name));
    text(text);
  }

  private void text(String text) {
    lines.add("\\&" + escaped(text));
  }

  /** A hyphen that is to be typed is a minus sign; quotation marks have names. */
  private static String escaped(String text) {
    return text.replace("\\", "\\e")
        .replace("-", "\\-")
        .replace("\u201c", "\\(lq")
        .replace("\u201d", "\\(rq")
        .replace("\u2026", "...");
  }
}
