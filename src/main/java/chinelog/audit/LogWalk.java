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
import chinelog.problem.Sentence;
import chinelog.quantity.Quantity;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Set;

/**
 * Goes through a whole log and tells {@link Secrets} what the readers may see and what not.
 *
 * <p>Labels are worked out here afresh, from the log's own marks and releases.
 */
final class LogWalk {

  private final Log log;
  private final Clearance clearance;
  private final LogLabels labels;
  private final Secrets secrets;
  private final SeenTexts texts;

  LogWalk(Log log, String readers, Clearance clearance) {
    this.log = log;
    this.clearance = clearance;
    this.labels = new LogLabels(log, readers);
    this.secrets = new Secrets(log.head().locale());
    this.texts = new SeenTexts(clearance, labels, secrets);
  }

  Secrets secrets() {
    return secrets;
  }

  /** Addresses of the web that texts the readers may see link to. */
  Set<String> links() {
    return texts.links();
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
    texts.text(head.title(), Secrets.Kind.PHRASE, Sentence.of("the log's title"));
    texts.text(head.subject(), Secrets.Kind.NAME, Sentence.of("the subject's name"));
    texts.text(head.kind(), Secrets.Kind.PHRASE, Sentence.of("the kind of the subject"));
    texts.text(head.maker(), Secrets.Kind.NAME, Sentence.of("the maker's name"));
    texts.text(head.client(), Secrets.Kind.NAME, Sentence.of("the client's name"));
    texts.text(head.licence(), Secrets.Kind.PROSE, Sentence.of("the licence"));
    texts.blocks(head.about(), Label.NONE, Sentence.of("the text about the build"));
    texts.blocks(head.letter().text(), Label.NONE, Sentence.of("the letter"));
    texts.quantity(head.rate(), Sentence.of("the rate"));
    head.budgets().forEach((name, q) -> texts.quantity(q, Sentence.of("the budget for {0}", name)));
    Marked<BigDecimal> scale = head.scale();
    if (scale != null && !clearance.allows(scale.label())) {
      secrets.withholdScale(scale.value());
    }
    Marked<String> hero = head.hero();
    if (hero != null && !clearance.allows(hero.label())) {
      texts.fileName(hero.value());
    }
  }

  private void agreement(Agreement agreement) {
    Label own = Label.of(agreement.id());
    texts.text(
        own,
        agreement.with(),
        Secrets.Kind.NAME,
        Sentence.of("the other party to \"{0}\"", agreement.id()));
    texts.text(
        own,
        agreement.covers(),
        Secrets.Kind.PROSE,
        Sentence.of("what \"{0}\" covers", agreement.id()));
  }

  private void stage(Stage stage) {
    texts.text(
        stage.label(),
        stage.title(),
        Secrets.Kind.PHRASE,
        Sentence.of("the title of stage {0}", stage.id()));
    texts.blocks(stage.about(), stage.label(), Sentence.of("the text about stage {0}", stage.id()));
  }

  private void release(Release release) {
    Label own = Label.of(release.agreement());
    Sentence what = Sentence.of("the release of {0}", release.name());
    texts.text(own, release.words(), Secrets.Kind.PROSE, Sentence.of("the words of {0}", what));
    texts.text(own, release.by(), Secrets.Kind.NAME, Sentence.of("who gave {0}", what));
  }

  private void limit(Limit limit) {
    texts.text(
        limit.label(),
        limit.title(),
        Secrets.Kind.PHRASE,
        Sentence.of("the title of limit {0}", limit.id()));
    texts.text(
        limit.label(),
        limit.rule(),
        Secrets.Kind.PROSE,
        Sentence.of("the rule of limit {0}", limit.id()));
  }

  private void post(PostPlan post) {
    texts.text(
        post.label(),
        post.title(),
        Secrets.Kind.PHRASE,
        Sentence.of("a post's title ({0})", post.place()));
    texts.text(
        post.label(),
        post.standfirst(),
        Secrets.Kind.PROSE,
        Sentence.of("a post's standfirst ({0})", post.place()));
  }

  private void handover(HandoverSection section) {
    Sentence what = Sentence.of("handover section {0}", section.id());
    texts.text(
        section.label(),
        section.title(),
        Secrets.Kind.PHRASE,
        Sentence.of("the title of {0}", what));
    texts.blocks(section.text(), section.label(), what);
  }

  private void statement(Statement statement) {
    Label label = labels.facts().of(statement.name()).join(statement.label());
    if (labels.facts().isReleased(statement.name())) {
      label = labels.facts().of(statement.name());
    }
    Sentence what = Sentence.of("the fact {0}", statement.name());
    texts.figures(label, statement.expression(), what);
    String source = statement.source();
    if (source != null && !source.startsWith("sheets/")) {
      texts.text(
          statement.label(), source, Secrets.Kind.PHRASE, Sentence.of("the source of {0}", what));
    }
    texts.text(label, statement.title(), Secrets.Kind.TERM, Sentence.of("the title of {0}", what));
  }

