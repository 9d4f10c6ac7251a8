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

// Today is shown afresh when a file of the log changes, unless something is being typed.
document.addEventListener("log-changed", () => {
  const typing = document.activeElement?.matches("input, textarea, select");
  if (!typing) location.reload();
});
