  // Trying a change: the very referee that judged the plan, compiled for browsers. Nothing here changes the plan that was mailed.
  const tryCards = [], tryTold = { text: "" };
  let referee = null, plant = null, tried = null, hand = "", judging = 0;
  function beginTrying() {
    const script = make("script");
    script.textContent = by("referee").textContent;
    document.head.append(script);
    referee = globalThis.evenriseReferee;
    tried = JSON.parse(referee.open(by("handout").textContent));
    plant = JSON.parse(referee.plant());
    plant.panels.forEach(function (panel) { addCard(by("try-house"), "panel " + panel.id, panel, null); });
    plant.boards.forEach(function (board) { addCard(by("try-boards"), "board " + board.id, null, board); });
    by("try-begin").hidden = true; by("try-desk").hidden = false;
    showTried();
  }
  function addCard(where, name, panel, board) {
    const card = make("section", "board"), head = make("h4", "", plain(name)), cells = make("div", "slots try-cells");
    cells.setAttribute("role", "group"); cells.setAttribute("aria-label", "Places of " + plain(name));
    if (panel && panel.two) cells.classList.add("two");
    card.append(head, cells); where.append(card);
    tryCards.push({ card: card, cells: cells, panel: panel, board: board });
  }
  const keyOf = function (panel, slot) { return panel + "\n" + slot; };
  function tryCell(no, words, load, target) {
    const cell = make("button", load ? "try-load" : "try-free"), name = idPart(words);
    cell.type = "button"; cell.tabIndex = -1;
    cell.append(make("span", "no", no), name, make("span", "at"));
    if (load) cell.dataset.trial = load;
    Object.keys(target).forEach(function (key) { cell.dataset[key] = target[key]; });
    return cell;
  }
  function fillPanel(each) {
    const panel = each.panel, taken = new Set();
    tried.loads.filter(function (load) { return load.panel === panel.id && load.slots.length; }).forEach(function (load) {
      load.slots.forEach(function (slot) { taken.add(slot); });
      const cell = tryCell(load.slots.join("\n"), plain(load.id), load.id, { panel: panel.id, slot: load.slots[0] });
      put(cell.lastChild, load.on_s === undefined ? "" : load.on_s.toFixed(2));
      seat(cell, panel, load.slots[0], load.slots.length);
      cell.setAttribute("aria-label", plain(load.id) + ", panel " + plain(panel.id) + ", slot " + load.slots.join(" and ") + ", phase " + load.phases.join(" and "));
      each.cells.append(cell);
    });
    for (let slot = 1; slot <= panel.slots; slot++) if (!taken.has(slot)) {
      const cell = tryCell(String(slot), "", "", { panel: panel.id, slot: slot });
      seat(cell, panel, slot, 1);
      cell.setAttribute("aria-label", "Panel " + plain(panel.id) + ", slot " + slot + ", phase " + panel.phases[slot - 1] + ", free");
      each.cells.append(cell);
    }
  }
  function seat(cell, panel, slot, rows) {
    cell.style.gridRow = (panel.two ? slot + 1 >> 1 : slot) + " / span " + rows;
    if (panel.two) { cell.style.gridColumn = slot % 2 ? 1 : 2; if (slot % 2 === 0) cell.classList.add("right"); }
    cell.dataset.column = panel.two && slot % 2 === 0 ? 1 : 0;
  }
  function fillBoard(each) {
    const board = each.board, on = new Map();
    tried.loads.forEach(function (load) { if (load.board === board.id) on.set(load.output, load); });
    for (let output = 1; output <= board.outputs; output++) {
      const load = on.get(output), cell = tryCell(String(output), load ? plain(load.id) : "", load ? load.id : "", { board: board.id, output: output });
      if (load && load.on_s !== undefined) put(cell.lastChild, load.on_s.toFixed(2));
      cell.setAttribute("aria-label", (load ? plain(load.id) + ", " : "") + "board " + plain(board.id) + ", output " + output + (load ? "" : ", free"));
      each.cells.append(cell);
    }
  }
  const signed = function (value, unit) { return (Math.abs(value) < 5e-4 ? "±0" : (value > 0 ? "+" : "−") + Math.abs(value).toFixed(Math.abs(value) < 10 ? 2 : 1)) + unit; };
  const FIGURES = [["Peak at the supply", "peak_a", " A"], ["Objective", "objective", ""], ["Imbalance at the supply", "imbalance_pct", " %"], ["Worst panel's imbalance", "panel_imbalance_pct", " %"],
    ["Neutral at the supply", "neutral_a", " A"], ["Until everything is on", "duration_s", " s"]];
  function showTried() {
    const before = tried.before, now = tried.now, rows = by("try-figures");
    rows.replaceChildren();
    const row = function (name, was, is, change, bad) {
      const tr = make("tr"), head = make("th", "", name);
      head.scope = "row"; tr.append(head);
      [was, is, change].forEach(function (text) { tr.append(make("td", "n", text)); });
      if (bad) tr.classList.add("bad");
      rows.append(tr);
    };
    row("Hard rules broken", String(before.broken.length), String(now.broken.length), signed(now.broken.length - before.broken.length, "").replace(/\.0+$/, ""), now.broken.length > 0);
    FIGURES.forEach(function (each) { row(each[0], before[each[1]].toFixed(2) + each[2], now[each[1]].toFixed(2) + each[2], signed(now[each[1]] - before[each[1]], each[2]), false); });
    const list = by("try-broken");
    list.replaceChildren();
    tried.added.slice(0, 20).forEach(function (text) { list.append(make("li", "", text)); });
    if (tried.added.length > 20) list.append(make("li", "", "and " + (tried.added.length - 20) + " more"));
    const moves = by("try-moves");
    moves.replaceChildren();
    tried.moves.forEach(function (move) { moves.append(make("li", "", moveWords(move))); });
    by("try-undo").disabled = by("try-save").disabled = tried.moves.length === 0;
    const focus = document.activeElement && document.activeElement.closest(".try-cells") ? document.activeElement : null;
    const kept = focus && (focus.dataset.trial ? { trial: focus.dataset.trial, panel: !!focus.dataset.panel } : { panel: focus.dataset.panel, slot: focus.dataset.slot, board: focus.dataset.board, output: focus.dataset.output });
    tryCards.forEach(function (each) { each.cells.replaceChildren(); if (each.panel) fillPanel(each); else fillBoard(each); each.cells.firstChild.tabIndex = 0; });
    if (kept) refocus(kept);
    take("");
    const peak = now.peak_a - before.peak_a;
    tell((tried.added.length ? tried.added.length + " rule" + (tried.added.length > 1 ? "s" : "") + " broken that the plan kept" : "Nothing is broken that the plan kept")
      + "; peak " + amps(now.peak_a) + " on " + now.peak_phase + " at " + now.peak_at_s.toFixed(2) + " s" + (tried.moves.length ? ", " + signed(peak, " A") : "") + ".");
    by("try-said").classList.toggle("bad", tried.added.length > 0);
  }
  function refocus(kept) {
    const cell = Array.from(document.querySelectorAll(".try-cells button")).find(function (each) {
      return kept.trial ? each.dataset.trial === kept.trial && !!each.dataset.panel === kept.panel
        : each.dataset.panel === kept.panel && each.dataset.slot === kept.slot && each.dataset.board === kept.board && each.dataset.output === kept.output;
    });
    if (cell) reach(cell);
  }
  function moveWords(move) {
    return plain(move.load) + " to " + (move.panel ? "panel " + plain(move.panel) + ", slot " + move.slot : move.board ? "board " + plain(move.board) + ", output " + move.output : move.on_s.toFixed(2) + " s");
  }
  function tell(text) { tryTold.text = text; put(by("try-said"), text); }

  // A load in the hand: each free place says what it would break, or what the plan's objective would become.
  function take(load) {
    hand = load; judging++;
    by("try-desk").classList.toggle("holding", load !== "");
    document.querySelectorAll(".try-cells .held").forEach(function (cell) { cell.classList.remove("held"); });
    document.querySelectorAll(".try-cells .try-free").forEach(function (cell) { cell.classList.remove("breaks", "better"); put(cell.lastChild, ""); cell.removeAttribute("title"); });
    const found = load && tried.loads.find(function (each) { return each.id === load; });
    by("try-time").hidden = !found || found.board === undefined || !plant.boards.find(function (board) { return board.id === found.board; }).times;
    if (!load) { put(by("try-hand"), "Nothing in the hand."); return; }
    if (found.on_s !== undefined) by("try-seconds").value = found.on_s;
    document.querySelectorAll(".try-cells .try-load").forEach(function (cell) { cell.classList.toggle("held", cell.dataset.trial === load); });
    put(by("try-hand"), plain(load) + " in the hand: choose a place, or Escape.");
    const round = judging, cards = tryCards.filter(function (each) { return inSight(each.card); });
    (function next() {
      if (round !== judging || !cards.length) return;
      const each = cards.shift();
      JSON.parse(each.panel ? referee.slots(load, each.panel.id) : referee.outputs(load, each.board.id)).forEach(function (place) { showPlace(each, place); });
      setTimeout(next, 0);
    })();
  }
  function inSight(card) { const box = card.getBoundingClientRect(); return box.bottom > -200 && box.top < innerHeight + 200; }
  function showPlace(each, place) {
    const words = place.broken.length ? "✕ " + place.broken.length : signed(place.objective, "");
    const full = place.broken.length ? "breaks: " + place.broken[0] : "objective " + signed(place.objective, "") + ", peak " + signed(place.peak_a, " A") + (place.gone ? ", " + place.gone + " broken no longer" : "");
    each.cells.querySelectorAll(".try-free").forEach(function (cell) {
      const its = each.panel ? place.slots.indexOf(Number(cell.dataset.slot)) >= 0 : Number(cell.dataset.output) === place.output;
      if (!its) return;
      put(cell.lastChild, words); cell.title = full;
      cell.classList.toggle("breaks", place.broken.length > 0); cell.classList.toggle("better", !place.broken.length && place.objective < -5e-4);
      cell.setAttribute("aria-label", cell.getAttribute("aria-label").split(": ")[0] + ": " + full);
    });
  }
  function putDown(cell) {
    if (cell.dataset.trial === hand) { take(""); return; }
    const move = { load: hand };
    if (cell.dataset.panel) { move.panel = cell.dataset.panel; move.slot = Number(cell.dataset.slot); } else { move.board = cell.dataset.board; move.output = Number(cell.dataset.output); }
    carry(move);
  }
  function carry(move) {
    const answer = JSON.parse(referee.move(JSON.stringify(move)));
    if (answer.refused) { take(""); tell("Not done: " + answer.refused); by("try-said").classList.add("bad"); return; }
    tried = answer;
    showTried();
  }
  function reach(cell) {
    cell.parentElement.querySelectorAll("[tabindex='0']").forEach(function (each) { each.tabIndex = -1; });
    cell.tabIndex = 0; cell.focus();
  }
  function press(cell) { if (hand) putDown(cell); else if (cell.dataset.trial) take(cell.dataset.trial); }
  const tryDesk = by("try-desk");
  if (tryDesk) {
    by("try-begin").addEventListener("click", function () {
      try { beginTrying(); } catch (fault) { tell("This browser cannot run the referee: " + fault.message); by("try-said").hidden = false; }
    });
    by("try-undo").addEventListener("click", function () { tried = JSON.parse(referee.undo()); showTried(); });
    by("try-set").addEventListener("click", function () { const at = Number(by("try-seconds").value); if (hand && Number.isFinite(at)) carry({ load: hand, on_s: at }); });
    by("try-save").addEventListener("click", function () {
      const link = make("a"), address = URL.createObjectURL(new Blob([referee.moves()], { type: "application/json" }));
      link.href = address; link.download = tryDesk.dataset.name + ".moves.json"; link.click();
      setTimeout(function () { URL.revokeObjectURL(address); }, 1000);
    });
    let dragged = null, ghost = null;
    const over = function (event) { const element = document.elementFromPoint(event.clientX, event.clientY); return element && element.closest(".try-cells button"); };
    tryDesk.addEventListener("pointerdown", function (event) {
      const cell = event.target.closest(".try-cells .try-load");
      if (cell && event.pointerType !== "touch" && event.button === 0) dragged = { load: cell.dataset.trial, x: event.clientX, y: event.clientY, moved: false };
    });
    addEventListener("pointermove", function (event) {
      if (!dragged) return;
      if (!dragged.moved && Math.hypot(event.clientX - dragged.x, event.clientY - dragged.y) > 5) {
        dragged.moved = true; take(dragged.load);
        ghost = make("div", "try-ghost", plain(dragged.load)); document.body.append(ghost);
      }
      if (ghost) {
        ghost.style.transform = "translate(" + (event.clientX + 12) + "px," + (event.clientY + 8) + "px)";
        const cell = over(event), said = cell && cell.title;
        put(by("try-hand"), plain(dragged.load) + " in the hand" + (said ? ": " + said : "."));
        event.preventDefault();
      }
    });
    addEventListener("pointerup", function (event) {
      const drop = dragged;
      dragged = null;
      if (ghost) { ghost.remove(); ghost = null; }
      if (!drop || !drop.moved) return;
      const cell = over(event);
      if (cell) putDown(cell); else take("");
      // The click that ends a drag is none; there may be no such click.
      const swallow = function (click) { click.stopPropagation(); click.preventDefault(); };
      addEventListener("click", swallow, { capture: true, once: true });
      setTimeout(function () { removeEventListener("click", swallow, true); }, 0);
    });
    tryDesk.addEventListener("click", function (event) { const cell = event.target.closest(".try-cells button"); if (cell) { reach(cell); press(cell); } });
    tryDesk.addEventListener("focusin", function (event) { const cell = event.target.closest(".try-cells .try-free"); if (cell && hand && cell.title) put(by("try-hand"), plain(hand) + " in the hand: " + cell.title); });
    tryDesk.addEventListener("keydown", function (event) {
      if (event.key === "Escape" && hand) { take(""); event.stopPropagation(); return; }
      const cell = event.target.closest(".try-cells button");
      if (!cell || ["ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight", "Home", "End"].indexOf(event.key) < 0) return;
      const all = Array.from(cell.parentElement.children), box = cell.getBoundingClientRect(), sideways = event.key === "ArrowLeft" || event.key === "ArrowRight";
      const back = event.key === "ArrowUp" || event.key === "ArrowLeft" ? -1 : 1;
      event.preventDefault();
      if (event.key === "Home" || event.key === "End") { const sorted = all.slice().sort(function (a, b) { return a.offsetTop - b.offsetTop || a.offsetLeft - b.offsetLeft; }); reach(sorted[event.key === "Home" ? 0 : sorted.length - 1]); return; }
      let best = null, least = Infinity;
      all.forEach(function (each) {
        const its = each.getBoundingClientRect(), ahead = back * (sideways ? its.left - box.left : its.top - box.top), aside = Math.abs(sideways ? its.top - box.top : its.left - box.left);
        if (each !== cell && ahead > 1 && ahead + 4 * aside < least) { least = ahead + 4 * aside; best = each; }
      });
      if (best) reach(best);
    });
  }
