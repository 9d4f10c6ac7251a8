// A new note on the day that was clicked.
const dialog = document.getElementById("new-note");
if (new URLSearchParams(location.search).has("new")) {
  dialog.showModal();
  document.getElementById("new-title").focus();
}
for (const opener of document.querySelectorAll('[data-opens="new-note"]')) {
  opener.addEventListener("click", () => {
    if (opener.dataset.day) document.getElementById("new-day").value = opener.dataset.day;
    dialog.showModal();
    document.getElementById("new-title").focus();
  });
}
