// The tree: supply, nodes and panels as a picture, with what each carries; edited by mouse or by keyboard.

import { act, ask, complain, desk, say } from "./wire.js";
import { count, draw, make, number, plain } from "./parts.js";

export const WIDE = 196, HIGH = 76;
const RIGHT = 250, DOWN = 88, EDGE = 12;

/** Each point a row below the last of what its elders feed, so that wires never cross. */
export function lay(points) {
  const children = new Map();
  points.forEach((each) => { const above = each.under === null ? "" : each.under; children.set(above, (children.get(above) || []).concat(each)); });
  const places = new Map();
  let row = 0, depth = 0;
  const put = (point, level) => {
    depth = Math.max(depth, level);
    const own = children.get(point.id) || [], first = row;
    own.forEach((each) => put(each, level + 1));
    if (!own.length) row++;
    places.set(point.id, { x: EDGE + level * RIGHT, y: EDGE + (own.length ? (first + row - 1) / 2 : first) * DOWN });
  };
  (children.get("") || []).forEach((each) => put(each, 0));
  return { places, width: EDGE * 2 + depth * RIGHT + WIDE, height: EDGE * 2 + Math.max(1, row) * DOWN };
}

export function treeView() {
  const picture = make("div", { class: "trunk", role: "group", "aria-label": "Tree of the supply" });
  const bar = make("div", { class: "tools" }), note = make("p", { class: "note" }, "Arrows go from point to point, Enter chooses one. A point is dragged onto what is to feed it, or fed from what is chosen in the line above. The bar: the running current of its fullest line, of what it is rated for. The peak: the greatest of a phase as one command is carried out, at nominal voltage. Taken out, a panel's loads lose their places.");
  const name = make("input", { id: "point-name", autocomplete: "off" }), under = make("select", { id: "point-under" }), added = make("input", { id: "added-name", autocomplete: "off" }), rated = make("input", { id: "added-rated", type: "number", min: "1", value: "100" }), slots = make("input", { id: "added-slots", type: "number", min: "1", max: "1000", value: "42" });
  const element = make("section", { class: "tree", "aria-label": "Tree" }, make("h2", {}, "Tree"), bar, picture, note);
  let points = [], chosen = "supply", revision = 0, from = null;

  async function change(body, done) {
    if (await act("/api/tree/change", body, done)) await look(true);
  }

  async function add(isNode) {
    const id = added.value.trim();
    if (!id) { say("Give it a name first."); return; }
    const body = { id, under: chosen, node: isNode, rated_a: Number(rated.value) || 100 };
    if (!isNode) body.slots = Number(slots.value) || 42;
    if (await act("/api/tree/add", body, plain(id) + " is fed from " + plain(chosen) + ".")) { chosen = id; added.value = ""; await look(true); focus(); }
  }

  function choose(id, isFocus) {
    chosen = id;
    drawBar();
    picture.querySelectorAll(".point").forEach((each) => { const is = each.dataset.point === id; each.classList.toggle("chosen", is); each.setAttribute("tabindex", is ? "0" : "-1"); each.setAttribute("aria-pressed", String(is)); });
    if (isFocus) focus();
  }

  function focus() {
    const each = picture.querySelector("[data-point=" + CSS.escape(chosen) + "]");
    if (each) each.focus();
  }

  const button = (id, words, work) => make("button", { type: "button", id, onclick: work }, words);

  function drawBar() {
    const point = points.find((each) => each.id === chosen), isSupply = !point || point.kind === "supply";
    name.value = isSupply ? "" : chosen;
    const below = new Set([chosen]);
    for (let again = true; again;) { again = false; points.forEach((each) => { if (each.under !== null && below.has(each.under) && !below.has(each.id)) { below.add(each.id); again = true; } }); }
    under.replaceChildren(...points.filter((each) => !below.has(each.id)).map((each) => make("option", { value: each.id, selected: point && each.id === point.under }, each.id)));
    const group = (label, ...parts) => make("span", { class: "tools", role: "group", "aria-label": label }, ...parts);
    bar.replaceChildren(make("b", {}, chosen),
      isSupply ? null : group("Change it", make("label", {}, "Name ", name), button("rename", "Rename", () => { const next = name.value.trim(), was = chosen; if (!next || next === was) return; chosen = next; change({ id: was, name: next }, plain(was) + " is called " + plain(next) + " now."); }),
        make("label", {}, "Fed from ", under), button("move", "Feed it from there", () => change({ id: chosen, under: under.value }, plain(chosen) + " is fed from " + plain(under.value) + ".")), button("out", "Take it out", () => { const was = chosen; chosen = point.under || "supply"; change({ id: was, out: true }, plain(was) + " is taken out."); })),
      group("Add under it", make("label", {}, "Under it, named ", added), make("label", {}, "rated A ", rated), make("label", {}, "slots ", slots), button("add-panel", "Add a panel", () => add(false)), button("add-node", "Add a node", () => add(true))));
    [...bar.childNodes].forEach((each) => each.nodeType === 3 && each.remove());
  }

  function text(x, y, words, kind) {
    const each = draw("text", { x, y, class: kind });
    each.textContent = plain(words, 30);
    return each;
  }

  function drawTree() {
    const { places, width, height } = lay(points), svg = draw("svg", { width, height, viewBox: "0 0 " + width + " " + height });
    points.filter((each) => each.under !== null).forEach((each) => {
      const a = places.get(each.under), b = places.get(each.id), middle = (a.x + WIDE + b.x) / 2;
      svg.append(draw("path", { class: "wire", d: "M" + (a.x + WIDE) + " " + (a.y + HIGH / 2) + "H" + middle + "V" + (b.y + HIGH / 2) + "H" + b.x }));
    });
    points.forEach((each) => {
      const at = places.get(each.id), part = each.rated_a ? each.greatest_a / each.rated_a : 0;
      const words = each.kind + " " + plain(each.id) + (each.under === null ? "" : ", fed from " + plain(each.under)) + ", " + number(each.greatest_a) + " A of " + number(each.rated_a, 0) + " A, peak " + number(each.peak_a, 0) + " A" + (each.kind === "panel" ? ", " + count(each.loads, "load") : "") + (each.boards.length ? ", boards " + each.boards.map((board) => plain(board)).join(", ") : "");
      const mark = draw("g", { class: "point " + each.kind, role: "button", tabindex: "-1", "aria-label": words, data: { point: each.id }, transform: "translate(" + at.x + " " + at.y + ")" },
        draw("rect", { width: WIDE, height: HIGH, rx: 2 }), text(8, 17, each.id, "name"), text(8, 33, each.kind + " · " + number(each.line_to_neutral_v, 0) + " V" + (each.kind === "panel" ? " · " + count(each.loads, "load") : ""), "soft"),
        draw("rect", { class: "ground", x: 8, y: 42, width: 80, height: 6 }), draw("rect", { class: "fill" + (part > 1 ? " over" : ""), x: 8, y: 42, width: 80 * Math.min(1, part), height: 6 }), text(94, 49, number(each.greatest_a, 0) + " of " + number(each.rated_a, 0) + " A", "soft"), text(8, 67, "peak " + number(each.peak_a, 0) + " A" + (each.inrush_limit_a === null ? "" : ", limit " + number(each.inrush_limit_a, 0) + " A"), "soft"));
      const title = draw("title");
      title.textContent = words;
      mark.append(title);
      mark.addEventListener("click", () => choose(each.id, true));
      mark.addEventListener("focus", () => { if (chosen !== each.id) choose(each.id); });
      mark.addEventListener("pointerdown", (event) => { if (each.under !== null && event.button === 0 && event.pointerType !== "touch") from = { id: each.id, x: event.clientX, y: event.clientY, drags: false }; });
      svg.append(mark);
    });
    picture.replaceChildren(svg);
    choose(points.some((each) => each.id === chosen) ? chosen : "supply");
  }

  const over = (event) => { const there = document.elementFromPoint(event.clientX, event.clientY), point = there && there.closest("[data-point]"); return point && point.dataset.point; };
  document.addEventListener("pointermove", (event) => {
    if (!from) return;
    if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > 6) from.drags = true;
    if (from.drags) { const there = over(event); picture.querySelectorAll(".point").forEach((each) => each.classList.toggle("target", each.dataset.point === there && there !== from.id)); }
  });
  document.addEventListener("pointerup", (event) => {
    if (!from) return;
    const { id, drags } = from, there = over(event);
    from = null;
    picture.querySelectorAll(".target").forEach((each) => each.classList.remove("target"));
    if (drags && there && there !== id) { chosen = id; change({ id, under: there }, plain(id) + " is fed from " + plain(there) + "."); }
  });

  picture.addEventListener("keydown", (event) => {
    const point = points.find((each) => each.id === chosen);
    if (!point) return;
    const beside = points.filter((each) => each.under === point.under), at = beside.indexOf(point), below = points.find((each) => each.under === point.id);
    const next = { ArrowLeft: points.find((each) => each.id === point.under), ArrowRight: below, ArrowUp: beside[at - 1], ArrowDown: beside[at + 1], Home: points[0] }[event.key];
    if (next) { event.preventDefault(); choose(next.id, true); }
    if (event.key === "Enter" || event.key === " ") { event.preventDefault(); (point.kind === "supply" ? added : name).focus(); }
    if (event.key === "F2" && point.kind !== "supply") { event.preventDefault(); name.focus(); name.select(); }
    if (event.key === "Delete" && point.kind !== "supply") { event.preventDefault(); chosen = point.under || "supply"; change({ id: point.id, out: true }, plain(point.id) + " is taken out."); }
  });

  async function look(isForced) {
    if (!isForced && revision === desk.sheet.revision) return;
    revision = desk.sheet.revision;
    const isInside = picture.contains(document.activeElement);
    try { points = (await ask("/api/tree")).points; drawTree(); if (isInside) focus(); } catch (refusal) { complain(refusal); }
  }

  return { element, show: () => look(false) };
}
