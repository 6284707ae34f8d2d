// The page that is mailed, made with one click; and what comes back.

import { ask, complain, desk, say } from "./wire.js";
import { bytes, make, plain } from "./parts.js";
import { changeFile } from "./branches.js";

/** `asked`: what is filled in above. `made`: told when a page was made. */
export function mailing(asked, made) {
  const button = make("button", { type: "button", id: "mail", onclick: makeIt }, "Make the page to mail"), out = make("div", { class: "mailed", role: "status" });

  async function makeIt() {
    const { revision, date, against, title } = asked();
    button.disabled = true;
    out.replaceChildren(make("p", {}, "Making it…"));
    try {
      const answer = await ask("/api/documents/mail", { revision, date, against, title });
      out.replaceChildren(make("p", {}, "Written to '" + plain(answer.folder) + "'. Its plan is kept as '" + plain(answer.kept_as) + "', so that moves that come back find it."),
        make("ul", { class: "files" }, ...answer.files.map((each) => make("li", {}, make("a", { href: "/mailed/" + answer.made + "/" + each.name, download: name(each.name, revision) }, "Download " + each.name), make("span", { class: "note" }, " " + bytes(each.bytes) + (each.name === "readings.html" ? ": the commissioning sheet for a phone, if somebody measures" : ": the page to mail"))))),
        make("p", { class: "note" }, answer.headline));
      say("The page is in '" + plain(answer.folder) + "', ready to be mailed.");
      await made();
    } catch (refusal) { out.replaceChildren(); complain(refusal); }
    button.disabled = false;
  }

  return make("section", { class: "box", "aria-label": "Mail the page" }, make("h3", {}, "Mail the page"),
    make("p", { class: "note" }, "One file that opens without a network. Whoever gets it looks at the plan, moves loads, sees at once what the rules and the peak say of it, and saves a change file to be mailed back. It has the revision, date and title block above."),
    make("div", { class: "tools" }, button, changeFile()), out,
    make("p", { class: "note" }, "A change file comes onto the desk as one change, which Undo takes back. It begins at the plan of the page that it was made with: where another plan lies here by now, the desk says which kept plan to open first."));
}

/** A name for the file where it is going, which says whose plan it is. */
const name = (file, revision) => [desk.sheet.plan.name, revision, file].map((each) => plain(each).replace(/[^\p{L}\p{N}.-]+/gu, "-").replace(/^[-.]+/, "")).filter(Boolean).join("-");
