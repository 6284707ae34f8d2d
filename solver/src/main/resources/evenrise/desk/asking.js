// What is asked of documents: revision, kinds of files, sections, title block, labels, languages.

import { make } from "./parts.js";

const KINDS = { html: "pages for browsers", pdf: "sheets to print", xlsx: "workbook", dxf: "drawings", csv: "tables of values" };
const TITLE = [["client", "Client"], ["site", "Site"], ["number", "Job number"], ["issued_by", "Issued by"], ["drawn_by", "Drawn by"], ["checked_by", "Checked by"], ["issued_for", "Issued for"], ["sheet_prefix", "Sheet numbers begin with"]];
const REVISION = [["revision", "Revision"], ["date", "Date"], ["what", "What changed"], ["by", "By"]];
const LANGUAGES = { en: "English", de: "German", fr: "French" };
const LABELS = { breaker: "Breakers", cable: "Both ends of cables", lead: "Both ends of control leads", equipment: "Equipment" };

const field = (id, given = {}) => make("input", { id, autocomplete: "off", maxlength: "120", ...given });
const part = (words, given, ...children) => make("details", { class: "part", ...given }, make("summary", {}, ...words), ...children);
const region = (label, ...children) => make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": label }, ...children);

export function asking() {
  const revision = field("doc-revision", { value: "A" }), date = field("doc-date"), trials = field("doc-trials", { type: "number", min: "0", max: "100000", value: "0" }), against = make("select", { id: "doc-against" });
  const kinds = make("fieldset", { class: "choices" }, make("legend", {}, "Files"));
  const title = titleBlock(), labels = labelling(), sections = choosing();
  const keys = make("input", { type: "checkbox", id: "csv-keys" }), mark = make("input", { type: "checkbox", id: "csv-mark" });
  const element = make("section", { class: "box" }, make("h3", {}, "What is drawn"),
    make("div", { class: "tools" }, make("label", {}, "Revision ", revision), make("label", {}, "Date ", date), make("label", {}, "Changes against ", against), make("label", {}, "Switch-ons for percentiles ", trials)),
    kinds, sections.element, title.element, labels.element,
    part(["Tables of values"], {}, make("div", { class: "tools" }, make("label", {}, keys, " headed by keys, as fields of a project are spelt"), make("label", {}, mark, " begun with a byte-order mark, as some spreadsheets need it"))));
  let isFilled = false;

  return {
    element,
    show(answer, isNew) {
      if (!isFilled) {
        date.value = answer.today;
        kinds.append(...answer.formats.map((each) => make("label", {}, make("input", { type: "checkbox", name: "kind", value: each, checked: true }), " " + KINDS[each] + " (" + each + ")")));
        title.fill(answer);
        labels.fill(answer);
      }
      if (isNew) sections.show(answer.sections);
      const was = isFilled ? against.value : "";
      against.replaceChildren(make("option", { value: "" }, "none"), ...answer.kept.map((each) => make("option", { value: each, selected: each === was }, each)));
      isFilled = true;
    },
    body() {
      return { revision: revision.value.trim(), date: date.value.trim(), formats: checked(kinds), sections: sections.chosen(), against: against.value, trials: Number(trials.value) || 0, title: title.value(), ...labels.value(), csv_keys: keys.checked, csv_mark: mark.checked };
    },
  };
}

const checked = (of) => [...of.querySelectorAll("input:checked")].map((each) => each.value);

