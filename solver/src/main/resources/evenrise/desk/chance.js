// By chance: the envelope of a node over time, and beside it, on the same scale, where the peaks of drawn switch-ons lie.

import { ask, complain, desk } from "./wire.js";
import { draw, make, number, plain } from "./parts.js";

const WIDE = 1000, HIGH = 300, LEFT = 60, CURVE = 640, FAN = 720;

export function chanceBox() {
  const trials = make("input", { id: "trials", type: "number", min: "1", max: "100000", value: "2000" }), seed = make("input", { id: "trials-seed", type: "number", min: "0", value: "1" });
  const node = make("select", { id: "trials-node", onchange: () => look() }), picture = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Envelope and fan" }), table = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Percentiles" });
  const lines = make("pre", { class: "told-lines", tabindex: "0", role: "region", "aria-label": "As the command tells it" }), more = make("details", { class: "part", hidden: true }, make("summary", {}, "As rehearse --trials tells it, with what is to be known of it"), lines);
  let chance = null, curves = null;
  const element = make("section", { class: "box chance" }, make("h3", {}, "By chance"), make("p", { class: "note" }, "Left the envelope of a node over time at nominal voltage, every load as early and as strong as it may come; right, on the same scale, where the peaks of drawn switch-ons lie: closing times, angles, inrush and voltage by chance. The fan is of whole switch-ons, not of each instant. Chance shows what is usual; it is no bound."),
    make("div", { class: "tools" }, make("label", {}, "Switch-ons ", trials), make("label", {}, "Seed ", seed), make("button", { type: "button", id: "draw-trials", onclick: drawTrials }, "Draw by chance"), make("label", {}, "Node ", node)), picture, table, more);

  async function drawTrials() {
    try {
      chance = await ask("/api/chance", { trials: Number(trials.value) || 1, seed: Number(seed.value) || 0 });
      more.hidden = false;
      lines.textContent = chance.lines.map((line) => plain(line, 400)).join("\n");
      element.dataset.trials = chance.trials;
      paint();
      tell();
    } catch (refusal) { complain(refusal); }
  }

  async function look() {
    try {
      curves = await ask("/api/curves", { node: node.value });
      paint();
    } catch (refusal) { complain(refusal); }
  }

  const of = () => chance && chance.nodes.find((each) => each.node === node.value);

  function paint() {
    if (!curves) return;
    const curve = curves.curves.reduce((best, each) => top(each) > top(best) ? each : best), scatter = of();
    const highest = Math.max(1, top(curve), scatter ? Math.max(scatter.range_a, scatter.greatest_a) : 0), limit = scatter && scatter.limit_a !== null ? scatter.limit_a : 0;
    // A limit far above would leave no height for the rest.
    const isLimitDrawn = limit > 0 && limit <= 2 * highest, most = 1.06 * Math.max(highest, isLimitDrawn ? limit : 0), end = Math.max(...curve.phases.map((each) => each.seconds[each.seconds.length - 1]), 1);
    const x = (at) => LEFT + (CURVE - LEFT) * at / end, y = (amps) => 14 + (HIGH - 50) * (1 - amps / most);
    const text = (tx, ty, words, anchor = "start") => { const it = draw("text", { x: tx, y: ty, "text-anchor": anchor }); it.textContent = plain(words, 60); return it; };
    const svg = draw("svg", { viewBox: "0 0 " + WIDE + " " + HIGH, class: "curve", role: "img", "aria-label": "Envelope of " + plain(node.value) + " over time, peak " + number(top(curve)) + " A" + (scatter ? "; half of the switch-ons stayed at or below " + number(scatter.peak_a[0].value) + " A, the greatest was " + number(scatter.greatest_a) + " A" : "") });
    const size = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000].find((each) => most / each <= 7) || 50000;
    for (let amps = 0; amps < most; amps += size) svg.append(draw("line", { class: "grid", x1: LEFT, x2: WIDE - 10, y1: y(amps), y2: y(amps) }), text(LEFT - 6, y(amps) + 4, String(amps), "end"));
    svg.append(text(6, 12, "A"), text(LEFT, HIGH - 20, "0 s"), text(CURVE, HIGH - 20, number(end, 1) + " s", "end"));
    curve.phases.forEach((phase, k) => svg.append(draw("path", { class: "phase p" + k % 3, "stroke-dasharray": ["", "8 3", "2 3"][k % 3], d: "M" + phase.seconds.map((at, i) => x(at).toFixed(1) + " " + y(phase.amps[i]).toFixed(1)).join("L") })));
    const level = (amps, kind, words) => svg.append(draw("line", { class: kind, x1: CURVE + 20, x2: WIDE - 140, y1: y(amps), y2: y(amps) }), text(WIDE - 134, y(amps) + 4, words));
    if (scatter) {
      const widths = [110, 64, 34];
      scatter.peak_a.forEach((each, k) => {
        const low = k === 0 ? y(each.value) : y(scatter.peak_a[k - 1].value), wide = widths[k] || 20;
        svg.append(draw("rect", { class: "fan f" + k, x: FAN - wide / 2, width: wide, y: y(each.value), height: Math.max(1, low - y(each.value)) }), draw("path", { class: "reach", d: "M" + (FAN + 62) + " " + y(each.least) + "V" + y(each.most) + "m-4 0h8M" + (FAN + 58) + " " + y(each.least) + "h8" }));
      });
      spread([...scatter.peak_a.map((each) => [each.value, "P" + each.percent + " " + number(each.value) + " A"]), [scatter.greatest_a, "greatest " + number(scatter.greatest_a) + " A"], [scatter.envelope_a, "envelope " + number(scatter.envelope_a) + " A"], [scatter.range_a, "over range " + number(scatter.range_a) + " A"], ...(isLimitDrawn ? [[limit, "limit " + number(limit, 0) + " A"]] : [])], y).forEach(([amps, words, at]) => svg.append(draw("line", { class: words.startsWith("limit") ? "limit" : words.startsWith("over") ? "bound" : "mean", x1: FAN - 58, x2: WIDE - 146, y1: y(amps), y2: y(amps) }), draw("line", { class: "grid", x1: WIDE - 146, x2: WIDE - 136, y1: y(amps), y2: at }), text(WIDE - 132, at + 4, words)));
      if (limit > 0 && !isLimitDrawn) svg.append(text(WIDE - 10, 12, "limit " + number(limit, 0) + " A, above this picture", "end"));
    } else {
      level(top(curve), "mean", "envelope " + number(top(curve)) + " A");
      svg.append(text(FAN, HIGH - 20, "draw, to see the fan", "middle"));
    }
    picture.replaceChildren(svg, make("p", { class: "note" }, (curve.command ? "As system " + plain(curve.command) + " is commanded, which makes most here. " : "") + (scatter ? (scatter.range_bound ? "No switch-on goes beyond 'over range', and every load states what that rests on." : "'Over range' is what no drawn switch-on exceeds; it is no bound of the plant.") + " Brackets: the interval that holds the true percentile with a confidence of 95 %." : "")));
  }

  function tell() {
    const percent = (list, digits) => list.map((each) => make("td", { class: "n" }, number(each.value, digits) + " [" + number(each.least, digits) + ", " + number(each.most, digits) + "]"));
    const names = chance.nodes[0].peak_a.map((each) => "P" + each.percent), hasDips = chance.nodes.some((each) => each.dip_pct.length);
    table.replaceChildren(make("table", { class: "small" }, make("thead", {}, make("tr", {}, ...["Node", ...names.map((each) => each + ", A"), "Greatest, A", "Envelope, A", "Over range, A", "Limit, A", ...(hasDips ? [...names.map((each) => "dip " + each + ", %"), "Deepest, %"] : [])].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...chance.nodes.slice(0, 500).map((each) => make("tr", {}, make("th", { scope: "row" }, each.node), ...percent(each.peak_a, 1), make("td", { class: "n" }, number(each.greatest_a)), make("td", { class: "n" }, number(each.envelope_a)), make("td", { class: "n" }, number(each.range_a) + (each.range_bound ? "" : " (no bound)")), make("td", { class: "n" + (each.limit_a !== null && each.range_a > each.limit_a ? " bad" : "") }, each.limit_a === null ? "none" : number(each.limit_a, 0)), ...(hasDips ? each.dip_pct.length ? [...percent(each.dip_pct, 2), make("td", { class: "n" }, number(each.deepest_pct, 2))] : names.concat("").map(() => make("td", { class: "n" }, "–")) : [])))),
      make("caption", { class: "note" }, chance.trials + " switch-ons, seed " + chance.seed + (chance.revision === desk.sheet.revision ? "" : "; the plan has changed since: draw anew") + ".")));
  }

  return { element, show(sheet, points) {
    const was = node.value;
    node.replaceChildren(...points.map((each) => make("option", { value: each, selected: each === was }, each)));
    if (chance && chance.revision !== desk.sheet.revision) tell();
    look();
  } };
}

const top = (curve) => Math.max(0, ...curve.phases.flatMap((each) => each.amps));

// Words beside one another's lines, none over another.
function spread(levels, y) {
  const sorted = [...levels].sort((a, b) => b[0] - a[0]);
  let last = -99, lowest = HIGH - 30;
  const placed = sorted.map(([amps, words]) => { last = Math.max(y(amps), last + 13); return [amps, words, last]; });
  for (const each of placed.reverse()) { each[2] = Math.min(each[2], lowest); lowest = each[2] - 13; }
  return placed;
}
