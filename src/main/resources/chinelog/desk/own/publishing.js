// One button: what is being done is told as it is done, and then what came of it.
import { ask, fill } from "./desk.js";
import "./questions.js";

const form = document.getElementById("publish");
const step = document.getElementById("step");
const go = document.getElementById("go");
const outcome = document.getElementById("outcome");

/** What stands, shown afresh beside what is ticked. */
async function showStanding() {
  const page = new DOMParser().parseFromString(await (await ask("/publishing")).text(), "text/html");
  for (const fresh of page.querySelectorAll(".edition")) {
    const box = form.querySelector(`[name="for"][value="${CSS.escape(fresh.querySelector("[name=for]").value)}"]`);
    fresh.querySelector("[name=for]").checked = box?.checked ?? true;
    box?.closest(".edition").replaceWith(fresh);
  }
  for (const part of form.querySelectorAll("[data-from]")) fill(part, part.dataset.from);
}
function follow() {
  go.disabled = true;
  step.textContent = step.dataset.waiting;
  const source = new EventSource("/publishing/progress");
  source.addEventListener("step", (event) => { step.textContent = `${event.data} …`; });
  source.addEventListener("done", async () => {
    source.close();
    go.disabled = false;
    step.textContent = "";
    await fill(outcome, "/publishing/outcome");
    outcome.focus();
    await showStanding();
  });
}
form.addEventListener("submit", async (event) => {
  event.preventDefault();
  outcome.replaceChildren();
  try {
    await ask("/publishing/start", new URLSearchParams(new FormData(form)));
    follow();
  } catch (fault) { step.textContent = fault.message; }
});
if (step.dataset.running === "true") follow();
