// What every page of the desk does: parts that come later, words of what was done, news of changed files.

/** Asks the desk; what is refused is thrown with the desk's own words. */
export async function ask(path, fields, options = {}) {
  const form = fields instanceof URLSearchParams ? fields : new URLSearchParams(fields ?? {});
  let reply;
  try {
    reply = await fetch(path, fields === undefined ? options : { method: "POST", body: form, ...options });
  } catch (fault) {
    if (!(fault instanceof TypeError)) throw fault;
    // Fetch, 5.6: nothing answers at all. What a browser says of that is for programmers.
    throw new Error(document.body.dataset.away);
  }
  if (!reply.ok) {
    const text = await reply.text();
    const page = new DOMParser().parseFromString(text, "text/html");
    throw new Error(page.querySelector("main")?.innerText?.trim() || text);
  }
  return reply;
}

/** Says what was done, to eyes and ears, for a while. */
let clearing;
export function say(words, lasting = false) {
  const place = document.getElementById("said");
  place.textContent = words;
  clearTimeout(clearing);
  if (!lasting) clearing = setTimeout(() => { place.textContent = ""; }, 6000);
}

/** Gives what was made anew the focus that it had, and leaves the page where it was scrolled to meanwhile. */
export const focusAgain = (element) => element?.focus({ preventScroll: true });

/** Puts a part that the desk sends into an element. */
export async function fill(element, path) {
  element.setAttribute("aria-busy", "true");
  // An answer that comes after a later one was asked for is no longer wanted.
  const turn = {};
  element.turn = turn;
  let answer;
  let fault;
  try {
    answer = await (await ask(path)).text();
  } catch (failed) {
    fault = failed;
  }
  if (element.turn !== turn) return;
  if (fault) element.textContent = fault.message;
  else element.innerHTML = answer;
  element.removeAttribute("aria-busy");
  for (const part of element.querySelectorAll("[data-from]")) fill(part, part.dataset.from);
}

for (const part of document.querySelectorAll("[data-from]")) fill(part, part.dataset.from);

// Only a page that is seen listens: browsers open few connections to one host.
let source;
function listen() {
  if (document.hidden) {
    source?.close();
    source = undefined;
  } else if (!source && document.body.dataset.live) {
    source = new EventSource(document.body.dataset.live);
    source.addEventListener("changed", () => document.dispatchEvent(new Event("log-changed")));
  }
}
document.addEventListener("visibilitychange", listen);
listen();

// A page shows itself again when the log has changed; not once another was asked for, which would then never come.
let leaving = false;
addEventListener("beforeunload", () => {
  leaving = true;
  // What was asked for may have been a file to be saved, and this page stays.
  setTimeout(() => { leaving = false; }, 30000);
});
export const showAgain = () => { if (!leaving) location.reload(); };

// Dialogs are closed by their own buttons, too.
document.addEventListener("click", (event) => {
  if (event.target.closest("[data-closes]")) event.target.closest("dialog").close();
});

// The last change of any file can be taken back, and made again.
const turns = document.getElementById("turn");
const showTurns = () => turns && fill(turns, "/turn");
document.addEventListener("log-changed", showTurns);
document.addEventListener("written", showTurns);
turns?.addEventListener("click", async (event) => {
  const button = event.target.closest("[data-turn]");
  if (!button) return;
  try {
    const reply = await (await ask(`/turn/${button.dataset.turn}`, {})).json();
    if (reply.refused !== undefined) {
      say(reply.refused, true);
    } else {
      sessionStorage.setItem("said", reply.done);
      location.reload();
    }
  } catch (fault) { say(fault.message, true); }
});

// What chosen readers get of a page stands beside what the workshop has, on every page until another choice.
const asSeen = document.getElementById("as-seen-choice");
const beside = document.getElementById("beside");
const isNote = document.body.classList.contains("note");
async function showBeside() {
  const readers = sessionStorage.getItem("as-seen");
  if (!beside || isNote) return;
  if (readers) {
    const asked = new URLSearchParams(location.search);
    asked.set("for", readers);
    await fill(beside, `/beside/${beside.dataset.here}?${asked}`);
  }
  beside.hidden = !readers || !beside.textContent.trim();
}
if (asSeen) {
  asSeen.addEventListener("change", async (event) => {
    sessionStorage.setItem("as-seen", event.target.value);
    await showBeside();
    if (!beside.hidden) beside.scrollIntoView({ block: "nearest" });
  });
  new MutationObserver(() => {
    const choice = asSeen.querySelector("select");
    if (!choice) return;
    choice.value = sessionStorage.getItem("as-seen") ?? "";
    if (choice.selectedIndex < 0) choice.value = "";
  }).observe(asSeen, { childList: true });
  document.addEventListener("log-changed", showBeside);
  document.addEventListener("written", showBeside);
  showBeside();
}
const said = sessionStorage.getItem("said");
if (said) {
  sessionStorage.removeItem("said");
  say(said);
}
