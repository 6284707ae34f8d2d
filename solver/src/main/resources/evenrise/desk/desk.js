// The desk: what is the same in every view, and which view is shown.

import { act, ask, complain, desk, listen, onShow, say, show } from "./wire.js";
import { by, make, number, plain } from "./parts.js";
import { drawHolding } from "./hand.js";
import { VIEWS } from "./views.js";
import { begin as beginSteps, turned } from "./steps.js";

const made = new Map();
const view = (name) => VIEWS.find((each) => each.name === name);

by("views").append(...VIEWS.map((each) => make("a", { href: "#" + each.name, data: { words: each.label } }, each.label)));

function current() {
  const name = location.hash.slice(1);
  return view(name) ? name : desk.sheet && !desk.sheet.plan ? "loads" : "plan";
}

/** Puts the view that the address names into the page. */
function turn() {
  const name = current();
  document.body.dataset.view = name;
  if (!made.has(name)) made.set(name, view(name).begin());
  const shown = made.get(name);
  document.querySelectorAll("nav a").forEach((link) => link.hash === "#" + name ? link.setAttribute("aria-current", "page") : link.removeAttribute("aria-current"));
  // On a phone the views stand in one line that is wider than the screen; on a page that is not drawn yet nothing moves.
  const views = document.querySelector("nav"), here = views.querySelector("[aria-current]");
  if (here) views.scrollLeft = here.offsetLeft - views.offsetLeft - (views.clientWidth - here.offsetWidth) / 2;
  const isBlank = !desk.sheet.plan && !view(name).blank;
  if (isBlank) by("work").replaceChildren(make("p", { class: "empty" }, "There is no project in this folder yet. ", make("a", { href: "#loads" }, "Paste an equipment list"), ", or put a project's file there."));
  else {
    if (by("work").firstChild !== shown.element) by("work").replaceChildren(shown.element);
    shown.show(desk.sheet.plan);
  }
  turned(name);
}

function figures(sheet) {
  const plan = sheet.plan;
  document.documentElement.dataset.revision = sheet.revision;
  by("name").textContent = plan ? plain(plan.name) : "evenrise desk";
  document.title = (plan ? plain(plan.name) + " · " : "") + "evenrise desk";
  for (const way of ["undo", "redo"]) {
    const words = sheet[way];
    by(way).disabled = words === null;
    by(way).title = words === null ? "" : (way === "undo" ? "Take back: " : "Make again: ") + plain(words);
    by(way).setAttribute("aria-label", (way === "undo" ? "Undo" : "Redo") + (words === null ? "" : ": " + plain(words)));
  }
  const fact = (term, words, isBad) => make("div", { class: isBad ? "bad" : "" }, make("dt", {}, term), make("dd", {}, words));
  const m = plan && plan.metrics;
  by("figures").replaceChildren(...(plan ? [
    fact("Rules", m.hard_violations ? m.hard_violations + " broken" : "all kept", m.hard_violations > 0),
    fact("Peak at nominal voltage", number(m.peak_inrush_a) + " A on " + m.peak_phase), fact("Unbalance", number(m.supply_imbalance_pct) + " %"), fact("Neutral", number(m.supply_neutral_a) + " A"),
    fact("Last on", number(m.duration_s, 2) + " s"), fact("Placed", plan.loads.length - plan.unplaced.length + " of " + plan.loads.length, plan.unplaced.length > 0), fact("Objective", number(m.objective, 2))] : []));
  by("judged").textContent = plan ? plan.judged ? plain(plan.judged, 400) : "Electrical checks are being made…" : "";
  by("judged").className = plan && (m.hard_violations || plan.judged && plan.judged.includes("broken (")) ? "bad" : "";
  by("caution").textContent = sheet.cautions.slice(0, 3).join(" ");
  by("cautions").replaceChildren(...sheet.cautions.map((each) => make("li", {}, each)));
  by("files").textContent = plain(sheet.folder + " · " + sheet.project_file + ", " + sheet.plan_file + " · evenrise " + sheet.version, 400);
}
let last = 0, before = "";
figures.ofFigures = true;
onShow(figures);
onShow((sheet) => {
  const name = current(), isNew = sheet.revision !== last || name !== before, { redraws, marks } = view(name);
  last = sheet.revision;
  before = name;
  if (isNew ? !made.has(name) || redraws || !sheet.plan : made.has(name) && marks) turn();
});
onShow(drawHolding);

addEventListener("hashchange", () => { say(""); turn(); before = current(); by("work").focus({ preventScroll: true }); scrollTo(0, 0); });
by("undo").addEventListener("click", () => act("/api/undo", {}, "Taken back."));
by("print").addEventListener("click", () => print());
by("redo").addEventListener("click", () => act("/api/redo", {}, "Made again."));
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.target.closest("input, textarea")) return;
  const pressed = event.key.toLowerCase();
  if (pressed === "z" || pressed === "y") {
    event.preventDefault();
    by(pressed === "y" || event.shiftKey ? "redo" : "undo").click();
  }
});
by("steps").addEventListener("click", () => { beginSteps(); scrollTo(0, 0); });
by("look").addEventListener("input", () => {
  const look = by("look").value;
  if (look) document.documentElement.dataset.look = look; else delete document.documentElement.dataset.look;
});

try {
  show(await ask("/api/desk"));
  turn();
  listen();
  document.documentElement.dataset.ready = "true";
} catch (refusal) { complain(refusal); }
