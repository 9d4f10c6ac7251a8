// The sheet of contacts: choosing, giving to notes, bursts, bringing in.
import { ask, focusAgain, say } from "./desk.js";
import { watchPictures } from "./in-view.js";

const sheet = () => document.querySelector(".contact-sheet");
const chosenForm = document.getElementById("chosen");
const frames = () => [...sheet().querySelectorAll(".frame:not([hidden])")];
const boxes = () => [...sheet().querySelectorAll("input[name=photo]:checked")];
const filled = (text, ...parts) => text.replace(/\{(\d)\}/g, (all, i) => parts[i]);

function countChosen() {
  const n = boxes().length;
  const place = chosenForm.querySelector(".count");
  chosenForm.hidden = n === 0;
  place.textContent = filled(n === 1 ? place.dataset.one : place.dataset.other, n);
  for (const frame of sheet().querySelectorAll(".frame")) {
    frame.classList.toggle("picked", frame.querySelector("input").checked);
  }
}

/** Takes the sheet afresh, and leaves what has not changed where it is. */
async function refresh() {
  const page = new DOMParser().parseFromString(await (await ask(location.href)).text(), "text/html");
  const chosen = new Set(boxes().map(b => b.value));
  const order = root => [...root.querySelectorAll(".frame")].map(f => f.dataset.photo).join("\n");
  const fresh = page.querySelector(".contact-sheet");
  if (order(fresh) === order(sheet())) {
    const old = [...sheet().querySelectorAll(".frame")];
    [...fresh.querySelectorAll(".frame")].forEach((frame, i) => {
      const tags = node => [...node.querySelectorAll(".tag, .note-title")].map(t => t.textContent).join("|");
      if (tags(frame) !== tags(old[i])) {
        const focused = old[i].contains(document.activeElement);
        old[i].replaceWith(frame);
        if (focused) focusAgain(frame.querySelector("a"));
      }
    });
  } else {
    const at = document.activeElement?.closest?.(".frame")?.dataset.photo;
    sheet().replaceWith(fresh);
    if (at) focusAgain(sheet().querySelector(`[data-photo="${CSS.escape(at)}"] a`));
  }
  for (const box of sheet().querySelectorAll("input[name=photo]")) box.checked = chosen.has(box.value);
  countChosen();
  watchPictures(sheet());
  foldBursts();
}

async function change(path, photos, more = {}) {
  const fields = new URLSearchParams(more);
  for (const photo of photos) fields.append("photo", photo);
  try {
    say(await (await ask(path, fields)).text());
    document.dispatchEvent(new Event("written"));
    await refresh();
  } catch (fault) {
    say(fault.message, true);
  }
}

const changes = {
  note: photos => change("/photographs/note", photos, { note: chosenForm.elements.note.value }),
  under: photos => change("/photographs/under", photos, { under: chosenForm.elements.under.value }),
  out: photos => change("/photographs/leave-out", photos, { out: "true" }),
  back: photos => change("/photographs/leave-out", photos, { out: "false" }),
};

chosenForm.addEventListener("submit", async event => {
  event.preventDefault();
  const photos = boxes().map(b => b.value);
  await changes[event.submitter.value](photos);
  for (const box of boxes()) box.checked = false;
  countChosen();
});
document.getElementById("none").addEventListener("click", () => {
  for (const box of boxes()) box.checked = false;
  countChosen();
});
document.addEventListener("change", event => {
  if (event.target.name === "photo") countChosen();
  if (event.target.id === "only") event.target.form.submit();
});
document.addEventListener("log-changed", refresh);

