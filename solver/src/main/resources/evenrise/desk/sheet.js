// The project's lists as tables: a window of rows over thousands, edited in place, each edit taken in by the server or told.

import { ask, complain, desk, onShow, refresh, say } from "./wire.js";
import { by, count, make, plain } from "./parts.js";
import { intake } from "./intake.js";
import { form } from "./form.js";

const LISTS = [["loads", "Loads"], ["panels", "Panels"], ["boards", "Boards"], ["board_types", "Board types"], ["shutdown_groups", "Groups"], ["systems", "Systems"], ["nodes", "Nodes"]];
const FURTHER = [
  ["Uses and numbers", [["scenes", "Scenes"], ["scenes.use", "What draws how much in each scene"], ["defaults", "Defaults of loads"], ["quantities", "Loads of open number"]]],
  ["The whole", [["project", "Project"], ["supply", "Supply"], ["objective", "Objective"], ["spare", "Room to be left"], ["behaviour", "Behaviour of the control"], ["electrical", "Electrical review"], ["scatter", "Scatter of a real start"], ["work", "Times of work"]]],
  ["Catalogue", [["catalogue", "Catalogue"], ["catalogue.panel_types", "Kinds of panel"], ["catalogue.breakers", "Breakers"], ["catalogue.transformers", "Transformers"], ["catalogue.nodes", "Nodes"], ["catalogue.feeders", "Feeders"], ["catalogue.contactors", "Contactors"], ["catalogue.cables", "Cables"], ["catalogue.percentages", "Percentages"], ["catalogue.labour_hours", "Hours of work"]]],
];
const NUMBERED = new Set(["defaults", "quantities", "catalogue.breakers", "catalogue.transformers", "catalogue.nodes", "catalogue.feeders", "catalogue.contactors", "catalogue.cables", "catalogue.percentages"]);
const FIRST = {
  loads: ["id", "name", "role", "poles", "breaker_a", "curve", "switched", "running_a", "idle_a", "inrush_peak_a", "inrush_half_ms", "settle_s", "shutdown_group", "panels", "comes_after"],
};
const ROW = 27;
const key = (id, column) => id + "\n" + column;

/** The lists that prices stand in, and what there is one of. */
const CATALOGUE = [["catalogue", "Currency and leads"], ["catalogue.panel_types", "Kinds of panel"], ["board_types", "Board types"], ["catalogue.breakers", "Breakers"], ["catalogue.cables", "Cables"], ["catalogue.feeders", "Feeders"], ["catalogue.transformers", "Transformers"], ["catalogue.nodes", "Nodes"], ["catalogue.contactors", "Contactors"], ["catalogue.labour_hours", "Hours of work"], ["catalogue.percentages", "Percentages"]];

export const listsView = () => sheetOf("Lists of the project", LISTS, FURTHER, "loads");

/** The same for prices alone, to stand in another view. */
export const cataloguePart = () => sheetOf("Catalogue", CATALOGUE, [], "catalogue.panel_types");

