// What is dead and what stays live while a stage is worked on, on the tree and in the panels that it changes.

import { ask, complain, desk } from "./wire.js";
import { count, draw, make, plain } from "./parts.js";
import { HIGH, WIDE, lay } from "./tree.js";

export function mapBox() {
  const when = make("p", { class: "moment", id: "zones-when" }), tree = make("div", { class: "trunk zones", tabindex: "0", role: "region", "aria-label": "What is dead and what is live" }), panels = make("div", { class: "drawn-panels" });
  const element = make("div", { class: "map-of" }, make("h3", {}, "Dead and live"), make("p", { class: "note" }, "A drawing of what is to be isolated, by the plan. It does not say that a conductor is dead: test for the absence of voltage, with a tester proven before and after."), when, tree, panels);
  let points = [], revision = 0, stage = null, step = 0;

  async function look() {
    if (revision === desk.sheet.revision) { paint(); return; }
    revision = desk.sheet.revision;
    try { points = (await ask("/api/tree")).points; paint(); } catch (refusal) { complain(refusal); }
  }

  function text(x, y, words, kind) {
    const it = draw("text", { x, y, class: kind });
    it.textContent = plain(words, 30);
    return it;
  }

  function paint() {
    element.hidden = !stage;
    if (!stage) return;
    const moment = stage.steps.find((each) => each.number === step), dead = new Set(moment ? moment.dead : [...stage.dead_panels, ...stage.dead_boards]), below = new Set(moment ? moment.below : stage.below), worked = new Set(stage.panels.map((each) => each.panel));
    when.textContent = plain(moment ? "Stage " + stage.number + ", after step " + moment.number + ": " + (dead.size ? [...dead].join(", ") + " isolated" : "nothing is isolated") + "." : "Stage " + stage.number + ", while the work is done: " + (dead.size ? [...dead].join(", ") + " isolated" : "nothing is isolated as a whole") + ". A step's number shows the moment after it.", 400);
    const { places, width, height } = lay(points), svg = draw("svg", { width, height, viewBox: "0 0 " + width + " " + height, role: "img" });
    const said = [];
    points.filter((each) => each.under !== null).forEach((each) => {
      const a = places.get(each.under), b = places.get(each.id), middle = (a.x + WIDE + b.x) / 2;
      svg.append(draw("path", { class: "wire", d: "M" + (a.x + WIDE) + " " + (a.y + HIGH / 2) + "H" + middle + "V" + (b.y + HIGH / 2) + "H" + b.x }));
    });
    points.forEach((each) => {
      const at = places.get(each.id), isDead = dead.has(each.id), isBelow = below.has(each.id), boards = each.boards.filter((board) => dead.has(board));
      const state = isDead ? "ISOLATED" : isBelow ? "DEAD with what feeds it" : worked.has(each.id) ? "LIVE, work in it" : "live";
      said.push(plain(each.id) + " " + state + (boards.length ? ", boards isolated: " + boards.map((board) => plain(board)).join(" ") : ""));
      svg.append(draw("g", { class: "zone " + (isDead ? "dead" : isBelow ? "below" : worked.has(each.id) ? "worked" : "live"), data: { zone: each.id }, transform: "translate(" + at.x + " " + at.y + ")" }, draw("rect", { width: WIDE, height: HIGH, rx: 2 }), text(8, 18, each.id, "name"), text(8, 38, state, "state"),
        text(8, 56, isDead || isBelow ? each.boards.length ? "with boards " + each.boards.join(" ") : "" : boards.length ? "isolated: " + boards.join(" ") : each.kind, "soft"), text(8, 70, stage.locked_out.length && worked.has(each.id) ? "changed here, see below" : "", "soft")));
    });
    svg.setAttribute("aria-label", said.slice(0, 200).join("; "));
    tree.replaceChildren(svg);
    panels.replaceChildren(...stage.panels.map((each) => drawn(each, dead.has(each.panel) ? "isolated" : below.has(each.panel) ? "dead with what feeds it" : "LIVE")));
  }

  function drawn(panel, state) {
    const locked = new Set(stage.locked_out), standing = new Set(stage.standing_by), changed = panel.slots.filter((each) => each.is_changed || each.is_lead_changed);
    return make("figure", { class: "drawn" + (panel.is_two_sided ? " two" : ""), data: { drawn: panel.panel } }, make("figcaption", {}, make("b", {}, "Panel " + plain(panel.panel)), " " + state + ", after this stage; △ marks what it changes"),
      make("div", { class: "drawn-slots" }, ...panel.slots.map((slot) => make("span", { class: "slot" + (slot.is_changed ? " changed" : slot.is_lead_changed ? " lead" : "") + (locked.has(slot.now) ? " locked" : standing.has(slot.now) ? " standing" : ""), title: slot.changes.join("; ") || undefined },
        make("i", {}, slot.number + " " + slot.line), " " + (slot.is_changed ? "△ " : "") + (slot.first ? slot.now + " (with " + slot.first + ")" : slot.now) + (slot.is_changed ? ", was " + slot.was : "") + (slot.is_lead_changed && !slot.is_changed ? " △ lead" : "")))),
      make("p", { class: "note" }, count(changed.length, "slot") + " changed" + (changed.some((each) => each.changes.length) ? ": " + changed.filter((each) => each.changes.length).map((each) => each.number + " " + each.changes.join(", ")).join("; ") : "") + "."));
  }

  return { element, show(next, number) { stage = next; step = number; look(); } };
}
