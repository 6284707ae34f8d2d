// Portfolio: many plans in one table and as pictures, any of them opened onto the desk.

import { ask, complain, refresh, say } from "./wire.js";
import { count, draw, make, number, plain } from "./parts.js";

const STRIP = 260, CHART = [720, 300];
const COLUMNS = [["Project", (lot) => lot.project], ["Variant", (lot) => lot.variant], ["Sound plans", (lot) => -lot.sound], ["Best objective", (lot) => best(lot, "objective")], ["Gap, %", (lot) => best(lot, "gap_pct")], ["Peak, A", (lot) => best(lot, "peak_inrush_a")], ["Unbalance, %", (lot) => best(lot, "supply_imbalance_pct")], ["Last on, s", (lot) => best(lot, "duration_s")], ["Price", (lot) => lot.plans[0].price ?? Infinity]];
const best = (lot, key) => lot.best && lot.best[key] !== null ? lot.best[key] : Infinity;
const keeps = (plan) => plan.objective !== null && plan.hard_rules_broken === 0;
const isSound = (plan) => keeps(plan) && plan.limits_broken === 0;

export function portfolioView() {
  const store = make("select", { id: "store", onchange: () => load() }), find = make("input", { id: "lot-filter", type: "search", autocomplete: "off", oninput: () => paint() });
  const table = make("div", { id: "lots", class: "scroll", tabindex: "0", role: "region", "aria-label": "Projects and variants" }), pictures = make("div", { class: "two-columns" }), detail = make("section", { class: "box", hidden: true, "aria-label": "Plans of one project and variant" }), asks = make("div", { class: "asks", role: "status" });
  const none = make("p", { class: "empty" }, "No portfolio lies in this folder. evenrise portfolio writes one: its folder is found here, or up to three folders deep.");
  const body = make("div", {}, make("div", { class: "tools" }, make("label", {}, "Portfolio ", store), make("label", {}, "Only those with ", find)), asks, table, detail, pictures);
  const element = make("section", { class: "portfolio", "aria-label": "Portfolio" }, make("h2", {}, "Portfolio"), none, body);
  let lots = [], sort = -1, open = null;

  async function load() {
    try {
      const plans = (await ask("/api/portfolio", { store: store.value })).plans, by = new Map();
      plans.forEach((each) => { const key = JSON.stringify([each.project, each.variant]); by.set(key, (by.get(key) || []).concat(each)); });
      lots = [...by.values()].map((list) => {
        const kept = list.filter(keeps).sort((a, b) => a.objective - b.objective || a.seed - b.seed);
        return { project: list[0].project, variant: list[0].variant, plans: list, kept, sound: list.filter(isSound).length, best: kept.find(isSound) || kept[0] || null };
      });
      element.dataset.lots = lots.length;
      open = null;
      asks.replaceChildren();
      paint();
    } catch (refusal) { complain(refusal); }
  }

  const shown = () => {
    const words = find.value.trim().toLowerCase(), some = lots.filter((lot) => (lot.project + " " + lot.variant).toLowerCase().includes(words));
    if (sort >= 0) some.sort((a, b) => { const [x, y] = [COLUMNS[sort][1](a), COLUMNS[sort][1](b)]; return x < y ? -1 : x > y ? 1 : 0; });
    return some;
  };

  function paint() {
    const some = shown(), scale = Math.max(1, 1.1 * Math.max(0, ...lots.map(worst)));
    table.replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, ...COLUMNS.map(([label], i) => make("th", { scope: "col", "aria-sort": sort === i ? "ascending" : "none" }, make("button", { type: "button", class: "link", onclick: () => { sort = sort === i ? -1 : i; paint(); } }, label))), make("th", { scope: "col" }, "Seeds: above the best, 0 to " + number(scale, 1) + " %"), make("td", {}))),
      make("tbody", {}, ...some.slice(0, 1000).map((lot) => make("tr", { class: lot === open ? "chosen" : "" }, make("th", { scope: "row" }, lot.project), make("td", {}, lot.variant), make("td", { class: "n" + (lot.sound ? "" : " bad") }, lot.sound + " of " + lot.plans.length), figure(lot.best, "objective", 2), figure(lot.best, "gap_pct", 2), figure(lot.best, "peak_inrush_a", 1), figure(lot.best, "supply_imbalance_pct", 2), figure(lot.best, "duration_s", 2), figure(lot.plans[0], "price", 2), make("td", {}, strip(lot, scale)),
        make("td", {}, make("button", { type: "button", class: "small", onclick: () => { open = open === lot ? null : lot; paint(); if (open) detail.scrollIntoView({ block: "nearest" }); }, "aria-expanded": String(lot === open) }, "Its plans"))))),
      make("caption", { class: "note" }, count(lots.length, "lot") + (some.length < lots.length ? ", " + some.length + " shown" : "") + ". Best: the least objective of the plans that keep every hard rule, one that breaks no electrical limit before others. Filled marks break no limit, hollow ones do; checks that could not be made are not counted here: a plan's own assessment has them.")));
    plans();
    const projects = new Map();
    some.filter((lot) => lot.best).forEach((lot) => projects.set(lot.project, (projects.get(lot.project) || []).concat(lot)));
    pictures.replaceChildren(...[...projects].filter(([, list]) => list.length > 1).slice(0, 12).map(([project, list]) => make("figure", { class: "box" }, make("figcaption", {}, plain(project) + ": the best plan of each variant"), make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Variants of " + plain(project) }, chart(project, list)))));
  }

  const figure = (plan, key, digits) => make("td", { class: "n" }, plan && plan[key] !== null ? number(plan[key], digits) : "–");

  function plans() {
    detail.hidden = !open;
    if (!open) return;
    detail.replaceChildren(make("h3", {}, plain(open.project) + ", " + plain(open.variant)), make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Plans" }, make("table", { class: "small" }, make("thead", {}, make("tr", {}, ...["Seed", "Objective", "Gap, %", "Peak, A", "Unbalance, %", "Last on, s", "Rules broken", "Limits broken", ""].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...open.plans.map((plan) => make("tr", {}, make("th", { scope: "row" }, String(plan.seed)), ...plan.failure !== null ? [make("td", { colspan: "8", class: "bad" }, plan.failure)] : [figure(plan, "objective", 2), figure(plan, "gap_pct", 2), figure(plan, "peak_inrush_a", 1), figure(plan, "supply_imbalance_pct", 2), figure(plan, "duration_s", 2), figure(plan, "hard_rules_broken", 0), figure(plan, "limits_broken", 0),
        make("td", {}, plan.key === null ? "" : make("button", { type: "button", class: "small", "aria-label": "Open seed " + plan.seed, onclick: () => take(plan, false) }, "Open"))]))))));
  }

  async function take(plan, confirmed) {
    try {
      const answer = await ask("/api/portfolio/open", { store: store.value, key: plan.key, confirmed });
      if (answer.is_opened) { asks.replaceChildren(); await refresh(); say(answer.words + " Undo brings back what was there."); }
      else asks.replaceChildren(make("p", {}, answer.words + " "), make("div", { class: "tools" }, make("button", { type: "button", id: "confirm-open", onclick: () => take(plan, true) }, answer.choice), make("button", { type: "button", onclick: () => asks.replaceChildren() }, "Leave it")));
      if (!answer.is_opened) asks.querySelector("button").focus();
    } catch (refusal) { complain(refusal); }
  }

  let wasAsked = null;
  return { element, async show() {
    try {
      const { stores } = await ask("/api/portfolios"), was = store.value;
      none.hidden = stores.length > 0;
      body.hidden = !stores.length;
      if (stores.join("\n") === wasAsked) return;
      wasAsked = stores.join("\n");
      store.replaceChildren(...stores.map((each) => make("option", { value: each, selected: each === was }, each || "this folder")));
      if (stores.length) load();
    } catch (refusal) { complain(refusal); }
  } };
}

