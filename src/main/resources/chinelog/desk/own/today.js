import { ask, say } from "./desk.js";

// An answer to a question, with its reason.
const questions = document.getElementById("questions");
questions.addEventListener("click", (event) => {
  const button = event.target.closest("[data-reveals]");
  if (!button) return;
  const why = document.getElementById(button.dataset.reveals);
  why.hidden = !why.hidden;
  button.setAttribute("aria-expanded", String(!why.hidden));
  if (!why.hidden) why.querySelector("input").focus();
});
questions.addEventListener("submit", async (event) => {
  event.preventDefault();
  try {
    const reply = await ask("/today/may-stand", new URLSearchParams(new FormData(event.target)));
    questions.innerHTML = await reply.text();
    questions.focus();
  } catch (fault) { say(fault.message, true); }
});

let leaving = false;
document.addEventListener("submit", (event) => { leaving = !event.defaultPrevented; });

// Today is shown afresh when a file of the log changes, unless something is being typed.
document.addEventListener("log-changed", () => {
  if (leaving) return;
  const typing = document.activeElement?.matches("input, textarea, select");
  if (!typing) location.reload();
});

// The clock: hours and minutes since it was started.
const clock = document.getElementById("clock");
setInterval(() => {
  for (const shown of clock.querySelectorAll("[data-since]")) {
    const minutes = Math.max(0, Math.floor((Date.now() - Number(shown.dataset.since)) / 60000));
    shown.textContent = `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
  }
}, 500);
clock.addEventListener("click", async (event) => {
  const button = event.target.closest("[data-clock]");
  if (!button) return;
  try {
    clock.innerHTML = await (await ask(button.dataset.clock, {})).text();
    clock.querySelector("button")?.focus();
  } catch (fault) { say(fault.message, true); }
});
