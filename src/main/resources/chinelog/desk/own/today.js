// Today is shown afresh when a file of the log changes, unless something is being typed.
document.addEventListener("log-changed", () => {
  const typing = document.activeElement?.matches("input, textarea, select");
  if (!typing) location.reload();
});
