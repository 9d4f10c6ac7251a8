// Values are written as soon as their field is left; what would bring an error is told at the field and not written.
import { ask, say } from "./desk.js";

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
  }
}

document.addEventListener("change", async (event) => {
  const field = event.target;
  const file = field.closest("[data-file]")?.dataset.file;
  if (!file) return;
  const list = field.closest("[data-at-list]");
  try {
    if (list) {
      const fields = new URLSearchParams({ file, at: list.dataset.atList, list: "yes" });
      for (const box of list.querySelectorAll(":checked")) fields.append("word", box.value);
      tell(field, await send("/set", fields));
    } else if (field.dataset.at) {
      const value = field.value.trim() || (field.dataset.empty ?? "");
      tell(field, await send("/set", { file, at: field.dataset.at, value }));
    }
  } catch (fault) { say(fault.message, true); }
});

for (const form of document.querySelectorAll("[data-adds]")) {
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const fields = new URLSearchParams(new FormData(form));
    fields.set("file", form.dataset.adds);
    fields.set("at", form.dataset.at ?? "");
    fields.set("order", form.dataset.order);
    fields.set("lists", form.dataset.lists ?? "");
    fields.set("item", form.dataset.item ?? "");
    const refused = form.querySelector("[data-refused]");
    try {
      refused.textContent = (await send("/set/add", fields)) ?? "";
      if (!refused.textContent) location.reload();
    } catch (fault) { refused.textContent = fault.message; }
  });
}

document.addEventListener("click", async (event) => {
  const opener = event.target.closest("[data-opens]");
  if (opener) document.getElementById(opener.dataset.opens)?.showModal();
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
