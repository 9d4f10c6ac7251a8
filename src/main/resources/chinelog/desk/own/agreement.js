// A new agreement, written down on whatever page it is needed; the page is told its word.
import { ask } from "./desk.js";

const dialog = document.getElementById("new-agreement");
const form = dialog?.querySelector("form");
const refused = form?.querySelector("[data-refused]");
let agreed = () => location.reload();

/** Asks for one; what is then done with its word may be said, else the page is shown afresh. */
export function newAgreement(then) {
  if (then) agreed = then;
  dialog.showModal();
}
form?.addEventListener("submit", async (event) => {
  event.preventDefault();
  const fields = new URLSearchParams(new FormData(form));
  for (const [name, value] of Object.entries({ file: "log.yaml", at: "agreements", order: "with,covers,from,until,presence" })) fields.set(name, value);
  try {
    refused.textContent = (await (await ask("/set/add", fields)).json()).refused ?? "";
    if (refused.textContent) return;
    const word = fields.get("key").trim();
    dialog.close();
    form.reset();
    agreed(word, `${fields.get("with")}: ${fields.get("covers")}`);
  } catch (fault) { refused.textContent = fault.message; }
});
form?.elements.key.addEventListener("change", ({ target }) => { target.value = target.value.trim().toLowerCase().replace(/\s+/g, "-"); });
document.addEventListener("click", (event) => {
  if (event.target.closest('[data-opens="new-agreement"]')) newAgreement();
});
if (dialog && new URLSearchParams(location.search).has("new")) newAgreement();