// Keys on a photograph.
document.addEventListener("keydown", event => {
  const frame = event.target.closest?.(".frame");
  if (!frame || event.ctrlKey || event.metaKey || event.altKey) return;
  const all = frames();
  const at = all.indexOf(frame);
  const above = step => {
    const box = frame.getBoundingClientRect();
    return all.filter(f => {
      const other = f.getBoundingClientRect();
      return Math.abs(other.left - box.left) < box.width / 2 && (other.top - box.top) * step > 1;
    }).at(step > 0 ? 0 : -1);
  };
  const goTo = other => { other?.querySelector("a").focus(); event.preventDefault(); };
  const inBox = event.target.matches("input");
  switch (event.key) {
    case "ArrowRight": goTo(all[at + 1]); break;
    case "ArrowLeft": goTo(all[at - 1]); break;
    case "ArrowDown": goTo(above(1)); break;
    case "ArrowUp": goTo(above(-1)); break;
    case " ":
      if (!inBox && event.target.matches("a")) {
        const box = frame.querySelector("input");
        box.checked = !box.checked;
        countChosen();
        event.preventDefault();
      }
      break;
    case "n":
      frame.querySelector("input").checked = true;
      countChosen();
      chosenForm.elements.note.focus();
      event.preventDefault();
      break;
    case "x":
      changes[frame.classList.contains("out") ? "back" : "out"]([frame.dataset.photo]);
      break;
    default:
  }
});

// Dragging onto a note: the chosen ones, or the one that is dragged.
let dragged = [];
document.addEventListener("dragstart", event => {
  const frame = event.target.closest?.(".frame");
  if (!frame) return;
  const photos = boxes().map(b => b.value);
  dragged = photos.includes(frame.dataset.photo) ? photos : [frame.dataset.photo];
  event.dataTransfer.effectAllowed = "copy";
  event.dataTransfer.setData("text/plain", dragged.join("\n"));
});
const noteUnder = event => dragged.length ? event.target.closest?.("[data-note]") : null;
document.addEventListener("dragover", event => {
  const note = noteUnder(event);
  if (note) { event.preventDefault(); note.classList.add("over"); }
});
document.addEventListener("dragleave", event => event.target.closest?.("[data-note]")?.classList.remove("over"));
document.addEventListener("dragend", () => { dragged = []; });
document.addEventListener("drop", event => {
  const note = noteUnder(event);
  if (!note) return;
  event.preventDefault();
  note.classList.remove("over");
  change("/photographs/note", dragged, { note: note.dataset.note });
});

// Bursts are folded behind their sharpest photograph.
let bursts = [];
const unfolded = new Set();
function foldBursts() {
  for (const [sharpest, ...members] of bursts) {
    const find = path => sheet().querySelector(`[data-photo="${CSS.escape(path)}"]`);
    const first = find(sharpest);
    const others = members.filter(m => m !== sharpest).map(find).filter(f => f && !f.classList.contains("out"));
    if (!first || !others.length) continue;
    first.querySelector(".burst")?.remove();
    const open = unfolded.has(sharpest);
    for (const other of others) other.hidden = !open;
    const bar = document.createElement("p");
    bar.className = "burst";
    const fold = document.createElement("button");
    fold.type = "button";
    fold.setAttribute("aria-expanded", String(open));
    fold.textContent = filled(sheet().dataset.alike, others.length);
    fold.addEventListener("click", () => {
      if (open) unfolded.delete(sharpest); else unfolded.add(sharpest);
      foldBursts();
      find(sharpest).querySelector(".burst button").focus();
    });
    bar.append(fold);
    if (open) {
      const out = document.createElement("button");
      out.type = "button";
      out.textContent = sheet().dataset.rest;
      out.addEventListener("click", () => changes.out(others.map(o => o.dataset.photo)));
      bar.append(out);
    }
    first.append(bar);
  }
}
ask("/photographs/bursts").then(async reply => {
  bursts = (await reply.text()).split("\n").filter(Boolean).map(line => line.split("\t"));
  foldBursts();
});

