// What if: scenes, something that happens, a plant that is otherwise, room for one more load.

import { ask, complain, desk, redraw, say } from "./wire.js";
import { count, make, number, plain, signed } from "./parts.js";

const PLAYED = [["", "an ordinary day"], ["system-on", "on"], ["system-off", "off"], ["emergency", "emergency"], ["release", "release"], ["mains=0", "mains gone"], ["mains=100", "mains back"], ["mains=70", "mains at 70 %"], ["board-dead", "a board dies"], ["board-back", "it is back"], ["trip", "a feeder trips"], ["reset", "it is reset"], ["stays-closed", "a breaker stays closed"], ["stays-open", "a breaker stays open"]];
const ABOUT = { "board-dead": "boards", "board-back": "boards", trip: "panels", reset: "panels", "stays-closed": "loads", "stays-open": "loads" };
const STEP_MILLIS = 700;

export function supposeView() {
  const element = make("section", { class: "supposing", "aria-label": "What if" }, make("h2", {}, "What if"));
  const parts = [room(), scenes(), events(), otherwise()];
  element.append(...parts.map((each) => each.element));
  return { element, show(sheet) { parts.forEach((each) => each.show(sheet)); } };
}

const box = (title, words, ...children) => make("section", { class: "box" }, make("h3", {}, title), make("p", { class: "note" }, words), ...children);
const wide = (label, table) => make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": label }, table);
const choices = (select, ids) => { const was = select.value; select.replaceChildren(...ids.map((each) => make("option", { value: each }, each))); if (ids.includes(was)) select.value = was; };

function room() {
  const amps = make("input", { id: "room-amps", type: "number", min: "0", step: "0.1", value: "8" }), poles = make("select", { id: "room-poles" }, ...[1, 2, 3].map((each) => make("option", {}, each)));
  const switched = make("input", { id: "room-switched", type: "checkbox" }), out = make("div", { class: "out" });
  async function look() {
    try {
      const answer = await ask("/api/room", { amps: Number(amps.value) || 0, poles: Number(poles.value), switched: switched.checked });
      desk.room = { revision: answer.revision, places: answer.places };
      const panels = new Map();
      answer.places.forEach((each) => panels.set(each.panel, (panels.get(each.panel) || []).concat(each)));
      out.replaceChildren(answer.places.length ? wide("Panels with room", make("table", { class: "small" }, make("thead", {}, make("tr", {}, ...["Panel", "Places", "Most, A", "Limited by", "Feeder"].map((each) => make("th", { scope: "col" }, each)))),
        make("tbody", {}, ...[...panels].map(([id, places]) => make("tr", {}, make("th", { scope: "row" }, id), make("td", { class: "n" }, String(places.length)), make("td", { class: "n" }, number(Math.floor(places[0].up_to_a * 10) / 10)), make("td", {}, places[0].by), make("td", {}, places[0].counts_feeder ? "counted" : "unknown")))))) : make("p", {}, "No free slot has so much room under ratings, feeders and neutrals."),
      make("p", {}, make("a", { href: "#plan" }, "Show it on the panels")));
      redraw();
    } catch (refusal) { complain(refusal); }
  }
  return { element: box("Room for one more load", "Counted are free slots, ratings, each feeder's device and cable where they are stated, and neutrals at the worst use of their loads. Voltage drop, inrush, order and outputs are not: make a new plan.",
    make("div", { class: "tools" }, make("label", {}, "Amperes ", amps), make("label", {}, "Poles ", poles), make("label", {}, switched, " switched"), make("button", { type: "button", id: "room", onclick: look }, "Where?")), out), show() {} };
}

