import { ask, say, showAgain } from "./desk.js";
import "./questions.js";

// Today is shown afresh when a file of the log changes, unless something is being typed.
document.addEventListener("log-changed", () => {
  const typing = document.activeElement?.matches("input, textarea, select");
  if (!typing) showAgain();
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
