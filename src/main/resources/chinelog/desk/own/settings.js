// Values are written as soon as their field is left; what would bring an error is told at the field and not written.
import { ask, say } from "./desk.js";
import "./agreement.js";

const send = async (path, fields) => (await (await ask(path, fields)).json()).refused;

function tell(field, refused) {
  const near = field.closest(".field") ?? field.parentElement;
  near.querySelector(".wrong")?.remove();
  for (const input of near.querySelectorAll("input, select, textarea")) {
    if (refused) input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }
  if (refused) {
    const words = document.createElement("p");
    words.className = "wrong";
    words.setAttribute("role", "alert");
    words.textContent = refused;
    near.append(words);
  } else {
    document.dispatchEvent(new Event("written"));
    refill(field);
  }
}

/** Where the keys of a part stand now, and how its figure comes about; what is being typed stays. */
async function refill(field) {
  const part = field.closest("[data-refill]");
  if (!part) return;
  const fresh = new DOMParser().parseFromString(await (await ask(part.dataset.refill)).text(), "text/html");
  for (const now of fresh.querySelectorAll("[id][data-at]")) {
    const old = document.getElementById(now.id);
    if (old) old.dataset.at = now.dataset.at;
  }
  const tree = fresh.querySelector(".tree");
  if (tree) part.querySelector(".tree")?.replaceWith(tree);
}

document.addEventListener("change", async (event) => {
  const field = event.target;
  const file = field.closest("[data-file]")?.dataset.file;
  if (!file) return;
  const list = field.closest("[data-at-list]");
  const under = field.closest("[data-at-under]");
  try {
    if (under) {
      const fields = new URLSearchParams({ file, at: under.dataset.atUnder });
      for (const box of under.querySelectorAll(":checked")) fields.append("word", box.value);
      tell(field, await send("/set", fields));
    } else if (list) {
      const fields = new URLSearchParams({ file, at: list.dataset.atList, list: "yes" });
      for (const box of list.querySelectorAll(":checked")) fields.append("word", box.value);
      tell(field, await send("/set", fields));
    } else if (field.dataset.at) {
      const value = field.value.trim() || (field.dataset.empty ?? "");
      tell(field, await send("/set", { file, at: field.dataset.at, value }));
    }
  } catch (fault) { say(fault.message, true); }
});

function added(form) {
  const fields = new URLSearchParams(new FormData(form));
  fields.set("file", form.dataset.adds);
  fields.set("at", form.dataset.at ?? "");
  fields.set("order", form.dataset.order);
  fields.set("lists", form.dataset.lists ?? "");
  fields.set("item", form.dataset.item ?? "");
  return fields;
}

/** What would come of a form as it is filled in so far: what is wrong at its field, and the figures. */
async function tried(form) {
  const place = form.querySelector("[data-tried]");
  if (!place || ![...form.querySelectorAll("[required]")].every((f) => f.value.trim())) return;
  const keys = [...form.querySelectorAll("[data-parameter]")];
  if (keys.length && !keys.some((k) => k.value.trim())) return;
  const turn = {};
  form.turn = turn;
  let came;
  try {
    came = await (await ask("/set/try", added(form))).json();
  } catch (fault) { came = { wrong: { "": fault.message }, figures: [] }; }
  if (form.turn !== turn) return;
  for (const old of form.querySelectorAll(".field > .wrong")) old.remove();
  for (const input of form.querySelectorAll("[aria-invalid]")) input.removeAttribute("aria-invalid");
  const rest = [];
  for (const [key, words] of Object.entries(came.wrong)) {
    const input = key && form.elements[key];
    if (!input?.closest) {
      rest.push(words);
      continue;
    }
    input.setAttribute("aria-invalid", "true");
    const told = Object.assign(document.createElement("p"), { className: "wrong", textContent: words });
    input.closest(".field")?.append(told);
  }
  const list = document.createElement("dl");
  for (const [title, value] of came.figures) {
    const line = document.createElement("div");
    line.append(Object.assign(document.createElement("dt"), { textContent: title }), Object.assign(document.createElement("dd"), { textContent: value }));
    list.append(line);
  }
  place.replaceChildren(...rest.map((words) => Object.assign(document.createElement("p"), { className: "wrong", textContent: words })), ...(came.figures.length ? [list] : []));
}

for (const form of document.querySelectorAll("[data-adds]")) {
  let pause;
  form.addEventListener("input", () => {
    clearTimeout(pause);
    pause = setTimeout(() => tried(form), 250);
  });
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const fields = added(form);
    const refused = form.querySelector("[data-refused]");
    try {
      refused.textContent = (await send("/set/add", fields)) ?? "";
      if (!refused.textContent) location.reload();
    } catch (fault) { refused.textContent = fault.message; }
  });
}

document.addEventListener("click", async (event) => {
  const opener = event.target.closest("[data-opens]");
  if (opener && opener.dataset.opens !== "new-agreement") document.getElementById(opener.dataset.opens)?.showModal();
  const take = event.target.closest("[data-take]");
  if (take) {
    try {
      const refused = await send("/set/remove", { file: take.dataset.of, at: take.dataset.take });
      if (refused) say(refused, true);
      else location.reload();
    } catch (fault) { say(fault.message, true); }
  }
});

// A table is narrowed to what is sought.
for (const search of document.querySelectorAll("[data-narrows]")) {
  const rows = [...document.querySelectorAll(`#${search.dataset.narrows} > tr, #${search.dataset.narrows} > tbody`)];
  search.addEventListener("input", () => {
    const words = search.value.toLowerCase().split(/\s+/).filter(Boolean);
    for (const row of rows) row.hidden = !words.every((w) => row.textContent.toLowerCase().includes(w));
  });
}

// The ways out of what could be worked out: other facts withheld as well, or a release.
document.addEventListener("click", async (event) => {
  const way = event.target.closest("[data-withhold]");
  if (!way) return;
  try {
    for (const name of way.dataset.withhold.split(" ")) {
      const fields = new URLSearchParams({ file: "facts.yaml", at: `${name}/under` });
      for (const word of way.dataset.under.split(" ")) fields.append("word", word);
      const refused = await send("/set", fields);
      if (refused) {
        say(refused, true);
        return;
      }
    }
    location.reload();
  } catch (fault) { say(fault.message, true); }
});
const release = document.querySelector("[data-release]");
if (release) {
  document.getElementById("nl-name").value = release.dataset.release;
  release.showModal();
}
