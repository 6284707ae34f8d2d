// Questions about the plan: why a load is where it is, what makes the peak, what a rule asks.

import { ask, complain, desk } from "./wire.js";
import { make, plain } from "./parts.js";

export function answersView() {
  const load = make("input", { id: "of-load", list: "load-ids", autocomplete: "off" });
  const ids = make("datalist", { id: "load-ids" });
  const rule = make("select", { id: "of-rule" });
  const text = make("pre", { id: "answer", tabindex: "0", role: "region", "aria-label": "Answer" });
  const broken = make("div", { class: "broken" });
  const element = make("section", { class: "answers", "aria-label": "Questions" }, make("h2", {}, "Questions"),
    make("div", { class: "tools" }, make("label", {}, "Load ", load), ids, make("button", { type: "button", onclick: () => answer({ load: load.value }) }, "Why is it there?"),
      make("button", { type: "button", onclick: () => answer({}) }, "What makes the peak?"), make("label", {}, "Rule ", rule), make("button", { type: "button", onclick: () => answer({ rule: rule.value }) }, "What does it ask?")),
    text, broken);

  async function answer(question) {
    text.textContent = "…";
    try {
      const told = await ask("/api/why", question);
      text.textContent = told.lines.map((line) => plain(line, 400)).join("\n");
      text.scrollTop = 0;
    } catch (refusal) { text.textContent = ""; complain(refusal); }
  }

  /** What was asked elsewhere, maybe before this view was there. */
  function asked() {
    if (!desk.why) return;
    load.value = desk.why;
    desk.why = null;
    answer({ load: load.value });
  }

  document.addEventListener("why", asked);
  return {
    element,
    show(sheet) {
      asked();
      ids.replaceChildren(...sheet.loads.slice(0, 3000).map((each) => make("option", { value: each.id })));
      if (!rule.length) rule.append(...RULES.map((each) => make("option", {}, each)));
      broken.replaceChildren(make("h3", {}, "Broken rules (" + sheet.violations.length + ")"), sheet.violations.length
        ? make("ul", {}, ...sheet.violations.slice(0, 200).map((each) => make("li", {}, make("button", { type: "button", class: "link", onclick: () => answer({ rule: each.rule }) }, each.rule), " ", each.message)))
        : make("p", { class: "note" }, "None."));
    },
  };
}

const RULES = ["assigned", "board-setting", "output", "reach", "step-time", "phase", "slot", "switched-slot", "panel-allowed", "fixed", "apart", "same-phase", "processing-first", "amplifiers-last", "order", "emergency", "group-whole", "group-run", "group-panel", "rating", "neutral", "inrush-limit", "duration", "system", "with", "voltage", "off-delay", "spare"];
