// A search in the background: its best objective against what is proven, while the work goes on.

import { act, ask, complain, desk, onEvent, say } from "./wire.js";
import { draw, make, number } from "./parts.js";

const WIDE = 1200, HIGH = 260;

export function searchView() {
  let history = [], view = null, waiting = false, again = false;
  const seconds = make("input", { id: "seconds", type: "number", min: "1", max: "86400", value: "30" });
  const most = make("input", { id: "most", type: "number", min: "0", max: "100000", placeholder: "any" });
  const begin = make("button", { type: "button", id: "begin", onclick: () => start(false) }, "Search");
  const around = make("button", { type: "button", id: "around", onclick: () => start(true) }, "Improve around what I did");
  const stop = make("button", { type: "button", id: "stop", onclick: () => send("/api/search/stop") }, "Stop");
  const take = make("button", { type: "button", id: "take", onclick: take1 }, "Take what it found");
  const facts = make("dl", { class: "found" }), picture = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "The search over time" });
  const element = make("section", { class: "searching", "aria-label": "Search" }, make("h2", {}, "Search"),
    make("p", { class: "note" }, "Begins at the plan on the desk and looks for a better one, while you go on. What is pinned stays. With a number of moves it keeps near what is there: at most so many breakers and leads go elsewhere. Around what you did: every load that you moved since the desk was opened, or since you took a search, stays where you put it. Nothing changes until you take it."),
    make("div", { class: "tools" }, make("label", {}, "Seconds ", seconds), make("label", {}, "Moves at most ", most), begin, around, stop, take), facts, picture);

  async function send(path, body = {}) {
    try { show(await ask(path, body)); } catch (refusal) { complain(refusal); }
  }

  function start(isAround) {
    history = [];
    element.dataset.state = "asked";
    take.disabled = true;
    const body = { time_s: Number(seconds.value) || 30, around_hand: isAround };
    if (most.value !== "") body.most_moved = Number(most.value);
    send("/api/search/begin", body).then(look);
  }

  async function take1() {
    const before = desk.sheet.plan.metrics;
    if (await act("/api/search/take", {})) {
      const now = desk.sheet.plan.metrics;
      say("Taken: objective " + number(before.objective) + " → " + number(now.objective) + ", peak " + number(before.peak_inrush_a) + " → " + number(now.peak_inrush_a) + " A. Undo brings back what was.");
    }
    look();
  }

  // What happens while an answer is on its way is asked for again, or the end of a search would be missed.
  async function look() {
    again = true;
    if (waiting) return;
    waiting = true;
    try {
      while (again) {
        again = false;
        show(await ask("/api/search"));
      }
    } catch (refusal) { complain(refusal); }
    waiting = false;
  }

  function show(next) {
    view = next;
    if (view.objective !== null && (view.state === "running" || history.length)) history.push([view.elapsed_s, view.objective, view.proven_objective, view.hard_violations]);
    begin.disabled = around.disabled = view.state === "running" || !desk.sheet.plan;
    stop.disabled = view.state !== "running";
    take.disabled = view.state !== "found";
    const fact = (term, words) => make("div", {}, make("dt", {}, term), make("dd", {}, words));
    element.dataset.state = view.state;
    facts.replaceChildren(fact("State", { none: "none yet", running: view.words || "running", found: "done", failed: view.words }[view.state]),
      fact("Time", number(view.elapsed_s) + " s"), fact("Moves tried", String(view.moves)),
      fact("Best objective", number(view.objective, 2)), fact("Proven: not below", view.proven_objective > 0 ? number(view.proven_objective, 2) : "–"),
      fact("Its peak", number(view.peak_inrush_a) + " A"), fact("Rules it breaks", view.hard_violations === null ? "–" : String(view.hard_violations)),
      fact("The plan on the desk", (desk.sheet.plan ? number(desk.sheet.plan.metrics.objective, 2) : "–") + (view.state === "none" || view.is_of_now ? "" : ", changed since this search began")));
    drawHistory();
  }

  function drawHistory() {
    if (history.length < 2) { picture.replaceChildren(make("p", { class: "note" }, "Here the search is drawn over time.")); return; }
    const end = history[history.length - 1][0] || 1, sound = history.filter((each) => each[3] === 0), drawn = sound.length > 1 ? sound : history;
    const most = Math.max(...drawn.map((each) => each[1])), least = Math.min(...drawn.map((each) => each[2] > 0 ? each[2] : each[1])), span = most - least || 1;
    const x = (at) => 60 + (WIDE - 70) * at / end, y = (value) => 15 + (HIGH - 40) * (most - value) / span;
    const path = (k) => "M" + drawn.map((each) => x(each[0]).toFixed(1) + " " + y(each[k]).toFixed(1)).join("L");
    // What is proven rises as the search goes on; before the first word of it there is nothing to draw.
    const bound = () => {
      const proven = drawn.filter((each) => each[2] > 0);
      if (!proven.length) return draw("g");
      const from = proven.length > 1 ? proven : [[0, 0, proven[0][2]], proven[0]];
      return draw("path", { class: "bound", d: "M" + from.map((each) => x(each[0]).toFixed(1) + " " + y(each[2]).toFixed(1)).join("L") });
    };
    const words = (at, text) => { const element = draw("text", { x: 54, y: y(at) + 4, "text-anchor": "end" }); element.textContent = text; return element; };
    picture.replaceChildren(draw("svg", { viewBox: "0 0 " + WIDE + " " + HIGH, class: "curve", role: "img", "aria-label": "Best objective over time, from " + number(most) + " to " + number(drawn[drawn.length - 1][1]) },
      words(most, number(most, 0)), words(least, number(least, 0)), draw("path", { class: "phase p0", d: path(1) }), bound()),
    make("p", { class: "note" }, "Solid: the best objective" + (sound.length > 1 ? " of plans that keep every hard rule" : "") + ". Dotted: what no plan can stay below, as far as it is proven."));
  }

  onEvent("search", look);
  return { element, show: look };
}
