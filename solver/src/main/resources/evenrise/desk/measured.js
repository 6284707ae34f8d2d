// Measured: filled sheets and a recorded start beside the plan; then, step by step, in the project and in the record.

import { act, ask, complain, desk, say } from "./wire.js";
import { count, draw, make, number, plain } from "./parts.js";
import { recordBox } from "./asbuilt.js";

const PIECE = 3 << 20, SHOWN = 300;
const FIELDS = { idle_a: "idle current", running_a: "running current", inrush_peak_a: "inrush peak" };
const region = (label, ...parts) => make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": label }, ...parts);
const heads = (...words) => make("thead", {}, make("tr", {}, ...words.map((each) => make("th", { scope: "col" }, each))));

export function measuredView() {
  let told = null, isFull = false, busy = 0;
  const choose = make("input", { id: "site-files", type: "file", multiple: true, accept: ".csv,.txt,.tsv,.xlsx,.json,.cfg,.dat", onchange: async () => { const files = [...choose.files]; choose.value = ""; await take(files); } });
  const drop = make("div", { class: "drop" }, make("label", {}, "Drop files here, or choose them ", choose), make("p", { class: "note" }, "Sheets that were filled in: tables, plan.xlsx, or what readings.html saved. A recorded start: a table of values, or COMTRADE, .cfg and .dat together. Up to 64 MiB; longer recordings are read by “evenrise commission --recording”."));
  const area = make("textarea", { id: "pasted-readings", rows: "5", spellcheck: "false", placeholder: "load\tphase\tidle_a\trunning_a" });
  const pasted = make("details", { class: "intake" }, make("summary", {}, "Or paste readings"), make("label", { class: "wide" }, "A table out of any spreadsheet, its headers with it ", area), make("p", {}, make("button", { type: "button", id: "read-pasted", onclick: paste }, "Read it")));
  const files = make("div", { class: "site" }), columns = make("div"), found = make("div", { class: "measured-found" });
  const record = recordBox();
  const element = make("section", { class: "measured", "aria-label": "Measured" }, make("h2", {}, "Measured"),
    make("p", { class: "note" }, "What is read here changes nothing until it is taken into the project. Meters and clamps go on where a qualified person may open the panel, and nowhere else. A load that does not show is not proven dead: isolate, lock out and test before touching anything."),
    make("section", { class: "box" }, make("h3", {}, "1. From the site"), drop, pasted, files, columns), found, record.element);

  drop.addEventListener("dragover", (event) => { event.preventDefault(); drop.classList.add("over"); });
  drop.addEventListener("dragleave", () => drop.classList.remove("over"));
  drop.addEventListener("drop", (event) => { event.preventDefault(); drop.classList.remove("over"); take([...event.dataTransfer.files]); });

  async function paste() {
    const text = area.value;
    if (!text.trim()) { say("Nothing was pasted."); return; }
    await take([new File([text], text.trim().startsWith("{") ? "pasted.json" : "pasted.csv")]);
  }

  async function take(chosen) {
    if (!chosen.length) return;
    await asking(async () => {
      for (const file of chosen) await send(file);
      return ask("/api/measured");
    }, "Read: " + count(chosen.length, "file") + ".");
  }

  async function send(file) {
    for (let at = 0; at === 0 || at < file.size; at += PIECE) {
      const bytes = new Uint8Array(await file.slice(at, at + PIECE).arrayBuffer());
      let binary = "";
      for (let i = 0; i < bytes.length; i += 0x8000) binary += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
      await ask("/api/measured/add", { name: file.name, bytes: btoa(binary), first: at === 0, last: at + PIECE >= file.size });
    }
  }

  /** One thing after another, each shown when it is answered. */
  async function asking(deed, done) {
    busy++;
    element.setAttribute("aria-busy", "true");
    try {
      told = await deed();
      paint();
      if (done) say(told.problems.length ? told.problems[0] : done);
    } catch (refusal) { complain(refusal); }
    if (--busy === 0) element.removeAttribute("aria-busy");
    element.dataset.told = String(1 + Number(element.dataset.told || 0));
  }

  const sends = (path, body, done) => asking(() => ask("/api/measured/" + path, body), done);

  function paint() {
    const focus = document.activeElement && document.activeElement.id;
    const isOpen = told.state === "open";
    choose.disabled = told.state === "taken";
    files.replaceChildren(...(told.files.length ? [fileTable(), circumstances(isOpen)] : []));
    columns.replaceChildren(...(told.columns && told.columns.columns.length ? [columnTable(told.columns)] : []));
    found.replaceChildren(...(told.problems.length ? [make("section", { class: "box" }, make("h3", { class: "bad" }, "What stands in the way"), make("ul", {}, ...told.problems.map((each) => make("li", {}, each))))] : []), ...(told.found ? sections(told.found) : []));
    record.show(told);
    element.dataset.state = told.state;
    if (focus && document.getElementById(focus)) document.getElementById(focus).focus();
  }

  function fileTable() {
    return region("Files from the site", make("table", { class: "small" }, heads("File", "Taken for", "Bytes", ""), make("tbody", {}, ...told.files.map((each) => make("tr", {}, make("th", { scope: "row" }, each.name), make("td", {}, each.kind), make("td", { class: "n" }, String(each.bytes)), make("td", {}, told.state === "taken" ? null : make("button", { type: "button", class: "small", "aria-label": "Take away " + plain(each.name), onclick: () => sends("remove", { name: each.name }, "Taken away.") }, "Take away")))))));
  }

  function circumstances(isOpen) {
    const hasRecording = told.files.some((each) => each.kind === "recording");
    const body = () => ({ at: at.value, system: system ? system.value : "", day: day.value, use: use.value.trim() }), changed = () => sends("circumstances", body(), "Read anew.");
    const at = make("select", { id: "recorded-at", disabled: !isOpen, onchange: changed }, ...told.places.map((each) => make("option", { value: each, selected: each === told.at }, each)));
    const system = told.systems.length > 1 ? make("select", { id: "recorded-system", disabled: !isOpen, onchange: changed }, make("option", { value: "" }, "say which"), ...told.systems.map((each) => make("option", { value: each, selected: each === told.system }, each))) : null;
    const day = make("input", { id: "site-day", class: "day", placeholder: "2026-03-14", autocomplete: "off", value: told.day, disabled: !isOpen, onchange: changed });
    const use = make("input", { id: "site-use", class: "day", placeholder: "none", title: "What two visits read becomes a scene of this name, beside full use", autocomplete: "off", maxlength: 60, value: told.use, disabled: !isOpen, onchange: changed });
    return make("div", { class: "tools" }, hasRecording ? make("label", {}, "Recorded at ", at) : null, hasRecording && system ? make("label", {}, "Command of system ", system) : null, make("label", {}, "Day of what states none ", day), make("label", {}, "Running currents were read in this use ", use),
      make("button", { type: "button", id: "another-visit", onclick: () => sends("clear", {}, "Ready for another visit.") }, told.state === "taken" ? "Begin another visit" : "Take all away"));
  }

  /** What each column of the recording is: asked where the headers do not tell, and to be said otherwise where they mislead. */
  function columnTable(table) {
    const choices = table.columns.map((column) => make("select", { "aria-label": "What '" + plain(column.header, 40) + "' is", disabled: told.state === "taken", data: { header: column.header } }, ...[["", "not read"], ["time", "time"], ["A", "current of A"], ["B", "current of B"], ["C", "current of C"]].map(([value, words]) => make("option", { value, selected: value === column.means }, words))));
    const perSecond = make("input", { id: "units-per-second", class: "short", inputmode: "decimal", autocomplete: "off", placeholder: "by header" }), perUnit = make("input", { id: "amps-per-unit", class: "short", inputmode: "decimal", autocomplete: "off", placeholder: "by header" });
    const figure = (input) => (input.value.trim() === "" ? undefined : Number(input.value.replace(",", ".")));
    const keep = () => sends("columns", { columns: table.columns.map((column, i) => ({ header: column.header, means: choices[i].value })).filter((each) => each.means), units_per_second: figure(perSecond), amps_per_unit: figure(perUnit) }, "Kept beside the project: recordings with these headers are read so from now on.");
    return make("details", { class: "part", open: !table.is_told }, make("summary", { class: table.is_told ? "" : "bad" }, table.is_told ? "Columns of the recording" : "Which column of the recording is what?"),
      region("Columns of the recording", make("table", { class: "small columns" }, heads("Header", "First value", "Is"), make("tbody", {}, ...table.columns.map((column, i) => make("tr", {}, make("th", { scope: "row" }, column.header), make("td", {}, column.example), make("td", {}, choices[i])))))),
      make("div", { class: "tools" }, make("label", {}, "Units of time in a second ", perSecond), make("label", {}, "Amperes of one unit ", perUnit), make("button", { type: "button", id: "keep-columns", disabled: told.state === "taken", onclick: keep }, "Keep it so")),
      make("p", { class: "note" }, "Units are told by the header where nothing is written: 1000 for milliseconds; 0.001 for milliamperes, 100 for a clamp of 10 mV/A recorded in volts."));
  }

  function sections(it) {
    const isGood = it.verdict === "as-planned", shown = it.differences.filter((each) => isFull || each.weight !== "less"), less = it.differences.length - it.differences.filter((each) => each.weight !== "less").length;
    const full = make("input", { id: "also-less", type: "checkbox", checked: isFull, onchange: () => { isFull = full.checked; paint(); } });
    return [
      make("section", { class: "box verdict" }, make("h3", {}, "2. What differs"), make("p", { class: "word " + (isGood ? "" : "bad"), id: "verdict", role: "status" }, "Measured: " + it.words), make("p", {}, it.meaning), make("p", { class: "note" }, it.counts + " " + it.coverage),
        shown.length ? region("Differences", differences(shown)) : make("p", {}, "Nothing that was read is other than planned."),
        less ? make("p", {}, make("label", {}, full, " show what is less than stated, too (" + less + ")")) : null,
        it.broken.length ? make("div", {}, make("h4", {}, "Limits at measured values"), make("ul", {}, ...it.broken.map((each) => make("li", { class: "bad" }, each)))) : null, make("p", { class: "note" }, it.limits),
        it.missing.length ? make("details", { class: "part" }, make("summary", {}, "Not measured (" + it.missing.length + ")"), make("p", {}, it.missing.slice(0, SHOWN).map((each) => plain(each, 40)).join(", "))) : null,
        it.notes.length ? make("details", { class: "part" }, make("summary", {}, "How it was read (" + it.notes.length + ")"), make("ul", {}, ...it.notes.map((each) => make("li", {}, each)))) : null),
      ...(it.recorded ? [recorded(it.recorded)] : []),
      refit(it),
    ];
  }

  function differences(shown) {
    return make("table", { class: "small differences" }, heads("", "Where", "What", "Planned", "Measured", "±", "Sure, %", "Likely cause; look at first", "Read"),
      make("tbody", {}, ...shown.slice(0, SHOWN).map((each) => make("tr", { class: each.weight === "unsafe" ? "bad" : "" }, make("td", {}, each.word), make("th", { scope: "row" }, each.subject), make("td", {}, each.quantity), make("td", { class: "n" }, each.planned), make("td", { class: "n" }, each.measured), make("td", { class: "n" }, each.within), make("td", { class: "n" }, each.sure_pct === null ? "" : number(each.sure_pct, 0)), make("td", { class: "wide" }, each.cause + "; look at " + each.look_at), make("td", {}, [each.date, each.meter, each.at].filter(Boolean).join(" · "))))),
      make("caption", { class: "note" }, (shown.length > SHOWN ? "The first " + SHOWN + " of " + shown.length + ". " : "") + "What matters most first. ±: what meter and model may be off by together. Causes are guesses from figures."));
  }

  function recorded(it) {
    const lane = it.height + 26, high = it.lanes.length * lane, left = 52, top = 10;
    const text = (x, y, words, anchor = "start") => { const label = draw("text", { x, y, "text-anchor": anchor }); label.textContent = plain(words, 40); return label; };
    const svg = draw("svg", { viewBox: "0 0 " + (left + it.width + 8) + " " + (high + top), class: "curve overlay", role: "img", "aria-label": "Currents recorded at " + plain(it.place) + " over what was planned, phase by phase" });
    it.lanes.forEach((each, i) => {
      const y = top + i * lane, group = draw("g", { transform: "translate(" + left + " " + y + ")" });
      group.append(draw("rect", { class: "frame", width: it.width, height: it.height }), ...it.ticks.map((tick) => draw("line", { class: "grid", x1: tick.at, x2: tick.at, y1: 0, y2: it.height })), draw("path", { class: "recorded", d: each.recorded || "M0 0" }), draw("path", { class: "planned", d: each.planned }));
      svg.append(group, text(left - 6, y + 12, each.top_a + " A", "end"), text(left - 6, y + it.height, "0", "end"), text(left - 6, y + it.height / 2 + 4, each.phase, "end"));
      if (i === it.lanes.length - 1) it.ticks.forEach((tick) => svg.append(text(left + Number(tick.at), y + it.height + 14, tick.label, "middle")));
    });
    return make("section", { class: "box recording" }, make("h3", {}, "3. The recorded start"), make("p", { class: it.is_recognised ? "note" : "bad" }, it.notes[0] || ""), region("Recorded over planned", svg),
      make("p", { class: "note" }, "Thin: recorded. Dashed: what a clamp was planned to read, idle currents without their surges, by the plan's clock. " + it.columns.join("; ") + "."),
      it.open.length ? make("details", { class: "part", open: true }, make("summary", {}, "Cannot be told (" + it.open.length + ")"),
        ...(it.notes.length > 1 ? [make("p", {}, it.notes[1]), make("ul", { id: "further" }, ...it.notes.slice(2).map((each) => make("li", {}, each)))] : []),
        region("Starts that cannot be told", make("table", { class: "small" }, heads("Load", "Planned, s", "Found", "Likeliest", "Sure, %"), make("tbody", {}, ...it.open.slice(0, SHOWN).map((each) => make("tr", {}, make("th", { scope: "row" }, each.loads), make("td", { class: "n" }, number(each.at_s, 2)), make("td", {}, each.finding), make("td", {}, each.likeliest), make("td", { class: "n" }, each.likeliest ? number(each.sure_pct, 0) : ""))))))) : null);
  }

  /** Each value with what it takes the place of; nothing is lowered that nobody has seen in full use. */
  function refit(it) {
    const isTaken = told.state === "taken", groups = [
      ["Raised to what was read, with what the meter may be off by on top", it.changes.filter((each) => each.kind === "raised")],
      ["Less than stated: was the load in full use when it was read?", it.changes.filter((each) => each.asks_full_use)],
      ["Guessed, and raised by others of their kind", it.changes.filter((each) => each.kind === "raised-by-class")],
      ["Stays as it is stated", it.changes.filter((each) => !each.asks_full_use && (each.kind === "kept" || each.kind === "kept-beside-class"))]];
    const waiting = groups[1][1].filter((each) => !each.is_confirmed).length, count1 = it.changes.filter((each) => each.before_a !== each.after_a).length;
    return make("section", { class: "box refit" }, make("h3", {}, "4. Into the project"),
      it.changes.length ? make("p", { class: "note" }, it.taken) : make("p", {}, "No current of a load was read, so the project has nothing to take over. A recording lowers and raises no field: a clamp around several loads bounds none of them."),
      ...groups.filter(([, changes]) => changes.length).map(([words, changes], i) => make("details", { class: "part", open: changes === groups[0][1] || changes === groups[1][1] }, make("summary", {}, words + " (" + changes.length + ")"), region(words, make("table", { class: "small changes" }, heads("Load", "Field", "Says, A", "Read, A", "±", "Will say, A", ...(changes === groups[1][1] ? ["Was full use"] : []), "Why", "Read"), make("tbody", {}, ...changes.map((each) => change(each, changes === groups[1][1], isTaken))))))),
      it.changes.length ? make("p", { class: "tools" }, make("button", { type: "button", id: "take-measured", disabled: isTaken, onclick: () => act("/api/measured/take", {}, "The project holds what was measured. Undo takes it back.") }, isTaken ? "It is in the project" : "Take into the project"),
        make("span", { class: "note" }, count(count1, "figure") + " of the project " + (count1 === 1 ? "becomes" : "become") + " another" + (waiting ? "; " + waiting + " stay until somebody says that the load was in full use" : "") + ". What was stated is kept beside it.")) : null);
  }

  function change(each, asks, isTaken) {
    const id = "full-use " + each.load + " " + each.field, tick = asks ? make("input", { id, type: "checkbox", checked: each.is_confirmed, disabled: isTaken, "aria-label": plain(each.load, 40) + " was in full use", onchange: () => confirm(each.load, tick.checked) }) : null;
    return make("tr", {}, make("th", { scope: "row" }, each.load), make("td", {}, FIELDS[each.field] || each.field), make("td", { class: "n" }, number(each.before_a, 2) + (each.was_guessed ? " guessed" : "")), make("td", { class: "n" }, number(each.measured_a, 2)), make("td", { class: "n" }, number(each.spread_a, 2)), make("td", { class: "n" + (each.after_a !== each.before_a ? " least" : "") }, number(each.after_a, 2)), ...(asks ? [make("td", {}, tick)] : []), make("td", { class: "wide" }, each.why), make("td", {}, [each.date, each.meter].filter(Boolean).join(" · ")));
  }

  function confirm(load, isSo) {
    const loads = new Set(told.found.changes.filter((each) => each.is_confirmed).map((each) => each.load));
    if (isSo) loads.add(load); else loads.delete(load);
    return sends("confirm", { loads: [...loads] }, isSo ? plain(load) + " was in full use." : plain(load) + " keeps what is stated.");
  }

  return { element, async show() { if (desk.sheet.plan) await asking(() => ask("/api/measured")); } };
}