  private void request(Request request) {
    Label label = request.label().join(request.reckoning().label());
    request
        .inputs()
        .forEach(
            (name, input) ->
                texts.figures(
                    label.join(input.label()),
                    input.value(),
                    Sentence.of("input {0} of {1}", name, request.prefix())));
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
      label = label.join(input.label()).join(labels.facts().ofAll(input.value()));
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
    Sentence what = Sentence.of("{0} ({1})", lot.material(), lot.place());
    texts.text(
        lot.label(), lot.title(), Secrets.Kind.PHRASE, Sentence.of("the title of {0}", what));
    texts.text(
        lot.label(),
        lot.repair(),
        Secrets.Kind.PHRASE,
        Sentence.of("what is mended with {0}", what));
    Marked<Quantity> price = lot.price();
    if (price != null) {
      texts.quantity(
          lot.label().join(price.label()),
          price.value(),
          true,
          Sentence.of("the price of {0}", what));
    }
    Marked<String> supplier = lot.supplier();
    if (supplier != null) {
      texts.text(
          lot.label().join(supplier.label()),
          supplier.value(),
          Secrets.Kind.NAME,
          Sentence.of("the supplier of {0}", what));
    }
    texts.quantity(
        lot.label(), lot.bought(), true, Sentence.of("how much was bought of {0}", what));
  }

  private void table(Table table) {
    secrets.withholdCurves(table, label -> !clearance.allows(label));
    for (Table.Column column : table.columns()) {
      texts.text(
          table.label().join(column.label()),
          column.name(),
          Secrets.Kind.TERM,
          Sentence.of("a column's name of table {0}", table.name()));
    }
    for (Table.Row row : table.rows()) {
      for (int i = 0; i < row.cells().size(); i++) {
        Table.Cell cell = row.cells().get(i);
        Label label = table.label().join(row.label()).join(table.columns().get(i).label());
        Quantity quantity = cell.quantity();
        Sentence what = Sentence.of("a cell of table {0} ({1})", table.name(), cell.place());
        if (quantity == null) {
          texts.text(label, cell.text(), Secrets.Kind.PHRASE, what);
        } else {
          texts.quantity(label, quantity, false, what);
        }
      }
    }
  }

  private void entry(Entry entry) {
    Label label = labels.entry(entry);
    Sentence what = Sentence.of(entry.id());
    texts.text(
        label.join(entry.title().label()),
        entry.title().value(),
        Secrets.Kind.PHRASE,
        Sentence.of("the title of {0}", what));
    if (clearance.allows(label)) {
      secrets.show(entry.id());
      secrets.show(entry.date() + " " + entry.title().value());
    } else {
      texts.fileName(entry.id());
    }
    texts.blocks(entry.text(), label, what);
    for (Entry.Measurement m : entry.measured()) {
      texts.quantity(
          labels.fact(m.fact(), label.join(m.label())),
          m.value(),
          true,
          Sentence.of("the measured {0}", m.fact()));
      texts.text(
          label.join(m.label()),
          m.title(),
          Secrets.Kind.TERM,
          Sentence.of("the title of the measured {0}", m.fact()));
    }
    for (Entry.Weighing w : entry.weighed()) {
      Label own = labels.fact("mass." + w.part(), label.join(w.label()));
      texts.quantity(own, w.mass(), true, Sentence.of("the mass of {0}", w.part()));
      for (Quantity arm : Arrays.asList(w.x(), w.z())) {
        if (arm != null) {
          texts.quantity(
              label.join(w.label()),
              arm,
              false,
              Sentence.of("where the mass of {0} lies", w.part()));
        }
      }
      texts.text(
          label.join(w.label()),
          w.title(),
          Secrets.Kind.TERM,
          Sentence.of("the title of the mass of {0}", w.part()));
    }
    for (Entry.Use use : entry.used()) {
      texts.text(
          label.join(use.label()),
          use.where(),
          Secrets.Kind.PHRASE,
          Sentence.of("where {0} went", use.material()));
    }
  }

  private void photo(PhotoFile photo) {
    Label label = labels.photo(photo);
    if (!clearance.allows(label)) {
      texts.fileName(photo.path());
    } else if (photo.leaveOut()) {
      secrets.leaveOut(
          SeenTexts.bareName(photo.path()), Sentence.of("the name of {0}", photo.path()));
    }
    texts.inlines(photo.caption(), label, Sentence.of("the caption of {0}", photo.path()));
    texts.text(
        label, photo.alt(), Secrets.Kind.PROSE, Sentence.of("the alt text of {0}", photo.path()));
    for (PhotoFile.Part part : photo.parts()) {
      texts.text(
          label,
          part.name(),
          Secrets.Kind.PROSE,
          Sentence.of("what is named in {0}", photo.path()));
    }
  }

  private void sheet(Sheet sheet) {
    Label label = labels.sheet(sheet);
    texts.text(
        label, sheet.title(), Secrets.Kind.PHRASE, Sentence.of("the title of {0}", sheet.path()));
    if (!clearance.allows(label)) {
      texts.fileName(sheet.path());
    }
  }
}
