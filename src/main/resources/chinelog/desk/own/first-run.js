// A place that was found is chosen by a click; the folder is called like what is built.
const places = document.getElementById("places");
new MutationObserver(() => {
  for (const part of places.querySelectorAll("[data-part]")) {
    document.getElementById(`found-${part.dataset.part}`).replaceChildren(...part.childNodes);
  }
}).observe(places, { childList: true });

document.addEventListener("click", (event) => {
  const puts = event.target.closest("[data-puts]");
  if (!puts) return;
  document.getElementById("photographs").value = puts.dataset.puts;
  for (const other of document.querySelectorAll("[data-puts]")) other.setAttribute("aria-pressed", String(other === puts));
});

const subject = document.getElementById("subject");
const folder = document.getElementById("folder");
let own = folder.value !== folder.dataset.suggested;
folder.addEventListener("input", () => { own = true; });
subject.addEventListener("input", () => {
  const name = subject.value.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");
  if (!own) folder.value = name ? folder.dataset.suggested.replace(/[^\/\\]+$/, name) : folder.dataset.suggested;
});
