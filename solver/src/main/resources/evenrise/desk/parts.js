// Small parts of a page, made of texts alone: no name of a project is ever read as markup.

const HIDDEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/gu;

/** A text in one line of visible characters. */
export function plain(text, longest = 80) {
  const shown = String(text).replace(HIDDEN, "?");
  return shown.length > longest ? shown.slice(0, longest - 1) + "…" : shown;
}

/** An id where there is little room: ids of one house often begin alike, so what is cut is the middle. */
export function shortened(id, longest) {
  const shown = plain(id, 200);
  return shown.length > longest ? shown.slice(0, longest - 7) + "…" + shown.slice(-6) : shown;
}

/** An element with attributes, listeners (on…) and children, texts or elements. */
export function make(name, given = {}, ...children) {
  const element = document.createElement(name);
  set(element, given);
  for (const child of children.flat()) {
    if (child !== null && child !== undefined) element.append(child instanceof Node ? child : plain(child, 2000));
  }
  return element;
}

function set(element, given) {
  for (const [key, value] of Object.entries(given)) {
    if (value === undefined || value === null || value === false) continue;
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (key === "data") Object.assign(element.dataset, value);
    else element.setAttribute(key, value === true ? "" : value);
  }
}

/** The same for drawings. */
export function draw(name, given = {}, ...children) {
  const element = document.createElementNS("http://www.w3.org/2000/svg", name);
  set(element, given);
  element.append(...children);
  return element;
}

export const by = (id) => document.getElementById(id);

export function number(value, digits = 1) {
  return value === null || value === undefined ? "–" : value.toFixed(digits);
}

/** With its sign: what a change costs or saves. */
export function signed(value, digits = 1) {
  const text = Math.abs(value).toFixed(digits);
  return Number(text) === 0 ? "±0" : (value > 0 ? "+" : "−") + text;
}

export function count(many, noun) {
  return many + " " + noun + (many === 1 ? "" : "s");
}

/** The size of a file. */
export const bytes = (many) => many < 1024 ? many + " B" : many < 1048576 ? (many / 1024).toFixed(0) + " kB" : (many / 1048576).toFixed(1) + " MB";
