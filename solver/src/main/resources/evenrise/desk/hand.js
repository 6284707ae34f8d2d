// A load taken in the hand, by mouse, by keyboard or by touch, and put down in a slot or on an output.

import { act, ask, complain, desk, redraw, say } from "./wire.js";
import { by, count, make, number, plain, signed } from "./parts.js";

let hand = null, asked = 0, ghost = null;

export const held = () => hand && hand.load;

export const slotKey = (panel, slot) => "slot\n" + panel + "\n" + slot;
export const outputKey = (board, output) => "output\n" + board + "\n" + output;

export function choose(load) {
  desk.chosen = load;
  redraw();
}

/** Shows at every place what the load would break or cost there. */
export async function pickUp(load) {
  hand = { load, places: new Map() };
  desk.chosen = load;
  redraw();
  say("Load " + plain(load) + " is in the hand. Choose a place and press Enter, or Escape to let go.");
  const mine = ++asked;
  try {
    const answer = await ask("/api/hang", { load, panels: panelsToAsk(load) });
    if (mine !== asked || !hand) return;
    answer.places.forEach(learn);
    mark();
  } catch (refusal) { letGo(); complain(refusal); }
}

// Of a large plant, the panels in sight: every place is judged as a plan of its own.
function panelsToAsk(load) {
  const all = desk.sheet.plan.panels.map((panel) => panel.id);
  if (desk.sheet.plan.loads.length <= 400) return all;
  const seen = [...document.querySelectorAll(".panel")].filter((card) => {
    const box = card.getBoundingClientRect();
    return box.bottom > 0 && box.top < innerHeight;
  }).map((card) => card.dataset.panel);
  const own = desk.loads.get(load).panel;
  return own && !seen.includes(own) ? seen.concat(own) : seen;
}

function learn(place) {
  const keys = place.panel ? place.slots.map((slot) => slotKey(place.panel, slot)) : [outputKey(place.board, place.output)];
  keys.forEach((key) => hand.places.set(key, place));
}

export function letGo() {
  if (!hand) return;
  hand = null;
  asked++;
  dropGhost();
  redraw();
}

/** Puts on the places what they would break or cost; called after they are drawn. */
export function mark() {
  document.body.classList.toggle("holding", Boolean(hand));
  document.querySelectorAll("[data-key]").forEach((cell) => {
    const place = hand && hand.places.get(cell.dataset.key);
    cell.classList.toggle("fits", Boolean(place) && place.breaks === 0);
    cell.classList.toggle("breaks", Boolean(place) && place.breaks > 0);
    const cost = cell.querySelector(".cost");
    if (cost) cost.textContent = place ? (place.breaks ? "✕" + place.breaks : signed(place.objective_change)) : "";
  });
}

/** What a place would do, in words. */
export function told(place, other) {
  const parts = [];
  if (other) parts.push("changes places with " + plain(other));
  parts.push(place.breaks ? "breaks " + count(place.breaks, "rule") + ": " + place.words.join(" ") : "breaks nothing");
  if (place.mends) parts.push("mends " + place.mends);
  parts.push("objective " + signed(place.objective_change) + ", peak " + signed(place.peak_change_a) + " A");
  return parts.join("; ") + ".";
}

/** While a load hangs over a place, or the keyboard stands there. */
export async function over(target) {
  if (!hand || !target || target.load === hand.load) return;
  const key = target.board ? outputKey(target.board, target.output) : slotKey(target.panel, target.slot);
  const known = hand.places.get(key), mine = ++asked, load = hand.load;
  try {
    const place = known || (await ask("/api/try", body(target, load))).places[0];
    if (!hand || hand.load !== load) return;
    if (!known) { learn({ ...place }); mark(); }
    if (mine === asked) say(name(target) + ": " + told(place, target.load));
  } catch (refusal) { if (mine === asked) complain(refusal); }
}

function name(target) {
  return target.board ? plain(target.board) + ", output " + target.output : plain(target.panel) + ", slot " + target.slot;
}

function body(target, load) {
  return target.board
    ? { load, board: target.board, output: target.output }
    : { load, panel: target.panel, slot: target.slot };
}

/** Puts the load down; a place that is none lifts it off its panel. */
export async function putDown(target) {
  const load = held();
  if (!load) return;
  hand = null;
  asked++;
  dropGhost();
  const before = desk.sheet.plan.metrics;
  if (await act("/api/move", target.away ? { load } : body(target, load))) {
    const now = desk.sheet.plan.metrics;
    say(plain(load) + (target.away ? " has no place now" : " is at " + name(target)) + ": objective "
      + signed(now.objective - before.objective) + ", peak " + signed(now.peak_inrush_a - before.peak_inrush_a) + " A, "
      + count(now.hard_violations, "broken rule") + ".");
  } else redraw();
}

