// What was drawn, looked at: sheets as they will be printed, pages for browsers, tables and drawings, changes.

import { ask, complain } from "./wire.js";
import { count, make, plain } from "./parts.js";

const SMALL = 200, LARGE = 1400;

// Sheets as they will be printed: small ones by section, one of them large.
export function sheets() {
  const paper = make("select", { id: "paper", onchange: () => paint() }), wall = make("div", { class: "wall" }), large = make("img", { class: "large", id: "large", width: LARGE, alt: "" });
  const place = make("span", { id: "place", role: "status" }), back = make("button", { type: "button", id: "page-back", onclick: () => step(-1) }, "Before"), next = make("button", { type: "button", id: "page-next", onclick: () => step(1) }, "Next");
  const none = make("p", { class: "note" }, "No sheets to print are among the files.");
  const reader = make("div", { class: "reader" }, make("div", { class: "tools" }, make("label", {}, "File ", paper), back, place, next), make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "The sheet, left and right for others", onkeydown: (event) => { const way = { ArrowRight: 1, ArrowLeft: -1, PageDown: 1, PageUp: -1 }[event.key]; if (way) { event.preventDefault(); step(way); } } }, large));
  let drawn = null, pages = [], at = 0;
  const source = (i, isSmall) => "/drawn/" + drawn.drawn + "/" + paper.value + "/" + i + (isSmall ? "-small" : "") + ".png";
  const words = (i) => (pages[i].sheet ? "Sheet " + pages[i].sheet + ", " : "") + pages[i].title;
  function step(way) { open(Math.max(0, Math.min(pages.length - 1, at + way))); }
  function open(i) {
    at = i;
    large.height = Math.round(LARGE / pages[i].shape);
    large.src = source(i, false);
    large.alt = words(i) + ", as a picture. The page for browsers and the tables say the same as texts.";
    place.textContent = words(i) + " · page " + (i + 1) + " of " + pages.length;
    back.disabled = i === 0;
    next.disabled = i === pages.length - 1;
    wall.querySelectorAll("button").forEach((each, k) => k === i ? each.setAttribute("aria-current", "true") : each.removeAttribute("aria-current"));
  }
  function paint() {
    pages = drawn.papers.find((each) => each.file === paper.value).pages;
    wall.replaceChildren(...pages.map((each, i) => make("button", { type: "button", class: "leaf", onclick: () => open(i) }, make("img", { src: source(i, true), loading: "lazy", width: SMALL, height: Math.round(SMALL / each.shape), alt: "" }), make("span", {}, each.sheet ? each.sheet + " " + each.title : each.title + ", " + (i + 1)))));
    open(Math.min(at, pages.length - 1));
  }
  const element = make("div", { class: "sheets" });
  return { name: "sheets", label: "Sheets", element, show(next) {
    if (drawn && drawn.drawn === next.drawn) return;
    drawn = next;
    element.replaceChildren(...drawn.papers.length ? [wall, reader] : [none]);
    if (!drawn.papers.length) return;
    const was = paper.value;
    paper.replaceChildren(...drawn.papers.map((each) => make("option", { value: each.file }, each.file)));
    paper.value = drawn.papers.some((each) => each.file === was) ? was : drawn.usual_paper;
    paint();
  } };
}

// Pages for browsers, in a frame that has no rights here.
export function pages() {
  const choice = make("select", { id: "framed-page", onchange: () => frame() }), out = make("div"), note = make("p", { class: "note" });
  const element = make("div", { class: "framed" }, make("div", { class: "tools" }, make("label", {}, "Page ", choice)), note, out);
  let shown = 0;
  function frame() {
    note.textContent = !choice.value ? "No page for browsers is among the files." : choice.value === "readings.html" ? "The commissioning sheet for a phone or tablet at the panel. In this frame it keeps nothing; opened as a file it keeps each reading at once." : "What is tried in this frame stays in it.";
    out.replaceChildren(...choice.value ? [make("iframe", { src: "/drawn/" + shown + "/" + choice.value, title: choice.value, sandbox: "allow-scripts", onload: (event) => { event.target.dataset.loaded = "true"; } })] : []);
  }
  return { name: "page", label: "Pages for browsers", element, show(drawn) {
    if (shown === drawn.drawn) return;
    shown = drawn.drawn;
    const was = choice.value, names = drawn.files.map((each) => each.name).filter((each) => each.endsWith(".html"));
    choice.replaceChildren(...names.map((each) => make("option", { value: each, selected: each === was }, each)));
    frame();
  } };
}

