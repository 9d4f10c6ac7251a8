// Looks for words in the pages listed by search-pages.js, in the reader's own browser.
(() => {
  const MOST = 40;
  const AROUND = 90;
  const box = document.getElementById("search");
  const input = document.getElementById("words");
  const found = document.getElementById("found");
  const places = document.getElementById("places");

  const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").replace(/[‘’]/g, "'").toLowerCase();
  const parts = window.pagesToSearch.map((part) => ({
    ...part,
    plainTitle: plain(part.title),
    plainText: plain(part.text),
  }));

  /** Where a word that begins with the given letters stands, or -1. */
  const startOf = (word, text) => {
    let at = text.indexOf(word);
    while (at > 0 && /[\p{L}\p{N}]/u.test(text[at - 1])) {
      at = text.indexOf(word, at + 1);
    }
    return at;
  };

  /** Whether one slip makes one word of the other: a letter too many, too few, wrong or swapped. */
  const isOneSlipApart = (a, b) => {
    if (a.length > b.length) {
      return isOneSlipApart(b, a);
    }
    let at = 0;
    while (at < a.length && a[at] === b[at]) {
      at++;
    }
    if (a.length < b.length) {
      return b.length === a.length + 1 && a.slice(at) === b.slice(at + 1);
    }
    const swapped = a[at] === b[at + 1] && a[at + 1] === b[at] && a.slice(at + 2) === b.slice(at + 2);
    return swapped || a.slice(at + 1) === b.slice(at + 1);
  };

  const known = new Set(
    parts.flatMap((part) => `${part.plainTitle} ${part.plainText}`.match(/[\p{L}\p{N}]+/gu) || []),
  );

  /** A word as the pages have it: with another ending, or with one slip put right. */
  const spelled = (word) => {
    if (word.length < 4 || parts.some((p) => startOf(word, `${p.plainTitle} ${p.plainText}`) >= 0)) {
      return word;
    }
    const near = [...known].find((other) => isOneSlipApart(word, other));
    const shorter = word.slice(0, Math.max(4, word.length - 3));
    return near || ([...known].some((other) => other.startsWith(shorter)) ? shorter : word);
  };

  const weight = (part, words) => {
    let sum = 0;
    for (const word of words) {
      const inTitle = startOf(word, part.plainTitle) >= 0;
      const inText = startOf(word, part.plainText) >= 0;
      if (!inTitle && !inText) {
        return 0;
      }
      sum += (inTitle ? 10 : 0) + (inText ? 1 : 0);
    }
    return sum;
  };

  const excerpt = (part, word) => {
    const at = Math.max(0, startOf(word, part.plainText));
    const from = Math.max(0, at - AROUND);
    const to = Math.min(part.text.length, at + AROUND);
    return (from > 0 ? "… " : "") + part.text.slice(from, to) + (to < part.text.length ? " …" : "");
  };

  const show = () => {
    const words = plain(input.value).split(/\s+/).filter(Boolean).map(spelled);
    places.replaceChildren();
    found.textContent = "";
    if (words.length === 0) {
      return;
    }
    const hits = parts
      .map((part) => ({ part, weight: weight(part, words) }))
      .filter((hit) => hit.weight > 0)
      .sort((a, b) => b.weight - a.weight);
    const { none, one, other } = box.dataset;
    found.textContent =
      hits.length === 0 ? none : hits.length === 1 ? one : other.replace("#", hits.length);
    for (const { part } of hits.slice(0, MOST)) {
      const link = document.createElement("a");
      link.href = part.at;
      link.textContent = part.title;
      const text = document.createElement("p");
      text.textContent = excerpt(part, words[0]);
      const item = document.createElement("li");
      item.append(link, text);
      places.append(item);
    }
  };

  box.hidden = false;
  input.addEventListener("input", show);
  input.value = new URLSearchParams(location.search).get("q") || "";
  show();
  input.focus();
})();
