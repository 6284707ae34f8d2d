// Panels as schedules, with the loads that have no place beside them.

import { act, desk } from "./wire.js";
import { count, make, number, plain } from "./parts.js";
import { handle, held, mark, pickUp, putDown, slotKey, target } from "./hand.js";

const drawn = new Map();

export function panelsView() {
  const region = make("section", { class: "panels", "aria-label": "Panels" });
  handle(region);
  region.addEventListener("keydown", onKey);
  drawn.clear();
  return {
    element: region,
    show(sheet) {
      const inPanel = new Map(sheet.panels.map((panel) => [panel.id, []]));
      sheet.loads.forEach((load) => load.panel && inPanel.has(load.panel) && inPanel.get(load.panel).push(load));
      sheet.panels.forEach((panel) => {
        const loads = inPanel.get(panel.id), look = JSON.stringify([panel, loads]);
        const known = drawn.get(panel.id);
        if (known && known.look === look && known.card.isConnected) return;
        const card = cardOf(panel, loads), focus = known && known.card.contains(document.activeElement) && document.activeElement.dataset.key;
        if (known && known.card.isConnected) known.card.replaceWith(card); else region.append(card);
        drawn.set(panel.id, { look, card });
        if (focus) focusOn(card.querySelector("[data-key=" + CSS.escape(focus) + "]"));
      });
      const ids = new Set(sheet.panels.map((panel) => panel.id));
      for (const [id, each] of drawn) if (!ids.has(id)) { each.card.remove(); drawn.delete(id); }
      region.querySelectorAll(".chosen").forEach((cell) => cell.classList.remove("chosen"));
      if (desk.chosen) region.querySelectorAll("[data-load=" + CSS.escape(desk.chosen) + "]").forEach((cell) => cell.classList.add("chosen"));
      showRoom(region);
      mark();
    },
  };
}

/** Where one more load could go, as it was asked under What if, until something changes. */
function showRoom(region) {
  region.querySelectorAll(".room").forEach((cell) => { cell.classList.remove("room"); cell.querySelector(".cost").textContent = ""; });
  if (!desk.room || desk.room.revision !== desk.sheet.revision) return;
  desk.room.places.forEach((place) => {
    const cell = region.querySelector("[data-key=" + CSS.escape(slotKey(place.panel, place.slots[0])) + "]");
    if (!cell) return;
    cell.classList.add("room");
    cell.querySelector(".cost").textContent = "≤" + number(Math.floor(place.up_to_a * 10) / 10) + " A";
  });
}

/** Pins everything of a panel, a board, a group or the plan, or sets it free. */
export function pinning(kind, id, loads, asked) {
  const isPinned = loads.length > 0 && loads.every((load) => load.pinned), what = kind + (id ? " " + plain(id) : "");
  return make("button", { type: "button", class: "small", disabled: loads.length === 0, data: { part: "pin" }, "aria-label": (isPinned ? "Set free: " : "Pin ") + what,
    onclick: () => act("/api/pin", { pinned: !isPinned, ...asked }, isPinned ? "Free: " + what + "." : "Pinned: " + what + " stays as it is, whatever is searched.") }, isPinned ? "Set free" : "Pin " + kind);
}

function cardOf(panel, loads) {
  const grid = make("div", { class: "slots" + (panel.is_two_sided ? " two" : ""), role: "group", "aria-label": "Slots of panel " + plain(panel.id) });
  const taken = new Map();
  loads.forEach((load) => load.slots.forEach((slot) => taken.set(slot, load)));
  let first = true;
  for (let slot = 1; slot <= panel.slots; slot++) {
    const load = taken.get(slot);
    if (load && load.slots[0] !== slot) continue;
    const cell = cellOf(panel, slot, load);
    cell.tabIndex = first ? 0 : -1;
    first = false;
    place(cell, panel, slot, load ? load.slots.length : 1);
    grid.append(cell);
  }
  const misfits = loads.filter((load) => load.slots.length === 0);
  const used = [...taken.keys()].length;
  const facts = make("dl", {}, ...panel.phases.map((phase, i) => make("div", {},
    make("dt", {}, phase), bar(panel.running_a[i], panel.rated_a), make("dd", {}, number(panel.running_a[i]) + " A"),
    make("dd", { class: "peak" }, "peak " + number(panel.peak_a[i], 0)))));
  return make("article", { class: "panel", data: { panel: panel.id }, "aria-label": "Panel " + plain(panel.id) },
    make("h3", {}, panel.id, pinning("panel", panel.id, loads, { panels: [panel.id] }), make("span", {}, used + " of " + panel.slots + " slots · " + number(panel.rated_a, 0) + " A")),
    grid, facts,
    make("p", { class: "note" }, "Unbalance " + number(panel.imbalance_pct) + " %, neutral " + number(panel.neutral_a) + " A"
      + (panel.inrush_limit_a === null ? "" : ", inrush limit " + number(panel.inrush_limit_a, 0) + " A")
      + (misfits.length ? "; " + count(misfits.length, "load") + " in slots that do not fit: " + misfits.map((load) => plain(load.id)).join(", ") : "")));
}

