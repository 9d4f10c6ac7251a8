// Pictures are asked for while they are in view, a few at a time: whoever scrolls past a thousand
// of them does not wait for a thousand.
const AT_ONCE = 4;
const wanted = new Set();
let loading = 0;

function next() {
  while (loading < AT_ONCE && wanted.size) {
    const picture = wanted.values().next().value;
    wanted.delete(picture);
    loading++;
    const done = () => { loading--; next(); };
    picture.addEventListener("load", done, { once: true });
    picture.addEventListener("error", done, { once: true });
    watch.unobserve(picture);
    picture.src = picture.dataset.src;
  }
}

const watch = new IntersectionObserver(entries => {
  for (const { target, isIntersecting } of entries) {
    if (isIntersecting) wanted.add(target);
    else wanted.delete(target);
  }
  next();
}, { rootMargin: "200px" });

/** Watches all pictures within an element that have not been watched yet. */
export function watchPictures(root = document) {
  for (const picture of root.querySelectorAll("img[data-src]:not([data-watched])")) {
    picture.dataset.watched = "";
    watch.observe(picture);
  }
}
watchPictures();
