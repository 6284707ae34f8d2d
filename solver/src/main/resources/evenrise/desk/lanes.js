// Time: the current of the supply above, every board a lane below, on one axis.

import { act } from "./wire.js";
import { draw, make, number, plain, shortened } from "./parts.js";
import { settings } from "./boards.js";
import { choose } from "./hand.js";

const LEFT = 128, WIDE = 1000, CURVE = 190, LANE = 26, DASHES = ["", "8 3", "2 3"];

export function timeView() {
  const region = make("section", { class: "time", "aria-label": "Time" });
  return {
    element: region,
    show(sheet) {
      const focus = document.activeElement && document.activeElement.dataset.lane;
      const end = Math.max(1, sheet.metrics.duration_s * 1.05 + 0.5);
      const x = (seconds) => LEFT + (WIDE - LEFT - 10) * seconds / end;
      region.replaceChildren(make("h2", {}, "Time"), curve(sheet, x, end), lanes(sheet, x, end),
        make("p", { class: "note" }, "Above: current of the supply by the envelopes at nominal voltage, instantaneous, every load as early and as strong as it may come; phases by dashes. Below: drag a board's mark to another start delay that it offers, or an output with a time of its own to another time; by keyboard, left and right on the mark."));
      if (focus) { const same = region.querySelector("[data-lane=" + CSS.escape(focus) + "]"); if (same) same.focus(); }
    },
  };
}

function axis(x, end, height) {
  const step = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500].find((each) => end / each <= 12) || 1000;
  const marks = [];
  for (let at = 0; at <= end; at += step) {
    marks.push(draw("line", { class: "grid", x1: x(at), x2: x(at), y1: 14, y2: height }), text(x(at), 10, at + " s", "middle"));
  }
  return marks;
}

function text(x, y, words, anchor = "start", kind = "") {
  const element = draw("text", { x, y, "text-anchor": anchor, class: kind });
  element.textContent = plain(words, 40);
  return element;
}

function curve(sheet, x, end) {
  const most = Math.max(1, ...sheet.curves.map((each) => Math.max(...each.amps)));
  const y = (amps) => CURVE - 12 - (CURVE - 34) * amps / most;
  const picture = draw("svg", { viewBox: "0 0 " + WIDE + " " + CURVE, class: "curve", role: "img",
    "aria-label": "Current of the supply over time; the peak is " + number(sheet.metrics.peak_inrush_a) + " A on phase " + sheet.metrics.peak_phase + " at " + number(sheet.metrics.peak_at_s, 2) + " s" });
  picture.append(...axis(x, end, CURVE - 12), text(LEFT - 8, y(most) + 4, number(most, 0) + " A", "end"), text(LEFT - 8, y(0) + 4, "0 A", "end"));
  sheet.curves.filter((each) => each.system === sheet.curves[0].system).forEach((each) => {
    const points = each.seconds.map((at, i) => [at, each.amps[i]]).filter(([at]) => at <= end).map(([at, amps]) => x(at).toFixed(1) + " " + y(amps).toFixed(1));
    picture.append(draw("path", { class: "phase p" + sheet.phases.indexOf(each.phase), d: "M" + points.join("L"), "stroke-dasharray": DASHES[sheet.phases.indexOf(each.phase)] || "none" }));
  });
  sheet.phases.forEach((phase, i) => picture.append(
    draw("path", { class: "phase p" + i, d: "M" + (WIDE - 170 + i * 55) + " 26h26", "stroke-dasharray": DASHES[i] || "none" }), text(WIDE - 140 + i * 55, 30, phase)));
  return make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Current over time" }, picture);
}

