// An equipment list from any spreadsheet: pasted, read, its questions answered where they are asked, then taken as the project.

import { act, ask, complain, desk, say } from "./wire.js";
import { by, count, make } from "./parts.js";

const SHOWN = 300;

export function intake(taken) {
  const area = make("textarea", { id: "pasted", rows: "6", spellcheck: "false", placeholder: "Quantity\tName\tRoom\tWatts …", oninput: () => { mapping = null; } });
  const name = make("input", { id: "list-name", autocomplete: "off" });
  const told = make("div", { class: "told" });
  let mapping = null;
  const box = make("details", { class: "intake" }, make("summary", {}, "Paste an equipment list"),
    make("p", { class: "note" }, "Copy the list in any spreadsheet, its headers with it, and paste it here. It is read as every list is: what was guessed is shown as a guess, what is open is asked. Nothing is changed until you take it."),
    make("label", {}, "Name of the project ", name), make("label", { class: "wide" }, "The list ", area),
    make("p", {}, make("button", { type: "button", id: "read-list", onclick: read }, "Read it")), told);

  function body() {
    return mapping ? { text: area.value, name: name.value, mapping } : { text: area.value, name: name.value };
  }

  async function read() {
    try {
      const answer = await ask("/api/list", body());
      mapping = stated(answer.mapping);
      draw(answer);
      say("Read: " + count(answer.loads, "load") + ", " + count(answer.texts.filter((each) => each.how === "asked").length, "question") + ", " + count(answer.texts.filter((each) => each.how === "guessed").length, "kind") + " of guesses.");
    } catch (refusal) { complain(refusal); }
  }

  /** Only what is stated: what is absent is as usual. */
  function stated(whole) {
    const only = (each) => Array.isArray(each) ? each.map(only) : each && typeof each === "object"
      ? Object.fromEntries(Object.entries(each).filter(([, value]) => value !== null).map(([key, value]) => [key, only(value)])) : each;
    return only(whole);
  }

  function draw(answer) {
    const part = (title, lines, kind) => lines.length ? [make("details", { class: "part" }, make("summary", { class: kind }, title + " (" + lines.length + ")"), make("ul", {}, ...lines.slice(0, SHOWN).map((line) => make("li", {}, line))))] : [];
    told.replaceChildren(make("p", { role: "status" }, make("b", {}, count(answer.loads, "load")), " would come of it. ", desk.sheet.plan ? "It takes the place of the project on the desk; Undo brings that back." : ""),
      columns(answer), ...texts(answer), ...unswitched(answer),
      ...part("Cannot be taken over, and would be left out", answer.problems, "bad"), ...part("Questions, in full", answer.questions), ...part("Guesses, in full", answer.guesses),
      make("p", { class: "tools" }, make("button", { type: "button", id: "read-again", onclick: read }, "Read it again with these answers"),
        answer.loads ? make("button", { type: "button", id: "take-list", onclick: take }, "Take it as the project") : null));
  }

  function columns(answer) {
    const choice = (column) => {
      const select = make("select", { "aria-label": "What column " + column.letters + " means", data: { header: column.header }, onchange: () => mean(column, select.value) },
        make("option", { value: "", selected: !column.means }, "not read"), ...answer.meanings.map((each) => make("option", { value: each, selected: each === column.means }, each.replaceAll("_", " "))));
      return select;
    };
    const how = { mapping: "your answer", header: "its header", values: "its values", nothing: "unknown", ignored: "left out" };
    return make("details", { class: "part", open: answer.columns.some((each) => !each.means) }, make("summary", {}, "Columns (" + answer.columns.length + ", " + answer.columns.filter((each) => !each.means).length + " not read)"),
      make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Columns of the list" }, make("table", { class: "columns" }, make("thead", {}, make("tr", {}, ...["Column", "Header", "Means", "Told by"].map((each) => make("th", { scope: "col" }, each)))),
        make("tbody", {}, ...answer.columns.map((column) => make("tr", { class: column.means ? "" : "open" }, make("td", {}, column.letters), make("th", { scope: "row" }, column.header), make("td", {}, choice(column)), make("td", {}, how[column.by] || column.by)))))));
  }

  function mean(column, meaning) {
    const columns = { ...(mapping.columns || {}) };
    for (const key of Object.keys(columns)) if (columns[key] === column.header) delete columns[key];
    const ignore = (mapping.ignore || []).filter((each) => each !== column.header);
    if (meaning) {
      const displaced = columns[meaning];
      if (displaced) ignore.push(displaced);
      columns[meaning] = column.header;
    } else ignore.push(column.header);
    mapping = { ...mapping, columns, ignore };
    read();
  }

  const WAYS = { switched: ["yes", "no"], role: ["processing", "amplifier", "auxiliary"], life_safety: ["yes", "no", "place"] };

  /** What is asked first, what was guessed next; an answer is the text that is to be read in that cell. */
  function texts(answer) {
    const order = { problem: 0, asked: 1, guessed: 2 };
    const open = [...answer.texts].sort((a, b) => order[a.how] - order[b.how]).slice(0, SHOWN);
    if (!open.length) return [];
    const lists = Object.entries(WAYS).map(([of, ways]) => make("datalist", { id: "ways-" + of }, ...ways.map((each) => make("option", { value: each }))));
    const row = (each) => {
      const known = (mapping.readings || []).find((reading) => same(reading, each));
      const input = make("input", { autocomplete: "off", list: WAYS[each.of] ? "ways-" + each.of : undefined, placeholder: "leave as it is", value: known && known.reads !== each.written ? known.reads : "",
        "aria-label": each.of + " of " + (each.name || "'" + each.written + "'"), data: { of: each.of, about: each.name }, onchange: () => reads(each, input.value.trim()) });
      return make("tr", { class: each.how }, make("td", {}, { problem: "cannot be read", asked: "asked", guessed: "guessed" }[each.how]), make("td", {}, each.of.replaceAll("_", " ")), make("td", {}, each.name || "all"),
        make("td", {}, each.written || "(empty)"), make("td", {}, each.reads), make("td", { class: "n" }, String(each.rows)), make("td", {}, input));
    };
    return [make("details", { class: "part", open: true }, make("summary", {}, "Questions and guesses (" + answer.texts.length + ")"), ...lists,
      make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Questions and guesses" }, make("table", { class: "texts" }, make("thead", {}, make("tr", {}, ...["", "What", "Of", "Cell says", "Counts as", "Rows", "Read instead"].map((each) => make("th", { scope: "col" }, each)))),
        make("tbody", {}, ...open.map(row)))))];
  }

  const same = (reading, each) => reading.of === each.of && (reading.name || "") === each.name && (reading.written || "").trim() === each.written;

  function reads(each, words) {
    const rest = (mapping.readings || []).filter((reading) => !same(reading, each));
    if (words) rest.push({ of: each.of, written: each.written, reads: words, ...(each.name ? { name: each.name } : {}) });
    mapping = { ...mapping, readings: rest };
    say("Answered. Read it again to see what comes of it.");
  }

  /** What nothing would switch, to be ticked where it may be. */
  function unswitched(answer) {
    if (!answer.unswitched.length) return [];
    return [make("details", { class: "part" }, make("summary", {}, "Not switched (" + answer.unswitched.length + ")"),
      make("p", { class: "note" }, "Nothing switches these. A piece that the list names by its own name can be told to be switched among the questions above; life safety, uninterruptible supplies and network cores stay on unless you know better."),
      make("ul", {}, ...answer.unswitched.slice(0, SHOWN).map((each) => make("li", {}, each))))];
  }

  async function take() {
    if (await act("/api/list/take", body(), "The list is the project now. What was guessed is listed in each load's column 'guessed'.")) {
      told.replaceChildren();
      box.open = false;
      taken();
    }
  }

  box.addEventListener("toggle", () => { if (box.open) by("pasted").focus(); });
  return box;
}
