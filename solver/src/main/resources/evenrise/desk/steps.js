// First steps: what the desk can do, one deed after another, each ticked when it was done; and a help for where one is.

import { act, desk, onAsked, say } from "./wire.js";
import { by, make } from "./parts.js";

const KEPT = "evenrise-first-steps";

// `done`: what is asked of the server, or a view that is looked at.
const STEPS = [
  { view: "plan", done: "#plan", words: "Look where loads are: on the left all that have no place yet, beside them panels slot by slot, and boards output by output." },
  { view: "search", done: "/api/search/take", words: "Have it planned: 10 seconds, “Search”, then “Take what it found”. The line on top says what the plan comes to." },
  { view: "plan", done: "/api/move", words: "Take a load into your hand: drag it, or press it and “Pick up”, or Tab and Enter. Each free place says what the plan would cost there, or how many rules it would break. Put it down." },
  { view: "plan", done: "/api/pin", words: "Pin a load: press it, “Pin”. No search moves it from then on." },
  { view: "search", done: "/api/search/begin around", words: "Search once more with “Improve around what I did”: what you moved stays." },
  { view: "time", done: "/api/setting", words: "Choose another delay for a board, and see the current follow. Undo takes it back." },
  { view: "why", done: "/api/why", words: "Ask “What makes the peak?”" },
  { view: "kept", done: "/api/branches/keep", words: "Keep the plan under a name; plans that are kept stand side by side." },
];

const HELP = {
  loads: ["A row an entry, a column a field. Type over a cell and press Enter; Escape leaves it as it was. Copy and paste with any spreadsheet; Ctrl+D fills down.", "What does not fit stays in its cell, marked, and is not in the file; above the table stands what is expected."],
  plan: ["Drag a load, or Tab to it: Enter picks it up, arrows and Tab go from place to place, Enter puts it down, Escape lets go.", "At free places: what the plan would cost there in ampere-equivalents, or ✕ and how many rules it would break. At a taken place the two change places. Nothing is forbidden to the hand; what is broken is said on top."],
  tree: ["What feeds what, with the current of the fullest line, the rating and the greatest peak.", "Drag a point onto what is to feed it, or choose it, press F2 and name another one; Delete takes it out."],
  time: ["The current of the supply above, a lane a board below. Drag a board's first mark, or choose its delay; with keys, left and right on the mark."],
  search: ["Begins at the plan on the desk and changes nothing until you take what it found. The dotted line is what is proven that no plan can stay below.", "With “moves at most” it keeps near what is there. Pinned loads stay where they are."],
  why: ["Why a load is where it is and where else it could be, what a rule asks and where it is broken, what makes the peak."],
  suppose: ["Nothing here changes the plan: room for one more load, what each point carries in each scene, what happens in an emergency or when the mains fail, the plant with something otherwise."],
  events: ["A click into a lane lets something happen there. Drag a mark, or move it with the arrows, a second a press, ten with Shift; Delete takes it out. It is played at once, and each finding leads to its moment.", "“By chance” draws many switch-ons and shows the percentiles of their peaks. An emergency input is no life-safety system."],
  estimate: ["What the project can be built of, from the cheapest on. “Least” stands there only where every cheaper make-up is proven impossible; what is undecided is said with its price.", "Tick what is to be offered, see the page as the client will, then write it. “Room left” shows what a make-up leaves free. Prices are typed into the catalogue at the end, as any list."],
  rework: ["The plan on the desk is taken as it is on the wall, and cured with as little work as can be. The slider goes over the cures, from the least work to the best plan; arrows on it do the same.", "Below stands the work towards the one chosen, stage by stage. Choose a stage, and move it with Shift and the arrows or by “Earlier” and “Later”, or drag it; a change goes to another stage by its list. The referee plays every step and says which it refuses. An order by hand is written only where nothing is refused.", "Nothing here says that a conductor is dead: isolate, lock out and test."],
  measured: ["Drop sheets that were filled in on site, or a recorded start, or choose them; what a recorder's columns are is asked once. Below stands what differs, with the likely cause and what to look at first.", "Then each value with what it takes the place of. More than stated raises; less lowers only where you say that the load was in full use. Nothing changes until you take it into the project; Undo brings back what was stated."],
  kept: ["A plan that is kept is a file in the folder. Opening one puts it on the desk; Undo brings back what was there.", "“Take in a change file” takes what somebody has tried on the page that you mailed."],
  documents: ["“Draw them” shows every file as it is going to be; “Write to the folder” writes what was looked at, to the byte. At the sheet, left and right turn over. With a kept plan under “Changes against”, △ marks what is another.", "“Make the page to mail” makes one file that opens without a network: whoever gets it tries moves and mails a change file back."],
  portfolio: ["What evenrise portfolio has written in this folder: a row a project and variant, a mark a seed. “Its plans” lists every seed; “Open” puts one on the desk, Undo brings back what was there."],
};

