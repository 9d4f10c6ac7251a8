// Captions and alternative texts in a row: Enter keeps one and goes to the next of its kind.
import { ask, say } from "./desk.js";
import "./in-view.js";

async function keep(field) {
  if (field.value === field.defaultValue) return;
  const photo = field.closest("[data-photo]").dataset.photo;
  try {
    say(await (await ask("/photographs/words", { photo, key: field.dataset.key, text: field.value })).text());
    document.dispatchEvent(new Event("written"));
    field.defaultValue = field.value;
    field.removeAttribute("aria-invalid");
  } catch (fault) {
    field.setAttribute("aria-invalid", "true");
    say(fault.message, true);
  }
}
document.addEventListener("change", event => {
  if (event.target.matches("textarea[data-key]")) keep(event.target);
});
document.addEventListener("keydown", event => {
  const field = event.target;
  if (event.key !== "Enter" || !field.matches("textarea[data-key]")) return;
  event.preventDefault();
  const all = [...document.querySelectorAll(`textarea[data-key="${field.dataset.key}"]`)];
  const next = all[all.indexOf(field) + (event.shiftKey ? -1 : 1)];
  if (next) {
    next.focus();
    next.closest("li").scrollIntoView({ block: "center" });
  } else {
    field.blur();
  }
});