// Bringing in.
const dialog = document.getElementById("bringing");
const status = document.getElementById("bring-status");
const go = document.getElementById("bring-go");
const previews = document.getElementById("previews");
let waiting = [];
document.getElementById("bring").addEventListener("click", () => open([]));
document.getElementById("bring-close").addEventListener("click", () => dialog.close());
for (const id of ["choose-files", "choose-folder"]) {
  document.getElementById(id).addEventListener("change", event =>
    open([...event.target.files].map(f => ({ name: f.webkitRelativePath || f.name, file: f }))));
}
const hasFiles = event => !dragged.length && event.dataTransfer?.types.includes("Files");
document.addEventListener("dragover", event => { if (hasFiles(event)) event.preventDefault(); });
document.addEventListener("drop", async event => {
  if (!hasFiles(event)) return;
  event.preventDefault();
  const entries = [...event.dataTransfer.items].map(i => i.webkitGetAsEntry?.()).filter(Boolean);
  const loose = [...event.dataTransfer.files].map(f => ({ name: f.name, file: f }));
  open(entries.length ? (await Promise.all(entries.map(e => walk(e, "")))).flat() : loose);
});
async function walk(entry, folder) {
  const name = folder + entry.name;
  if (entry.isFile) return [{ name, file: await new Promise((y, n) => entry.file(y, n)) }];
  const reader = entry.createReader();
  const all = [];
  for (let some; (some = await new Promise((y, n) => reader.readEntries(y, n))).length;) all.push(...some);
  return (await Promise.all(all.map(e => walk(e, name + "/")))).flat();
}
function open(files) {
  waiting = files.filter(f => !f.name.split("/").some(part => part.startsWith(".")));
  document.getElementById("brought").textContent = "";
  status.textContent = "";
  for (const image of previews.querySelectorAll("img")) URL.revokeObjectURL(image.src);
  previews.textContent = "";
  const pictures = waiting.filter(f => /\.(jpe?g|png|webp|gif|heic|heif)$/i.test(f.name)).slice(0, 300);
  for (const { name, file } of pictures) {
    const item = document.createElement("li");
    const label = document.createElement("label");
    const radio = Object.assign(document.createElement("input"), { type: "radio", name: "clock", value: name });
    radio.setAttribute("aria-label", filled(dialog.dataset.clock, name));
    const image = Object.assign(document.createElement("img"), { src: URL.createObjectURL(file), alt: "", loading: "lazy" });
    // A kind that browsers do not show is still there to be chosen, by its name.
    image.addEventListener("error", () => image.replaceWith(Object.assign(document.createElement("div"), { className: "unshown" })));
    label.append(radio, image, Object.assign(document.createElement("span"), { textContent: file.name }));
    item.append(label);
    previews.append(item);
  }
  const zips = waiting.some(f => /\.zip$/i.test(f.name));
  document.getElementById("in-zip").hidden = !zips;
  document.getElementById("clock-name").value = "";
  document.getElementById("clock").hidden = !pictures.length && !zips;
  const words = document.getElementById("waiting");
  words.hidden = !waiting.length;
  words.textContent = filled(dialog.dataset.many, waiting.length);
  go.hidden = !waiting.length;
  if (!dialog.open) dialog.showModal();
}
go.addEventListener("click", async () => {
  const load = crypto.randomUUID();
  go.disabled = true;
  try {
    for (const [i, { name, file }] of waiting.entries()) {
      status.textContent = filled(dialog.dataset.sending, i + 1, waiting.length);
      await ask(`/photographs/load?load=${load}&name=${encodeURIComponent(name)}`, {},
        { body: file, headers: { "Content-Type": "application/octet-stream" } });
    }
    status.textContent = dialog.dataset.working;
    const clock = document.getElementById("clock-name").value.trim() || (previews.querySelector("input:checked")?.value ?? "");
    const shows = document.getElementById("shows").value;
    const reply = await ask("/photographs/bring", { load, clock: shows ? clock : "", shows });
    document.getElementById("brought").innerHTML = await reply.text();
    status.textContent = "";
    waiting = [];
    go.hidden = true;
    document.getElementById("clock").hidden = true;
    document.getElementById("waiting").hidden = true;
    await refresh();
  } catch (fault) {
    status.textContent = fault.message;
  }
  go.disabled = false;
});
