// The editor of a note, or of any text file of the log: the text, its keys as a form, what readers see of it.
import { EditorState, StateEffect, StateField, RangeSetBuilder } from "@codemirror/state";
import { EditorView, Decoration, MatchDecorator, ViewPlugin, keymap, lineNumbers, drawSelection, showTooltip, tooltips } from "@codemirror/view";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { ask, fill, focusAgain, say, showAgain } from "./desk.js";
import { newAgreement } from "./agreement.js";

const place = document.getElementById("editor");
const file = place.dataset.file;
const isNote = document.body.classList.contains("note");
let stamp = place.dataset.stamp;

// ---- The keys at the top of a note are a form; only the text below them is in the editor.

// Keys that cannot be read are put right in the text, all of which is there then.
const isByHand = document.querySelector("#keys [data-by-hand]") !== null;
const HEAD = /^\uFEFF?---[ ]*\n[\s\S]*?(?<=\n)---[ ]*(?:\n|$)/;
let head = "";
function split(text) {
  const found = isNote && !isByHand ? HEAD.exec(text) : null;
  head = found ? found[0] : "";
  return text.slice(head.length);
}
const whole = () => head + view.state.doc.toString();

// ---- What is under agreements is hatched, what leads somewhere is coloured.

const setParts = StateEffect.define();
const parts = StateField.define({
  create: () => Decoration.none,
  update(marks, change) {
    marks = marks.map(change.changes);
    for (const effect of change.effects) if (effect.is(setParts)) marks = effect.value;
    return marks;
  },
  provide: (field) => EditorView.decorations.from(field),
});

function hatch(state, list, noteUnder) {
  const ranges = [];
  const length = state.doc.length;
  const within = (n) => Math.max(0, Math.min(length, n - head.length));
  const lines = (from, to, under) => {
    for (let at = from; at <= to;) {
      const line = state.doc.lineAt(at);
      ranges.push(Decoration.line({ class: "under-line", attributes: { title: under } }).range(line.from));
      at = line.to + 1;
      if (line.to >= length) break;
    }
  };
  if (noteUnder) lines(0, length, noteUnder);
  list.forEach((part, index) => {
    if (!part.under.length) return;
    const under = part.under.join(", ");
    const from = within(part.from);
    const last = part.marks.at(-1);
    const to = within(last ? last[1] : part.to);
    if (part.kind === "HEADING") {
      const next = list.slice(index + 1).find((p) => p.kind === "HEADING" && p.level <= part.level);
      lines(from, next ? Math.max(from, within(next.from) - 1) : length, under);
    } else if (part.kind === "PARAGRAPH") {
      lines(from, to, under);
    } else if (from < to) {
      ranges.push(Decoration.mark({ class: "under-words", attributes: { title: under } }).range(from, to));
    }
    for (const mark of part.marks) {
      if (within(mark[0]) < within(mark[1])) {
        ranges.push(Decoration.mark({ class: "under-mark" }).range(within(mark[0]), within(mark[1])));
      }
    }
  });
  return Decoration.set(ranges, true);
}

const matcher = (regexp, name) => {
  const decorator = new MatchDecorator({ regexp, decoration: Decoration.mark({ class: name }) });
  return ViewPlugin.fromClass(class {
    constructor(v) { this.marks = decorator.createDeco(v); }
    update(u) { this.marks = decorator.updateDeco(u, this.marks); }
  }, { decorations: (plugin) => plugin.marks });
};
const wrongLine = Decoration.line({ class: "wrong-line" });
const setWrong = StateEffect.define();
const wrongs = StateField.define({
  create: () => Decoration.none,
  update(marks, change) {
    marks = marks.map(change.changes);
    for (const effect of change.effects) if (effect.is(setWrong)) marks = effect.value;
    return marks;
  },
  provide: (field) => EditorView.decorations.from(field),
});

// ---- What is selected goes under an agreement by one click, where the eye is.

