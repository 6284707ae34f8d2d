// What the project can be built of, from the cheapest make-up on, while it is looked for; what of it is proven, what it
// rests on, and what of it is offered.

import { act, ask, complain, desk, onEvent, say } from "./wire.js";
import { count, draw, make, number, plain } from "./parts.js";
import { cataloguePart } from "./sheet.js";
import { offerPart } from "./offer.js";
import { roomPart } from "./room.js";

const WORDS = { sound: "sound: a plan keeps every hard rule", "ruled-out": "proven impossible", undecided: "undecided", "not-looked-at": "not looked at" };
const LANES = ["sound", "ruled-out", "undecided", "not-looked-at"];
const SHOWN = 30;

export function estimateView() {
  let view = null, waiting = false, again = false, more = 0;
  const box = (id, value, given) => make("input", { id, type: "number", class: "small-number", value, ...given });
  const tries = box("tries", "60", { min: "0", max: "20000" }), moves = box("estimate-moves", "60000", { min: "1" }), draws = box("draws", "0", { min: "0", max: "100000" }), limit = box("estimate-limit", "", { min: "1", placeholder: "none" });
  const slots = box("spare-slots", "", { min: "0", placeholder: "usual" }), outputs = box("spare-outputs", "", { min: "0", placeholder: "usual" }), percent = box("spare-percent", "", { min: "0", max: "99", placeholder: "usual" });
  const numbers = make("input", { id: "numbers", type: "checkbox" });
  const begin = make("button", { type: "button", id: "estimate-begin", onclick: start }, "Look by price"), stop = make("button", { type: "button", id: "estimate-stop", onclick: () => send("/api/estimate/stop", {}) }, "Stop");
  const standing = make("p", { class: "standing", role: "status" }), told = make("div", { class: "told-least" }), strip = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Make-ups by price, as a picture" });
  const table = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Make-ups by price" }), parts = make("div", {}), planned = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Planned for an aim" });
  const offer = offerPart(), room = roomPart(take), catalogue = cataloguePart();
  const tables = make("select", { id: "price-tables" }), tableName = make("input", { id: "price-table-name", value: "prices.xlsx", autocomplete: "off", maxlength: "60" });
  const shared = make("div", { class: "tools" }, make("label", {}, "Prices that bids share ", tables), make("button", { type: "button", id: "price-table-take", onclick: async () => { if (tables.value) await act("/api/catalogue/take", { file: tables.value }, "Prices of '" + plain(tables.value) + "' are the project's. Undo brings back its own."); } }, "Take these prices"), make("label", {}, "As a table ", tableName), make("button", { type: "button", id: "price-table-write", onclick: () => inFolder("/api/catalogue/write", { file: tableName.value }) }, "Write as a table"));
  const prices = make("details", { class: "box catalogue", ontoggle: () => { if (prices.open) { catalogue.show(); inFolder("/api/catalogue/tables"); } } }, make("summary", {}, "Catalogue: prices, typed in place"), make("p", { class: "note" }, "Every change is written at once, and Undo takes it back. Copy and paste with any spreadsheet."), catalogue.element, shared);
  const element = make("section", { class: "estimating", "aria-label": "Estimate" }, make("h2", {}, "Estimate"),
    make("p", { class: "note" }, "Make-ups, how many panels and boards of which type, in order of price; each is decided by counting or by a plan. Nothing on the desk changes. Every make-up that was planned lies in a folder with its plan, and the next look goes on from there."),
    make("div", { class: "tools" }, make("label", {}, "Make-ups to plan ", tries), make("label", {}, "Moves each ", moves), make("label", {}, "Free slots a panel ", slots), make("label", {}, "Free outputs a board ", outputs), make("label", {}, "Free current, % ", percent), make("label", {}, "Draws of open quantities ", draws), make("label", {}, "Ends after, s ", limit), make("label", {}, numbers, "compare numbers of panels and boards"), begin, stop),
    standing, told, strip, table, planned, offer.element, room.element, parts, prices);

  async function send(path, body) {
    try { show(await ask(path, body)); } catch (refusal) { complain(refusal); }
  }

  function start() {
    const said = (name, field) => field.value === "" ? {} : { [name]: Number(field.value) };
    element.dataset.state = "asked";
    more = 0;
    send("/api/estimate/begin", { numbers: numbers.checked, ...said("tries", tries), ...said("moves", moves), ...said("draws", draws), ...said("limit_s", limit), ...said("spare_slots", slots), ...said("spare_outputs", outputs), ...said("spare_pct", percent) }).then(look);
  }

  async function inFolder(path, body) {
    try {
      const answer = await ask(path, body), was = tables.value;
      tables.replaceChildren(make("option", { value: "" }, answer.files.length ? "choose" : "no table in the folder"), ...answer.files.map((each) => make("option", { value: each, selected: each === was }, each)));
      if (body) say("Written: " + plain(body.file) + ". compare, bill, offer and report take it by --catalogue.");
    } catch (refusal) { complain(refusal); }
  }

  async function take(files) {
    await act("/api/estimate/take", { files }, "'" + plain(files) + "' is on the desk, with its plan and the room that it leaves. Undo brings back what was there.");
  }

  // What happens while an answer is on its way is asked for again, or the end would be missed.
  async function look() {
    again = true;
    if (waiting) return;
    waiting = true;
    try {
      while (again) {
        again = false;
        show(await ask("/api/estimate"));
      }
    } catch (refusal) { complain(refusal); }
    waiting = false;
  }

  function show(next) {
    view = next;
    const known = view.known && view.known.estimate, isRunning = view.state === "running";
    element.dataset.state = view.state;
    begin.disabled = isRunning || !desk.sheet.plan;
    stop.disabled = !isRunning;
    standing.className = "standing" + (view.state === "failed" ? " bad" : "");
    standing.textContent = plain({
      none: "Nobody has looked yet.", running: "Looking (" + (view.words || "reading") + (view.of ? ", " + view.done + " of at most " + view.of + " planned" : "") + "). So far:",
      done: "Looked through, " + number(view.elapsed_s) + " s. Files are in the folder " + view.folder + ".", stopped: "Stopped after " + number(view.elapsed_s) + " s. Files are in the folder " + view.folder + "; the next look goes on there.", failed: view.words,
    }[view.state] + (view.state === "none" || view.is_of_now ? "" : " The project or its prices have changed since: look again."), 900);
    if (view.state === "failed") prices.open = true;
    told.replaceChildren(...view.notes.map((each) => make("p", { class: "note" }, each)), ...(known ? sentences(known.parts[0]) : []));
    strip.hidden = table.hidden = !known;
    planned.hidden = !known || known.planned.length === 0;
    const focus = document.activeElement && element.contains(document.activeElement) && document.activeElement.dataset.again;
    if (known) {
      offer.among(new Set([...known.make_ups, ...known.planned].map((each) => each.files)));
      strip.replaceChildren(picture(known));
      list(known);
      aims(known);
    }
    parts.replaceChildren(...(known ? [...known.parts.slice(1).map(part), basis(known.basis)] : []));
    const same = focus && element.querySelector("[data-again=" + CSS.escape(focus) + "]");
    if (same) same.focus({ preventScroll: true });
    offer.show();
  }

  const sentences = (of) => of.sentences.map((each, i) => make("p", { class: (i === 0 ? "said-first" : "") + (each.is_bad ? " bad" : "") }, each.text));

  function list(known) {
    const lines = known.make_ups.filter((each, i) => i < SHOWN + more || each.known === "sound");
    table.replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, ...["No", "Price", "Panels", "Boards", "What is known", "Without a price", "", ""].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...lines.map((each) => make("tr", { class: each.known, data: { number: each.number } }, make("th", { scope: "row", class: "n" }, String(each.number)), make("td", { class: "n" }, number(each.price, 2)), make("td", { class: "of-words" }, each.panels), make("td", { class: "of-words" }, each.boards), make("td", { class: "known" }, WORDS[each.known] + (each.known === "sound" || !each.why ? "" : ": " + each.why)), make("td", {}, each.unpriced || "–"), ...deeds(each, "make-up " + each.number, each.known === "sound")))),
      make("caption", { class: "note" }, count(lines.length, "make-up") + " of " + view.known.listed + " that are listed; all are in make-ups.csv. Prices are in " + (known.title.split("prices in ")[1] || "no currency") + ". A make-up is never called least unless every cheaper one is proven impossible.",
        lines.length < known.make_ups.length ? make("button", { type: "button", class: "small", data: { again: "more" }, onclick: () => { more += 200; show(view); } }, "Show more") : null)));
  }

  /** What can be done with a make-up that has a plan. */
  function deeds(each, called, isSound) {
    if (!each.files) return [make("td", {}), make("td", {})];
    return [make("td", {}, make("button", { type: "button", class: "small", data: { again: "room " + each.files }, "aria-label": "Room left in " + plain(called), onclick: () => room.look(each.files, called) }, "Room left")),
      make("td", {}, isSound ? make("label", {}, make("input", { type: "checkbox", data: { again: "offer " + each.files }, checked: offer.has(each.files), "aria-label": "Offer " + plain(called), onchange: (event) => offer.set(each.files, called, event.target.checked) }), "offer") : null)];
  }

  function aims(known) {
    const called = (each) => ({ "least-usual": "Least price", "least-low-peak": "Low peak", "least-quick": "Quick" }[each.files] || each.files);
    planned.replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, ...["Planned for", "Aim", "Price", "Peak, A", "All on after, s", "Panels", "Boards", "What was found", "", ""].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...known.planned.map((each) => make("tr", { class: each.why ? "" : "sound" }, make("th", { scope: "row" }, called(each)), make("td", {}, each.aim), make("td", { class: "n" }, number(each.price, 2)), make("td", { class: "n" }, number(each.peak_inrush_a)), make("td", { class: "n" }, number(each.last_on_s, 2)), make("td", { class: "of-words" }, each.panels), make("td", { class: "of-words" }, each.boards), make("td", {}, each.why || "sound"), ...deeds(each, called(each), !each.why)))),
      make("caption", { class: "note" }, "The same make-up planned for three aims: the project's own objective, a low peak, a short time.")));
  }

  const part = (each) => make("section", { class: "box" }, make("h3", {}, each.heading), ...sentences(each).map((it) => { it.classList.remove("said-first"); return it; }),
    each.svg === null ? null : make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": each.heading + ", drawn" }, make("img", { class: "chart", alt: plain(each.heading + ". " + each.sentences.map((it) => it.text).join(" "), 400), src: "data:image/svg+xml," + encodeURIComponent(each.svg) })),
    each.rows.length === 0 ? null : make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": each.heading }, make("table", { class: "small" + (each.is_summed ? " sum" : "") }, make("thead", {}, make("tr", {}, ...each.header.map((it) => make("th", { scope: "col" }, it)))), make("tbody", {}, ...each.rows.map((row) => make("tr", {}, ...row.map((cell, i) => make("td", { class: i < each.words ? "" : "n" }, cell))))))));

  const basis = (all) => make("section", { class: "box" }, make("h3", {}, "What prices rest on"), make("ul", {}, ...all.map((each) => make("li", {}, each))));

  onEvent("estimate", look);
  return { element, show() { if (prices.open) catalogue.show(); look(); } };
}

