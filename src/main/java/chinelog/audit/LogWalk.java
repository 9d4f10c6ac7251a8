package chinelog.audit;

import chinelog.label.Agreement;
import chinelog.label.Clearance;
import chinelog.label.Label;
import chinelog.label.Presence;
import chinelog.log.records.Entry;
import chinelog.log.records.HandoverSection;
import chinelog.log.records.Head;
import chinelog.log.records.Limit;
import chinelog.log.records.Log;
import chinelog.log.records.Lot;
import chinelog.log.records.Marked;
import chinelog.log.records.PhotoFile;
import chinelog.log.records.PostPlan;
import chinelog.log.records.Release;
import chinelog.log.records.Request;
import chinelog.log.records.Sheet;
import chinelog.log.records.Stage;
import chinelog.log.records.Statement;
import chinelog.log.records.Table;
import chinelog.log.text.Block;
import chinelog.log.text.Inline;
import chinelog.quantity.Quantity;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Goes through a whole log and tells {@link Secrets} what the readers may see and what not.
 *
 * <p>Labels are worked out here afresh, from the log's own marks and releases.
 */
final class LogWalk {

  private final Log log;
  private final String readers;
  private final Clearance clearance;
  private final FactLabels facts;
  private final Secrets secrets;
  private final Set<String> links = new TreeSet<>();

  LogWalk(Log log, String readers, Clearance clearance) {
    this.log = log;
    this.readers = readers;
    this.clearance = clearance;
    this.facts = FactLabels.of(log, readers);
    this.secrets = new Secrets(log.head().locale());
  }

  Secrets secrets() {
    return secrets;
  }

  /** Addresses of the web that texts the readers may see link to. */
  Set<String> links() {
    return links;
  }

  void walk() {
    head(log.head());
    log.agreements().values().stream().filter(a -> !a.isOwn()).forEach(this::agreement);
    log.stages().forEach(this::stage);
    log.releases().forEach(this::release);
    log.limits().forEach(this::limit);
    log.posts().forEach(this::post);
    log.handover().forEach(this::handover);
    log.statements().forEach(this::statement);
    log.requests().forEach(this::request);
    log.stock().forEach(this::lot);
    log.tables().forEach(this::table);
    log.entries().forEach(this::entry);
    log.photos().forEach(this::photo);
    log.sheets().forEach(this::sheet);
  }

  private void head(Head head) {
    text(head.title(), Secrets.Kind.PHRASE, "the log's title");
    text(head.subject(), Secrets.Kind.NAME, "the subject's name");
    text(head.kind(), Secrets.Kind.PHRASE, "the kind of the subject");
    text(head.maker(), Secrets.Kind.NAME, "the maker's name");
    text(head.client(), Secrets.Kind.NAME, "the client's name");
    text(head.licence(), Secrets.Kind.PROSE, "the licence");
    blocks(head.about(), Label.NONE, "the text about the build");
    blocks(head.letter().text(), Label.NONE, "the letter");
    quantity(head.rate(), "the rate");
    head.budgets().forEach((name, q) -> quantity(q, "the budget for " + name));
    Marked<BigDecimal> scale = head.scale();
    if (scale != null && !clearance.allows(scale.label())) {
      secrets.withholdScale(scale.value());
    }
    Marked<String> hero = head.hero();
    if (hero != null && !clearance.allows(hero.label())) {
      fileName(hero.value());
    }
  }

  private void agreement(Agreement agreement) {
    Label own = Label.of(agreement.id());
    text(own, agreement.with(), Secrets.Kind.NAME, "the other party to \"" + agreement.id() + "\"");
    text(own, agreement.covers(), Secrets.Kind.PROSE, "what \"" + agreement.id() + "\" covers");
  }

  private void stage(Stage stage) {
    text(stage.label(), stage.title(), Secrets.Kind.PHRASE, "the title of stage " + stage.id());
    blocks(stage.about(), stage.label(), "the text about stage " + stage.id());
  }

  private void release(Release release) {
    Label own = Label.of(release.agreement());
    String what = "the release of " + release.name();
    text(own, release.words(), Secrets.Kind.PROSE, "the words of " + what);
    text(own, release.by(), Secrets.Kind.NAME, "who gave " + what);
  }

  private void limit(Limit limit) {
    text(limit.label(), limit.title(), Secrets.Kind.PHRASE, "the title of limit " + limit.id());
    text(limit.label(), limit.rule(), Secrets.Kind.PROSE, "the rule of limit " + limit.id());
  }

  private void post(PostPlan post) {
    text(post.label(), post.title(), Secrets.Kind.PHRASE, "a post's title (" + post.place() + ")");
    text(
        post.label(),
        post.standfirst(),
        Secrets.Kind.PROSE,
        "a post's standfirst (" + post.place() + ")");
  }