export function bar(amps, rated) {
  const fill = make("i");
  fill.style.transform = "scaleX(" + Math.min(1, rated > 0 ? amps / rated : 0) + ")";
  return make("dd", { class: "bar" + (amps > rated ? " over" : ""), "aria-hidden": "true" }, fill);
}

function cellOf(panel, slot, load) {
  const phase = panel.slot_phases[slot - 1], reserved = panel.reserved_slots.includes(slot);
  const label = load
    ? plain(load.id) + ", slot " + load.slots.join(" ") + ", " + load.phases.join(" ") + ", " + number(load.running_a) + " A" + (load.pinned ? ", pinned" : "")
    : (reserved ? "reserved" : "free") + ", slot " + slot + ", " + phase;
  const data = { key: slotKey(panel.id, slot), panel: panel.id, slot };
  if (load) data.load = load.id;
  return make("button", { type: "button", class: "cell " + (load ? "taken " + load.role : reserved ? "reserved" : "free"), "aria-label": label, title: label, data },
    make("span", { class: "no" }, String(slot)), make("span", { class: "phase" }, load ? load.phases.join("") : phase),
    make("span", { class: "id" }, load ? load.id : reserved ? "reserved" : ""),
    load && load.pinned ? make("span", { class: "pin" }, "◆") : null,
    make("span", { class: "cost" }), load ? make("span", { class: "amps" }, number(load.running_a)) : null);
}

export function place(cell, panel, slot, poles) {
  const row = panel.is_two_sided ? slot + 1 >> 1 : slot;
  cell.style.gridRow = row + " / span " + poles;
  if (panel.is_two_sided) cell.style.gridColumn = slot % 2 ? 1 : 2;
}

function focusOn(cell) {
  if (!cell) return;
  cell.closest(".slots, .outputs, .tray").querySelectorAll("[tabindex='0']").forEach((each) => { each.tabIndex = -1; });
  cell.tabIndex = 0;
  cell.focus({ preventScroll: false });
}

/** Arrows go from slot to slot, Enter picks up and puts down. */
function onKey(event) {
  const cell = event.target.closest(".cell");
  if (!cell) return;
  if (event.key === "Enter" || event.key === " ") {
    event.preventDefault();
    if (held()) putDown(target(cell)); else if (cell.dataset.load) pickUp(cell.dataset.load);
    return;
  }
  const two = cell.parentElement.classList.contains("two"), slot = Number(cell.dataset.slot);
  const poles = cell.style.gridRow.includes("span") ? Number(cell.style.gridRow.split("span ")[1]) || 1 : 1;
  const step = { ArrowDown: two ? 2 * poles : poles, ArrowUp: two ? -2 : -1, ArrowRight: two && slot % 2 ? 1 : 0, ArrowLeft: two && slot % 2 === 0 ? -1 : 0 }[event.key];
  const cells = [...cell.parentElement.children];
  let next = null;
  if (event.key === "Home") next = cells[0];
  else if (event.key === "End") next = cells[cells.length - 1];
  else if (step) {
    const wanted = slot + step, side = (each) => !two || Number(each.dataset.slot) % 2 === Math.abs(wanted) % 2;
    next = cells.filter((each) => side(each) && Number(each.dataset.slot) <= wanted).pop() || null;
  }
  if (step !== undefined || next) event.preventDefault();
  if (next && next !== cell) focusOn(next);
}

/** Loads without a place. */
export function trayView() {
  const tray = make("section", { class: "tray", "aria-label": "Loads without a place", data: { away: "true" } });
  handle(tray);
  tray.addEventListener("keydown", (event) => {
    const cell = event.target.closest("[data-load]");
    if (!cell || event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    if (held()) putDown({ away: true }); else pickUp(cell.dataset.load);
  });
  return {
    element: tray,
    show(sheet) {
      const without = sheet.unplaced;
      tray.replaceChildren(make("h3", {}, "No place yet", make("span", {}, count(without.length, "load"))),
        make("div", { class: "rows" }, ...without.slice(0, 400).map((id) => {
          const load = desk.loads.get(id);
          return make("button", { type: "button", class: "cell taken " + load.role + (desk.chosen === id ? " chosen" : ""), data: { load: id }, "aria-label": plain(id) + ", without a place, " + number(load.running_a) + " A, " + count(load.poles, "pole") },
            make("span", { class: "no" }, load.poles + "p"), make("span", { class: "id" }, id), make("span", { class: "amps" }, number(load.running_a)));
        })),
        pins(sheet),
        make("p", { class: "note" }, without.length ? "Drag a load into a slot. Lifted off here, it loses its place." : "Every load has a place. What is dropped here loses its own."));
    },
  };
}

/** Pins by group, and all of a plan that was issued. */
function pins(sheet) {
  const groups = [...new Set(sheet.loads.map((load) => load.group).filter(Boolean))];
  const of = (id) => sheet.loads.filter((load) => load.group === id && load.panel), placed = sheet.loads.filter((load) => load.panel);
  return make("details", { class: "pins" }, make("summary", {}, "Pins (" + sheet.loads.filter((load) => load.pinned).length + ")"),
    make("p", {}, "All of it, as a revision issued ", pinning("revision", "", placed, { all: true })),
    ...groups.map((id) => make("p", {}, "Group " + plain(id) + " ", pinning("group", id, of(id), { groups: [id] }))));
}
