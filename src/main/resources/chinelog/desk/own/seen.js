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
function follow(from, to) {
  from.contentWindow?.addEventListener("scroll", () => {
    if (leading && leading !== from) return;
    leading = from;
    const a = from.contentDocument.documentElement;
    const b = to.contentDocument?.documentElement;
    if (b) b.scrollTop = a.scrollTop / Math.max(1, a.scrollHeight - a.clientHeight) * (b.scrollHeight - b.clientHeight);
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
