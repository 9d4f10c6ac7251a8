// The open questions, wherever they are shown: each is answered where it stands.
import { ask, fill, say } from "./desk.js";

const questions = () => document.getElementById("questions");

async function answered(path, fields) {
  try {
    const reply = await ask(path, fields);
    if (path === "/photographs/under") await fill(questions(), "/today/questions?answered=yes");
    else questions().innerHTML = await reply.text();
    questions().focus();
  } catch (fault) { say(fault.message, true); }
}
document.addEventListener("click", (event) => {
  const revealing = event.target.closest("[data-reveals]");
  if (revealing) {
    const why = document.getElementById(revealing.dataset.reveals);
    why.hidden = !why.hidden;
    revealing.setAttribute("aria-expanded", String(!why.hidden));
    if (!why.hidden) why.querySelector("input").select();
  }
  const putting = event.target.closest("[data-photo][data-under]");
  if (putting) {
    const fields = new URLSearchParams({ photo: putting.dataset.photo });
    for (const one of putting.dataset.under.split(" ")) fields.append("under", one);
    answered("/photographs/under", fields);
  }
});
document.addEventListener("submit", (event) => {
  if (!event.target.matches("[data-answer]")) return;
  event.preventDefault();
  answered("/today/may-stand", new URLSearchParams(new FormData(event.target)));
});
