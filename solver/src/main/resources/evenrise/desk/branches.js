// Plans kept under names, beside one another.

import { act, ask, complain, desk, say } from "./wire.js";
import { count, make, number, plain, signed } from "./parts.js";

/** Where what somebody has tried on a page that was mailed is taken in. */
export function changeFile() {
  const takeIn = async (event) => {
    const [file] = event.target.files;
    if (file) await act("/api/moves", { text: await file.text() }, "The moves of '" + plain(file.name) + "' are on the desk.");
    event.target.value = "";
  };
  return make("label", {}, "Take in a change file ", make("input", { type: "file", class: "returned", accept: ".json,application/json", onchange: takeIn }));
}

export function keptView() {
  const name = make("input", { id: "kept-name", autocomplete: "off", maxlength: "60" });
  const table = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Kept plans" });
  const left = make("select", { id: "left-plan" }), right = make("select", { id: "right-plan" }), both = make("div", { class: "scroll both", tabindex: "0", role: "region", "aria-label": "Two plans side by side" });
  const element = make("section", { class: "kept", "aria-label": "Kept plans" }, make("h2", {}, "Kept plans"),
    make("p", { class: "note" }, "A plan that is kept is a file of its own in the folder; each is judged against the project as it is now. Opening one puts it on the desk; Undo brings back what was there."),
    make("div", { class: "tools" }, make("label", {}, "Name ", name), make("button", { type: "button", id: "keep", onclick: keep }, "Keep the plan on the desk"),
      changeFile()),
    make("p", { class: "note" }, "A change file holds the moves that somebody has tried on the page of this plan and saved there. They come onto the desk as one change."), table,
    make("h3", {}, "Side by side"), make("div", { class: "tools" }, make("label", {}, "Left ", left), make("label", {}, "Right ", right), make("button", { type: "button", id: "beside", onclick: beside }, "Show both")), both);

  async function keep() {
    try {
      draw(await ask("/api/branches/keep", { name: name.value.trim() }));
      say("Kept as '" + plain(name.value.trim()) + "'.");
    } catch (refusal) { complain(refusal); }
  }

  const called = (id) => id || "on the desk";

  async function beside() {
    try {
      const a = await ask("/api/branches/compare", { left: left.value, right: right.value });
      const figure = (label, pick, digits) => make("tr", {}, make("th", { scope: "row" }, label), ...[a.left, a.right].map((m) => make("td", { class: "n" }, number(pick(m), digits))), make("td", { class: "n" }, signed(pick(a.right) - pick(a.left), digits)));
      const moved = (each) => make("tr", {}, make("th", { scope: "row" }, each.id), make("td", {}, each.left), make("td", {}, each.right), make("td", {}));
      both.replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, ...["", called(left.value), called(right.value), "Difference"].map((each) => make("th", { scope: "col" }, each)))),
        make("tbody", {}, figure("Broken rules", (m) => m.hard_violations, 0), figure("Objective", (m) => m.objective, 2), figure("Peak, A", (m) => m.peak_inrush_a, 1), figure("Unbalance, %", (m) => m.supply_imbalance_pct, 2), figure("Neutral, A", (m) => m.supply_neutral_a, 1), figure("Last on, s", (m) => m.duration_s, 2),
          ...a.settings.map(moved), ...a.loads.slice(0, 1000).map(moved)),
        make("caption", { class: "note" }, count(a.same, "load") + " at the same place and time in both; " + count(a.loads.length, "load") + " and " + count(a.settings.length, "board") + " otherwise.")));
    } catch (refusal) { complain(refusal); }
  }

  function draw(answer) {
    const ids = answer.branches.filter((each) => each.fits).map((each) => each.is_on_the_desk ? "" : each.name);
    [left, right].forEach((select, i) => {
      const was = select.options.length ? select.value : i ? ids[1] || "" : "";
      select.replaceChildren(...ids.map((id) => make("option", { value: id, selected: id === was }, called(id))));
    });
    const least = (pick) => Math.min(...answer.branches.filter((each) => each.metrics).map((each) => pick(each.metrics)));
    const columns = [["Broken rules", (m) => m.hard_violations, 0], ["Objective", (m) => m.objective, 2], ["Peak, A", (m) => m.peak_inrush_a, 1], ["Unbalance, %", (m) => m.supply_imbalance_pct, 2], ["Worst panel, %", (m) => m.worst_panel_imbalance_pct, 1], ["Neutral, A", (m) => m.supply_neutral_a, 1], ["Last on, s", (m) => m.duration_s, 2], ["Boards", (m) => m.boards_used, 0]];
    table.replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, ...["Plan", "Placed", ...columns.map((each) => each[0]), "Elsewhere than on the desk", ""].map((each) => make("th", { scope: "col" }, each)))),
      make("tbody", {}, ...answer.branches.map((each) => make("tr", {}, make("th", { scope: "row" }, each.is_on_the_desk ? "on the desk" : each.name),
        make("td", { class: "n" }, each.metrics ? String(each.placed) : "–"),
        ...columns.map(([, pick, digits]) => make("td", { class: "n" + (each.metrics && answer.branches.length > 1 && pick(each.metrics) === least(pick) ? " least" : "") }, each.metrics ? number(pick(each.metrics), digits) : "–")),
        make("td", {}, each.is_on_the_desk ? "" : each.metrics ? each.moved + " of loads and settings" : each.words),
        make("td", {}, each.is_on_the_desk || !each.metrics ? "" : make("button", { type: "button", onclick: () => act("/api/branches/open", { name: each.name }, "'" + plain(each.name) + "' is on the desk.") }, "Open"))))),
    make("caption", { class: "note" }, "In bold, the least of each column.")));
  }

  return { element, async show() { if (desk.sheet.plan) try { draw(await ask("/api/branches")); } catch (refusal) { complain(refusal); } } };
}
