// One photograph: regions drawn on it, and exactly what will be filled.
import { ask, focusAgain, say } from "./desk.js";
import "./agreement.js";

const SVG = "http://www.w3.org/2000/svg";
const picture = document.getElementById("picture");
const svg = picture.querySelector("svg");
const { photo, sha256 } = picture.dataset;
const W = Number(picture.dataset.width);
const H = Number(picture.dataset.height);
const LEAST = 0.005;
const list = document.getElementById("regions");
const agreement = document.getElementById("agreement");
const filled = (text, ...parts) => text.replace(/\{(\d)\}/g, (all, i) => parts[i]);
const told = words => { say(words); document.dispatchEvent(new Event("written")); };
const clamp = x => Math.min(1, Math.max(0, x));

// Each knows which of the kept ones it is, and whether it was altered since.
let regions = picture.dataset.regions.split("|").filter(Boolean).map((text, i) => {
  const [box, under] = text.split(" ");
  return { box: box.split(",").map(Number), under, origin: i, touched: false };
});
let chosen = -1;
let grey = [];

const sent = region => [region.box.map(x => x.toFixed(6)).join(","), region.under,
  region.origin < 0 ? "-" : (region.touched ? "" : "=") + region.origin].join(" ");
const fields = () => {
  const all = new URLSearchParams({ photo, sha256 });
  for (const region of regions) all.append("region", sent(region));
  return all;
};

function shape(name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
}

function draw() {
  const focused = svg.contains(document.activeElement);
  svg.textContent = "";
  for (const [l, t, r, b] of grey) {
    svg.append(shape("rect", { class: "grey", x: l, y: t, width: r - l, height: b - t }));
  }
  regions.forEach((region, i) => {
    const [l, t, r, b] = region.box;
    const rect = shape("rect", {
      class: "drawn" + (i === chosen ? " chosen" : ""), "data-region": i, tabindex: 0, role: "button",
      "aria-label": filled(picture.dataset.title, i + 1, region.under),
      x: l * W, y: t * H, width: (r - l) * W, height: (b - t) * H,
    });
    svg.append(rect);
  });
  if (chosen >= 0) {
    const [l, t, r, b] = regions[chosen].box;
    const size = 14 * W / svg.getBoundingClientRect().width;
    const ratio = (H / svg.getBoundingClientRect().height) / (W / svg.getBoundingClientRect().width);
    [[l, t, "0 1"], [r, t, "2 1"], [l, b, "0 3"], [r, b, "2 3"]].forEach(([x, y, sides]) =>
      svg.append(shape("rect", {
        class: "corner", "data-sides": sides, x: x * W - size / 2, y: y * H - size * ratio / 2, width: size, height: size * ratio,
      })));
    if (focused) focusAgain(svg.querySelector(".chosen"));
  }
}

// The grey is asked for again as soon as the last answer has come.
let asking = false;
let again = false;
async function askGrey() {
  if (asking) { again = true; return; }
  asking = true;
  do {
    again = false;
    try {
      grey = regions.length ? await (await ask("/photographs/filled?" + fields())).json() : [];
      draw();
    } catch (fault) {
      say(fault.message, true);
    }
  } while (again);
  asking = false;
}

let keeping = Promise.resolve();
function keep() {
  keeping = keeping.then(async () => {
    const before = regions.map(r => ({ region: r, box: r.box.join(), under: r.under }));
    try {
      told(await (await ask("/photographs/regions", fields())).text());
      before.forEach(({ region, box, under }, i) => {
        region.origin = i;
        region.touched = region.box.join() !== box || region.under !== under;
      });
      // Those taken away meanwhile count on among the kept ones until the next time.
    } catch (fault) {
      say(fault.message, true);
    }
  });
  return keeping;
}

function changed(kept = true) {
  if (chosen >= 0) regions[chosen].touched = true;
  draw();
  tell();
  askGrey();
  if (kept) keep();
}

function choose(i) {
  chosen = i;
  draw();
}

