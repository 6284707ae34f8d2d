// What a project has one of, as a sheet of fields: supply, objective and so on; each field taken in by itself, or told.

import { ask, complain, refresh, say } from "./wire.js";
import { make, plain } from "./parts.js";

const SIGNS = { a: "A", v: "V", hz: "Hz", pct: "%", ohm: "Ω", w: "W", c: "°C", deg: "°", kva: "kVA" };

export function form() {
  const element = make("div", { class: "fields", hidden: true });
  let list = "", drafts = new Map();

  async function send(column, input, cure) {
    try {
      const answer = await ask("/api/cells", { list, removed: [], cells: [{ id: list, column: column.path, text: input.value.trim() }] });
      const told = answer.misfits.map((each) => each.message).join(" ");
      if (answer.is_taken) {
        drafts.delete(column.path);
        say(column.path + " is taken in.");
        await refresh();
      } else {
        drafts.set(column.path, { text: input.value, message: told });
        input.setAttribute("aria-invalid", "true");
        input.closest("tr").className = "bad";
        cure.className = "cure bad";
        cure.textContent = plain(told, 400) + " What stands here is not in the file yet.";
      }
    } catch (refusal) { complain(refusal); }
  }

  function row(column, value) {
    const draft = drafts.get(column.path), text = draft ? draft.text : value;
    const cure = make("td", { class: "cure" + (draft ? " bad" : ""), id: "field-" + column.path.replaceAll(".", "-") }, draft ? draft.message + " What stands here is not in the file yet." : column.meaning + "; " + column.expected + ".");
    const input = make("input", { value: text, autocomplete: "off", spellcheck: "false", placeholder: column.otherwise && column.otherwise !== "[]" ? column.otherwise : "", "aria-label": column.path, "aria-describedby": cure.id, "aria-invalid": draft ? "true" : undefined, data: { field: column.path },
      onchange: () => send(column, input, cure) });
    return make("tr", { class: draft ? "bad" : "" }, make("th", { scope: "row" }, column.path), make("td", {}, input, " ", make("span", { class: "unit" }, SIGNS[column.unit] || column.unit)), cure);
  }

  return {
    element,
    /** A table of one row; nothing for null. */
    show(table) {
      element.hidden = !table;
      if (!table) { element.replaceChildren(); return; }
      if (table.list !== list) drafts = new Map();
      list = table.list;
      const focus = element.contains(document.activeElement) && document.activeElement.dataset.field;
      const values = table.rows[0] || [], fields = [...table.columns.map((column, i) => [column, values[i] || ""]), ...table.further.map((column) => [column, ""])].filter(([column]) => column.path !== "id");
      element.replaceChildren(make("table", { class: "form" }, make("thead", {}, make("tr", {}, ...["Field", "Value", "What it is"].map((each) => make("th", { scope: "col" }, each)))), make("tbody", {}, ...fields.map(([column, value]) => row(column, value)))));
      if (focus) { const same = element.querySelector("[data-field=" + CSS.escape(focus) + "]"); if (same) same.focus(); }
    },
  };
}
