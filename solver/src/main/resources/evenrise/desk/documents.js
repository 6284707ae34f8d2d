// Documents: drawn, looked at sheet by sheet and table by table, then written as they were seen.

import { ask, complain, onEvent, say } from "./wire.js";
import { bytes, count, make, plain } from "./parts.js";
import { asking } from "./asking.js";
import { changes, pages, sheets, tables } from "./looks.js";
import { mailing } from "./mailing.js";

export function documentsView() {
  let told = null, busy = false;
  const asked = asking(), state = make("p", { class: "moment", role: "status", id: "drawn-state" });
  const draw = make("button", { type: "button", id: "draw", onclick: drawAll }, "Draw them"), stop = make("button", { type: "button", id: "stop-drawing", disabled: true, onclick: async () => { stop.disabled = true; try { await ask("/api/documents/stop", {}); } catch (refusal) { complain(refusal); } } }, "Stop");
  const seen = make("div", { class: "seen" }), looks = [sheets(), pages(), tables(), changes()];
  const tabs = make("div", { class: "lists", role: "group", "aria-label": "What is looked at" }, ...looks.map((each) => each.tab = make("button", { type: "button", "aria-pressed": "false", data: { look: each.name }, onclick: () => turn(each) }, each.label)));
  const folder = make("input", { id: "into", value: "documents", maxlength: "60", autocomplete: "off" }), keepAs = make("input", { id: "keep-as", maxlength: "60", placeholder: "not kept", autocomplete: "off" }), over = make("input", { id: "overwrite", type: "checkbox" });
  const write = make("button", { type: "button", id: "write", onclick: writeAll }, "Write to the folder"), written = make("div", { class: "written", role: "status" });
  const results = make("div", { class: "drawn", hidden: true }, tabs, seen,
    make("section", { class: "box" }, make("h3", {}, "Into the folder"), make("p", { class: "note" }, "What was looked at is written, to the byte: all files, or none. Files of the writing before that are not among them are taken away; what somebody else put there stays."),
      make("div", { class: "tools" }, make("label", {}, "Folder ", folder), make("label", {}, "Keep the plan as ", keepAs), make("label", {}, over, " overwrite what was changed there by others"), write), written));
  const element = make("section", { class: "documents", "aria-label": "Documents" }, make("h2", {}, "Documents"), asked.element, make("div", { class: "tools" }, draw, stop), state, results, mailing(() => asked.body(), async () => take(await ask("/api/documents"))));
  let look = looks[0];

  function turn(next) {
    look = next;
    looks.forEach((each) => each.tab.setAttribute("aria-pressed", String(each === look)));
    seen.replaceChildren(look.element);
    if (told && told.drawn) look.show(told.drawn);
  }

  function take(answer) {
    const isNew = !told || !told.drawn || !answer.drawn || told.drawn.drawn !== answer.drawn.drawn;
    told = answer;
    asked.show(answer, isNew);
    const drawn = answer.drawn;
    results.hidden = !drawn;
    write.disabled = !drawn || !drawn.is_of_now;
    draw.disabled = busy;
    element.dataset.drawn = drawn ? drawn.drawn : "";
    state.className = "moment" + (drawn && (drawn.is_broken || !drawn.is_of_now) ? " bad" : "");
    state.textContent = !drawn ? "Nothing is drawn yet." : "Revision " + plain(drawn.revision) + " of " + plain(drawn.date) + ": " + count(drawn.files.length, "file") + ". " + plain(drawn.headline, 300) + (drawn.is_of_now ? "" : " The plan has changed since: draw anew before writing.");
    if (drawn && isNew) { written.replaceChildren(); turn(look); }
  }

  async function drawAll() {
    busy = true;
    draw.disabled = true;
    state.className = "moment";
    state.textContent = "Drawing…";
    stop.disabled = false;
    try { take(await ask("/api/documents/draw", asked.body())); } catch (refusal) { state.textContent = "Not drawn."; complain(refusal); }
    busy = false;
    draw.disabled = false;
    stop.disabled = true;
  }

  async function writeAll() {
    try {
      const answer = await ask("/api/documents/write", { drawn: told.drawn.drawn, folder: folder.value.trim(), keep_as: keepAs.value.trim(), overwrite: over.checked });
      say(count(answer.files.length, "file") + " written to '" + plain(answer.folder) + "'" + (answer.kept_as ? "; the plan is kept as '" + plain(answer.kept_as) + "'" : "") + ".");
      written.replaceChildren(make("p", {}, "Written to '" + plain(answer.folder) + "':"), make("ul", { class: "files" }, ...answer.files.map((each) => make("li", {}, each.name, make("span", { class: "note" }, " " + bytes(each.bytes))))));
      take(await ask("/api/documents"));
    } catch (refusal) { complain(refusal); }
  }

  onEvent("documents", (words) => { if (busy) state.textContent = "Drawing: " + plain(words, 80); });
  turn(look);
  return { element, async show() { if (!busy) try { take(await ask("/api/documents")); } catch (refusal) { complain(refusal); } } };
}
