import "./settings.js";

// Both sides show the same page and scroll together.
const choosing = document.querySelector(".choosing");
choosing.addEventListener("change", () => choosing.submit());
const whole = document.getElementById("whole");
const theirs = document.getElementById("theirs");
const nothing = document.getElementById("nothing");

function shown() {
  const missing = !theirs.contentDocument?.querySelector("main");
  theirs.hidden = missing;
  nothing.hidden = !missing;
}
let leading;
// The same entry or heading stands at the same height on both sides, wherever one is longer.
const MARKS = "article[id], section[id], tr[id], h2, h3";
const named = (e) => e.id || e.textContent.trim();
function follow(from, to) {
  from.contentWindow?.addEventListener("scroll", () => {
    const other = to.contentDocument;
    if (!other || (leading && leading !== from)) return;
    leading = from;
    const above = [...from.contentDocument.querySelectorAll(MARKS)].filter((e) => e.getBoundingClientRect().top <= 40).reverse();
    const there = [...other.querySelectorAll(MARKS)];
    for (const mark of above) {
      const same = there.find((e) => named(e) === named(mark));
      if (same) {
        to.contentWindow.scrollBy({ top: same.getBoundingClientRect().top - mark.getBoundingClientRect().top, behavior: "instant" });
        break;
      }
    }
    if (!above.length) to.contentWindow.scrollTo({ top: 0, behavior: "instant" });
    clearTimeout(follow.pause);
    follow.pause = setTimeout(() => { leading = undefined; }, 150);
  });
}
function walked(from, to) {
  // A link followed on one side is followed on the other.
  const page = from.contentWindow.location.pathname.replace(/^\/as\/[^/]+\//, "");
  const there = to.contentWindow.location.pathname.replace(/^\/as\/[^/]+\//, "");
  if (page && there !== page && to.contentDocument?.querySelector("main")) {
    to.src = to.contentWindow.location.pathname.replace(/^(\/as\/[^/]+\/).*/, `$1${page}`);
  }
}
for (const [one, other] of [[whole, theirs], [theirs, whole]]) {
  one?.addEventListener("load", () => {
    shown();
    follow(one, other);
    if (one === whole) walked(one, other);
  });
}
