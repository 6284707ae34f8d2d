// What lies on the desk, asked of the server and told to every view.

import { by, plain } from "./parts.js";

/** `begins` is what the view that is turned to is to begin with. */
export const desk = { sheet: null, loads: new Map(), chosen: null, begins: "" };
const views = new Set();
const listeners = new Map();
const hearers = new Set();

/** A view that is drawn whenever something has changed. */
export function onShow(view) { views.add(view); }

/** Whoever wants to know what was asked of the server and was answered. */
export function onAsked(hearer) { hearers.add(hearer); }

/** Events of one kind: search, estimate, cures, documents. */
export function onEvent(kind, listener) { listeners.set(kind, listener); }

export function show(sheet) {
  if (desk.sheet && sheet.revision < desk.sheet.revision) return;
  if (sheet.since !== null) {
    if (!desk.sheet || sheet.since !== desk.sheet.revision) { refresh(true); return; }
    fill(sheet.plan, desk.sheet.plan);
  }
  desk.sheet = sheet;
  desk.loads = new Map((sheet.plan ? sheet.plan.loads : []).map((load) => [load.id, load]));
  if (desk.chosen && !desk.loads.has(desk.chosen)) desk.chosen = null;
  redraw();
}

export function redraw() { views.forEach((view) => view(desk.sheet)); }

export class Refused extends Error {}

/** What an answer leaves out since it is as before. */
function fill(plan, before) {
  for (const list of ["panels", "boards", "loads"]) {
    const changed = new Map(plan[list].map((each) => [each.id, each]));
    plan[list] = before[list].map((each) => changed.get(each.id) || each);
  }
  if (plan.curves.length === 0) plan.curves = before.curves;
}

let asking = 0;

/** How much is asked and not yet answered stands at the page itself. */
function isAsking(more) {
  asking += more;
  document.documentElement.dataset.asking = String(asking);
}

/** Asks, or sends where there is something to send. */
export async function ask(path, body, isWhole) {
  isAsking(1);
  try { return await answered(path, body, isWhole); } finally { isAsking(-1); }
}

async function answered(path, body, isWhole) {
  const shown = desk.sheet && !isWhole ? { "Desk-Revision": String(desk.sheet.revision) } : {};
  const answer = await fetch(path, body === undefined ? { headers: shown } : {
    method: "POST", headers: { "Content-Type": "application/json", ...shown }, body: JSON.stringify(body),
  }).catch(() => { throw new Refused("the desk does not answer. Maybe it was ended: start it again."); });
  const read = await answer.json();
  if (!answer.ok) throw new Refused(read.messages.join(" "));
  if (body !== undefined) hearers.forEach((each) => each(path, body));
  return read;
}

/** Changes something and shows what has become of it. */
export async function act(path, body, done) {
  try {
    show(await ask(path, body));
    if (done) say(done);
    return true;
  } catch (refusal) {
    complain(refusal);
    return false;
  }
}

export function say(text) {
  by("said").className = "";
  by("said").textContent = plain(text, 600);
}

export function complain(refusal) {
  if (!(refusal instanceof Refused)) throw refusal;
  by("said").className = "bad";
  by("said").textContent = plain(refusal.message, 1200);
}

export async function refresh(isWhole) {
  try { show(await ask("/api/desk", undefined, isWhole)); } catch (refusal) { complain(refusal); }
}

/** Hears what happens elsewhere: another window, another program, the search. */
export function listen() {
  const events = new EventSource("/api/events");
  events.addEventListener("changed", (event) => {
    const revision = JSON.parse(event.data).revision;
    // An answer to this window's own change is on its way.
    setTimeout(() => { if (revision > desk.sheet.revision) refresh(); }, 120);
  });
  events.addEventListener("judged", (event) => {
    const told = JSON.parse(event.data);
    if (desk.sheet.plan && told.revision === desk.sheet.revision) {
      desk.sheet.plan.judged = told.words;
      views.forEach((view) => view.ofFigures && view(desk.sheet));
    }
  });
  events.addEventListener("told", (event) => say(JSON.parse(event.data).words));
  for (const kind of ["search", "estimate", "cures", "documents"]) events.addEventListener(kind, (event) => listeners.has(kind) && listeners.get(kind)(JSON.parse(event.data).words));
}
