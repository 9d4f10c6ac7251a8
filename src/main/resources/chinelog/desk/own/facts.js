// How a fact came about unfolds below it; the keys of a reckoning come with its name.
import "./settings.js";
import { fill } from "./desk.js";

document.getElementById("work").addEventListener("click", async (event) => {
  const button = event.target.closest("[data-unfolds]");
  if (!button) return;
  const body = button.closest("tbody");
  const open = button.getAttribute("aria-expanded") === "true";
  button.setAttribute("aria-expanded", String(!open));
  if (open) {
    body.querySelector(".how")?.remove();
    return;
  }
  const row = document.createElement("tr");
  row.className = "how";
  const cell = document.createElement("td");
  cell.colSpan = button.closest("tr").cells.length;
  cell.dataset.refill = button.dataset.unfolds;
  row.append(cell);
  body.append(row);
  await fill(cell, button.dataset.unfolds);
});

const which = document.getElementById("nk-reckon");
which.addEventListener("change", async () => {
  const parameters = document.getElementById("parameters");
  await fill(parameters, `/facts/reckoning?name=${encodeURIComponent(which.value)}`);
  which.form.dataset.order = ["reckon", ...[...parameters.querySelectorAll("[data-parameter]")].map((p) => p.name), "under"].join(",");
});

// A link to a fact shows it at once.
const named = decodeURIComponent(location.hash.slice(1));
if (named) document.getElementById(named)?.querySelector("[data-unfolds]")?.click();
