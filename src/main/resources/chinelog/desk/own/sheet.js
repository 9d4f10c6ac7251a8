// A sheet seen large: points clicked on it, and what comes of them.
import { ask, say } from "./desk.js";

const SVG = "http://www.w3.org/2000/svg";
const board = document.getElementById("drafting");
const paper = document.getElementById("paper");
const stack = paper.querySelector(".stack");
const svg = paper.querySelector("svg");
const what = document.getElementById("what");
const { sheet, page } = board.dataset;
const W = Number(board.dataset.width);
const H = Number(board.dataset.height);
const up = Number(board.dataset.up);
const NEEDED = { along: 2, up: 2, length: 2, angle: 3 };
const forms = { scale: document.getElementById("form-scale"), fact: document.getElementById("form-fact"), offsets: document.getElementById("form-offsets") };
const filled = (text, ...parts) => text.replace(/\{(\d)\}/g, (all, i) => parts[i]);

let tool = "";
let points = [];
let cross = [W / 2, H / 2];
let crossed = false;
let zoom = 1;

function shape(name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  svg.append(element);
}

function draw() {
  svg.textContent = "";
  const px = W / stack.clientWidth;
  const mark = ([x, y], kind) => {
    for (const [dx, dy] of [[9, 0], [0, 9]]) {
      shape("line", { class: kind, x1: x - dx * px, y1: y - dy * px, x2: x + dx * px, y2: y + dy * px });
    }
  };
  if (taking) {
    const height = taking.line();
    if (height !== undefined) shape("line", { class: "guide", x1: 0, y1: height, x2: W, y2: height });
    if (taking.set[0]) shape("line", { class: "guide", x1: taking.set[0][0], y1: 0, x2: taking.set[0][0], y2: H });
    for (const point of taking.set) if (point) mark(point, "point");
  } else {
    if (points.length > 1) shape("polyline", { class: "stretch", points: points.map(p => p.join(",")).join(" ") });
    for (const point of points) mark(point, "point");
  }
  if (crossed) {
    shape("line", { class: "cross", x1: cross[0], y1: 0, x2: cross[0], y2: H });
    shape("line", { class: "cross", x1: 0, y1: cross[1], x2: W, y2: cross[1] });
  }
}

function choose(next) {
  tool = next;
  points = [];
  taking = null;
  for (const button of document.querySelectorAll("[data-tool]")) {
    button.setAttribute("aria-pressed", String(button.dataset.tool === tool));
  }
  for (const form of Object.values(forms)) form.hidden = true;
  forms.offsets.hidden = tool !== "offsets";
  what.textContent = what.dataset[tool];
  for (const id of ["pass", "back", "write"]) document.getElementById(id).hidden = true;
  draw();
  if (tool !== "offsets") paper.focus({ preventScroll: true });
}
for (const button of document.querySelectorAll("[data-tool]")) {
  button.addEventListener("click", () => choose(button.dataset.tool));
}

async function set(x, y) {
  const at = [Math.round(x * 100) / 100, Math.round(y * 100) / 100];
  if (taking) return taking.put(at);
  if (!NEEDED[tool]) return;
  if (points.length === NEEDED[tool]) points = [];
  points.push(at);
  draw();
  if (points.length < NEEDED[tool]) return;
  if (tool === "along" || tool === "up") {
    forms.scale.hidden = false;
    forms.scale.elements.truth.focus();
  } else {
    forms.fact.hidden = false;
    const all = fields({});
    try {
      document.getElementById("measured").textContent = await (await ask("/sheets/measure?" + all)).text();
    } catch (fault) {
      say(fault.message, true);
    }
    forms.fact.elements.name.focus();
  }
}

function fields(more) {
  const all = new URLSearchParams({ sheet, page, ...more });
  for (const point of points) all.append("point", point.join(","));
  return all;
}

async function send(path, all, then) {
  try {
    const words = await (await ask(path, all)).text();
    say(words);
    document.dispatchEvent(new Event("written"));
    then();
  } catch (fault) {
    say(fault.message, true);
  }
}
forms.scale.addEventListener("submit", event => {
  event.preventDefault();
  send("/sheets/scale", fields({ along: String(tool === "along"), truth: forms.scale.elements.truth.value }),
    () => location.reload());
});
forms.fact.addEventListener("submit", event => {
  event.preventDefault();
  send("/sheets/fact", fields({ name: forms.fact.elements.name.value, title: forms.fact.elements.title.value }), () => {
    forms.fact.reset();
    choose(tool);
  });
});