// Tables of workbook and tables of values, and drawings for other programs, read back from the files.
export function tables() {
  const file = make("select", { id: "table-file", onchange: () => look() }), sheet = make("select", { id: "table-sheet", onchange: () => paint() }), out = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "The table" });
  const element = make("div", { class: "tabled" }, make("div", { class: "tools" }, make("label", {}, "File ", file), make("label", {}, "Sheet ", sheet)), out);
  let drawn = null, told = [];
  async function look() {
    out.replaceChildren();
    if (file.value.endsWith(".dxf")) { told = []; sheet.replaceChildren(); out.append(make("img", { class: "large", src: "/drawn/" + drawn.drawn + "/" + file.value + ".svg", alt: "The drawing " + file.value + ", its sheets beside each other, as a picture. The tables have all that it shows." }), make("p", { class: "note" }, "Drawn from the file's own lines and texts.")); return; }
    try {
      told = (await ask("/api/documents/tables", { drawn: drawn.drawn, file: file.value })).sheets;
      sheet.replaceChildren(...told.map((each, i) => make("option", { value: i }, each.name || "all of it")));
      paint();
    } catch (refusal) { complain(refusal); }
  }
  function paint() {
    const it = told[Number(sheet.value)];
    if (!it) return;
    const wide = Math.max(0, ...it.rows.map((row) => row.length)), cells = (row) => Array.from({ length: wide }, (any, i) => make("td", { class: /^[-−+]?[0-9.,]+$/.test(row[i] || "") ? "n" : "" }, row[i] || ""));
    out.replaceChildren(make("table", {}, make("caption", { class: "note" }, count(it.all, "row") + (it.all > it.rows.length ? ", of which the first " + it.rows.length + " are shown" : "") + ". '=' is what a spreadsheet computes when it opens the file. Cautions below the table are left out here."), make("tbody", {}, ...it.rows.map((row) => make("tr", {}, ...cells(row))))));
  }
  return { name: "tables", label: "Tables and drawings", element, show(next) {
    if (drawn && drawn.drawn === next.drawn) return;
    drawn = next;
    const was = file.value, names = drawn.files.map((each) => each.name).filter((each) => /\.(csv|xlsx|dxf)$/.test(each));
    file.replaceChildren(...names.map((each) => make("option", { value: each }, each)));
    if (names.includes(was)) file.value = was;
    if (names.length) look(); else out.replaceChildren(make("p", { class: "note" }, "No tables are among the files."));
  } };
}

// What has to be handed out anew against an earlier plan.
export function changes() {
  const element = make("div", { class: "anew scroll", tabindex: "0", role: "region", "aria-label": "To be handed out anew" });
  return { name: "anew", label: "Changes", element, show(drawn) {
    element.replaceChildren(!drawn.against ? make("p", { class: "note" }, "Choose a kept plan under \"Changes against\" and draw: △ then marks on every sheet what is another, and here stands what to hand out anew.")
      : drawn.anew.length ? make("table", {}, make("thead", {}, make("tr", {}, ...["Sheet", "Part", "Rows that changed"].map((each) => make("th", { scope: "col" }, each)))), make("tbody", {}, ...drawn.anew.map((each) => make("tr", {}, make("th", { scope: "row" }, each.sheet), make("td", {}, each.part), make("td", { class: "n" }, String(each.rows))))), make("caption", { class: "note" }, "Against '" + plain(drawn.against) + "'. Whatever is not named here says the same as before; △ marks on the sheets what is another."))
      : make("p", {}, "Nothing is another than in '" + plain(drawn.against) + "'."));
  } };
}
