// Events: a script put together on a time axis, played on panels and curves, each finding at its moment.

import { ask, complain, desk, say } from "./wire.js";
import { count, draw, make, number, plain } from "./parts.js";
import { chanceBox } from "./chance.js";

const LANES = [["mains", "Mains"], ["commands", "Commands"], ["emergency", "Emergency"], ["feeds", "Panels, sources"], ["faults", "Boards, breakers"]];
// Word, how it is told, its lane, what it is about, its number.
const KINDS = [["mains", "mains at", "mains", "points", ["voltage_pct", "%", 0, 200]], ["system-on", "on", "commands", "systems"], ["system-off", "off", "commands", "systems"], ["group-on", "group on", "commands", "groups"], ["group-off", "group off", "commands", "groups"], ["lock", "lock", "commands"], ["unlock", "unlock", "commands"],
  ["emergency", "emergency", "emergency", "systems"], ["release", "release", "emergency", "systems"], ["trip", "a feeder trips", "feeds", "nodes"], ["reset", "it is closed again", "feeds", "nodes"], ["transfer", "goes to its alternate", "feeds", "nodes"], ["transfer-back", "goes back", "feeds", "nodes"], ["neutral-lost", "its neutral is lost", "feeds", "nodes"],
  ["board-dead", "a board dies", "faults", "boards"], ["board-back", "it works again", "faults", "boards"], ["stays-closed", "no longer opens", "faults", "loads"], ["stays-open", "no longer closes", "faults", "loads"], ["late", "closes late by", "faults", "loads", ["by_s", "s", 1, 3600]], ["early", "closes early by", "faults", "loads", ["by_s", "s", 1, 3600]], ["mended", "is mended", "faults", "loads"]];
const FIELDS = { points: "node", nodes: "node", systems: "system", groups: "group", boards: "board", loads: "load" };
const kind = (word) => KINDS.find((each) => each[0] === word);
const LEFT = 118, WIDE = 1000, LANE = 30, CURVE = 170, STEP_MILLIS = 350, MOST_LOADS = 3000;