/** A lane for each thing that can be known of a make-up, its price to the right. */
function picture(known) {
  const WIDE = 1000, LEFT = 130, ROW = 30, all = known.make_ups;
  const seen = all.filter((each) => each.known !== "not-looked-at"), last = seen.length ? Math.max(...seen.map((each) => each.price)) : 0;
  const shown = all.filter((each) => each.price <= last || each.number <= 60);
  const least = Math.min(...shown.map((each) => each.price)), most = Math.max(...shown.map((each) => each.price)), span = most - least || 1;
  const x = (price) => LEFT + (WIDE - LEFT - 60) * (price - least) / span, text = (tx, ty, words, anchor = "start") => { const it = draw("text", { x: tx, y: ty, "text-anchor": anchor }); it.textContent = plain(words, 60); return it; };
  const svg = draw("svg", { viewBox: "0 0 " + WIDE + " " + (ROW * 4 + 64), class: "curve strip", role: "img", "aria-label": LANES.map((each) => all.filter((it) => it.known === each).length + " " + (each === "sound" ? "sound" : WORDS[each])).join(", ") + ", from " + number(least, 2) + " to " + number(most, 2) });
  LANES.forEach((lane, k) => {
    const y = 44 + k * ROW;
    svg.append(draw("line", { class: "strip-lane", x1: LEFT - 10, x2: WIDE - 20, y1: y, y2: y }), text(LEFT - 18, y + 4, lane === "sound" ? "sound" : WORDS[lane], "end"));
    shown.filter((each) => each.known === lane).forEach((each) => {
      const at = x(each.price).toFixed(1);
      const mark = lane === "sound" ? draw("circle", { class: "m-sound", cx: at, cy: y, r: 6 }) : lane === "ruled-out" ? draw("path", { class: "m-out", d: "M" + (at - 4) + " " + (y - 4) + "l8 8m0 -8l-8 8" }) : lane === "undecided" ? draw("rect", { class: "m-undecided", x: at - 5, y: y - 5, width: 10, height: 10 }) : draw("path", { class: "m-unseen", d: "M" + at + " " + (y - 5) + "v10" });
      const title = draw("title");
      title.textContent = plain(number(each.price, 2) + ": " + each.panels + "; " + each.boards, 200);
      mark.append(title);
      svg.append(mark);
    });
  });
  const bottom = 44 + 3 * ROW + 18;
  [least, least + span / 2, least + span].forEach((price, i) => svg.append(text(x(price), bottom + 22, number(price, 2), i === 2 ? "end" : i ? "middle" : "start")));
  // What is proven: that nothing is cheaper, or from where on something may be.
  const proven = known.is_proven ? known.least_price : known.undecided_from;
  if (proven !== null && proven <= most) {
    const at = x(Math.max(least, proven));
    svg.append(draw("line", { class: "proven-below", x1: at, x2: at, y1: 22, y2: bottom }), text(at, 16, known.is_proven ? "least, proven: " + number(proven, 2) : "nothing below " + number(proven, 2) + " is open", at > WIDE / 2 ? "end" : "start"));
  }
  return svg;
}
