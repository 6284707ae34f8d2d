// What follows from what was measured: what a renewal could gain, and the record of the plant as built.

import { ask, complain, desk, say } from "./wire.js";
import { by, count, make, number, plain } from "./parts.js";

export function recordBox() {
  const name = make("input", { id: "record-name", autocomplete: "off", maxlength: "60", value: "as-built" }), revision = make("input", { id: "record-revision", autocomplete: "off", maxlength: "60", value: "as built" }), anew = make("input", { id: "record-anew", type: "checkbox" });
  const gain = make("div"), written = make("div"), element = make("section", { class: "box", hidden: true }, make("h3", {}, "5. Renew, and the record"), gain, make("h4", {}, "The record of the plant as built"),
    make("p", { class: "note" }, "One folder beside the project to hand over: a report to be signed, differences, open points, the project with what was measured, the plan judged by it, and all documents. It is the plant as it was measured; after a renewal is built, the next visit makes the next record."),
    make("div", { class: "tools" }, make("label", {}, "Folder ", name), make("label", {}, "Revision ", revision), make("label", {}, anew, " overwrite what lies there"), make("button", { type: "button", id: "write-record", onclick: write }, "Write the record")), written);

  async function write() {
    by("write-record").disabled = true;
    say("The documents are being drawn…");
    try {
      const it = await ask("/api/measured/record", { name: name.value.trim(), revision: revision.value.trim() || "as built", overwrites: anew.checked });
      written.replaceChildren(make("p", { role: "status", id: "record-written" }, count(it.files.length, "file") + " in " + plain(it.folder) + ":"), make("ul", { class: "files" }, ...it.files.map((each) => make("li", {}, each))));
      say("The record is written: " + plain(it.folder) + ".");
    } catch (refusal) { complain(refusal); }
    by("write-record").disabled = false;
  }

  return { element, show(told) {
    element.hidden = !told.found;
    if (!told.found) return;
    const it = told.found, most = it.least_peak_a === null ? null : Math.max(0, it.measured_peak_a - it.least_peak_a);
    gain.replaceChildren(make("dl", { class: "found" }, ...[["Peak as planned", number(it.planned_peak_a) + " A"], ["with what was measured", number(it.measured_peak_a) + " A"], ["no plan stays below", it.least_peak_a === null ? "–" : number(it.least_peak_a) + " A"], ["a renewal gains at most", most === null ? "–" : number(most) + " A"]].map(([term, words]) => make("div", {}, make("dt", {}, term), make("dd", {}, words)))),
      make("div", { class: "tools" }, make("button", { type: "button", id: "few-moves", disabled: told.state !== "taken", onclick: () => { desk.begins = "cures"; location.hash = "#rework"; } }, "Look for few moves"), make("span", { class: "note" }, told.state === "taken" ? "Rework searches the plan as built with these values, and says what cures cost in nights and outages." : "Take the values into the project first: few moves may gain some of it.")));
  } };
}