function sheetOf(title, lists, others, beginning) {
  let list = beginning, table = null, columns = [], rows = [], drafts = new Map(), added = [], also = new Set(), asked = 0;
  let at = { row: 0, column: 0 }, to = { row: 0, column: 0 }, editor = null, wanted = "", sending = Promise.resolve();
  const cure = make("p", { class: "cure", id: "cure", role: "status" });
  const body = make("div", { class: "body", role: "rowgroup" });
  const head = make("div", { class: "row head", role: "row" });
  const grid = make("div", { class: "grid", role: "grid", tabindex: "0", "aria-describedby": "cure keys", "aria-multiselectable": "true" }, make("div", { role: "rowgroup", class: "heads" }, head), body);
  const tabs = make("div", { class: "lists", role: "group", "aria-label": "Lists" }, ...lists.map(([name, label]) => make("button", { type: "button", data: { list: name }, onclick: () => open(name) }, label)),
    others.length === 0 ? null : make("label", {}, "Further ", make("select", { id: "further", onchange: (event) => event.target.value && open(event.target.value) }, make("option", { value: "" }, "choose"), ...others.map(([label, some]) => make("optgroup", { label }, ...some.map(([value, words]) => make("option", { value }, words)))))));
  const single = form();
  const search = make("input", { type: "search", id: "filter", placeholder: "part of a row", autocomplete: "off", oninput: () => { wanted = search.value.toLowerCase(); at = { row: 0, column: at.column }; to = at; filter(); } });
  const more = make("select", { id: "more", onchange: () => { also.add(more.value); layOut(); grid.focus(); } });
  const tally = make("span", { class: "note", role: "status" });
  const element = make("section", { class: "sheet", "aria-label": title }, others.length === 0 ? null : intake(() => open("loads")),
    make("div", { class: "tools" }, tabs, make("label", {}, "Find ", search), make("label", {}, "Show column ", more),
      make("button", { type: "button", onclick: fillDown }, "Fill down"), make("button", { type: "button", onclick: takeOut }, "Take rows out"), tally),
    single.element, cure, grid, make("p", { class: "note", id: "keys" }, "Type to write, Enter or F2 to edit, Delete to empty, Shift with arrows to choose several, Ctrl+D to fill down, Ctrl+C and Ctrl+V with any spreadsheet. The last row is for a new entry. An empty cell states nothing: a default counts."));

  async function open(name) {
    if (name !== list) { drafts = new Map(); added = []; also = new Set(); at = to = { row: 0, column: 0 }; }
    list = name;
    const further = tabs.querySelector("select");
    if (further) further.value = others.some(([, some]) => some.some(([each]) => each === list)) ? list : "";
    tabs.querySelectorAll("button").forEach((button) => button.setAttribute("aria-pressed", String(button.dataset.list === list)));
    const mine = ++asked;
    if (!desk.sheet || !desk.sheet.plan) { table = null; grid.hidden = true; return; }
    try {
      const answer = await ask("/api/list/" + name);
      if (mine !== asked) return;
      table = answer;
      grid.hidden = cure.hidden = table.is_single;
      single.show(table.is_single ? table : null);
      element.classList.toggle("one", table.is_single);
      if (table.is_single) { tally.textContent = ""; return; }
      added = added.filter((id) => !table.rows.some((row) => row[0] === id));
      layOut();
    } catch (refusal) { complain(refusal); }
  }

  function layOut() {
    const first = FIRST[list], all = [...table.columns, ...table.further.filter((each) => also.has(each.path))];
    const said = (column) => { const i = table.columns.indexOf(column); return i >= 0 && table.rows.some((row) => row[i] !== ""); };
    columns = all.filter((column) => column.path === "id" || also.has(column.path) || (first ? first.includes(column.path) : column.is_required) || said(column));
    if (first) columns.sort((a, b) => (first.indexOf(a.path) + 1 || 99) - (first.indexOf(b.path) + 1 || 99));
    const hidden = [...table.columns, ...table.further].filter((column) => !columns.includes(column));
    more.replaceChildren(make("option", { value: "" }, "choose"), ...hidden.map((column) => make("option", { value: column.path }, column.path)));
    head.replaceChildren(...columns.map((column, i) => make("div", { class: "cell" + (column.kind === "number" ? " n" : ""), role: "columnheader", title: column.meaning + " (" + column.expected + (column.otherwise ? "; " + column.otherwise + " where empty" : "") + ")", "aria-colindex": i + 1 }, column.path === "id" && table.rows.every((row) => row[0].includes("#")) && table.rows.length ? "row" : column.path)));
    grid.style.setProperty("--columns", columns.map((column) => column.path === "id" || column.path === "name" ? "11rem" : column.kind === "number" ? "6.2rem" : "7.6rem").join(" "));
    grid.setAttribute("aria-colcount", columns.length);
    filter();
  }

  function filter() {
    const own = table.rows.map((row) => ({ id: row[0], row })).concat(added.map((id) => ({ id, row: [id], isNew: true })));
    rows = wanted ? own.filter((each) => each.row.some((text) => text.toLowerCase().includes(wanted))) : own;
    if (!wanted) rows.push({ id: "", row: [], isBlank: true });
    body.style.height = rows.length * ROW + "px";
    grid.setAttribute("aria-rowcount", rows.length + 1);
    const shown = rows.filter((each) => !each.isBlank).length;
    tally.textContent = shown === table.rows.length ? count(shown, "row") : shown + " of " + count(table.rows.length, "row");
    clamp();
    paint();
  }

  function text(row, column) {
    const draft = drafts.get(key(row.id, column.path));
    if (draft) return draft.text;
    const i = table.columns.indexOf(column);
    return row.isBlank ? "" : column.path === "id" ? row.id : row.isNew || i < 0 ? "" : row.row[i];
  }

  /** Only the rows in sight are there. */
  function paint() {
    if (!table) return;
    const from = Math.max(0, Math.floor(grid.scrollTop / ROW) - 8), end = Math.min(rows.length, from + Math.ceil(grid.clientHeight / ROW) + 18);
    const parts = [];
    for (let r = from; r < end; r++) parts.push(rowOf(r));
    const kept = editor && editor.input;
    body.replaceChildren(...parts);
    if (kept) placeEditor();
    grid.setAttribute("aria-activedescendant", "c" + at.row + "-" + at.column);
    const draft = drafts.get(key(rows[at.row] ? rows[at.row].id : "", columns[at.column] ? columns[at.column].path : ""));
    const column = columns[at.column];
    cure.className = "cure" + (draft && draft.message ? " bad" : "");
    cure.textContent = draft && draft.message ? draft.message + " What stands here is not in the file yet."
      : column ? plain(column.path + ": " + column.meaning + "; " + column.expected + ".", 300) : "";
  }

  function rowOf(r) {
    const row = rows[r], line = make("div", { class: "row" + (row.isBlank ? " blank" : ""), role: "row", "aria-rowindex": r + 2 });
    line.style.top = r * ROW + "px";
    columns.forEach((column, c) => {
      const draft = drafts.get(key(row.id, column.path)), words = text(row, column);
      const chosen = r >= Math.min(at.row, to.row) && r <= Math.max(at.row, to.row) && c >= Math.min(at.column, to.column) && c <= Math.max(at.column, to.column);
      line.append(make("div", {
        class: "cell" + (column.kind === "number" ? " n" : "") + (draft ? draft.message ? " bad" : " draft" : "") + (chosen ? " chosen" : "") + (r === at.row && c === at.column ? " at" : ""),
        role: column.path === "id" ? "rowheader" : "gridcell", id: "c" + r + "-" + c, "aria-colindex": c + 1, "aria-selected": chosen ? "true" : undefined, "aria-invalid": draft && draft.message ? "true" : undefined,
        data: { r, c }, title: draft && draft.message ? plain(draft.message, 300) : undefined,
      }, words === "" && row.isBlank && c === 0 ? "new…" : words === "" && !row.isBlank && column.otherwise && column.otherwise !== "[]" ? make("i", {}, column.otherwise) : words));
    });
    return line;
  }

  function clamp() {
    for (const place of [at, to]) {
      place.row = Math.max(0, Math.min(rows.length - 1, place.row));
      place.column = Math.max(0, Math.min(columns.length - 1, place.column));
    }
  }

  function go(row, column, isMore) {
    to = { row, column };
    if (!isMore) at = { row, column };
    clamp();
    const top = to.row * ROW, sight = grid.clientHeight - ROW * 2;
    if (top < grid.scrollTop) grid.scrollTop = top;
    else if (top > grid.scrollTop + sight) grid.scrollTop = top - sight;
    paint();
    const cell = by("c" + to.row + "-" + to.column);
    if (cell) cell.scrollIntoView({ block: "nearest", inline: "nearest" });
  }

  function edit(begun) {
    const row = rows[at.row], column = columns[at.column];
    if (row && row.isBlank && NUMBERED.has(list)) { if (column.path !== "id") begin("#" + (table.rows.length + added.length + 1), at.column); return edit(begun); }
    if (!row || column.path === "id" && !row.isBlank) { say("An id names the entry: add a row with the new id and take this one out."); return; }
    const input = make("input", { class: "editor", "aria-label": column.path + (row.id ? " of " + plain(row.id) : ""), autocomplete: "off", spellcheck: "false" });
    input.value = begun === undefined ? text(row, column) : begun;
    editor = { input, row, column };
    placeEditor();
    input.addEventListener("keydown", (event) => {
      event.stopPropagation();
      if (event.key === "Escape") { event.preventDefault(); close(false); }
      if (event.key === "Enter") { event.preventDefault(); close(true); go(at.row + 1, at.column); }
      if (event.key === "Tab") { event.preventDefault(); close(true); go(at.row, at.column + (event.shiftKey ? -1 : 1)); }
    });
    input.addEventListener("blur", () => close(true));
    input.focus();
    if (begun === undefined) input.select();
  }

  function placeEditor() {
    const cell = by("c" + at.row + "-" + at.column);
    if (cell && editor.input.parentElement !== cell) { cell.replaceChildren(editor.input); editor.input.focus(); }
  }

  function close(isKept) {
    if (!editor) return;
    const { input, row, column } = editor;
    editor = null;
    const words = input.value.trim();
    input.remove();
    grid.focus({ preventScroll: true });
    if (isKept && row.isBlank && column.path === "id") { if (words) begin(words); else paint(); }
    else if (isKept && row.isBlank) { say("Give the new entry an id first, in its first column."); paint(); }
    else if (isKept && words !== text(row, column)) send([[row.id, column.path, words]]);
    else paint();
  }

  function begin(id, column = 1) {
    if (table.rows.some((row) => row[0] === id) || added.includes(id)) { say("There is an entry '" + plain(id) + "' already."); paint(); return; }
    added.push(id);
    filter();
    go(rows.findIndex((row) => row.id === id), column);
    const needed = [...table.columns].filter((column) => column.is_required && column.path !== "id").map((column) => column.path);
    say("'" + plain(id) + "' is taken in when it states " + needed.join(", ") + ".");
  }

  /** Sends what is another; what does not fit stays in its cell with its cure, the rest is taken in. */
  function send(edits, removed = []) {
    edits.forEach(([id, column, words]) => drafts.set(key(id, column), { id, column, text: words, message: "" }));
    paint();
    // One after another: what is typed while an answer is on its way goes with the next.
    sending = sending.then(() => deliver(removed));
    return sending;
  }

  async function deliver(removed) {
    if (!drafts.size && !removed.length) return;
    try {
      let cells = [...drafts.values()], answer = await ask("/api/cells", asBody(cells, removed)), done = "";
      if (!answer.is_taken) {
        cells.forEach((each) => { each.message = ""; });
        answer.misfits.forEach((misfit) => learn(misfit));
        const unfit = new Set(answer.misfits.map((misfit) => misfit.id)), lost = answer.misfits.some((misfit) => misfit.id === null);
        const rest = cells.filter((each) => !each.message && !(added.includes(each.id) && unfit.has(each.id)));
        say(answer.misfits.map((misfit) => misfit.message).slice(0, 3).join(" "));
        by("said").className = "bad";
        if (lost || rest.length === 0 && removed.length === 0 || rest.length === cells.length) { paint(); return; }
        answer = await ask("/api/cells", asBody(rest, removed));
        cells = rest;
      } else done = removed.length ? count(removed.length, "row") + " taken out." : count(cells.length, "cell") + " taken in.";
      if (answer.is_taken) {
        cells.forEach((each) => drafts.delete(key(each.id, each.column)));
        added = added.filter((id) => !cells.some((each) => each.id === id));
        await refresh();
        await open(list);
        if (done) say(done);
      } else paint();
    } catch (refusal) { complain(refusal); paint(); }
  }

  function asBody(cells, removed) {
    // Within a scene's uses a new row is named by its scene.
    return { list, removed, cells: cells.map((each) => ({ id: each.id, column: each.column, text: each.text })) };
  }

  function learn(misfit) {
    if (misfit.id === null) return;
    const column = misfit.column || "id", known = drafts.get(key(misfit.id, column)) || [...drafts.values()].find((each) => each.id === misfit.id);
    if (drafts.has(key(misfit.id, column))) known.message = misfit.message;
    else if (misfit.column && added.includes(misfit.id)) drafts.set(key(misfit.id, column), { id: misfit.id, column, text: "", message: misfit.message });
    else if (known) known.message = misfit.message;
  }

  function range() {
    const cells = [];
    for (let r = Math.min(at.row, to.row); r <= Math.max(at.row, to.row); r++) {
      cells.push(columns.slice(Math.min(at.column, to.column), Math.max(at.column, to.column) + 1).map((column) => [rows[r], column]));
    }
    return cells;
  }

  function fillDown() {
    const [first, ...below] = range();
    send(below.flatMap((line) => line.map(([row, column], i) => [row.id, column.path, text(...first[i])])).filter(([id, column]) => id && column !== "id"));
    grid.focus();
  }

  function takeOut() {
    const ids = [...new Set(range().map((line) => line[0][0]).filter((row) => !row.isBlank).map((row) => row.id))];
    const fresh = ids.filter((id) => added.includes(id));
    added = added.filter((id) => !fresh.includes(id));
    for (const [name, each] of drafts) if (ids.includes(each.id)) drafts.delete(name);
    const known = ids.filter((id) => !fresh.includes(id));
    if (known.length) send([], known); else filter();
    grid.focus();
  }

  function onKey(event) {
    const page = Math.max(1, Math.floor(grid.clientHeight / ROW) - 3), far = event.ctrlKey || event.metaKey;
    const from = event.shiftKey ? to : at;
    const next = {
      ArrowDown: [from.row + (far ? rows.length : 1), from.column], ArrowUp: [from.row - (far ? rows.length : 1), from.column],
      ArrowRight: [from.row, from.column + (far ? columns.length : 1)], ArrowLeft: [from.row, from.column - (far ? columns.length : 1)],
      PageDown: [from.row + page, from.column], PageUp: [from.row - page, from.column],
      Home: [far ? 0 : from.row, 0], End: [far ? rows.length - 1 : from.row, columns.length - 1],
    }[event.key];
    if (next) { event.preventDefault(); go(next[0], next[1], event.shiftKey); return; }
    if (far && event.key.toLowerCase() === "d") { event.preventDefault(); fillDown(); return; }
    if (far && event.key.toLowerCase() === "a") { event.preventDefault(); at = { row: 0, column: 0 }; to = { row: rows.length - 1, column: columns.length - 1 }; paint(); return; }
    if (event.key === "Enter" || event.key === "F2") { event.preventDefault(); edit(); return; }
    if (event.key === "Delete" || event.key === "Backspace") { event.preventDefault(); send(range().flat().filter(([row, column]) => row.id && column.path !== "id" && text(row, column) !== "").map(([row, column]) => [row.id, column.path, ""])); return; }
    if (event.key.length === 1 && !far && !event.altKey) { event.preventDefault(); edit(event.key); }
  }

  grid.addEventListener("keydown", onKey);
  grid.addEventListener("scroll", paint);
  grid.addEventListener("pointerdown", (event) => {
    const cell = event.target.closest("[data-r]");
    if (!cell || event.target.closest("input")) return;
    if (editor) close(true);
    go(Number(cell.dataset.r), Number(cell.dataset.c), event.shiftKey);
  });
  grid.addEventListener("pointermove", (event) => {
    const cell = event.buttons === 1 && event.target.closest("[data-r]");
    if (cell && !editor && (Number(cell.dataset.r) !== to.row || Number(cell.dataset.c) !== to.column)) go(Number(cell.dataset.r), Number(cell.dataset.c), true);
  });
  grid.addEventListener("dblclick", () => edit());
  grid.addEventListener("copy", (event) => {
    if (editor) return;
    event.preventDefault();
    event.clipboardData.setData("text/plain", range().map((line) => line.map(([row, column]) => text(row, column)).join("\t")).join("\n"));
  });
  grid.addEventListener("paste", (event) => {
    if (editor) return;
    event.preventDefault();
    paste(event.clipboardData.getData("text/plain"));
  });

  function paste(pasted) {
    const lines = pasted.replace(/\r/g, "").replace(/\n$/, "").split("\n").map((line) => line.split("\t"));
    const edits = [];
    const isOne = lines.length === 1 && lines[0].length === 1;
    if (isOne) range().flat().forEach(([row, column]) => row.id && column.path !== "id" && edits.push([row.id, column.path, lines[0][0].trim()]));
    else lines.forEach((line, r) => {
      const row = rows[at.row + r], id = row && !row.isBlank ? row.id : at.column === 0 ? line[0].trim() : "";
      if (!id) return;
      if (!row || row.isBlank) { if (!added.includes(id) && !table.rows.some((each) => each[0] === id)) added.push(id); }
      line.forEach((words, c) => { const column = columns[at.column + c]; if (column && column.path !== "id") edits.push([id, column.path, words.trim()]); });
    });
    filter();
    if (edits.length) send(edits);
  }

  let revision = 0;
  onShow((sheet) => {
    if (!element.isConnected || !sheet || sheet.revision === revision) return;
    revision = sheet.revision;
    if (!editor) open(list);
  });
  new ResizeObserver(paint).observe(grid);
  return { element, show() { revision = desk.sheet.revision; open(list); } };
}
