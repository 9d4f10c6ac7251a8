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

// A swipe with one finger across the picture does the same, unless the picture is enlarged.
let from = null;
document.addEventListener("touchstart", (event) => {
  from = event.touches.length === 1 && visualViewport.scale === 1 ? event.touches[0] : null;
}, { passive: true });
document.addEventListener("touchend", (event) => {
  const to = event.changedTouches[0];
  if (!from || Math.abs(to.clientX - from.clientX) < 60 || Math.abs(to.clientY - from.clientY) > 40) {
    return;
  }
  const forward = (to.clientX < from.clientX) !== (document.documentElement.dir === "rtl");
  const link = document.querySelector(`a[rel="${forward ? "next" : "prev"}"]`);
  if (link) {
    location.assign(link.href);
  }
}, { passive: true });
