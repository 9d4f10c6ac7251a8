package chinelog.audit;

import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.log.records.Marked;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Tells {@link Secrets} of a text or a figure under a label: that it is shown, if the readers may
 * see what is under that, else that it is withheld.
 */
final class SeenTexts {

  private final Clearance clearance;
  private final LogLabels labels;
  private final Secrets secrets;
  private final Set<String> links = new TreeSet<>();

  SeenTexts(Clearance clearance, LogLabels labels, Secrets secrets) {
    this.clearance = clearance;
    this.labels = labels;
    this.secrets = secrets;
  }

  /** Addresses of the web that texts the readers may see link to. */
  Set<String> links() {
    return links;
  }

  /** A path's last part is withheld, with its ending and without. */
  void fileName(String path) {
    secrets.withhold(bareName(path), Secrets.Kind.PHRASE, Sentence.of("the name of {0}", path));
  }

  static String bareName(String path) {
    String name = path.substring(path.lastIndexOf('/') + 1);
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  void figures(Label label, String text, Sentence what) {
    // A tolerance tells nothing by itself.
    for (Quantity q : FigureNet.quantities(text.replaceAll("(?:±|\\+/-)\\s*[\\d.]+", ""))) {
      quantity(label, q, true, what);
    }
  }

  void quantity(@Nullable Marked<Quantity> marked, Sentence what) {
    if (marked != null) {
      quantity(marked.label(), marked.value(), true, what);
    }
  }

  void quantity(Label label, Quantity quantity, boolean named, Sentence what) {
    if (clearance.allows(label)) {
      secrets.show(quantity);
    } else {
      secrets.withhold(quantity, named, what);
    }
  }

  void text(@Nullable Marked<String> marked, Secrets.Kind kind, Sentence what) {
    if (marked != null) {
      text(marked.label(), marked.value(), kind, what);
    }
  }

  void text(Label label, String text, Secrets.Kind kind, Sentence what) {
    if (!clearance.allows(label)) {
      secrets.withhold(text, kind, what);
    } else if (kind == Secrets.Kind.PROSE) {
      secrets.mention(text);
    } else {
      secrets.show(text);
    }
  }

  void blocks(List<Block> blocks, Label around, Sentence what) {
    for (Block block : blocks) {
      Label label = around.join(block.label());
      Sentence where = Sentence.of("{0} ({1})", what, block.place());
      block.lines().forEach(line -> inlines(line, label, where));
      blocks(block.children(), label, where);
      if (block instanceof Block.Code code) {
        text(label, code.text(), Secrets.Kind.PROSE, where);
      }
    }
  }

  void inlines(List<Inline> text, Label label, Sentence what) {
    RunWalk walk = new RunWalk(label, what);
    walk.all(text);
    walk.end();
  }

  /** Runs of text, split where what the readers may see ends. */
  private final class RunWalk {
    private final StringBuilder seen = new StringBuilder();
    private final StringBuilder unseen = new StringBuilder();
    private final Sentence what;
    private Label label;

    RunWalk(Label label, Sentence what) {
      this.label = label;
      this.what = what;
    }

    void all(List<Inline> text) {
      text.forEach(this::tell);
    }

    private void write(String text) {
      if (clearance.allows(label)) {
        flushUnseen();
        seen.append(text);
      } else {
        unseen.append(text);
      }
    }

    private void flushUnseen() {
      if (!unseen.isEmpty()) {
        secrets.withhold(unseen.toString(), Secrets.Kind.PROSE, what);
        unseen.setLength(0);
        seen.append('\f');
      }
    }

    void end() {
      flushUnseen();
      secrets.mention(seen.toString());
    }

    private void tell(Inline run) {
      if (run instanceof Inline.FactLink link) {
        factLink(link);
      } else if (run instanceof Inline.Image image) {
        image(image);
      } else if (run instanceof Inline.Footnote footnote) {
        inlines(
            footnote.children(),
            label.join(footnote.label()),
            Sentence.of("a footnote of {0}", what));
      } else if (run.children().isEmpty()) {
        write(run.plainText());
      } else {
        inside(run);
      }
      if (run instanceof Inline.Link link) {
        target(link.target());
      }
    }

    private void inside(Inline run) {
      Label before = label;
      label = label.join(run.label());
      all(run.children());
      label = before;
    }

    private void target(String target) {
      if (clearance.allows(label)) {
        links.add(target);
      } else {
        secrets.withhold(target, Secrets.Kind.PHRASE, Sentence.of("a link of {0}", what));
      }
    }

    private void factLink(Inline.FactLink link) {
      if (clearance.allows(label) && !clearance.allows(labels.facts().of(link.fact()))) {
        figures(
            labels.facts().of(link.fact()),
            link.written(),
            Sentence.of("the fact {0} in {1}", link.fact(), what));
        write("\f");
      } else {
        write(link.written());
      }
    }

    private void image(Inline.Image image) {
      Label own = label.join(image.label());
      if (!clearance.allows(own)) {
        fileName(image.path());
      }
      inlines(image.caption(), own.join(labels.photo(image.path())), what);
    }
  }
}
