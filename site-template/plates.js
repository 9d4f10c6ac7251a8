// On the page of a plate, the arrow keys lead to its neighbours and Escape leads back to all.
document.addEventListener("keydown", (event) => {
  if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) {
    return;
  }
  const leftward = document.documentElement.dir === "rtl" ? "next" : "prev";
  const rightward = leftward === "prev" ? "next" : "prev";
  const selectors = {
    ArrowLeft: `a[rel="${leftward}"]`,
    ArrowRight: `a[rel="${rightward}"]`,
    Escape: "a.all",
  };
  const link = event.key in selectors && document.querySelector(selectors[event.key]);
  if (link) {
    event.preventDefault();
    location.assign(link.href);
  }
});