// The table of offsets: one point after the other.
let taking = null;
class Taking {
  constructor(waterlines, stations) {
    this.waterlines = waterlines;
    this.stations = stations;
    this.set = [];
    this.each = waterlines.length + 2;
  }
  get count() { return 1 + this.stations.length * this.each; }
  /** Of the step that comes next: its station, and the number of its point there. */
  get next() {
    const n = this.set.length - 1;
    return { station: this.stations[Math.floor(n / this.each)], point: n % this.each };
  }
  /** The height of the waterline that is clicked along, in pixels. */
  line() {
    if (!this.set.length || this.set.length >= this.count) return undefined;
    const { point } = this.next;
    return point < 2 ? undefined : this.set[0][1] - Number(this.waterlines[point - 2]) / up;
  }
  put(at) {
    if (this.set.length >= this.count) return;
    const height = this.line();
    this.set.push(at && height !== undefined ? [at[0], Math.round(height * 100) / 100] : at);
    this.tell();
  }
  back() {
    if (this.set.length) this.set.pop();
    this.tell();
  }
  tell() {
    const done = this.set.length >= this.count;
    const { station, point } = this.set.length ? this.next : {};
    what.textContent = done ? board.dataset.done
      : !this.set.length ? board.dataset.origin
        : point === 0 ? filled(board.dataset.keel, station[0])
          : point === 1 ? filled(board.dataset.sheer, station[0])
            : filled(board.dataset.waterline, station[0], this.waterlines[point - 2]);
    document.getElementById("pass").hidden = done || !this.set.length || point === 0;
    document.getElementById("back").hidden = !this.set.length;
    document.getElementById("write").hidden = !done;
    draw();
    if (done) document.getElementById("write").focus();
  }
}
document.getElementById("take").addEventListener("click", () => {
  const waterlines = document.getElementById("waterlines").value.split(/[,;\s]+/).filter(Boolean);
  const stations = document.getElementById("stations").value.split("\n").map(l => l.trim()).filter(Boolean)
    .map(l => [l.replace(/\s+\S+$/, ""), l.split(/\s+/).at(-1)]);
  const numbers = [...waterlines, ...stations.map(s => s[1])].every(n => /^\d+(\.\d+)?$/.test(n));
  if (!waterlines.length || !stations.length || !numbers) {
    say(board.dataset.wrongForm, true);
    return;
  }
  taking = new Taking(waterlines, stations);
  taking.tell();
  paper.focus({ preventScroll: true });
});
document.getElementById("pass").addEventListener("click", () => { taking.put(null); paper.focus({ preventScroll: true }); });
document.getElementById("back").addEventListener("click", () => { taking.back(); paper.focus({ preventScroll: true }); });
forms.offsets.addEventListener("submit", event => {
  event.preventDefault();
  if (!taking || taking.set.length < taking.count) return;
  const all = new URLSearchParams({ sheet, page, name: document.getElementById("table").value, origin: taking.set[0].join(",") });
  for (const waterline of taking.waterlines) all.append("waterline", waterline);
  taking.stations.forEach(([name, x], i) => {
    const own = taking.set.slice(1 + i * taking.each, 1 + (i + 1) * taking.each);
    all.append("station", [name, x, own.map(p => p ? p.join(",") : "-").join(" ")].join("|"));
  });
  send("/sheets/offsets", all, () => choose("offsets"));
});

// Clicks and taps; a finger that moves scrolls.
stack.addEventListener("click", event => {
  const box = svg.getBoundingClientRect();
  crossed = false;
  set((event.clientX - box.left) / box.width * W, (event.clientY - box.top) / box.height * H);
});
// Who comes by keys sees where a point would be set.
paper.addEventListener("focus", () => {
  // Nothing is drawn afresh under a pointer: the click would be lost with what it fell on.
  if (crossed || !paper.matches(":focus-visible")) return;
  crossed = true;
  draw();
});
const DIRECTIONS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
paper.addEventListener("keydown", event => {
  const direction = DIRECTIONS[event.key];
  if (direction) {
    event.preventDefault();
    const step = event.altKey ? 1 : (event.shiftKey ? 40 : 2) * (W / stack.clientWidth);
    crossed = true;
    cross = [Math.min(W, Math.max(0, cross[0] + direction[0] * step)), Math.min(H, Math.max(0, cross[1] + direction[1] * step))];
    draw();
    const px = stack.clientWidth / W;
    paper.scrollTo(cross[0] * px - paper.clientWidth / 2, cross[1] * px - paper.clientHeight / 2);
  } else if (event.key === "Enter" && crossed) {
    event.preventDefault();
    say(filled(board.dataset.point, (taking?.set.length ?? points.length) + 1, cross.map(Math.round).join(", ")));
    set(...cross);
  } else if (event.key === "+" || event.key === "-") {
    event.preventDefault();
    scale(event.key === "+" ? 1.5 : 1 / 1.5);
  } else if (event.key === "Backspace") {
    event.preventDefault();
    if (taking) taking.back();
    else { points.pop(); draw(); }
  }
});

function scale(by) {
  const middle = [(paper.scrollLeft + paper.clientWidth / 2) / stack.clientWidth, (paper.scrollTop + paper.clientHeight / 2) / stack.clientHeight];
  zoom = Math.min(8, Math.max(1, zoom * by));
  stack.style.width = `${zoom * 100}%`;
  paper.scrollTo(middle[0] * stack.clientWidth - paper.clientWidth / 2, middle[1] * stack.clientHeight - paper.clientHeight / 2);
  draw();
}
document.getElementById("larger").addEventListener("click", () => scale(1.5));
document.getElementById("smaller").addEventListener("click", () => scale(1 / 1.5));
new ResizeObserver(draw).observe(stack);
