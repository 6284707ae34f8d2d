// What a make-up leaves free: slots with what one more load may draw there, outputs of boards, current of panels.

import { ask, complain } from "./wire.js";
import { count, make, number, plain } from "./parts.js";
import { bar, place } from "./panels.js";

/** @param take puts a make-up onto the desk */
export function roomPart(take) {
  const heading = make("h3", { tabindex: "-1" }, "Room left"), body = make("div", {});
  const element = make("section", { class: "box room-left", "aria-label": "Room left", hidden: true }, heading, body);

  async function look(files, called) {
    try {
      const answer = await ask("/api/estimate/makeup", { files });
      element.hidden = false;
      element.dataset.files = files;
      heading.textContent = plain("Room left in " + called + " (" + files + ")", 140);
      body.replaceChildren(make("p", { class: "note" }, "At each free slot what one more load of one pole may draw there, under every rating on the way that is stated. Inrush is not asked: a switched load needs an output and a time as well."),
        make("p", { class: "tools" }, make("button", { type: "button", id: "take-make-up", onclick: () => take(files) }, "Put it on the desk"), make("span", { class: "note" }, "Its panels and boards take the place of the project's; Undo brings those back.")),
        make("div", { class: "panels" }, ...answer.plan.panels.map((panel) => card(panel, answer))), make("h4", {}, "Boards"), make("div", { class: "panels" }, ...answer.boards.map(board)));
      heading.focus({ preventScroll: true });
      element.scrollIntoView({ block: "nearest" });
    } catch (refusal) { complain(refusal); }
  }

  return { element, look };
}

function card(panel, answer) {
  const spare = answer.panels.find((each) => each.panel === panel.id), taken = new Map(), free = new Map();
  answer.plan.loads.filter((load) => load.panel === panel.id).forEach((load) => load.slots.forEach((slot) => taken.set(slot, load)));
  answer.rooms.filter((each) => each.panel === panel.id).forEach((each) => free.set(each.slots[0], each));
  const slots = make("div", { class: "slots" + (panel.is_two_sided ? " two" : ""), role: "list", "aria-label": "Slots of panel " + plain(panel.id) });
  for (let slot = 1; slot <= panel.slots; slot++) {
    const load = taken.get(slot), there = free.get(slot), isReserved = panel.reserved_slots.includes(slot);
    if (load && load.slots[0] !== slot) continue;
    const cell = make("div", { class: "cell " + (load ? "taken " + load.role : there ? "free room" : isReserved ? "reserved" : "free"), role: "listitem", title: there ? plain(there.by, 200) : undefined },
      make("span", { class: "no" }, String(slot)), make("span", { class: "phase" }, load ? load.phases.join("") : panel.slot_phases[slot - 1]), make("span", { class: "id" }, load ? load.id : isReserved ? "reserved" : there ? "free" : "free, no current left"),
      there ? make("span", { class: "cost" }, "≤ " + number(Math.floor(there.up_to_a * 10) / 10) + " A") : null);
    place(cell, panel, slot, load ? load.slots.length : 1);
    slots.append(cell);
  }
  return make("article", { class: "panel", "aria-label": "Panel " + plain(panel.id) }, make("h3", {}, panel.id, make("span", {}, spare.free_slots + " of " + panel.slots + " slots free · " + spare.asked_slots + " asked")), slots,
    make("dl", {}, ...panel.phases.map((phase, i) => make("div", {}, make("dt", {}, phase), bar(panel.running_a[i], panel.rated_a), make("dd", {}, number(panel.running_a[i]) + " A"), make("dd", { class: "peak" }, "of " + number(panel.rated_a, 0))))),
    make("p", { class: "note" }, spare.asked_pct > 0 ? number(spare.asked_pct, 0) + " % of the allowed running current is asked to stay free." : "No current is asked to stay free."));
}

function board(each) {
  const free = each.outputs - each.used;
  return make("article", { class: "board", "aria-label": "Board " + plain(each.board) }, make("h3", {}, each.board, make("span", {}, each.type + " in " + each.panel)),
    make("div", { class: "outputs", "aria-hidden": "true" }, ...Array.from({ length: each.outputs }, (_, i) => make("i", { class: i < each.used ? "used" : i < each.used + each.asked_outputs ? "asked" : "" }))),
    make("p", { class: "note" }, free + " of " + count(each.outputs, "output") + " free, " + each.asked_outputs + " asked"));
}