function scenes() {
  const select = make("select", { id: "scene", onchange: () => draw() }), out = make("div", { class: "out" });
  let uses = [], of = 0;
  function draw() {
    const use = uses[Number(select.value)] || uses[0];
    if (!use) return;
    out.replaceChildren(wide("What points carry in the scene", make("table", { class: "small" }, make("thead", {}, make("tr", {}, ...["", "Phase by phase, A", "Greatest", "Rated"].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...use.points.map((point) => {
        const most = Math.max(...point.running_a, 0), fill = make("i");
        fill.style.transform = "scaleX(" + Math.min(1, point.rated_a ? most / point.rated_a : 0) + ")";
        return make("tr", {}, make("th", { scope: "row" }, point.id), make("td", {}, point.phases.map((phase, i) => phase + " " + number(point.running_a[i])).join(", ")),
          make("td", {}, make("span", { class: "bar" + (most > point.rated_a ? " over" : ""), "aria-hidden": "true" }, fill), " " + number(most) + " A"), make("td", { class: "n" }, number(point.rated_a, 0) + " A"));
      })))));
  }
  return { element: box("Scenes", "What every point carries in one use of the plant, rms by phase, loads' magnitudes added. Scenes are edited among the lists.", make("div", { class: "tools" }, make("label", {}, "Scene ", select)), out),
    async show(sheet) {
      if (of === desk.sheet.revision) return;
      of = desk.sheet.revision;
      try {
        uses = (await ask("/api/scenes")).uses;
        const was = select.value;
        select.replaceChildren(...uses.map((each, i) => make("option", { value: i }, each.id || "all loads in full use")));
        if (was && was < uses.length) select.value = was;
        draw();
      } catch (refusal) { complain(refusal); }
    } };
}

function events() {
  const rows = make("div", { class: "happenings" }), idle = make("input", { id: "play-idle", type: "checkbox" }), out = make("div", { class: "out" });
  const slider = make("input", { id: "play-at", type: "range", min: "0", max: "0", value: "0", "aria-label": "Moment", oninput: () => moment() });
  const now = make("p", { class: "moment", id: "moment", role: "status" }), run = make("button", { type: "button", id: "play-run", onclick: () => (timer ? halt() : go()) }, "Play");
  let played = null, timer = null, sheet = null;
  function row() {
    const word = make("select", { "aria-label": "What happens", onchange: about }, ...PLAYED.map(([value, label]) => make("option", { value }, label))), which = make("select", { "aria-label": "Where", hidden: true });
    const line = make("div", { class: "tools" }, word, which, make("button", { type: "button", onclick: () => { line.remove(); } }, "Take out"));
    function about() {
      const list = ABOUT[word.value];
      which.hidden = !list;
      if (list) choices(which, sheet[list].map((each) => each.id));
    }
    line.word = () => word.value && (word.value + (which.hidden ? "" : "@" + which.value));
    rows.append(line);
    word.focus({ preventScroll: true });
  }
  async function play() {
    halt();
    try {
      played = await ask("/api/play", { events: [...rows.children].map((each) => each.word()).filter(Boolean), idle: idle.checked });
      slider.max = Math.max(0, played.moments.length - 1);
      slider.value = 0;
      out.replaceChildren(make("div", { class: "tools" }, run, slider), now,
        played.findings.length ? make("ul", { class: "findings" }, ...played.findings.slice(0, 100).map((each) => make("li", { class: each.is_broken ? "bad" : "" }, number(each.at_s, 2) + " s: " + each.message))) : make("p", { class: "note" }, "Nothing was found."),
        wide("What followed", make("table", { class: "small" }, make("thead", {}, make("tr", {}, ...["From, s", "What began it", "Closed", "Opened", "Peak of the supply, A", "Limit, A"].map((each) => make("th", { scope: "col" }, each)))),
          make("tbody", {}, ...played.episodes.map((each) => make("tr", {}, make("td", { class: "n" }, number(each.from_s, 2)), make("td", {}, each.text), make("td", { class: "n" }, String(each.closed)), make("td", { class: "n" }, String(each.opened)), make("td", { class: "n" + (each.limit_a !== null && each.bound_a > each.limit_a ? " bad" : "") }, number(each.bound_a)), make("td", { class: "n" }, each.limit_a === null ? "none" : number(each.limit_a, 0))))))));
      moment();
    } catch (refusal) { complain(refusal); }
  }
  function moment() {
    const each = played && played.moments[Number(slider.value)];
    now.textContent = each ? number(each.at_s, 2) + " s: " + plain(each.text, 200) + " · " + count(each.loads_on, "load") + " on · shown: " + each.shown : "";
  }
  function go() {
    if (!played || !played.moments.length) return;
    if (Number(slider.value) >= Number(slider.max)) slider.value = 0;
    run.textContent = "Hold";
    timer = setInterval(() => { if (Number(slider.value) >= Number(slider.max) || !element.isConnected) { halt(); return; } slider.value = Number(slider.value) + 1; moment(); }, STEP_MILLIS);
  }
  function halt() { clearInterval(timer); timer = null; run.textContent = "Play"; }
  const element = box("Something happens", "One after another, each 5 s after all has come to rest. Peaks are bounds at nominal voltage, with the timing tolerance. A rehearsal on paper: the real control is tested on site.",
    rows, make("div", { class: "tools" }, make("button", { type: "button", id: "happens", onclick: () => row() }, "And then…"), make("label", {}, idle, " idle, no show runs"), make("button", { type: "button", id: "play", onclick: play }, "What follows?")), out);
  return { element, show(next) { sheet = next; if (!rows.children.length) { row(); row(); rows.children[0].querySelector("select").value = "system-on"; rows.children[1].querySelector("select").value = "emergency"; document.activeElement.blur(); } } };
}

function otherwise() {
  const without = make("select", { id: "if-without" }), full = make("select", { id: "if-full" }), amps = make("input", { id: "if-amps", type: "number", min: "0.1", step: "0.1", placeholder: "none" }), poles = make("select", { id: "if-poles" }, ...[1, 2, 3].map((each) => make("option", {}, each)));
  const at = make("select", { id: "if-at" }), limit = make("input", { id: "if-limit", type: "number", min: "1", placeholder: "as it is" }), most = make("input", { id: "if-most", type: "number", min: "0", placeholder: "any" }), seconds = make("input", { id: "if-seconds", type: "number", min: "1", max: "600", value: "5" }), out = make("div", { class: "out" });
  async function look() {
    const body = { time_s: Number(seconds.value) || 5, added_poles: Number(poles.value), limited_at: at.value };
    if (without.value) body.without = without.value;
    if (full.value) body.full = full.value;
    if (amps.value) body.added_a = Number(amps.value);
    if (limit.value) body.limit_a = Number(limit.value);
    if (most.value) body.most_moved = Number(most.value);
    out.replaceChildren(make("p", { role: "status" }, "Looking for the best plan of that plant…"));
    try {
      const a = await ask("/api/suppose", body), row = (label, pick, digits, unit) => make("tr", {}, make("th", { scope: "row" }, label), make("td", { class: "n" }, number(pick(a.before), digits) + unit), make("td", { class: "n" }, number(pick(a.after), digits) + unit), make("td", { class: "n" }, signed(pick(a.after) - pick(a.before), digits)));
      out.replaceChildren(make("p", { class: a.violations.length || a.impossible.length ? "bad" : "" }, a.impossible.length ? "No plan can keep: " + a.impossible.join(" ") : a.violations.length ? "The best plan found breaks " + count(a.violations.length, "rule") + ": " + a.violations.slice(0, 3).map((each) => each.message).join(" ") : "A plan that keeps every hard rule was found."),
        wide("Figures of both", make("table", { class: "small" }, make("thead", {}, make("tr", {}, ...["", "As it is", plain(a.supposed.join(", "), 120), "Difference"].map((each) => make("th", { scope: "col" }, each)))),
          make("tbody", {}, row("Objective", (m) => m.objective, 1, ""), row("Peak", (m) => m.peak_inrush_a, 1, " A"), row("Unbalance", (m) => m.supply_imbalance_pct, 2, " %"), row("Neutral", (m) => m.supply_neutral_a, 1, " A"), row("Last on", (m) => m.duration_s, 2, " s")))));
    } catch (refusal) { out.replaceChildren(); complain(refusal); }
  }
  return { element: box("The plant is otherwise", "Plans it anew from the plan on the desk, for some seconds. Nothing on the desk changes.",
    make("div", { class: "tools" }, make("label", {}, "Without panel ", without), make("label", {}, "Full panel ", full), make("label", {}, "One more load, A ", amps), make("label", {}, "Poles ", poles), make("label", {}, "Inrush limit of ", at), make("label", {}, "A ", limit)),
    make("div", { class: "tools" }, make("label", {}, "Moves at most ", most), make("label", {}, "Seconds ", seconds), make("button", { type: "button", id: "suppose", onclick: look }, "What would become of it?")), out),
  show(sheet) {
    const ids = sheet.panels.map((each) => each.id);
    for (const select of [without, full]) { const was = select.value; select.replaceChildren(make("option", { value: "" }, "none"), ...ids.map((each) => make("option", { value: each }, each))); select.value = ids.includes(was) ? was : ""; }
    choices(at, ["supply", ...ids]);
  } };
}
