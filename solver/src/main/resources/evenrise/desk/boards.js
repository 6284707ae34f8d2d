// Boards as lists of their outputs, in the order in which they come on.

import { act, desk } from "./wire.js";
import { make, number, plain } from "./parts.js";
import { pinning } from "./panels.js";
import { handle, held, mark, outputKey, pickUp, putDown, target } from "./hand.js";

const drawn = new Map();

export function boardsView() {
  const region = make("section", { class: "boards", "aria-label": "Boards" });
  handle(region);
  region.addEventListener("keydown", onKey);
  drawn.clear();
  return {
    element: region,
    show(sheet) {
      const on = new Map(sheet.boards.map((board) => [board.id, new Map()]));
      sheet.loads.forEach((load) => load.board && on.has(load.board) && on.get(load.board).set(load.output, load));
      sheet.boards.forEach((board) => {
        const loads = on.get(board.id), look = JSON.stringify([board, [...loads.entries()].map(([output, load]) => [output, load.id, load.on_s, load.pinned])]);
        const known = drawn.get(board.id);
        if (known && known.look === look && known.card.isConnected) return;
        const focus = known && known.card.contains(document.activeElement) && (document.activeElement.dataset.key || document.activeElement.dataset.part);
        const card = cardOf(board, loads);
        if (known && known.card.isConnected) known.card.replaceWith(card); else region.append(card);
        drawn.set(board.id, { look, card });
        if (focus) { const same = card.querySelector("[data-key=" + CSS.escape(focus) + "], [data-part=" + CSS.escape(focus) + "]"); if (same) { same.tabIndex = 0; same.focus(); } }
      });
      const ids = new Set(sheet.boards.map((board) => board.id));
      for (const [id, each] of drawn) if (!ids.has(id)) { each.card.remove(); drawn.delete(id); }
      region.querySelectorAll(".chosen").forEach((cell) => cell.classList.remove("chosen"));
      if (desk.chosen) region.querySelectorAll("[data-load=" + CSS.escape(desk.chosen) + "]").forEach((cell) => cell.classList.add("chosen"));
      mark();
    },
  };
}

/** Selects for what a board's type offers. */
export function settings(board) {
  if (board.is_timed_by_output) return make("span", { class: "note" }, "each output has a time of its own");
  const chosen = { delay: board.delay_s, step: board.step_s };
  const select = (part, label, offered) => make("label", {}, label + " ", make("select", {
    data: { part },
    onchange: (event) => {
      chosen[part] = Number(event.target.value);
      act("/api/setting", { board: board.id, start_delay_s: chosen.delay, step_s: chosen.step }, plain(board.id) + " is set anew.");
    },
  }, ...offered.map((seconds) => make("option", { value: seconds, selected: seconds === chosen[part] }, seconds + " s"))));
  return make("span", { class: "settings" }, select("delay", "Delay", board.delays_s), select("step", "Step", board.steps_s));
}

function cardOf(board, loads) {
  const list = make("ol", { class: "outputs" });
  for (let output = 1; output <= board.outputs; output++) {
    const load = loads.get(output);
    const label = "output " + output + (load ? ", " + plain(load.id) + (load.on_s === null ? "" : ", on at " + number(load.on_s, 2) + " s") : ", free");
    const data = { key: outputKey(board.id, output), board: board.id, output };
    if (load) data.load = load.id;
    const cell = make("button", { type: "button", class: "cell " + (load ? "taken " + load.role : "free"), "aria-label": label, title: label, data, tabindex: output === 1 ? 0 : -1 },
      make("span", { class: "no" }, String(output)), make("span", { class: "id" }, load ? load.id : ""), make("span", { class: "cost" }),
      load && load.on_s !== null ? make("span", { class: "amps" }, number(load.on_s, 2) + " s") : null);
    list.append(make("li", {}, cell));
  }
  return make("article", { class: "board", "aria-label": "Board " + plain(board.id) },
    make("h3", {}, board.id, pinning("board", board.id, [...loads.values()], { boards: [board.id] }), make("span", {}, "in " + plain(board.panel) + (board.after ? ", after " + plain(board.after) : ""))), settings(board), list);
}

function onKey(event) {
  const cell = event.target.closest(".cell");
  if (!cell) return;
  if (event.key === "Enter" || event.key === " ") {
    event.preventDefault();
    if (held()) putDown(target(cell)); else if (cell.dataset.load) pickUp(cell.dataset.load);
    return;
  }
  const cells = [...cell.closest(".outputs").querySelectorAll(".cell")], at = cells.indexOf(cell);
  const next = { ArrowDown: cells[at + 1], ArrowUp: cells[at - 1], Home: cells[0], End: cells[cells.length - 1] }[event.key];
  if (!next) return;
  event.preventDefault();
  cells.forEach((each) => { each.tabIndex = -1; });
  next.tabIndex = 0;
  next.focus();
}
