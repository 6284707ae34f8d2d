// An equipment list from any spreadsheet: pasted, read with its guesses and questions told, then taken as the project.

import { act, ask, complain, desk } from "./wire.js";
import { by, count, make } from "./parts.js";

export function intake(taken) {
  const area = make("textarea", { id: "pasted", rows: "6", spellcheck: "false", placeholder: "Quantity\tName\tRoom\tWatts …" });
  const name = make("input", { id: "list-name", autocomplete: "off" });
  const told = make("div", { class: "told", role: "status" });
  const box = make("details", { class: "intake" }, make("summary", {}, "Paste an equipment list"),
    make("p", { class: "note" }, "Copy the list in any spreadsheet, its headers with it, and paste it here. It is read as every list is: what was guessed is told, what is open is asked. Nothing is changed until you take it."),
    make("label", {}, "Name of the project ", name), make("label", { class: "wide" }, "The list ", area),
    make("p", {}, make("button", { type: "button", onclick: read }, "Read it")), told);

  async function read() {
    try {
      const answer = await ask("/api/list", { text: area.value, name: name.value });
      const part = (title, lines, kind) => lines.length ? [make("h3", { class: kind }, title + " (" + lines.length + ")"), make("ul", {}, ...lines.map((line) => make("li", {}, line)))] : [];
      const replaces = desk.sheet.plan ? "It takes the place of the project on the desk; Undo brings that back." : "";
      told.replaceChildren(make("p", {}, make("b", {}, count(answer.loads, "load")), " would come of it. ", replaces),
        ...part("Cannot be taken over, and would be left out", answer.problems, "bad"), ...part("Questions for whoever knows", answer.questions), ...part("Guesses, to be confirmed", answer.guesses),
        answer.loads ? make("button", { type: "button", id: "take-list", onclick: take }, "Take it as the project") : "");
    } catch (refusal) { complain(refusal); }
  }

  async function take() {
    if (await act("/api/list/take", { text: area.value, name: name.value }, "The list is the project now. What was guessed is listed in each load's column 'guessed'.")) {
      told.replaceChildren();
      box.open = false;
      taken();
    }
  }

  box.addEventListener("toggle", () => { if (box.open) by("pasted").focus(); });
  return box;
}