const QUICK = 2;
function offer(state) {
  const { from, to, head: end, empty } = state.selection.main;
  if (empty || !state.sliceDoc(from, to).trim()) return null;
  return { pos: end, above: end === from, create: () => ({ dom: offered() }) };
}
function offered() {
  const row = document.createElement("div");
  row.className = "offer";
  const button = (words, then) => {
    const one = Object.assign(document.createElement("button"), { type: "button", textContent: words });
    one.addEventListener("mousedown", (event) => event.preventDefault());
    one.addEventListener("click", then);
    row.append(one);
  };
  const known = agreements();
  if (known.length <= QUICK) {
    for (const which of known) button(under.dataset.put.replace("{0}", which), () => mark("selection", [which]).catch((fault) => say(fault.message, true)));
  }
  if (known.length !== 1) button(under.dataset.more, () => tools.under());
  return row;
}
const offers = StateField.define({
  create: offer,
  update: (now, change) => (change.docChanged || change.selection ? offer(change.state) : now),
  provide: (field) => showTooltip.from(field),
});

// ---- The editor itself.

const tool = (name) => () => { document.querySelector(`[data-tool="${name}"]`)?.click(); return true; };
const keys = [{ key: "Mod-s", run: () => { save(); return true; }, preventDefault: true }];
if (isNote) {
  for (const [key, name] of [["u", "under"], ["p", "photograph"], ["f", "fact"], ["n", "footnote"], ["t", "table"]]) {
    keys.push({ key: `Ctrl-Alt-${key}`, run: tool(name), preventDefault: true });
  }
}
const under = document.getElementById("under");
const agreements = () => [...under.querySelectorAll('[name="under"]')].map((box) => box.value);
const area = document.getElementById("text");
const first = split(area.value);
area.remove();
const view = new EditorView({
  parent: place,
  state: EditorState.create({
    doc: first,
    extensions: [
      EditorView.cspNonce.of(document.body.dataset.nonce),
      EditorView.contentAttributes.of({ "aria-label": place.dataset.label, spellcheck: "true" }),
      EditorView.lineWrapping,
      drawSelection(),
      history(),
      parts,
      wrongs,
      ...(isNote ? [offers, tooltips({ tooltipSpace: () => document.querySelector(".writing").getBoundingClientRect() })] : []),
      keymap.of([...keys, ...defaultKeymap, ...historyKeymap]),
      isNote
        ? [matcher(/^#{1,6} .*$/gm, "is-heading"), matcher(/\[[^\]\n]*\]\([^)\n]*\)/g, "is-link"), matcher(/\*\*?[^*\n]+\*\*?/g, "is-strong")]
        : [lineNumbers(), matcher(/#.*$/gm, "is-remark"), matcher(/^[\s-]*[\w.-]+:/gm, "is-key")],
      EditorView.updateListener.of((update) => { if (update.docChanged) typed(); }),
    ],
  }),
});

/** Puts a changed text in the place of what is there, as one step that can be taken back. */
function put(text, cursor) {
  const body = split(text);
  const old = view.state.doc.toString();
  let from = 0;
  while (from < old.length && from < body.length && old[from] === body[from]) from++;
  let end = 0;
  while (end < old.length - from && end < body.length - from && old[old.length - 1 - end] === body[body.length - 1 - end]) end++;
  if (old !== body) {
    view.dispatch({ changes: { from, to: old.length - end, insert: body.slice(from, body.length - end) } });
  }
  if (cursor !== undefined) {
    view.dispatch({ selection: { anchor: Math.min(cursor, view.state.doc.length) }, scrollIntoView: true });
  }
  typed();
}

// ---- Kept as a draft at once, looked at after a pause, written when asked.

const state = document.getElementById("state");
let saved = whole();
let drafting;
let pausing;
function typed() {
  const changed = whole() !== saved;
  state.textContent = changed ? state.dataset.typed : state.dataset.saved;
  document.body.classList.toggle("changed", changed);
  clearTimeout(drafting);
  clearTimeout(pausing);
  pausing = setTimeout(look, 150);
  if (changed) drafting = setTimeout(draft, 600);
}
// Whether what is typed stands on this page alone: then nobody leaves it unasked.
let isHereOnly = false;
async function draft() {
  try {
    const reply = await (await ask("/notes/draft", { file, stamp, text: whole() })).json();
    isHereOnly = reply.refused !== undefined;
    if (reply.refused) say(reply.refused, true);
    else if (whole() !== saved) state.textContent = state.dataset.draft;
  } catch (fault) {
    isHereOnly = true;
    say(fault.message, true);
  }
}
addEventListener("beforeunload", (event) => { if (isHereOnly && whole() !== saved) event.preventDefault(); });
addEventListener("pagehide", () => {
  if (whole() !== saved) {
    navigator.sendBeacon("/notes/draft", new URLSearchParams({ file, stamp, text: whole() }));
  }
});

export async function save(over) {
  const text = whole();
  clearTimeout(drafting);
  try {
    const reply = await (await ask("/notes/save", { file, stamp: over ?? stamp, text })).json();
    if (reply.refused) {
      say(reply.refused, true);
    } else if (reply.changed !== undefined) {
      both(reply, text);
    } else {
      stamp = reply.stamp;
      saved = text;
      typed();
      if (isByHand) {
        location.reload();
        return;
      }
      say(place.dataset.savedWords);
      document.dispatchEvent(new Event("written"));
    }
  } catch (fault) { say(fault.message, true); }
}
document.getElementById("save").addEventListener("click", () => save());

/** Another program has changed the file: both texts are shown, and neither is lost. */
function both(reply, text) {
  const dialog = document.getElementById("both");
  document.getElementById("theirs").value = reply.changed;
  document.getElementById("mine").value = text;
  dialog.addEventListener("close", () => {
    if (dialog.returnValue === "mine") save(reply.stamp);
    if (dialog.returnValue === "theirs") {
      stamp = reply.stamp;
      saved = reply.changed;
      put(reply.changed);
      form();
    }
  }, { once: true });
  dialog.showModal();
}
document.addEventListener("log-changed", async () => {
  const reply = await look();
  if (reply && reply.disk !== stamp) {
    if (whole() === saved) showAgain();
    else say(place.dataset.elsewhere, true);
  }
});

// ---- What readers see, and what is wrong.

const readers = document.getElementById("readers");
const frame = document.getElementById("seen");
let looking;
async function look() {
  looking?.abort();
  looking = new AbortController();
  const text = whole();
  let reply;
  try {
    reply = await (await ask("/notes/look", { file, stamp, text, for: readers?.value ?? "" }, { signal: looking.signal })).json();
  } catch (fault) {
    if (fault.name !== "AbortError") say(fault.message, true);
    return undefined;
  }
  if (text !== whole()) return reply;
  const effects = [setWrong.of(wrongLines(reply.problems))];
  if (reply.parts) effects.push(setParts.of(hatch(view.state, reply.parts, reply.under?.join(", "))));
  view.dispatch({ effects });
  tell(reply.problems);
  if (frame) await show(reply);
  document.body.dataset.looked = String(Number(document.body.dataset.looked ?? 0) + 1);
  return reply;
}

async function show(reply) {
  document.getElementById("unseen").hidden = reply.page !== undefined;
  frame.hidden = reply.page === undefined;
  if (reply.page === undefined) return;
  if (frame.contentWindow.location.pathname !== reply.address) {
    await new Promise((done) => {
      frame.addEventListener("load", done, { once: true });
      frame.src = reply.address;
    });
  }
  // Put into the page that stands there, so that it does not jump.
  const fresh = new DOMParser().parseFromString(reply.page, "text/html");
  const old = frame.contentDocument;
  old.documentElement.lang = fresh.documentElement.lang;
  old.body.replaceWith(old.adoptNode(fresh.body));
}
readers?.addEventListener("change", look);

const headLines = () => head.split("\n").length - 1;
function wrongLines(problems) {
  const builder = new RangeSetBuilder();
  const numbers = [...new Set(problems.map((p) => p.line - headLines()))].sort((a, b) => a - b);
  for (const number of numbers) {
    if (number >= 1 && number <= view.state.doc.lines) {
      const line = view.state.doc.line(number);
      builder.add(line.from, line.from, wrongLine);
    }
  }
  return builder.finish();
}
/** The field of the form that a line of the keys is shown in. */
function fieldOf(line) {
  const lines = head.split("\n");
  for (let i = line - 1; i > 0 && i < lines.length; i--) {
    const key = /^([a-z-]+)\s*:/.exec(lines[i]);
    if (key) return document.getElementById(`key-${key[1]}`);
  }
  return null;
}
function tell(problems) {
  const keys = document.getElementById("keys");
  for (const old of keys?.querySelectorAll(".field > .wrong") ?? []) old.remove();
  for (const field of keys?.querySelectorAll("[aria-invalid]") ?? []) field.removeAttribute("aria-invalid");
  const rest = problems.filter((p) => {
    const field = fieldOf(p.line);
    if (!field?.closest(".field")) return true;
    if (p.error) field.setAttribute("aria-invalid", "true");
    field.closest(".field").append(Object.assign(document.createElement("p"), { className: p.error ? "wrong" : "hint", textContent: `${p.what} ${p.remedy}` }));
    return false;
  });
  const wrong = document.getElementById("wrongs");
  wrong.replaceChildren(...rest.map((p) => {
    const item = document.createElement("p");
    item.className = p.error ? "wrong" : "quiet";
    if (p.line - headLines() > 0) {
      const link = document.createElement("button");
      link.type = "button";
      link.className = "plain";
      link.textContent = wrong.dataset.line.replace("{0}", p.line);
      link.addEventListener("click", () => goTo(p.line, p.column));
      item.append(link, " ");
    }
    item.append(`${p.what} ${p.remedy}`);
    return item;
  }));
}
function goTo(line, column) {
  const number = line - headLines();
  if (number < 1 || number > view.state.doc.lines) return;
  const at = view.state.doc.line(number);
  view.dispatch({ selection: { anchor: Math.min(at.to, at.from + Math.max(0, column - 1)) }, scrollIntoView: true });
  view.focus();
}

// ---- The form of the keys.

const form = async () => {
  const shown = document.getElementById("keys");
  if (!shown) return;
  const focused = document.activeElement?.id;
  const reply = await ask("/notes/form", { file, text: whole() });
  shown.innerHTML = await reply.text();
  if (focused) focusAgain(document.getElementById(focused));
};

// One change after the other, each made of the text as it then stands, even if somebody types meanwhile.
let turn = Promise.resolve();
function change(path, fields) {
  const work = async () => {
    for (;;) {
      const text = whole();
      const all = fields();
      all.set("file", file);
      all.set("text", text);
      const reply = await (await ask(path, all)).json();
      if (reply.refused) throw new Error(reply.refused);
      if (text === whole()) {
        put(reply.text);
        return;
      }
    }
  };
  turn = turn.then(work, work);
  return turn;
}
async function key(at, value, words = [], redraw = false) {
  const fields = () => {
    const all = new URLSearchParams({ at, value });
    for (const word of words) all.append("word", word);
    return all;
  };
  try {
    await change("/notes/key", fields);
    if (redraw) await form();
  } catch (fault) { say(fault.message, true); }
}
let pondering;
document.getElementById("keys")?.addEventListener("input", (event) => {
  // Checked as it is typed; what is emptied for a moment is not taken away yet.
  const field = event.target;
  clearTimeout(pondering);
  if (field.dataset.at && field.value.trim()) {
    pondering = setTimeout(() => key(field.dataset.at, field.value), 400);
  }
});
document.getElementById("keys")?.addEventListener("change", (event) => {
  clearTimeout(pondering);
  const field = event.target;
  if (field.dataset.at) key(field.dataset.at, field.value);
  const noteUnder = field.closest("[data-under-note]");
  if (noteUnder) key("under", "", [...noteUnder.querySelectorAll(":checked")].map((c) => c.value));
});
document.getElementById("keys")?.addEventListener("click", (event) => {
  const removed = event.target.closest("[data-remove]");
  if (removed) key(removed.dataset.remove.replace(/^(used\/\d+)\/amount$|\/(?:is|amount)$/, "$1"), "", [], true);
  const added = event.target.closest("[data-add]");
  if (added) {
    const line = added.closest(".adding");
    const name = line.querySelector("[data-new-name]").value.trim();
    const value = line.querySelector("[data-new-value]").value.trim();
    if (name && value) key(`${added.dataset.add}/${name}`, value, [], true);
  }
});

// ---- The buttons above the text.

const at = () => head.length + view.state.selection.main.from;
const until = () => head.length + view.state.selection.main.to;
const sent = (fields) => () => {
  const all = new URLSearchParams({ from: at(), to: until() });
  for (const [name, value] of Object.entries(fields)) {
    for (const one of [value].flat()) all.append(name, one);
  }
  return all;
};

const choose = document.getElementById("choose");
const table = document.getElementById("table");
let chosen;
const tools = {
  under() {
    const { from, to } = view.state.selection.main;
    under.querySelector(`[value="${from === to ? "paragraph" : "selection"}"]`).checked = true;
    under.querySelector('[value="selection"]').disabled = from === to;
    under.querySelector("[data-refused]").textContent = "";
    under.showModal();
    if (!agreements().length) agree();
  },
  photograph() { open("photograph"); },
  fact() { open("fact"); },
  async footnote() {
    try {
      await change("/notes/insert", sent({ what: "footnote", words: "" }));
      const end = view.state.doc.toString().replace(/\s+$/, "").length;
      view.dispatch({ selection: { anchor: Math.min(view.state.doc.length, end + 1) }, scrollIntoView: true });
      view.focus();
    } catch (fault) { say(fault.message, true); }
  },
  table() { table.showModal(); },
};
for (const button of document.querySelectorAll("[data-tool]")) {
  button.addEventListener("click", () => tools[button.dataset.tool]());
}
async function mark(what, which) {
  await change("/notes/under", sent({ what, under: which }));
  if (what === "note") await form();
  view.dispatch({ selection: { anchor: view.state.selection.main.to } });
  view.focus();
}
/** An agreement that is not recorded yet is, and is chosen. */
function agree() {
  newAgreement((word, about) => {
    const choice = Object.assign(document.createElement("label"), { className: "choice" });
    const box = Object.assign(document.createElement("input"), { type: "checkbox", name: "under", value: word, checked: true });
    const rest = Object.assign(document.createElement("span"), { className: "quiet", textContent: ` – ${about}` });
    choice.append(box, word, rest);
    document.getElementById("under-which").append(choice);
    form();
  });
}
document.getElementById("agree")?.addEventListener("click", agree);
under?.querySelector("form").addEventListener("submit", async (event) => {
  event.preventDefault();
  const off = event.submitter?.value === "off";
  const what = under.querySelector('[name="what"]:checked')?.value ?? "paragraph";
  const which = [...under.querySelectorAll('[name="under"]:checked')].map((c) => c.value);
  const refused = under.querySelector("[data-refused]");
  if (!off && !which.length) {
    under.querySelector('[name="under"]').focus();
    return;
  }
  try {
    await mark(off && what !== "note" ? "off" : what, off ? [] : which);
    under.close();
  } catch (fault) { refused.textContent = fault.message; }
});
table?.querySelector("form").addEventListener("submit", async (event) => {
  event.preventDefault();
  table.close();
  try {
    await change("/notes/insert", sent({ what: "table", rows: document.getElementById("rows").value, columns: document.getElementById("columns").value }));
    view.focus();
  } catch (fault) { say(fault.message, true); }
});

const sought = document.getElementById("sought");
const day = () => document.getElementById("key-date")?.value ?? "";
const list = () => fill(document.getElementById("choices"), `/notes/${chosen}s?q=${encodeURIComponent(sought.value)}&day=${day()}`);
let searching;
function open(kind) {
  clearTimeout(searching);
  chosen = kind;
  const title = document.getElementById("choose-title");
  title.textContent = title.dataset[kind];
  sought.value = "";
  choose.showModal();
  list();
}
sought?.addEventListener("input", () => { clearTimeout(searching); searching = setTimeout(list, 120); });
choose?.addEventListener("click", async (event) => {
  const button = event.target.closest("[data-fact], [data-photograph]");
  if (!button || !button.matches("button")) return;
  choose.close();
  try {
    await change("/notes/insert", button.dataset.fact
      ? sent({ what: "fact", fact: button.dataset.fact })
      : sent({ what: "photograph", photograph: button.dataset.photograph, caption: button.dataset.caption }));
    view.focus();
  } catch (fault) { say(fault.message, true); }
});

if (!matchMedia("(min-width: 80rem)").matches) document.querySelector(".keys")?.removeAttribute("open");
typed();
if (Number(place.dataset.line) > 0) goTo(Number(place.dataset.line), Number(place.dataset.column));
// A question led here: what it is about is chosen, and its agreement with it.
const asked = new URLSearchParams(location.search);
if (asked.get("found") && under) {
  const text = view.state.doc.toString();
  const near = view.state.selection.main.from;
  const found = asked.get("found");
  let from = text.indexOf(found, near);
  if (from < 0) from = text.toLowerCase().indexOf(found.toLowerCase(), near);
  if (from >= 0) {
    view.dispatch({ selection: { anchor: from, head: from + found.length }, scrollIntoView: true });
    for (const box of under.querySelectorAll('[name="under"]')) box.checked = asked.getAll("under").includes(box.value);
    tools.under();
  }
}
document.body.dataset.ready = "yes";