let done = read(), isOpen = false;

function read() {
  try { return JSON.parse(sessionStorage.getItem(KEPT)); } catch { return null; }
}

function keep(next) {
  done = next;
  try { sessionStorage.setItem(KEPT, JSON.stringify(done)); } catch { /* Without a memory they last as long as this window's page. */ }
  draw();
}

/** In an empty folder: an invented hall, and what to do with it. */
function practise() {
  return [make("h2", {}, "Nothing in this folder yet"), make("p", {}, "Paste an equipment list below, put a project's file into the folder, or try the desk first: the practice hall is written into this folder as any project is."),
    make("p", { class: "tools" }, make("button", { type: "button", id: "practise", onclick: async () => {
      if (!await act("/api/practice", {}, "An invented hall of 30 loads lies on the desk. What to do first stands above the view.")) return;
      begin();
      location.hash = "#plan";
    } }, "Practise with an invented hall"))];
}

export function begin() { keep([]); }

function tick(deed) {
  if (!done) return;
  const next = STEPS.findIndex((each, i) => !done.includes(i) && each.done === deed);
  if (next < 0) return;
  keep([...done, next]);
  if (done.length === STEPS.length) say("That was all of it. The folder holds the project and its plan; Undo goes back as far as you like.");
}

/** Shows the help of a view and ticks what was to be looked at. */
export function turned(name) {
  const words = HELP[name] || [];
  by("help").hidden = words.length === 0;
  by("help-words").replaceChildren(...words.map((each) => make("p", {}, each)));
  tick("#" + name);
  draw();
}

function draw() {
  const box = by("first-steps");
  const isBlank = desk.sheet && !desk.sheet.plan;
  box.hidden = !isBlank && !done;
  if (box.hidden) return;
  if (isBlank) { box.replaceChildren(...practise()); return; }
  const left = STEPS.length - done.length, next = STEPS.find((each, i) => !done.includes(i));
  const step = (each) => [make("a", { href: "#" + each.view }, viewName(each.view)), ": " + each.words];
  box.replaceChildren(make("h2", {}, left ? "First steps, " + left + " left" : "First steps, all done"),
    ...(next ? [make("p", { class: "next" }, ...step(next))] : []),
    make("details", { open: isOpen, ontoggle: (event) => { isOpen = event.target.open; } }, make("summary", {}, "All steps"),
      make("ol", {}, ...STEPS.map((each, i) => make("li", { class: done.includes(i) ? "done" : "" }, ...step(each), done.includes(i) ? make("span", { class: "tick" }, " ✓ done") : "")))),
    make("p", { class: "tools" }, make("button", { type: "button", id: "enough", onclick: () => { keep(null); by("work").focus({ preventScroll: true }); } }, left ? "Enough of it" : "Close")));
}

const viewName = (name) => (document.querySelector('nav a[href="#' + name + '"]') || { textContent: name }).textContent;

onAsked((path, body) => tick(body && body.around_hand ? path + " around" : path));