function lanes(sheet, x, end) {
  const height = 20 + LANE * sheet.boards.length;
  const picture = draw("svg", { viewBox: "0 0 " + WIDE + " " + height, class: "lanes" });
  picture.append(...axis(x, end, height));
  const rows = new Map(sheet.boards.map((board, i) => [board.id, 20 + LANE * i + LANE / 2]));
  sheet.boards.forEach((board) => {
    const y = rows.get(board.id);
    picture.append(draw("line", { class: "lane", x1: LEFT, x2: WIDE - 10, y1: y, y2: y }), text(LEFT - 8, y + 4, shortened(board.id, 19), "end"));
  });
  sheet.boards.forEach((board) => {
    const own = sheet.loads.filter((load) => load.board === board.id && load.on_s !== null).sort((a, b) => a.on_s - b.on_s);
    own.forEach((load, i) => picture.append(tick(board, load, i === 0, x, rows.get(board.id), end)));
  });
  return make("div", {}, make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Boards over time" }, picture),
    make("table", { class: "small" }, make("thead", {}, make("tr", {}, ...["Board", "First on", "Last on", "Setting"].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...sheet.boards.map((board) => {
        const times = sheet.loads.filter((load) => load.board === board.id && load.on_s !== null).map((load) => load.on_s);
        return make("tr", {}, make("th", { scope: "row" }, board.id), make("td", { class: "n" }, times.length ? number(Math.min(...times), 2) + " s" : "–"),
          make("td", { class: "n" }, times.length ? number(Math.max(...times), 2) + " s" : "–"), make("td", {}, settings(board)));
      }))));
}

function tick(board, load, isFirst, x, y, end) {
  const each = board.is_timed_by_output, moves = each || isFirst;
  const mark = draw("g", moves
    ? { class: "tick moves", tabindex: "0", role: "slider", data: { lane: each ? load.id : board.id }, "aria-label": (each ? plain(load.id) : "Start of " + plain(board.id)), "aria-valuenow": load.on_s, "aria-valuemin": 0, "aria-valuemax": end, "aria-valuetext": number(load.on_s, 2) + " s" }
    : { class: "tick" },
  draw("line", { x1: x(load.on_s), x2: x(load.on_s), y1: y - 8, y2: y + 8 }), draw("circle", { cx: x(load.on_s), cy: y, r: moves ? 6 : 3.5 }));
  const title = draw("title");
  title.textContent = plain(load.id) + ", " + number(load.on_s, 2) + " s";
  mark.append(title);
  mark.addEventListener("click", () => choose(load.id));
  if (moves) movable(mark, board, load, x);
  return mark;
}

// The mark follows the pointer and goes to the nearest time that the board offers.
function movable(mark, board, load, x) {
  const seconds = (event) => {
    const box = mark.ownerSVGElement.getBoundingClientRect();
    const unit = x(1) - x(0);
    return ((event.clientX - box.left) * WIDE / box.width - LEFT) / unit;
  };
  const go = (to) => {
    if (board.is_timed_by_output) return act("/api/move", { load: load.id, on_s: Math.max(0, to) }, plain(load.id) + " is set anew.");
    const wanted = board.delay_s + to - load.on_s;
    const delay = board.delays_s.reduce((best, each) => Math.abs(each - wanted) < Math.abs(best - wanted) ? each : best);
    return delay === board.delay_s ? null : act("/api/setting", { board: board.id, start_delay_s: delay, step_s: board.step_s }, plain(board.id) + " starts after " + delay + " s.");
  };
  let from = null;
  mark.addEventListener("pointerdown", (event) => { from = seconds(event); mark.setPointerCapture(event.pointerId); });
  mark.addEventListener("pointermove", (event) => { if (from !== null) mark.setAttribute("transform", "translate(" + (x(seconds(event)) - x(from)) + ")"); });
  mark.addEventListener("pointerup", (event) => {
    const by = from === null ? 0 : seconds(event) - from;
    from = null;
    mark.removeAttribute("transform");
    if (Math.abs(x(by) - x(0)) > 3) go(load.on_s + by);
  });
  mark.addEventListener("keydown", (event) => {
    const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
    if (!way) return;
    event.preventDefault();
    if (board.is_timed_by_output) { go(load.on_s + way * 0.5); return; }
    const offered = [...board.delays_s].sort((a, b) => a - b), next = offered[offered.indexOf(board.delay_s) + way];
    if (next !== undefined) go(load.on_s + next - board.delay_s);
  });
}
