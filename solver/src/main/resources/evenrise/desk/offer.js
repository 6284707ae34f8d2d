// What is offered: make-ups side by side, the page as the client will see it, and the way into the folder.

import { ask, complain, desk, say } from "./wire.js";
import { make, plain } from "./parts.js";

const MOST = 6;

export function offerPart() {
  const chosen = new Map();
  let drawn = null;
  const names = make("div", { class: "offered-names" }), figures = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Alternates side by side", hidden: true }), seen = make("div", { class: "framed" });
  const title = make("input", { id: "offer-title", value: "", autocomplete: "off", maxlength: "120", placeholder: "Alternates", oninput: () => stale() }), draws = make("input", { id: "offer-draws", type: "number", class: "small-number", min: "0", max: "100000", value: "0", oninput: () => stale() }), folder = make("input", { id: "offer-folder", value: "offer", autocomplete: "off", maxlength: "60" });
  const look = make("button", { type: "button", id: "offer-look", onclick: see }, "See the page"), write = make("button", { type: "button", id: "offer-write", disabled: true, onclick: keep }, "Write to the folder");
  const onDesk = make("input", { type: "checkbox", id: "offer-desk", onchange: () => put("", "As on the desk", onDesk.checked) });
  const element = make("section", { class: "box offering", "aria-label": "What is offered" }, make("h3", {}, "What is offered"),
    make("p", { class: "note" }, "Tick make-ups above, the first is what the others are told apart from; up to " + MOST + ". The page holds neither unit prices nor circuits; what prices leave out, assumptions and cautions stand on it."),
    make("div", { class: "tools" }, make("label", {}, onDesk, "the plan on the desk"), make("label", {}, "Title ", title), make("label", {}, "Draws of open quantities ", draws), look), names, figures, seen,
    make("div", { class: "tools" }, make("label", {}, "Folder ", folder), write));

  function put(files, called, isChosen) {
    if (isChosen && chosen.size >= MOST) { say("No more than " + MOST + " stand side by side. Take one out first."); show(); return; }
    if (isChosen) chosen.set(files, uncommon(called)); else chosen.delete(files);
    stale();
    show();
  }

  function uncommon(called) {
    let name = called;
    for (let i = 2; [...chosen.values()].includes(name); i++) name = called + " " + i;
    return name;
  }

  function stale() {
    drawn = null;
    write.disabled = true;
    figures.hidden = true;
    seen.replaceChildren();
    delete element.dataset.drawn;
  }

  function show() {
    onDesk.checked = chosen.has("");
    look.disabled = chosen.size === 0;
    const focus = names.contains(document.activeElement) && document.activeElement.dataset.files;
    if (focus === false || focus === undefined) names.replaceChildren(...[...chosen].map(([files, name], i) => make("label", {}, (i + 1) + ". " + (files || "the plan on the desk") + ", called ", make("input", { class: "offered-name", value: name, maxlength: "60", data: { files }, oninput: (event) => { chosen.set(files, event.target.value); stale(); } }), " ")));
  }

  async function see() {
    say("The offer is being drawn…");
    try {
      drawn = await ask("/api/offer/draw", { title: title.value, draws: Number(draws.value) || 0, alternates: [...chosen].map(([files, name]) => ({ name, files })) });
      say("Drawn, nothing is written yet." + (drawn.keeps_all ? "" : " Nothing is to be built from a plan that breaks a rule or a limit: see how each stands."));
      write.disabled = false;
      element.dataset.drawn = drawn.drawn;
      const path = "/offered/" + drawn.drawn + "/";
      figures.hidden = false;
      figures.replaceChildren(make("table", {}, make("thead", {}, make("tr", {}, make("td", {}), ...drawn.names.map((each) => make("th", { scope: "col" }, each)))), make("tbody", {}, ...drawn.figures.map((row) => make("tr", {}, make("th", { scope: "row" }, row.label), ...row.cells.map((cell) => make("td", { class: "n" }, cell.value, cell.difference ? make("span", { class: "d" }, cell.difference) : null, cell.note ? make("span", { class: "s" }, cell.note) : null)))),
        make("tr", {}, make("th", { scope: "row" }, "How each stands"), ...drawn.headlines.map((each) => make("td", {}, each))))));
      seen.replaceChildren(make("p", {}, "As the client will see it, and ", make("a", { href: path + "offer.pdf", target: "_blank", rel: "noopener" }, "the sheet to print (PDF)"), ", ", make("a", { href: path + "offer.csv", target: "_blank", rel: "noopener" }, "the table (CSV)"), "."),
        make("iframe", { src: path + "offer.html", title: "The client's page", sandbox: "", onload: (event) => { event.target.dataset.loaded = "true"; } }));
    } catch (refusal) { complain(refusal); }
  }

  async function keep() {
    try {
      const written = await ask("/api/offer/write", { drawn: drawn.drawn, folder: folder.value || "offer" });
      say("Written to the folder " + plain(written.folder) + ": " + written.files.join(", ") + ".");
      element.dataset.written = written.folder;
    } catch (refusal) { complain(refusal); }
  }

  let revision = 0;
  return { element, has: (files) => chosen.has(files), set: put, /** What is no longer planned is no longer offered. */
  among(files) {
    const gone = [...chosen.keys()].filter((each) => each !== "" && !files.has(each));
    gone.forEach((each) => chosen.delete(each));
    if (gone.length) stale();
  }, show() {
    // What was drawn of the plan on the desk is of what lay there then.
    if (drawn && chosen.has("") && revision !== desk.sheet.revision) stale();
    revision = desk.sheet.revision;
    show();
  } };
}
