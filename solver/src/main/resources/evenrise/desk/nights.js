// Stages of an order of work over time: nights as windows, what is isolated, which systems and groups are out.

import { draw, make, number, plain } from "./parts.js";

const WIDE = 1000, LEFT = 150, RIGHT = 12, LANE = 26, MOST_LANES = 24;

/**
 * @param choose is told a stage
 * @param move is told a stage and the place that it is to have
 */
export function timeBox(choose, move) {
  const picture = make("div", { class: "scroll nights-of", tabindex: "-1" }), note = make("p", { class: "note" }, "Stages from left to right by their minutes for one crew. Choose one with the arrows; Shift and an arrow moves it, and so does dragging it. ✓ the referee allows every step of it, ✕ it refuses one. Below it what is isolated, and who is out for all of the stage.");
  const element = make("div", {}, picture, note);
  let work = null, at = 0, begins = [], from = null, x = (minutes) => minutes;

  const isRefused = (stage) => stage.refused.length > 0 || stage.steps.some((each) => each.refused.length);

  /** When each stage begins: in its night, else after those before it; without a night left, after all of them. */
  function places() {
    const offsets = [];
    let all = 0;
    work.nights.forEach((night) => { offsets.push(all); all += night.window_min; });
    let late = all;
    begins = work.stages.map((stage) => {
      if (!work.nights.length) return stage.begin_min;
      if (stage.night > 0) return offsets[stage.night - 1] + stage.night_min;
      late += stage.minutes;
      return late - stage.minutes;
    });
    const end = Math.max(1, all, ...work.stages.map((stage, i) => begins[i] + stage.minutes));
    x = (minutes) => LEFT + (WIDE - LEFT - RIGHT) * minutes / end;
    return { offsets, end };
  }

  /** From when to when a panel or a board is isolated in a stage. */
  function isolated(stage, id) {
    const steps = stage.steps.filter((each) => each.dead.includes(id) && each.at_min !== null);
    return steps.length ? [steps[0].at_min, Math.max(...steps.map((each) => each.at_min + each.minutes))] : null;
  }

  function lanes() {
    const dead = [...new Set(work.stages.flatMap((each) => [...each.dead_panels, ...each.dead_boards]))], out = [...new Set(work.stages.flatMap((each) => each.outages))];
    const all = [];
    if (work.stages.some((each) => each.system !== "on")) all.push({ label: "system off", kind: "off", bars: work.stages.map((each) => each.system === "on" ? null : [0, each.minutes]) });
    dead.forEach((id) => all.push({ label: id + " isolated", kind: "dead", bars: work.stages.map((each) => isolated(each, id)) }));
    out.forEach((group) => all.push({ label: group + " out", kind: "out", bars: work.stages.map((each) => each.outages.includes(group) ? [0, each.minutes] : null) }));
    return all;
  }

  function text(tx, ty, words, kind, anchor = "start") {
    const it = draw("text", { x: tx, y: ty, class: kind, "text-anchor": anchor });
    it.textContent = words;
    return it;
  }

  function paint() {
    const { offsets, end } = places(), all = lanes(), shown = all.slice(0, MOST_LANES), top = work.nights.length ? 30 : 8, stagesAt = top, first = stagesAt + 44, high = first + shown.length * LANE + (all.length > shown.length ? 18 : 0) + 26;
    const svg = draw("svg", { viewBox: "0 0 " + WIDE + " " + high, class: "curve", role: "group", "aria-label": "Stages over time" });
    work.nights.forEach((night, i) => {
      const left = x(offsets[i]), wide = x(offsets[i] + night.window_min) - left;
      svg.append(draw("rect", { class: "night", x: left, y: 4, width: wide, height: high - 30 }), text(left + 6, 20, plain("night " + night.number + ": " + number(night.minutes, 0) + " of " + number(night.window_min, 0) + " min, then " + night.morning, Math.max(4, Math.floor(wide / 6.2))), "soft"));
    });
    if (work.left.length) { const left = x(work.nights.reduce((sum, night) => sum + night.window_min, 0)); svg.append(draw("rect", { class: "no-night", x: left, y: 4, width: Math.max(1, WIDE - RIGHT - left), height: high - 30 }), text(left + 6, 20, "no night left", "soft")); }
    const size = [5, 10, 15, 30, 60, 120, 240, 480, 960, 1920, 4800].find((each) => end / each <= 10) || 9600;
    for (let minutes = 0; minutes <= end; minutes += size) svg.append(draw("line", { class: "grid", x1: x(minutes), x2: x(minutes), y1: stagesAt, y2: high - 24 }), text(x(minutes), high - 8, minutes + " min", "soft", minutes ? "middle" : "start"));
    svg.append(text(4, stagesAt + 22, "stages", ""));
    work.stages.forEach((stage, i) => svg.append(block(stage, i, stagesAt)));
    shown.forEach((lane, row) => {
      const y = first + row * LANE;
      svg.append(text(4, y + 15, plain(lane.label, 22), ""), draw("line", { class: "grid", x1: LEFT, x2: WIDE - RIGHT, y1: y + LANE - 3, y2: y + LANE - 3 }));
      lane.bars.forEach((bar, i) => { if (bar) svg.append(draw("rect", { class: "bar-of " + lane.kind + (i === at ? " is" : ""), x: x(begins[i] + bar[0]), y: y + 4, width: Math.max(2, x(begins[i] + bar[1]) - x(begins[i] + bar[0])), height: LANE - 11 })); });
    });
    if (all.length > shown.length) svg.append(text(4, first + shown.length * LANE + 12, "and " + (all.length - shown.length) + " more, in the table below", "soft"));
    picture.replaceChildren(svg);
  }

  function block(stage, i, y) {
    const left = x(begins[i]), wide = Math.max(14, x(begins[i] + stage.minutes) - left - 1), bad = isRefused(stage);
    const words = "Stage " + stage.number + ", " + number(stage.minutes, 0) + " minutes, " + (bad ? "refused" : "allowed") + (stage.locked_out.length ? ", locked out " + stage.locked_out.slice(0, 6).map((each) => plain(each)).join(" ") : "") + (stage.night ? ", night " + stage.night : work.nights.length ? ", no night left" : "");
    const mark = draw("g", { class: "stage" + (bad ? " bad" : "") + (i === at ? " is" : ""), role: "button", tabindex: i === at ? "0" : "-1", "aria-pressed": String(i === at), "aria-label": words, data: { stage: i } }, draw("rect", { x: left, y, width: wide, height: 34, rx: 2 }));
    const title = draw("title");
    title.textContent = words;
    mark.append(title, text(left + 4, y + 21, (bad ? "✕" : "✓") + (wide > 30 ? " " + stage.number : "") + (wide > 90 ? " · " + number(stage.minutes, 0) + " min" : ""), ""));
    mark.addEventListener("click", () => { choose(i); focus(i); });
    mark.addEventListener("pointerdown", (event) => { if (event.button === 0 && event.pointerType !== "touch") from = { stage: i, x: event.clientX, drags: false }; });
    return mark;
  }

  function focus(stage) {
    const mark = picture.querySelector("[data-stage='" + stage + "']");
    if (mark) mark.focus();
  }

  picture.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!event.target.closest(".stage") || !step && event.key !== "Home" && event.key !== "End") return;
    event.preventDefault();
    if (event.shiftKey && step) { move(at, at + step); return; }
    const next = event.key === "Home" ? 0 : event.key === "End" ? work.stages.length - 1 : at + step;
    if (next >= 0 && next < work.stages.length) { choose(next); focus(next); }
  });

  document.addEventListener("pointermove", (event) => {
    if (!from) return;
    if (Math.abs(event.clientX - from.x) > 6) from.drags = true;
    const mark = picture.querySelector("[data-stage='" + from.stage + "']");
    if (from.drags && mark) mark.setAttribute("transform", "translate(" + (event.clientX - from.x) * WIDE / mark.ownerSVGElement.clientWidth + " -3)");
  });
  document.addEventListener("pointerup", (event) => {
    if (!from) return;
    const { stage, drags } = from, svg = picture.querySelector("svg");
    from = null;
    if (!drags || !svg) return;
    const box = svg.getBoundingClientRect(), there = (event.clientX - box.left) * WIDE / box.width;
    // Among the others it comes before the first whose middle is right of the hand.
    const others = work.stages.map((each, i) => i).filter((i) => i !== stage), to = others.findIndex((i) => there < x(begins[i] + work.stages[i].minutes / 2));
    const place = to < 0 ? others.length : to;
    if (place === stage) paint(); else move(stage, place);
  });

  return {
    element,
    focus,
    show(next, stage) {
      const isInside = picture.contains(document.activeElement);
      work = next;
      at = stage;
      picture.hidden = work.stages.length === 0;
      note.hidden = picture.hidden;
      paint();
      if (isInside) focus(at);
    },
  };
}