// Sections of the printed sheets: by word until something was drawn, then those that there is something for.
function choosing() {
  const parts = make("fieldset", { class: "choices sections" }, make("legend", {}, "Sections of the sheets")), told = make("span", { id: "chosen-sections" }, "all");
  const boxes = () => [...parts.querySelectorAll("input")], isAll = () => boxes().every((each) => each.checked);
  const tell = () => { told.textContent = isAll() ? "all" : checked(parts).length + " of " + boxes().length; };
  parts.addEventListener("change", tell);
  const turn = () => { const next = !isAll(); boxes().forEach((each) => { each.checked = next; }); tell(); };

  return {
    element: part(["Sections of the sheets: ", told], {}, parts),
    show(sections) {
      const off = new Set(boxes().filter((each) => !each.checked).map((each) => each.value)), hasTitles = sections.some((each) => each.title);
      parts.replaceChildren(parts.firstChild, ...sections.filter((each) => each.title || !hasTitles).map((each) => make("label", {}, make("input", { type: "checkbox", name: "section", value: each.word, checked: !off.has(each.word) }), " " + (each.title || each.word))), make("button", { type: "button", class: "small", onclick: turn }, "All or none"));
      tell();
    },
    chosen: () => isAll() ? [] : checked(parts),
  };
}

function titleBlock() {
  const fields = new Map(TITLE.map(([key]) => [key, field("title-" + key)])), history = make("tbody"), named = make("p", { class: "note" });
  const add = (given = {}) => history.append(make("tr", {}, ...REVISION.map(([key, label]) => make("td", {}, make("input", { "aria-label": label, value: given[key] || "", maxlength: "120", data: { part: key } }))), make("td", {}, make("button", { type: "button", class: "small", onclick: (event) => event.target.closest("tr").remove() }, "Take out"))));
  const entry = (row) => Object.fromEntries([...row.querySelectorAll("input")].filter((each) => each.value.trim()).map((each) => [each.dataset.part, each.value.trim()]));

  return {
    element: part(["Title block"], { id: "title-block" }, make("div", { class: "tools" }, ...TITLE.map(([key, label]) => make("label", {}, label + " ", fields.get(key)))),
      region("Revisions so far", make("table", { class: "small" }, make("caption", { class: "note" }, "Revisions so far, the first one first."), make("thead", {}, make("tr", {}, ...REVISION.map(([, label]) => make("th", { scope: "col" }, label)), make("td", {}))), history)),
      make("button", { type: "button", id: "add-revision", onclick: () => add() }, "Add a revision"), named),
    fill(answer) {
      for (const [key, input] of fields) input.value = answer.title[key] || "";
      answer.title.revisions.forEach(add);
      named.textContent = "Kept in " + answer.title_file + " when the documents are drawn, for the next time and for report --title-block.";
    },
    value() {
      const block = { format: "evenrise-title/1", revisions: [...history.rows].map(entry).filter((each) => Object.keys(each).length) };
      for (const [key, input] of fields) if (input.value.trim()) block[key] = input.value.trim();
      return block;
    },
  };
}

function labelling() {
  const language = make("select", { id: "doc-language" }), link = field("label-link", { maxlength: "300", placeholder: "plan.html" }), stocks = make("datalist", { id: "stocks" }), kinds = make("div", { class: "tools" });
  return {
    element: part(["Labels and languages"], { id: "labelling" }, kinds, stocks,
      make("p", { class: "note" }, "Labels on stock sheets: a stock by its name, or in millimetres by sheet, label, columns and rows, margins, gaps: 210x297:70x37:3x8:0x0.5:0x0. Left empty, there are none."),
      make("div", { class: "tools" }, make("label", {}, "Codes on labels lead to ", link), make("label", {}, "Language of labels and site sheets ", language)),
      make("p", { class: "note" }, "In another language site sheets are printed as a set of their own as well; all else is in English.")),
    fill(answer) {
      language.append(...answer.languages.map((each) => make("option", { value: each }, LANGUAGES[each] || each)));
      stocks.append(...answer.stocks.map((each) => make("option", { value: each })));
      kinds.append(...answer.label_kinds.map((each) => make("label", {}, (LABELS[each] || each) + " ", field("labels-" + each, { list: "stocks", placeholder: "no labels", data: { kind: each } }))));
    },
    value: () => ({ labels: [...kinds.querySelectorAll("input")].filter((each) => each.value.trim()).map((each) => each.dataset.kind + "=" + each.value.trim()), label_link: link.value.trim(), language: language.value }),
  };
}
