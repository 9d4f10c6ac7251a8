// Pictures are asked for when they come into view, and no longer when they have left it: whoever
// scrolls past a thousand of them does not wait for a thousand.
const watch = new IntersectionObserver(entries => {
  for (const { target, isIntersecting } of entries) {
    if (isIntersecting) target.src = target.dataset.src;
    else if (!target.complete) target.removeAttribute("src");
  }
}, { rootMargin: "300px" });

/** Watches all pictures within an element that have not been watched yet. */
export function watchPictures(root = document) {
  for (const picture of root.querySelectorAll("img[data-src]:not([data-watched])")) {
    picture.dataset.watched = "";
    watch.observe(picture);
  }
}
watchPictures();