export function eventsView() {
  let rows = [{ event: "system-on", at: 0 }, { event: "mains", number: 0 }, { event: "mains", number: 100 }, { event: "emergency" }, { event: "release" }];
  let played = null, ids = null, timer = null, steps = [];
  const idle = make("input", { id: "script-idle", type: "checkbox", onchange: () => play() }), node = make("select", { id: "script-node", onchange: () => play() });
  const name = make("input", { id: "script-name", maxlength: "60", autocomplete: "off" }), kept = make("select", { id: "script-kept" });
  const axis = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "The script over time" }), list = make("tbody"), parts = make("div", { class: "part-list" }), wall = make("div", { class: "minis" });
  const slider = make("input", { id: "moment-at", type: "range", min: "0", max: "0", value: "0", "aria-label": "Moment", oninput: () => moment() }), now = make("p", { class: "moment", id: "now", role: "status" });
  const run = make("button", { type: "button", id: "script-run", onclick: () => (timer ? halt() : go()) }, "Play"), findings = make("ul", { class: "findings" });
  const chance = chanceBox();
  const element = make("section", { class: "events", "aria-label": "Events" }, make("h2", {}, "Events"),
    make("p", { class: "note" }, "Click into a lane and something happens there; drag a mark to another time, or take it with Tab and use left and right, Delete to take it out. Without a time it happens 5 s after all has come to rest. A rehearsal on paper by the plan's own timing: the real control is tested on site, and an emergency input in a plan is no life-safety system."),
    axis, make("div", { class: "tools" }, run, make("button", { type: "button", id: "script-back", onclick: () => step(-1) }, "Before"), slider, make("button", { type: "button", id: "script-next", onclick: () => step(1) }, "Next"), make("label", {}, "Current of ", node), make("label", {}, idle, " idle, no show runs")), now,
    make("div", { class: "two-columns" }, make("section", { class: "box" }, make("h3", {}, "What was found"), findings, parts), make("section", { class: "box" }, make("h3", {}, "Panels at this moment"), make("p", { class: "note" }, "Filled: the breaker is closed. A closed breaker is not proof of a live wire, nor an open one of a dead wire."), wall)),
    make("section", { class: "box" }, make("h3", {}, "Script"), make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Script" }, make("table", { class: "small script" }, make("thead", {}, make("tr", {}, ...["At, s", "What happens", "Where", "How much", ""].map((each) => make("th", { scope: "col" }, each)))), list)),
      make("div", { class: "tools" }, make("button", { type: "button", id: "script-add", onclick: () => { rows.push({ event: "system-off" }); changed(); } }, "And then…"), make("label", {}, "Name ", name), make("button", { type: "button", id: "script-keep", onclick: keep }, "Keep in the folder"), make("label", {}, "Kept scripts ", kept), make("button", { type: "button", id: "script-open", onclick: open }, "Open")), make("p", { class: "note" }, "A kept script is a file NAME.script.json beside the project, which rehearse --script plays as well.")),
    chance.element);

  const body = () => rows.map((row) => {
    const [word, , , about, figure] = kind(row.event), event = { event: word };
    if (row.at !== undefined && row.at !== null) event.at_s = row.at;
    if (about && row.where && !(about === "points" && row.where === "supply")) event[(about === "nodes" && ids.loads.includes(row.where) && !ids.nodes.includes(row.where)) ? "load" : FIELDS[about]] = row.where;
    if (figure) event[figure[0]] = row.number ?? figure[2];
    if (word === "mains" && row.phases) event.phases = row.phases.split(",");
    return event;
  });

  function changed() { paintRows(); play(); }

  async function play() {
    halt();
    try {
      const next = await ask("/api/script/play", { events: body(), idle: idle.checked, node: node.value || "supply" });
      played = next;
      element.dataset.played = String(1 + Number(element.dataset.played || 0));
      const was = node.value;
      node.replaceChildren(...next.nodes.map((each) => make("option", { value: each, selected: each === was }, each)));
      steps = next.steps;
      slider.max = Math.max(0, steps.length - 1);
      if (Number(slider.value) > Number(slider.max)) slider.value = slider.max;
      told();
    } catch (refusal) { played = null; complain(refusal); }
    paint();
    moment();
  }

  function told() {
    findings.replaceChildren(...played.findings.length ? played.findings.slice(0, 200).map((each) => make("li", { class: each.is_broken ? "bad" : "" }, make("button", { type: "button", class: "link", onclick: () => jump(each.at_s) }, number(each.at_s, 2) + " s"), " " + each.message)) : [make("li", { class: "note" }, "Nothing that must not be, in what was played.")]);
    if (played.findings_in_all > played.findings.length) findings.append(make("li", { class: "note" }, "and " + (played.findings_in_all - played.findings.length) + " more"));
    parts.replaceChildren(make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Part by part" }, make("table", { class: "small" }, make("caption", { class: "note" }, "Peaks of " + plain(played.node) + ", instantaneous: as breakers really close, and the bound at nominal voltage with the timing tolerance."), make("thead", {}, make("tr", {}, ...["From, s", "What began it", "Close", "Open", "Peak, A", "Bound, A", "Limit, A"].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...played.parts.map((each) => make("tr", {}, make("td", { class: "n" }, make("button", { type: "button", class: "link", onclick: () => jump(each.from_s) }, number(each.from_s, 2))), make("td", {}, each.text), make("td", { class: "n" }, String(each.closed)), make("td", { class: "n" }, String(each.opened)), make("td", { class: "n" }, make("button", { type: "button", class: "link", onclick: () => jump(each.peak_at_s) }, number(each.peak_a))), make("td", { class: "n" + (each.limit_a !== null && each.bound_a > each.limit_a ? " bad" : "") }, number(each.bound_a)), make("td", { class: "n" }, each.limit_a === null ? "none" : number(each.limit_a, 0))))))));
  }

  const end = () => Math.max(30, played ? played.end_s * 1.03 : 0, ...rows.map((row) => (row.at || 0) + 10));
  const x = (seconds) => LEFT + (WIDE - LEFT - 12) * seconds / end();
  const when = (i) => rows[i].at ?? (played && played.happened[i] && played.happened[i].at_s) ?? null;
  const text = (tx, ty, words, anchor = "start") => { const it = draw("text", { x: tx, y: ty, "text-anchor": anchor }); it.textContent = plain(words, 200); return it; };

  function paint() {
    const high = 18 + LANES.length * LANE, all = high + CURVE + 40, focus = document.activeElement && document.activeElement.dataset && document.activeElement.dataset.row;
    const svg = draw("svg", { viewBox: "0 0 " + WIDE + " " + all, class: "lanes script-axis", role: "group", "aria-label": "The script over time" });
    const size = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000].find((each) => end() / each <= 14) || 5000;
    for (let at = 0; at <= end(); at += size) svg.append(draw("line", { class: "grid", x1: x(at), x2: x(at), y1: 14, y2: all - 26 }), text(x(at), 10, at + " s", "middle"));
    LANES.forEach(([lane, label], k) => {
      const y = 18 + k * LANE, field = draw("rect", { class: "field", x: LEFT, y, width: WIDE - LEFT, height: LANE - 2, data: { lane } });
      field.addEventListener("click", (event) => insert(lane, seconds(svg, event)));
      svg.append(field, text(6, y + 19, label));
    });
    if (played) curve(svg, high + 8);
    let last = 0;
    const ats = rows.map((row, i) => { last = when(i) ?? last + size / 2; return last; });
    const places = wordPlaces(ats);
    rows.forEach((row, i) => svg.append(mark(svg, row, i, ats[i], when(i) !== null, places[i])));
    svg.append(draw("line", { class: "cursor", id: "cursor", y1: 14, y2: all - 26 }));
    axis.replaceChildren(svg);
    if (focus) { const same = svg.querySelector("[data-row='" + focus + "']"); if (same) same.focus(); }
  }

  const seconds = (svg, event) => { const box = svg.getBoundingClientRect(); return Math.max(0, Math.round(((event.clientX - box.left) * WIDE / box.width - LEFT) / ((WIDE - LEFT - 12) / end()) * 10) / 10); };

  // Words of marks that stand close go to the left where there is room, else above and below one another; of a third one they
  // stand in its title alone.
  function wordPlaces(ats) {
    const lane = (i) => kind(rows[i].event)[2], long = (i) => 24 + 7 * told1(rows[i]).length, places = [];
    const right = (i) => x(ats[i]) + (places[i] && places[i].isLeft ? 12 : long(i));
    ats.forEach((at, i) => {
      const others = [...ats.keys()].filter((k) => k !== i && lane(k) === lane(i) && places[k] !== null);
      const near = others.filter((k) => x(ats[k]) - 12 < x(at) + long(i) && x(at) - 12 < right(k));
      const isFreeLeft = x(at) - long(i) > LEFT && others.every((k) => x(ats[k]) > x(at) || right(k) < x(at) - long(i));
      const isTaken = (level) => near.some((k) => places[k] && places[k].level === level);
      places[i] = near.length === 0 ? { level: 4 } : isFreeLeft ? { level: 4, isLeft: true } : !isTaken(-2) ? { level: -2 } : !isTaken(15) ? { level: 15 } : null;
    });
    return places;
  }

  function mark(svg, row, i, at, isKnown, place) {
    const k = LANES.findIndex(([lane]) => lane === kind(row.event)[2]), y = 18 + k * LANE + 14, words = told1(row) + (row.at === undefined || row.at === null ? ", once all is at rest" + (isKnown ? ", here at " + number(at, 1) + " s" : "") : ", " + number(at, 1) + " s");
    const it = draw("g", { class: "happening" + (row.at === undefined || row.at === null ? " floating" : ""), tabindex: "0", role: "slider", "aria-label": told1(row), "aria-valuenow": at, "aria-valuemin": 0, "aria-valuemax": end(), "aria-valuetext": words, data: { row: i } },
      draw("line", { x1: x(at), x2: x(at), y1: y, y2: 18 + LANES.length * LANE + CURVE }), draw("path", { d: "M" + x(at) + " " + (y - 8) + "l8 8l-8 8l-8-8z" }), ...(place === null ? [] : [text(x(at) + (place.isLeft ? -11 : 11), y + place.level, told1(row), place.isLeft ? "end" : "start")]));
    const title = draw("title");
    title.textContent = plain(words, 120);
    it.append(title);
    let from = null, moved = 0;
    it.addEventListener("pointerdown", (event) => { from = seconds(svg, event); moved = 0; it.setPointerCapture(event.pointerId); });
    it.addEventListener("pointermove", (event) => { if (from !== null) { moved = seconds(svg, event) - from; it.setAttribute("transform", "translate(" + (x(moved) - x(0)) + ")"); } });
    it.addEventListener("pointerup", () => { const by = moved; from = null; if (Math.abs(by) > 0.05) put(i, Math.max(0, Math.round((at + by) * 10) / 10)); });
    it.addEventListener("keydown", (event) => {
      const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      if (way) { event.preventDefault(); put(i, Math.max(0, Math.round((at + way * (event.shiftKey ? 10 : 1)) * 10) / 10)); }
      if (event.key === "Delete") { event.preventDefault(); take(i); }
    });
    return it;
  }

  const told1 = (row) => { const [, label, , about, figure] = kind(row.event); return label + (figure ? " " + (row.number ?? figure[2]) + " " + figure[1] : "") + (about && row.where ? " · " + plain(row.where, 24) : "") + (row.phases ? " · " + row.phases : ""); };

  function insert(lane, at) {
    const [word, , , about, figure] = KINDS.find((each) => each[2] === lane), row = { event: word, at };
    if (about && about !== "systems" && about !== "points") row.where = ids[about][0];
    if (figure) row.number = figure[2];
    rows.push(row);
    put(rows.length - 1, at);
  }

  // What has a time stands before what comes later, and keeps its place beside what has none.
  function put(i, at) {
    const known = rows.map((row, k) => when(k)), [row] = rows.splice(i, 1);
    known.splice(i, 1);
    row.at = at;
    const place = known.findIndex((each) => each !== null && each > at);
    rows.splice(place < 0 ? rows.length : place, 0, row);
    if (document.activeElement && document.activeElement.dataset && document.activeElement.dataset.row === String(i)) document.activeElement.dataset.row = String(rows.indexOf(row));
    changed();
  }

  function take(i) { if (rows.length > 1) { rows.splice(i, 1); changed(); } else say("Something has to happen."); }

  function curve(svg, top) {
    const readings = played.readings, limit = played.parts.length ? played.parts[0].limit_a : null;
    const most = Math.max(1, limit || 0, ...readings.flatMap((each) => each.bound_a)), y = (amps) => top + CURVE - 14 - (CURVE - 24) * amps / most;
    svg.append(text(6, top + CURVE / 2, "A, instantaneous"), text(LEFT - 6, y(most) + 4, number(most, 0), "end"), text(LEFT - 6, y(0) + 4, "0", "end"), draw("line", { class: "grid", x1: LEFT, x2: WIDE, y1: y(0), y2: y(0) }));
    readings.forEach((phase, k) => {
      svg.append(draw("path", { class: "reach", d: phase.seconds.map((at, i) => "M" + x(at).toFixed(1) + " " + y(phase.drawn_a[i]).toFixed(1) + "V" + y(phase.bound_a[i]).toFixed(1)).join("") }),
        draw("path", { class: "stem p" + k % 3, d: phase.seconds.map((at, i) => "M" + (x(at) + (k - 1) * 1.2).toFixed(1) + " " + y(0).toFixed(1) + "V" + y(phase.drawn_a[i]).toFixed(1)).join("") }));
    });
    if (limit !== null) svg.append(draw("line", { class: "limit", x1: LEFT, x2: WIDE, y1: y(limit), y2: y(limit) }), text(WIDE - 4, y(limit) - 4, "limit " + number(limit, 0) + " A", "end"));
    played.findings.slice(0, 200).forEach((each) => { const it = draw("path", { class: "found-at" + (each.is_broken ? " bad" : ""), d: "M" + (x(each.at_s) - 5) + " " + (top + CURVE + 12) + "h10l-5 -9z" }); it.addEventListener("click", () => jump(each.at_s)); svg.append(it); });
    svg.append(text(6, top + CURVE + 12, "Findings"), text(LEFT, top + CURVE + 26, "Stems: the current where something closes, opens or returns, phases side by side; pale: up to the bound. Nothing is read between."));
  }

  function at() { return steps[Number(slider.value)]; }
  function moment() {
    const each = at(), cursor = axis.querySelector("#cursor");
    if (cursor) { cursor.setAttribute("x1", x(each ? each.at_s : 0)); cursor.setAttribute("x2", x(each ? each.at_s : 0)); }
    now.textContent = each ? number(each.at_s, 2) + " s: " + plain(each.text, 200) + " · " + count(each.loads_on, "load") + " on · shown: " + each.shown + (each.locked ? ", locked" : "") : "";
    slider.setAttribute("aria-valuetext", now.textContent);
    paintPanels();
  }
  function jump(to) { const i = steps.findIndex((each) => each.at_s >= to - 1e-9); slider.value = i < 0 ? slider.max : i; moment(); }
  function step(by) { slider.value = Number(slider.value) + by; moment(); }
  function go() { if (!steps.length) return; if (Number(slider.value) >= Number(slider.max)) slider.value = 0; run.textContent = "Hold"; timer = setInterval(() => { if (Number(slider.value) >= Number(slider.max) || !element.isConnected) { halt(); return; } step(1); }, STEP_MILLIS); }
  function halt() { clearInterval(timer); timer = null; run.textContent = "Play"; }

  // Closed breakers at the moment, by what closed and opened until then.
  function closed() {
    const on = new Set();
    for (let i = 0; i <= Number(slider.value) && i < steps.length; i++) { if (steps[i].kind === "closes" && steps[i].load) on.add(steps[i].load); if (steps[i].kind === "opens" && steps[i].load) on.delete(steps[i].load); }
    return on;
  }
  function paintPanels() {
    const on = closed(), plan = desk.sheet.plan, byPanel = new Map(plan.panels.map((each) => [each.id, new Map()]));
    plan.loads.slice(0, MOST_LOADS).forEach((load) => load.panel && byPanel.has(load.panel) && load.slots.forEach((slot) => byPanel.get(load.panel).set(slot, load)));
    wall.replaceChildren(...plan.panels.map((panel) => {
      const taken = byPanel.get(panel.id), loads = [...new Set(taken.values())], lit = loads.filter((each) => !each.switched || on.has(each.id)).length;
      return make("figure", { class: "mini" + (panel.is_two_sided ? " two" : "") }, make("figcaption", {}, plain(panel.id, 24), make("span", {}, lit + " of " + loads.length + " closed")), make("div", { class: "mini-slots", "aria-hidden": "true" }, ...Array.from({ length: panel.slots }, (any, i) => {
        const load = taken.get(i + 1);
        return make("i", { class: !load ? "none" : !load.switched ? "always" : on.has(load.id) ? "on" : "off", title: load ? plain(load.id) : "" });
      })));
    }));
  }

  function paintRows() {
    list.replaceChildren(...rows.map((row, i) => {
      const [, , , about, figure] = kind(row.event);
      const time = make("input", { class: "short", type: "number", min: "0", step: "0.1", "aria-label": "At, s", placeholder: "at rest", value: row.at ?? "", onchange: () => { if (time.value === "") { delete row.at; changed(); } else put(i, Math.max(0, Number(time.value))); } });
      const what = make("select", { "aria-label": "What happens", onchange: () => { const [, , , next, n] = kind(what.value); row.event = what.value; delete row.phases; row.where = next && next !== "systems" && next !== "points" ? ids[next][0] : undefined; row.number = n ? n[2] : undefined; changed(); } }, ...KINDS.map(([word, label]) => make("option", { value: word, selected: word === row.event }, label)));
      const offered = about ? about === "nodes" ? [...ids.nodes, ...(["trip", "reset"].includes(row.event) ? ids.loads : [])] : ids[about] : [];
      const where = about ? make("select", { "aria-label": "Where", onchange: () => { row.where = where.value || undefined; changed(); } }, ...(about === "systems" ? [make("option", { value: "" }, "all")] : []), ...offered.map((each) => make("option", { value: each, selected: each === row.where }, each))) : null;
      const amount = figure ? make("input", { class: "short", type: "number", min: "0", max: figure[3], value: row.number ?? figure[2], "aria-label": "How much, " + figure[1], onchange: () => { row.number = Number(amount.value); changed(); } }) : null;
      const phases = row.event === "mains" ? make("select", { "aria-label": "Phases", onchange: () => { row.phases = phases.value || undefined; changed(); } }, make("option", { value: "" }, "all phases"), ...desk.sheet.plan.phases.map((each) => make("option", { value: each, selected: row.phases === each }, each))) : null;
      return make("tr", {}, make("td", {}, time), make("td", {}, what), make("td", {}, where), make("td", {}, amount, figure ? " " + figure[1] + " " : null, phases), make("td", {}, make("button", { type: "button", class: "small", onclick: () => take(i) }, "Take out")));
    }));
  }

  async function keep() {
    try { names((await ask("/api/script/keep", { name: name.value.trim(), events: body() })).names); say("Kept as '" + plain(name.value.trim()) + ".script.json'."); } catch (refusal) { complain(refusal); }
  }
  async function open() {
    if (!kept.value) return;
    try {
      const script = await ask("/api/script/open", { name: kept.value });
      rows = script.events.map((each) => ({ event: each.event, at: each.at_s ?? undefined, where: each.node || each.load || each.board || each.group || each.system || undefined, number: each.voltage_pct ?? each.by_s ?? undefined, phases: each.phases && each.phases.length ? each.phases.join(",") : undefined }));
      name.value = script.name;
      changed();
    } catch (refusal) { complain(refusal); }
  }
  function names(all) { kept.replaceChildren(...all.map((each) => make("option", { value: each }, each))); }

  async function gather(sheet) {
    const of = async (list) => (await ask("/api/list/" + list)).rows.map((row) => row[0]);
    const nodes = [...sheet.panels.map((each) => each.id), ...await of("nodes")];
    ids = { points: ["supply", ...nodes], nodes, systems: await of("systems"), groups: [...new Set(sheet.loads.map((each) => each.group).filter(Boolean))], boards: sheet.boards.map((each) => each.id), loads: sheet.loads.slice(0, MOST_LOADS).map((each) => each.id) };
  }

  let shown = 0;
  return { element, async show(sheet) {
    if (shown === desk.sheet.revision) return;
    shown = desk.sheet.revision;
    try {
      await gather(sheet);
      names((await ask("/api/scripts")).names);
      changed();
      chance.show(sheet, ids.points);
    } catch (refusal) { complain(refusal); }
  } };
}