function add(box) {
  regions.push({ box, under: agreement.value, origin: -1, touched: true });
  chosen = regions.length - 1;
}

function remove(i) {
  regions.splice(i, 1);
  chosen = -1;
  changed();
}

/** The regions as a list, for keys and ears and exact numbers. */
function tell() {
  if (!list) return;
  const typing = list.contains(document.activeElement) ? document.activeElement.id : "";
  list.textContent = "";
  regions.forEach((region, i) => {
    const item = document.createElement("li");
    const row = document.createElement("div");
    row.className = "row";
    ["left", "top", "right", "bottom"].forEach((side, k) => {
      const label = document.createElement("label");
      label.textContent = list.dataset[side];
      const input = Object.assign(document.createElement("input"),
        { type: "number", min: 0, max: 100, step: 0.1, id: `side-${i}-${k}`, value: +(region.box[k] * 100).toFixed(2) });
      input.addEventListener("change", () => {
        const box = [...region.box];
        box[k] = clamp(Number(input.value) / 100);
        if (box[0] + LEAST / 5 < box[2] && box[1] + LEAST / 5 < box[3]) region.box = box;
        region.touched = true;
        changed();
      });
      label.append(input, " %");
      row.append(label);
    });
    const foot = document.createElement("div");
    foot.className = "row";
    const under = agreement.cloneNode(true);
    under.id = `under-${i}`;
    under.setAttribute("aria-label", list.dataset.under);
    if (![...under.options].some(o => o.value === region.under)) under.add(new Option(region.under));
    under.value = region.under;
    under.addEventListener("change", () => { region.under = under.value; region.touched = true; changed(); });
    const away = Object.assign(document.createElement("button"), { type: "button", className: "plain", textContent: filled(list.dataset.remove, i + 1) });
    away.addEventListener("click", () => remove(i));
    foot.append(under, away);
    item.append(row, foot);
    list.append(item);
  });
  if (typing) focusAgain(document.getElementById(typing));
}

// Pointers: a new region on the picture, a region moved by its middle, stretched by its corners.
if (agreement) {
  let held = null;
  const at = event => {
    const box = svg.getBoundingClientRect();
    return [clamp((event.clientX - box.left) / box.width), clamp((event.clientY - box.top) / box.height)];
  };
  const drawByTouch = document.getElementById("draw");
  drawByTouch.addEventListener("click", () => {
    const on = drawByTouch.getAttribute("aria-pressed") !== "true";
    drawByTouch.setAttribute("aria-pressed", String(on));
    picture.classList.toggle("by-touch", on);
  });
  svg.addEventListener("pointerdown", event => {
    if (event.button !== 0 || (event.pointerType === "touch" && !picture.classList.contains("by-touch"))) return;
    event.preventDefault();
    const [x, y] = at(event);
    const corner = event.target.dataset.sides;
    const region = event.target.dataset.region;
    if (corner) {
      const [across, up] = corner.split(" ").map(Number);
      held = { kind: "stretch", across, up };
    } else if (region !== undefined && !event.shiftKey) {
      chosen = Number(region);
      held = { kind: "move", x, y, box: [...regions[chosen].box] };
    } else {
      held = { kind: "new", x, y };
    }
    svg.setPointerCapture(event.pointerId);
    picture.classList.add("placing");
    draw();
  });
  svg.addEventListener("pointermove", event => {
    if (!held) return;
    const [x, y] = at(event);
    if (held.kind === "new") {
      const box = [Math.min(x, held.x), Math.min(y, held.y), Math.max(x, held.x), Math.max(y, held.y)];
      if (box[2] - box[0] < LEAST || box[3] - box[1] < LEAST) return;
      add(box);
      held = { kind: "stretch", across: x > held.x ? 2 : 0, up: y > held.y ? 3 : 1 };
    } else if (held.kind === "stretch") {
      const box = regions[chosen].box;
      box[held.across] = held.across ? Math.max(x, box[0] + LEAST) : Math.min(x, box[2] - LEAST);
      box[held.up] = held.up === 3 ? Math.max(y, box[1] + LEAST) : Math.min(y, box[3] - LEAST);
    } else {
      regions[chosen].box = moved(held.box, x - held.x, y - held.y);
      held.moved = true;
    }
    changed(false);
  });
  const release = () => {
    const was = held;
    held = null;
    picture.classList.remove("placing");
    if (!was || was.kind === "new" || (was.kind === "move" && !was.moved)) {
      svg.querySelector(".chosen")?.focus();
      return;
    }
    changed();
    svg.querySelector(".chosen")?.focus();
  };
  svg.addEventListener("pointerup", release);
  svg.addEventListener("pointercancel", release);

  document.getElementById("new").addEventListener("click", () => {
    add([0.4, 0.4, 0.6, 0.6]);
    changed();
    svg.querySelector(".chosen").focus();
  });

  svg.addEventListener("focusin", event => {
    const i = event.target.dataset.region;
    if (i !== undefined && Number(i) !== chosen) choose(Number(i));
  });
  const DIRECTIONS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
  let pause;
  svg.addEventListener("keydown", event => {
    const i = event.target.dataset.region;
    if (i === undefined) return;
    const direction = DIRECTIONS[event.key];
    if (direction) {
      event.preventDefault();
      const step = event.altKey ? 0.001 : 0.01;
      const [dx, dy] = direction.map(d => d * step);
      const box = regions[i].box;
      regions[i].box = event.shiftKey
        ? [box[0], box[1], clamp(Math.max(box[2] + dx, box[0] + LEAST)), clamp(Math.max(box[3] + dy, box[1] + LEAST))]
        : moved(box, dx, dy);
      changed(false);
      clearTimeout(pause);
      pause = setTimeout(keep, 400);
    } else if (event.key === "Delete" || event.key === "Backspace") {
      event.preventDefault();
      remove(Number(i));
    } else if (event.key === "m") {
      toBurst();
    }
  });
}

