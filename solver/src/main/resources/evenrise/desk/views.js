// The views, in the order in which they stand in the line of views. A view more is a line more here.
//
// `begin` makes it: { element, show(plan) }. `redraws`: whether it is shown anew with every change, or sees to that itself.
// `blank`: whether there is something to see without a project.

import { make } from "./parts.js";
import { listsView } from "./sheet.js";
import { panelsView, trayView } from "./panels.js";
import { boardsView } from "./boards.js";
import { treeView } from "./tree.js";
import { timeView } from "./lanes.js";
import { searchView } from "./search.js";
import { supposeView } from "./suppose.js";
import { answersView } from "./answers.js";
import { keptView } from "./branches.js";
import { documentsView } from "./documents.js";
import { eventsView } from "./events.js";
import { estimateView } from "./estimate.js";
import { portfolioView } from "./portfolio.js";
import { reworkView } from "./rework.js";
import { measuredView } from "./measured.js";

export const VIEWS = [
  { name: "loads", label: "Lists", begin: listsView, blank: true },
  { name: "plan", label: "Panels and boards", begin: planning, redraws: true, marks: true },
  { name: "tree", label: "Tree", begin: treeView, redraws: true },
  { name: "time", label: "Time", begin: timeView, redraws: true },
  { name: "search", label: "Search", begin: searchView },
  { name: "why", label: "Questions", begin: answersView, redraws: true },
  { name: "suppose", label: "What if", begin: supposeView, redraws: true },
  { name: "events", label: "Events", begin: eventsView, redraws: true },
  { name: "estimate", label: "Estimate", begin: estimateView, redraws: true },
  { name: "rework", label: "Rework", begin: reworkView, redraws: true },
  { name: "measured", label: "Measured", begin: measuredView, redraws: true },
  { name: "kept", label: "Kept plans", begin: keptView, redraws: true },
  { name: "documents", label: "Documents", begin: documentsView, redraws: true },
  { name: "portfolio", label: "Portfolio", begin: portfolioView, redraws: true },
];

function planning() {
  const parts = [trayView(), panelsView(), boardsView()];
  return { element: make("div", { class: "planning" }, ...parts.map((each) => each.element)), show: (sheet) => parts.forEach((each) => each.show(sheet)) };
}