export function target(element) {
  const cell = element && element.closest("[data-key], [data-away]");
  if (!cell) return null;
  if (cell.dataset.away) return { away: true };
  return cell.dataset.board
    ? { board: cell.dataset.board, output: Number(cell.dataset.output), load: cell.dataset.load }
    : { panel: cell.dataset.panel, slot: Number(cell.dataset.slot), load: cell.dataset.load };
}

function dropGhost() { if (ghost) { ghost.remove(); ghost = null; } }

/** Wires a region whose cells hold loads or places. */
export function handle(region) {
  let start = null;
  region.addEventListener("pointerdown", (event) => {
    const cell = event.target.closest("[data-load]");
    if (event.button !== 0 || event.pointerType === "touch" || !cell || held()) return;
    start = { x: event.clientX, y: event.clientY, load: cell.dataset.load, dragging: false };
  });
  document.addEventListener("pointermove", (event) => {
    if (!start) return;
    if (!start.dragging && Math.hypot(event.clientX - start.x, event.clientY - start.y) > 6) {
      start.dragging = true;
      ghost = make("div", { class: "ghost", "aria-hidden": "true" }, start.load);
      document.body.append(ghost);
      pickUp(start.load);
    }
    if (!start.dragging) return;
    ghost && (ghost.style.transform = "translate(" + (event.clientX + 10) + "px," + (event.clientY + 10) + "px)");
    const there = target(document.elementFromPoint(event.clientX, event.clientY));
    const key = JSON.stringify(there);
    if (key !== start.over) { start.over = key; if (there && !there.away) over(there); }
    if (event.clientY > innerHeight - 60) scrollBy(0, 14);
    if (event.clientY < 60) scrollBy(0, -14);
  });
  document.addEventListener("pointerup", (event) => {
    if (!start) return;
    const dragged = start.dragging;
    start = null;
    if (!dragged) return;
    const there = target(document.elementFromPoint(event.clientX, event.clientY));
    justDropped = true;
    setTimeout(() => { justDropped = false; }, 0);
    if (there) putDown(there); else letGo();
  });
  region.addEventListener("click", (event) => {
    if (justDropped) return;
    const there = target(event.target);
    if (!there) return;
    if (held()) putDown(there); else if (there.load) choose(there.load); else if (event.target.closest("[data-away] [data-load]")) choose(event.target.closest("[data-load]").dataset.load);
  });
  region.addEventListener("dblclick", (event) => {
    const cell = event.target.closest("[data-load]");
    if (cell) pickUp(cell.dataset.load);
  });
  region.addEventListener("focusin", (event) => {
    const there = target(event.target);
    if (held() && there && !there.away) over(there);
  });
}

let justDropped = false;

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && held()) { event.preventDefault(); letGo(); say("Nothing was moved."); }
});

/** The load that was chosen, and what can be done with it. */
export function drawHolding() {
  const bar = by("holding"), load = desk.chosen && desk.loads.get(desk.chosen);
  bar.hidden = !load;
  if (!load) { bar.replaceChildren(); return; }
  const where = load.panel ? plain(load.panel) + ", slot " + load.slots.join(", ") + ", " + load.phases.join(" ") : "no place yet";
  const when = load.on_s === null ? "" : " · on at " + number(load.on_s, 2) + " s";
  const lead = load.board ? " · " + plain(load.board) + ", output " + load.output : "";
  const title = make("div", { class: "facts" }, make("b", {}, load.id), " ", load.name === load.id ? "" : load.name,
    make("span", {}, where + lead + when + " · " + number(load.running_a) + " A, " + count(load.poles, "pole") + (load.pinned ? " · pinned" : "")));
  const button = (text, work) => make("button", { type: "button", onclick: work }, text);
  const inHand = held() === load.id;
  bar.replaceChildren(title, make("div", { class: "deeds" },
    inHand ? button("Let go", letGo) : button("Pick up", () => pickUp(load.id)),
    load.panel ? button("Lift off", () => act("/api/move", { load: load.id }, plain(load.id) + " has no place now.")) : null,
    load.panel || load.pinned ? button(load.pinned ? "Set free" : "Pin", () => act("/api/pin", { pinned: !load.pinned, loads: [load.id] },
      plain(load.id) + (load.pinned ? " is free." : " stays where it is."))) : null,
    load.panel ? button("Why here?", () => { desk.why = load.id; location.hash = "#why"; document.dispatchEvent(new CustomEvent("why")); }) : null,
    button("Close", () => { letGo(); choose(null); })));
}
