// The sheets of a night as they are printed, seen page by page before they are written into the folder.

import { ask, complain, say } from "./wire.js";
import { count, make, plain } from "./parts.js";

export function sheetsBox() {
  let cure = 0, stages = [], page = 1, pages = 0, asked = 0;
  const paper = make("select", { id: "sheet-paper", onchange: () => look(1) }, make("option", { value: "" }, "A4"), make("option", { value: "letter" }, "Letter"));
  const before = make("button", { type: "button", id: "sheet-before", onclick: () => look(page - 1) }, "Page before"), next = make("button", { type: "button", id: "sheet-next", onclick: () => look(page + 1) }, "Next page"), where = make("span", { id: "sheet-page", role: "status" });
  const picture = make("div", { class: "scroll reader", tabindex: "0", role: "region", "aria-label": "Sheet" }), name = make("input", { id: "rework-folder", maxlength: "60", value: "rework", autocomplete: "off" });
  const write = make("button", { type: "button", id: "rework-write", onclick: keep }, "Write into the folder"), written = make("p", { class: "note", id: "rework-written" });
  const element = make("section", { class: "box night-sheets" }, make("h3", {}, "Sheets"), make("div", { class: "tools" }, make("button", { type: "button", id: "sheet-look", onclick: () => look(1) }, "See the sheets"), make("label", {}, "Paper ", paper), before, where, next), picture,
    make("div", { class: "tools" }, make("label", {}, "Folder beside the project ", name), write), make("p", { class: "note" }, "Written are the front, a plan a cure, work.json for other programs, the sheets as PDF on A4 and Letter and as text: the files of rework."), written);

  const body = (more) => ({ cure, stages: stages.map((changes) => ({ changes })), ...more });

  async function look(wanted) {
    const own = ++asked;
    try {
      const sheet = await ask("/api/cures/sheet", body({ page: Math.max(1, wanted), is_letter: paper.value !== "" }));
      if (own !== asked) return;
      page = sheet.page;
      pages = sheet.pages;
      picture.replaceChildren(make("img", { class: "large", alt: "Page " + page + " of " + pages + " of the sheets, as it is printed", src: "data:image/png;base64," + sheet.png }));
      turned();
    } catch (refusal) { complain(refusal); }
  }

  function turned() {
    before.disabled = page <= 1 || !pages;
    next.disabled = page >= pages;
    where.textContent = pages ? "Page " + page + " of " + pages : "";
  }

  async function keep() {
    try {
      const done = await ask("/api/cures/write", body({ name: name.value.trim() }));
      written.textContent = plain("In the folder " + done.folder + ": " + done.files.join(", ") + ".", 900);
      say("Written into the folder '" + plain(done.folder) + "': " + count(done.files.length, "file") + ".");
    } catch (refusal) { complain(refusal); }
  }

  return {
    element,
    /** Another cure or another order: what was seen is of the one before. */
    show(other, laid) {
      cure = other;
      stages = laid;
      pages = 0;
      asked++;
      picture.replaceChildren();
      written.textContent = "";
      turned();
    },
  };
}