function moved([l, t, r, b], dx, dy) {
  const x = Math.min(Math.max(dx, -l), 1 - r);
  const y = Math.min(Math.max(dy, -t), 1 - b);
  return [l + x, t + y, r + x, b + y];
}

async function same(photos) {
  await keeping;
  const all = new URLSearchParams({ photo });
  for (const other of photos) all.append("to", other);
  try {
    told(await (await ask("/photographs/same", all)).text());
  } catch (fault) {
    say(fault.message, true);
  }
}

/** All regions put on the other photographs of the burst. */
async function toBurst() {
  const lines = (await (await ask("/photographs/bursts")).text()).split("\n").map(l => l.split("\t"));
  const burst = lines.find(l => l.includes(photo)) ?? [];
  await same([...new Set(burst)].filter(p => p !== photo));
}

document.addEventListener("click", event => {
  if (event.target.id === "same") {
    same([...document.querySelectorAll("#alike input:checked")].map(box => box.value));
  }
});
document.getElementById("pin")?.addEventListener("click", async event => {
  await keep();
  event.target.closest(".notice").remove();
});

async function change(path, more) {
  try {
    told(await (await ask(path, new URLSearchParams({ photo, ...more }))).text());
  } catch (fault) {
    say(fault.message, true);
  }
}
for (const field of document.querySelectorAll("textarea[data-key]")) {
  field.addEventListener("change", () => change("/photographs/words", { key: field.dataset.key, text: field.value }));
}
document.getElementById("leave-out").addEventListener("change", event =>
  change("/photographs/leave-out", { out: String(event.target.checked) }));
for (const box of document.querySelectorAll("input[name=under]")) {
  box.addEventListener("change", async () => {
    const all = new URLSearchParams({ photo });
    for (const on of document.querySelectorAll("input[name=under]:checked")) all.append("under", on.value);
    try {
      told(await (await ask("/photographs/under", all)).text());
    } catch (fault) {
      say(fault.message, true);
    }
  });
}
tell();
askGrey();
new ResizeObserver(draw).observe(svg);