  private void handover(HandoverSection section) {
    String what = "handover section " + section.id();
    text(section.label(), section.title(), Secrets.Kind.PHRASE, "the title of " + what);
    blocks(section.text(), section.label(), what);
  }

  private void statement(Statement statement) {
    Label label = facts.of(statement.name()).join(statement.label());
    if (facts.isReleased(statement.name())) {
      label = facts.of(statement.name());
    }
    String what = "the fact " + statement.name();
    figures(label, statement.expression(), what);
    String source = statement.source();
    if (source != null && !source.startsWith("sheets/")) {
      text(statement.label(), source, Secrets.Kind.PHRASE, "the source of " + what);
    }
    text(label, statement.title(), Secrets.Kind.TERM, "the title of " + what);
  }

  private void request(Request request) {
    Label label = request.label().join(request.reckoning().label());
    request
        .inputs()
        .forEach(
            (name, input) ->
                figures(
                    label.join(input.label()),
                    input.value(),
                    "input " + name + " of " + request.prefix()));
    if (!clearance.allows(notedOf(request, label))) {
      secrets.withholdDrawings(request.prefix());
    }
  }

  /**
   * What a drawing of the reckoning is under, but for agreements of which nothing may show: the
   * reckoning is then drawn without what is under these.
   */
  private Label notedOf(Request request, Label own) {
    Label label = own;
    for (Marked<String> input : request.inputs().values()) {
      label = label.join(input.label()).join(facts.ofAll(input.value()));
      for (Table table : log.tables()) {
        if (table.name().equals(input.value().strip())) {
          label = label.join(FactLabels.ofAll(table));
        }
      }
    }
    return Label.of(
        label.agreements().stream().filter(id -> !isOfNothing(id)).toArray(String[]::new));
  }

  private boolean isOfNothing(String agreement) {
    Agreement known = log.agreements().get(agreement);
    return known != null && known.presence() == Presence.NOTHING;
  }

  private void lot(Lot lot) {
    String what = lot.material() + " (" + lot.place() + ")";
    text(lot.label(), lot.title(), Secrets.Kind.PHRASE, "the title of " + what);
    text(lot.label(), lot.repair(), Secrets.Kind.PHRASE, "what is mended with " + what);
    Marked<Quantity> price = lot.price();
    if (price != null) {
      quantity(lot.label().join(price.label()), price.value(), true, "the price of " + what);
    }
    Marked<String> supplier = lot.supplier();
    if (supplier != null) {
      text(
          lot.label().join(supplier.label()),
          supplier.value(),
          Secrets.Kind.NAME,
          "the supplier of " + what);
    }
    quantity(lot.label(), lot.bought(), true, "how much was bought of " + what);
  }

  private void table(Table table) {
    secrets.withholdCurves(table, label -> !clearance.allows(label));
    for (Table.Column column : table.columns()) {
      text(
          table.label().join(column.label()),
          column.name(),
          Secrets.Kind.TERM,
          "a column's name of table " + table.name());
    }
    for (Table.Row row : table.rows()) {
      for (int i = 0; i < row.cells().size(); i++) {
        Table.Cell cell = row.cells().get(i);
        Label label = table.label().join(row.label()).join(table.columns().get(i).label());
        Quantity quantity = cell.quantity();
        String what = "a cell of table " + table.name() + " (" + cell.place() + ")";
        if (quantity == null) {
          text(label, cell.text(), Secrets.Kind.PHRASE, what);
        } else {
          quantity(label, quantity, false, what);
        }
      }
    }
  }

  private void entry(Entry entry) {
    Label label = released(Release.Kind.ENTRY, entry.id(), entry.label());
    String what = entry.id();
    text(
        label.join(entry.title().label()),
        entry.title().value(),
        Secrets.Kind.PHRASE,
        "the title of " + what);
    if (clearance.allows(label)) {
      secrets.show(entry.id());
      secrets.show(entry.date() + " " + entry.title().value());
    } else {
      fileName(entry.id());
    }
    blocks(entry.text(), label, what);
    for (Entry.Measurement m : entry.measured()) {
      quantity(fact(m.fact(), label.join(m.label())), m.value(), true, "the measured " + m.fact());
      text(
          label.join(m.label()),
          m.title(),
          Secrets.Kind.TERM,
          "the title of the measured " + m.fact());
    }
    for (Entry.Weighing w : entry.weighed()) {
      Label own = fact("mass." + w.part(), label.join(w.label()));
      quantity(own, w.mass(), true, "the mass of " + w.part());
      for (Quantity arm : Arrays.asList(w.x(), w.z())) {
        if (arm != null) {
          quantity(label.join(w.label()), arm, false, "where the mass of " + w.part() + " lies");
        }
      }
      text(
          label.join(w.label()),
          w.title(),
          Secrets.Kind.TERM,
          "the title of the mass of " + w.part());
    }
    for (Entry.Use use : entry.used()) {
      text(
          label.join(use.label()),
          use.where(),
          Secrets.Kind.PHRASE,
          "where " + use.material() + " went");
    }
  }

