// The order of work towards a cure: stages laid out over time, moved by hand, each step with the referee's word.

import { ask, complain, say } from "./wire.js";
import { count, make, number, plain } from "./parts.js";
import { timeBox } from "./nights.js";
import { mapBox } from "./zones.js";

/** @param laid is told the stages that were laid out by hand; none for the program's order */
export function orderBox(laid) {
  let cure = 0, work = null, at = 0, step = 0, asked = 0, earlier = [];
  const headline = make("p", { class: "moment", id: "order-headline", role: "status" }), facts = make("p", { class: "note", id: "order-facts" });
  const time = timeBox(choose, move), map = mapBox(), about = make("div", { class: "stage-of" }), moves = make("div", { class: "tools", role: "group", "aria-label": "Lay out by hand" });
  const element = make("section", { class: "box order" }, make("h3", {}, "Order of work"), headline, facts, time.element, moves, about, map.element);

  const sets = () => work.stages.map((each) => each.changes);
  const refusals = (stage) => stage.refused.length + stage.steps.filter((each) => each.refused.length).length;
  const isRefused = () => work.refused > 0;

  /** @param stages by their changes; none for the program's order */
  async function look(stages, stage, isFocus) {
    const own = ++asked;
    try {
      const next = await ask("/api/cures/order", { cure, stages: stages.map((changes) => ({ changes })) });
      if (own !== asked) return;
      work = next.work;
      at = Math.max(0, Math.min(stage, work.stages.length - 1));
      step = 0;
      show();
      if (isFocus) time.focus(at);
      laid(work.is_by_hand ? sets() : []);
    } catch (refusal) { complain(refusal); }
  }

  async function lay(stages, stage, what) {
    earlier.push(work.is_by_hand ? sets() : []);
    await look(stages.filter((each) => each.length), stage, what !== "");
    if (what) say(what + ": " + (isRefused() ? "the referee refuses " + count(work.refused, "thing") + "." : "allowed at every step."));
  }

  /** A stage goes to another place among the others. */
  function move(from, to) {
    if (to < 0 || to >= work.stages.length || to === from) return;
    const stages = sets(), [one] = stages.splice(from, 1);
    stages.splice(to, 0, one);
    lay(stages, to, "Stage " + (from + 1) + " is stage " + (to + 1) + " now");
  }

  function send(change, to) {
    const stages = sets().map((each) => each.filter((one) => one !== change));
    if (to < stages.length) stages[to].push(change); else stages.splice(at + 1, 0, [change]);
    lay(stages, to < stages.length ? to : at + 1, plain(work.changes[change]) + " moved");
  }

  function choose(stage) {
    at = stage;
    step = 0;
    show();
  }

  function show() {
    headline.textContent = plain(work.headline, 300);
    headline.classList.toggle("bad", work.is_alarm);
    facts.textContent = plain((work.is_by_hand ? "Laid out by hand. " : "The program's order. ") + work.proven + " "
      + count(work.system_offs, "system") + " off, " + count(work.isolations, "isolation") + ", " + count(work.most_locked_out, "load") + " locked out at once at most, " + count(work.outages, "outage") + " of groups over all stages."
      + (work.out.length ? " Longest out: " + work.out.slice(0, 3).map((each) => each.group + " " + number(each.minutes, 0) + " min").join(", ") + "." : "") + (work.obstacles.length ? " Why a stage is not smaller: " + work.obstacles.join(" ") : ""), 1500);
    time.show(work, at);
    element.dataset.shown = cure + " " + (work.is_by_hand ? "hand " : "own ") + work.stages.map((each) => each.changes.join("+")).join(" ");
    element.dataset.refused = work.refused;
    const stage = work.stages[at];
    if (!stage) { moves.replaceChildren(); about.replaceChildren(make("p", {}, "Nothing is to be done.")); map.show(null, 0); return; }
    tools(stage);
    tell(stage);
    map.show(stage, step);
  }

  const button = (id, words, work1, isOff) => make("button", { type: "button", id, disabled: isOff, onclick: work1 }, words);

  function tools(stage) {
    const focus = moves.contains(document.activeElement) && document.activeElement.id, all = sets(), last = at === all.length - 1;
    moves.replaceChildren(make("b", {}, "Stage " + stage.number + " of " + all.length), button("stage-before", "Stage before", () => choose(at - 1), at === 0), button("stage-next", "Next stage", () => choose(at + 1), last),
      button("stage-earlier", "Earlier", () => move(at, at - 1), at === 0), button("stage-later", "Later", () => move(at, at + 1), last),
      button("stage-join", "Join with the next", () => lay([...all.slice(0, at), [...all[at], ...all[at + 1]], ...all.slice(at + 2)], at, "Stages " + (at + 1) + " and " + (at + 2) + " joined"), last),
      button("stage-part", "Each change by itself", () => lay([...all.slice(0, at), ...all[at].map((each) => [each]), ...all.slice(at + 1)], at, "Stage " + (at + 1) + " in parts"), all[at].length < 2),
      button("order-back", "One back", () => { const stages = earlier.pop(); look(stages, at); }, earlier.length === 0), button("order-own", "The program's order", () => { earlier.push(sets()); look([], 0); }, !work.is_by_hand));
    const same = focus && moves.querySelector("#" + focus);
    if (same) (same.disabled ? moves.querySelector("button:enabled") || same : same).focus();
  }

  function tell(stage) {
    const bad = refusals(stage), isDead = [...stage.dead_panels, ...stage.dead_boards].length > 0;
    const words = (term, text) => make("div", {}, make("dt", {}, term), make("dd", {}, text));
    about.replaceChildren(
      make("p", { class: bad ? "bad" : "good", id: "referee" }, bad ? "The referee refuses stage " + stage.number + "." : "The referee allows stage " + stage.number + " at every step."),
      ...stage.refused.map((each) => make("p", { class: "bad" }, "The stage as a whole: " + each)),
      make("dl", { class: "found" }, words("System", stage.system), words("Isolated", isDead ? [...stage.dead_panels.map((each) => "panel " + plain(each)), ...stage.dead_boards.map((each) => "board " + plain(each))].join(", ") : "nothing as a whole"), ...(stage.below.length ? [words("Dead with it", stage.below.join(", "))] : []), words("Locked out", stage.locked_out.join(", ") || "nothing"), words("Off besides", stage.standing_by.length ? count(stage.standing_by.length, "load") : "nothing"), words("Out meanwhile", stage.outages.join(", ") || "nothing"), words("Minutes", number(stage.minutes, 0)), words("After it", stage.broken_after ? count(stage.broken_after, "limit") + " broken" : "whole")),
      make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Changes of the stage" }, make("table", { class: "small changes" }, make("thead", {}, make("tr", {}, make("th", { scope: "col" }, "What the stage changes"), make("th", { scope: "col" }, "In stage"))), make("tbody", {}, ...stage.changes.map((change) => make("tr", {}, make("td", {}, work.changes[change]), make("td", {}, where(change))))))),
    );
    about.append(make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Steps of the stage" }, make("table", { class: "small steps-of" }, make("thead", {}, make("tr", {}, ...["Step", "Minute", "What is done", "Referee"].map((each) => make("th", { scope: "col" }, each)))), make("tbody", {}, ...stage.steps.map((each) => row(each))))));
  }

  function where(change) {
    const choice = make("select", { "aria-label": "Stage of " + plain(work.changes[change]), data: { change }, onchange: () => send(change, Number(choice.value)) },
      ...work.stages.map((each, i) => make("option", { value: i, selected: i === at }, String(i + 1))), make("option", { value: work.stages.length }, "one of its own"));
    return choice;
  }

  function row(each) {
    const isBad = each.refused.length > 0;
    return make("tr", { class: (each.number === step ? "chosen" : "") + (isBad ? " bad" : ""), data: { step: each.number } },
      make("td", { class: "n" }, make("button", { type: "button", class: "link", "aria-pressed": String(each.number === step), title: "Show what is dead then", onclick: () => { step = step === each.number ? 0 : each.number; show(); const again = about.querySelector("[data-step='" + each.number + "'] button"); if (again) again.focus(); } }, String(each.number))),
      make("td", { class: "n" }, each.at_min === null ? "–" : number(each.at_min, 0)), make("td", {}, each.text), make("td", {}, isBad ? "refused: " + each.refused.join("; ") : "allowed"));
  }

  return { element, choose(next) { cure = next; earlier = []; look([], 0); } };
}
