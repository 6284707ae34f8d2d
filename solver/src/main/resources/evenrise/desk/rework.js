// Rework: the plan on the desk taken as built, cures of it, the work towards the one chosen, its sheets.

import { act, ask, complain, desk, onEvent, say } from "./wire.js";
import { count, make, number, plain } from "./parts.js";
import { frontBox } from "./front.js";
import { orderBox } from "./order.js";
import { sheetsBox } from "./sheets.js";

export function reworkView() {
  let view = null, at = 0, shown = 0, waiting = false, again = false;
  const field = (id, type, more = {}) => make("input", { id, type, autocomplete: "off", ...more });
  const seconds = field("cure-seconds", "number", { min: "1", max: "86400", value: "30" }), tried = field("cure-moves", "number", { min: "1", placeholder: "by time" }), nights = field("cure-nights", "text", { placeholder: "150, 260" }), live = field("cure-live", "text", { placeholder: "ids, parted by commas" }), most = field("cure-most", "number", { min: "0", max: "1000", placeholder: "any" }), atOnce = field("cure-at-once", "number", { min: "1", max: "1000", value: "1" });
  const keeps = field("cure-keeps", "checkbox"), leaves = field("cure-leaves", "checkbox"), revision = field("cure-revision", "text", { value: "A", maxlength: "20" });
  const readings = make("textarea", { id: "cure-readings", rows: "6", spellcheck: "false", placeholder: "load,phase,running_a,idle_a" });
  const to = make("select", { id: "cure-to", onchange: () => named() }, make("option", { value: "" }, "a search for cures"));
  const was = picked("cure-was", ".json"), spares = picked("cure-spares", ".csv");
  const begin = make("button", { type: "button", id: "cure-begin", onclick: start }, "Search for cures"), stop = make("button", { type: "button", id: "cure-stop", onclick: () => send("/api/cures/stop") }, "Stop");
  const facts = make("dl", { class: "found" }), told = make("ul", { class: "findings" }), headline = make("p", { class: "moment", id: "cure-headline", role: "status" });
  const front = frontBox(choose), order = orderBox((stages) => sheets.show(at, stages)), sheets = sheetsBox();
  const take = make("button", { type: "button", id: "cure-take", onclick: put }, "Put this cure on the desk");
  const taking = make("section", { class: "box" }, make("h3", {}, "On the desk"), make("p", { class: "note" }, "The cure that is chosen takes the place of the plan on the desk, and what was read goes into the project: one change, taken back with Undo. Keep the plan as built under Kept plans first, and write the sheets: on the desk stands what is to be, not what is on the wall."), make("div", { class: "tools" }, take));
  const results = make("div", { hidden: true }, front.element, order.element, sheets.element, taking);
  const element = make("section", { class: "rework", "aria-label": "Rework" }, make("h2", {}, "Rework"),
    make("p", { class: "note" }, "The plan on the desk is taken as it is on the wall. Plans are looked for that keep every hard rule and change as little as possible; nothing on the desk changes until one is put there. A plan does not say that a conductor is dead: isolate, lock out and test."),
    make("section", { class: "box" }, make("h3", {}, "As built, and what was read"),
      make("details", { class: "part", id: "cure-read" }, make("summary", {}, "Readings of a clamp meter"), make("p", { class: "note" }, "A row a load and a phase, pasted or from a file: load, phase, running_a, idle_a. A commissioning sheet that was filled in as CSV, and the file that was saved at the panel, are read as well."), make("label", { class: "wide" }, "Readings ", readings), make("div", { class: "tools" }, make("label", {}, "or a file ", make("input", { id: "cure-file", type: "file", accept: ".csv,.txt,.tsv,.json", onchange: async (event) => { const file = event.target.files[0]; if (file) readings.value = await file.text(); } })))),
      make("details", { class: "part", id: "cure-room" }, make("summary", {}, "Nights, and what they have no room for"), make("div", { class: "tools" }, make("label", {}, "Nights, minutes each ", nights), make("label", {}, "Stays live ", live), make("label", {}, "Groups out at once, at most ", most), make("label", {}, "Loads locked out at once ", atOnce), make("label", {}, keeps, " nothing for which a system goes off"))),
      make("details", { class: "part" }, make("summary", {}, "Gear that is gone or replaced"), make("div", { class: "tools" }, make("label", {}, "Project as it was when built ", was.input), make("label", {}, "Panel schedule with spares, CSV ", spares.input), make("label", {}, leaves, " leave breakers of gear that is gone as spares")), make("p", { class: "note" }, "Without the project as it was nobody knows what gear drew that is gone; then it is out before anything that goes to other lines.")),
      make("div", { class: "tools" }, make("label", { title: "A kept plan is worked towards as it is, whatever it breaks" }, "Work towards ", to), make("label", {}, "Seconds ", seconds), make("label", { title: "A number of moves finds the same each time" }, "or moves tried ", tried), make("label", {}, "Revision on the sheets ", revision), begin, stop), facts, headline, told),
    results);

  function picked(id, accept) {
    const file = { text: "" };
    file.input = make("input", { id, type: "file", accept, onchange: async (event) => { file.text = event.target.files[0] ? await event.target.files[0].text() : ""; } });
    return file;
  }

  /** Towards a plan that is given nothing is searched for. */
  function named() {
    seconds.disabled = tried.disabled = to.value !== "";
    begin.textContent = to.value ? "Put the work in order" : "Search for cures";
  }

  const listed = (input) => input.value.split(/[,;\s]+/).filter(Boolean);

  async function send(path, body = {}) {
    try { show(await ask(path, body)); } catch (refusal) { complain(refusal); }
  }

  function start() {
    element.dataset.state = "asked";
    const body = { ...(tried.value ? { moves: Number(tried.value) } : { time_s: Number(seconds.value) || 30 }), readings: readings.value, was: was.text, spares: spares.text, leaves_spares: leaves.checked, to: to.value, keeps_running: keeps.checked, stay_live: listed(live), nights: listed(nights).map(Number), dead_at_once: Number(atOnce.value) || 1, revision: revision.value || "A" };
    if (most.value !== "") body.most_out = Number(most.value);
    if (body.nights.some((each) => !Number.isFinite(each))) { say("Nights are minutes, parted by commas."); return; }
    send("/api/cures/begin", body).then(look);
  }

  // What happens while an answer is on its way is asked for again, or the end of a search would be missed.
  async function look() {
    again = true;
    if (waiting) return;
    waiting = true;
    try {
      while (again) {
        again = false;
        show(await ask("/api/cures"));
      }
    } catch (refusal) { complain(refusal); }
    waiting = false;
  }

  function show(next) {
    view = next;
    element.dataset.state = view.state;
    if (to.options.length !== view.kept.length + 1 || view.kept.some((each, i) => to.options[i + 1].value !== each)) {
      const before = view.kept.includes(to.value) ? to.value : "";
      to.replaceChildren(make("option", { value: "" }, "a search for cures"), ...view.kept.map((each) => make("option", { value: each }, "kept plan " + plain(each, 60))));
      to.value = before;
      named();
    }
    begin.disabled = view.state === "running" || !desk.sheet.plan;
    stop.disabled = view.state !== "running";
    const fact = (term, words) => make("div", {}, make("dt", {}, term), make("dd", {}, words)), metrics = desk.sheet.plan && desk.sheet.plan.metrics;
    const here = metrics ? (metrics.hard_violations ? count(metrics.hard_violations, "rule") + " broken" : "every rule kept") + ", objective " + number(metrics.objective, 2) : "–";
    facts.replaceChildren(fact("As the project states it", here), ...(view.is_measured && view.built ? [fact("With what was read", (view.built.hard_violations ? count(view.built.hard_violations, "rule") + " broken" : "every rule kept") + ", objective " + number(view.built.objective, 2))] : []),
      fact("Search", { none: "none yet", running: view.words[0] || "running", found: "done", failed: "could not begin" }[view.state]), fact("Time", number(view.elapsed_s) + " s"), fact("Moves tried", String(view.tried)),
      ...(view.state === "running" ? [fact("Best objective so far", number(view.objective, 2)), fact("Rules it breaks", view.hard_violations === null ? "–" : String(view.hard_violations))] : []));
    headline.textContent = plain(view.headline + (view.state === "found" && !view.is_of_now ? " The plan on the desk has changed since: search again." : ""), 600);
    headline.classList.toggle("bad", view.state === "found" && !view.is_of_now);
    told.replaceChildren(...(view.state === "failed" ? view.words.map((each) => make("li", { class: "bad" }, each)) : []), ...view.notes.map((each) => make("li", {}, each)));
    take.disabled = !view.is_of_now;
    results.hidden = view.state !== "found" || view.cures.length === 0;
    if (results.hidden) return;
    if (view.search !== shown) {
      shown = view.search;
      choose(view.chosen);
    } else front.show(view, at);
  }

  async function put() {
    const cure = view.cures[at];
    if (await act("/api/cures/take", { cure: at }, plain(cure.label || cure.moves + " moves", 80) + " is on the desk: " + (cure.hard_violations ? count(cure.hard_violations, "rule") + " broken" : "every rule kept") + ", objective " + number(cure.objective, 2) + ".")) look();
  }

  function choose(next) {
    at = next;
    element.dataset.cure = at;
    front.show(view, at);
    order.choose(at);
  }

  onEvent("cures", look);
  return { element, show() {
    // Another view may have asked for it already.
    if (desk.begins === "cures") { desk.begins = ""; start(); } else look();
  } };
}