  /** The label of one writing of a fact: a release of the fact frees it. */
  private Label fact(String name, Label written) {
    return facts.isReleased(name) ? facts.of(name) : written;
  }

  private void photo(PhotoFile photo) {
    Label label = released(Release.Kind.PHOTO, photo.path(), photo.label());
    if (!clearance.allows(label)) {
      fileName(photo.path());
    } else if (photo.leaveOut()) {
      secrets.leaveOut(bareName(photo.path()), "the name of " + photo.path());
    }
    inlines(photo.caption(), label, "the caption of " + photo.path());
    text(label, photo.alt(), Secrets.Kind.PROSE, "the alt text of " + photo.path());
    for (PhotoFile.Part part : photo.parts()) {
      text(label, part.name(), Secrets.Kind.PROSE, "what is named in " + photo.path());
    }
  }

  private void sheet(Sheet sheet) {
    Label label = sheet.label();
    for (Release release : log.releases()) {
      if (release.kind() == Release.Kind.SHEET
          && release.readers().contains(readers)
          && release.name().replaceFirst("#.*", "").equals(sheet.path())) {
        label = label.without(release.agreement());
      }
    }
    text(label, sheet.title(), Secrets.Kind.PHRASE, "the title of " + sheet.path());
    if (!clearance.allows(label)) {
      fileName(sheet.path());
    }
  }

  private Label released(Release.Kind kind, String name, Label label) {
    for (Release release : log.releases()) {
      if (release.kind() == kind
          && release.name().equals(name)
          && release.readers().contains(readers)) {
        label = label.without(release.agreement());
      }
    }
    return label;
  }

  /** A path's last part is withheld, with its ending and without. */
  private void fileName(String path) {
    secrets.withhold(bareName(path), Secrets.Kind.PHRASE, "the name of " + path);
  }

  private static String bareName(String path) {
    String name = path.substring(path.lastIndexOf('/') + 1);
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private void figures(Label label, String text, String what) {
    // A tolerance tells nothing by itself.
    for (Quantity q : FigureNet.quantities(text.replaceAll("(?:±|\\+/-)\\s*[\\d.]+", ""))) {
      quantity(label, q, true, what);
    }
  }

  private void quantity(@Nullable Marked<Quantity> marked, String what) {
    if (marked != null) {
      quantity(marked.label(), marked.value(), true, what);
    }
  }

  private void quantity(Label label, Quantity quantity, boolean named, String what) {
    if (clearance.allows(label)) {
      secrets.show(quantity);
    } else {
      secrets.withhold(quantity, named, what);
    }
  }

  private void text(@Nullable Marked<String> marked, Secrets.Kind kind, String what) {
    if (marked != null) {
      text(marked.label(), marked.value(), kind, what);
    }
  }

  private void text(Label label, String text, Secrets.Kind kind, String what) {
    if (!clearance.allows(label)) {
      secrets.withhold(text, kind, what);
    } else if (kind == Secrets.Kind.PROSE) {
      secrets.mention(text);
    } else {
      secrets.show(text);
    }
  }

  private void blocks(List<Block> blocks, Label around, String what) {
    for (Block block : blocks) {
      Label label = around.join(block.label());
      String where = what + " (" + block.place() + ")";
      block.lines().forEach(line -> inlines(line, label, where));
      blocks(block.children(), label, where);
      if (block instanceof Block.Code code) {
        text(label, code.text(), Secrets.Kind.PROSE, where);
      }
    }
  }

  private void inlines(List<Inline> text, Label label, String what) {
    RunWalk walk = new RunWalk(label, what);
    walk.all(text);
    walk.end();
  }

  /** Runs of text, split where what the readers may see ends. */
  private final class RunWalk {
    private final StringBuilder seen = new StringBuilder();
    private final StringBuilder unseen = new StringBuilder();
    private final String what;
    private Label label;

    RunWalk(Label label, String what) {
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
        inlines(footnote.text(), label.join(footnote.label()), "a footnote of " + what);
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
        secrets.withhold(target, Secrets.Kind.PHRASE, "a link of " + what);
      }
    }

    private void factLink(Inline.FactLink link) {
      if (clearance.allows(label) && !clearance.allows(facts.of(link.fact()))) {
        figures(facts.of(link.fact()), link.written(), "the fact " + link.fact() + " in " + what);
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
      inlines(image.caption(), own.join(photoLabel(image.path())), what);
    }
  }

  private Label photoLabel(String path) {
    return log.photos().stream()
        .filter(p -> p.path().equals(path))
        .findFirst()
        .map(p -> released(Release.Kind.PHOTO, path, p.label()))
        .orElse(Label.NONE);
  }
}