const above = (lot, plan) => lot.kept[0].objective > 0 ? 100 * (plan.objective / lot.kept[0].objective - 1) : 0;
const worst = (lot) => lot.kept.length ? above(lot, lot.kept[lot.kept.length - 1]) : 0;

// The plans of a lot on a line: how far each is above the lot's best.
function strip(lot, scale) {
  const x = (percent) => 8 + (STRIP - 16) * percent / scale;
  return draw("svg", { viewBox: "0 0 " + STRIP + " 22", width: STRIP, height: 22, role: "img", "aria-label": lot.kept.length ? lot.kept.length + " plans, the worst " + number(worst(lot), 2) + " % above the best" : "no plan keeps every hard rule" },
    draw("line", { class: "grid", x1: 8, x2: STRIP - 8, y1: 11, y2: 11 }), ...lot.kept.map((plan) => draw("circle", { class: isSound(plan) ? "sound" : "limits", cx: x(above(lot, plan)).toFixed(1), cy: 11, r: 4 })));
}

// Variants of one project: unbalance against peak of each one's best plan.
function chart(project, lots) {
  const [wide, high] = CHART, peaks = lots.map((lot) => lot.best.peak_inrush_a), most = Math.max(...lots.map((lot) => lot.best.supply_imbalance_pct), 0.1) * 1.15, low = Math.min(...peaks), span = Math.max(...peaks) - low || 1;
  const x = (amps) => 60 + (wide - 240) * (0.06 + 0.88 * (amps - low) / span), y = (percent) => high - 46 - (high - 66) * percent / most;
  const text = (tx, ty, words, anchor = "start") => { const it = draw("text", { x: tx, y: ty, "text-anchor": anchor }); it.textContent = plain(words, 40); return it; };
  const svg = draw("svg", { viewBox: "0 0 " + wide + " " + high, class: "curve", role: "img", "aria-label": "Unbalance against peak of the best plan of " + lots.length + " variants of " + plain(project) + "; the table has the figures" }), taken = [];
  for (const part of [0, 0.25, 0.5, 0.75, 1]) svg.append(draw("line", { class: "grid", x1: 60, x2: wide - 170, y1: y(part * most), y2: y(part * most) }), text(54, y(part * most) + 4, number(part * most, 2), "end"));
  for (const amps of span > 1 ? [low, low + span / 2, low + span] : [low]) svg.append(draw("line", { class: "grid", x1: x(amps), x2: x(amps), y1: 16, y2: high - 46 }), text(x(amps), high - 30, number(amps, 1), "middle"));
  svg.append(text(250, high - 10, "peak at nominal voltage, A", "middle"), text(6, 12, "unbalance, %"));
  lots.forEach((lot) => {
    const at = [x(lot.best.peak_inrush_a), y(lot.best.supply_imbalance_pct)];
    let line = at[1] + 4;
    while (taken.some((each) => Math.abs(each - line) < 13)) line += 14;
    taken.push(line);
    svg.append(draw("circle", { class: isSound(lot.best) ? "sound" : "limits", cx: at[0], cy: at[1], r: 5 }), text(at[0] + 9, line, lot.variant));
  });
  return svg;
}
