  // Wherever a load stands: elements by its place in the columns.
  const places = loads.id.map(function () { return []; });
  const lamps = loads.id.map(function () { return []; });
  let lit = 0, picked = -1, fits = null;
  function learn(root) {
    root.querySelectorAll("[data-load]").forEach(function (element) {
      const i = indexOf.get(element.dataset.load);
      if (i === undefined) return;
      places[i].push(element);
      if (element.classList.contains("lamp")) { lamps[i].push(element); element.classList.toggle("on", start[i] <= seconds + 1e-12); }
      if (i === picked) element.classList.add("picked");
      if (fits && element.tagName === "TR") element.classList.toggle("gone", !fits[i]);
    });
  }

  // The house: every panel with its breakers in their slots.
  const house = by("house"), cards = [], visible = new Set();
  nodes.slice(1).forEach(function (node, k) {
    if (node.kind !== "panel") return;
    const card = make("section", "board"), head = make("h3"), name = make("button", "", plain(node.id)), tally = make("span"), slots = make("div", "slots");
    name.type = "button"; name.dataset.node = k + 1; name.setAttribute("aria-label", "Panel " + plain(node.id) + ": show its current");
    head.append(name, tally);
    slots.setAttribute("role", "group"); slots.setAttribute("aria-label", "Loads of panel " + plain(node.id));
    const inSlots = fed[k + 1].filter(function (i) { return home[i] === k + 1; }).sort(function (a, b) { return parseInt(loads.slots[a], 10) - parseInt(loads.slots[b], 10); });
    const taken = new Set(), most = node.slots, two = node.is_two_sided;
    if (two) slots.classList.add("two");
    inSlots.forEach(function (i, place) {
      const own = loads.slots[i].split(", ").map(Number), id = plain(loads.id[i]), cell = make("button", "lamp");
      // As on a schedule: the slot outside, the load, when it comes on.
      const name = idPart(id), right = two && own[0] % 2 === 0;
      const columns = [make("span", "no", own.join("\n")), name, make("span", "at", on[i] < -1 ? "no output" : on[i] < 0 ? "always" : on[i].toFixed(2))];
      cell.append.apply(cell, columns);
      if (right) cell.classList.add("right");
      own.forEach(function (slot) { taken.add(slot); });
      cell.type = "button"; cell.dataset.load = loads.id[i]; cell.tabIndex = place ? -1 : 0;
      cell.style.gridRow = (two ? own[0] + 1 >> 1 : own[0]) + " / span " + own.length;
      if (two) cell.style.gridColumn = own[0] % 2 ? 1 : 2;
      slots.append(cell);
    });
    for (let slot = 1; slot <= most; slot++) if (!taken.has(slot)) {
      const free = make("div", "free" + (two && slot % 2 === 0 ? " right" : ""));
      free.append(make("span", "no", String(slot)));
      free.style.gridRow = two ? slot + 1 >> 1 : slot;
      if (two) free.style.gridColumn = slot % 2 ? 1 : 2;
      slots.append(free);
    }
    const list = make("dl"), values = [], bars = [];
    node.phases.forEach(function (p) {
      const letter = phases[p], row = make("div"), bar = make("dd", "bar"), fill = make("i"), value = make("dd", "amps");
      bar.append(fill); row.append(make("dt", "", letter), bar, value); list.append(row); values.push(value); bars.push(fill);
    });
    const full = fullAt(k + 1);
    const told = make("p", "note full", "bars: " + (limitOf(k + 1) > 0 ? "inrush limit " : "no inrush limit; ") + full.words);
    card.append(head, slots, list, told);
    card.style.containIntrinsicSize = "auto " + (24 * (two ? most + 1 >> 1 : most) + 50 + 19 * node.phases.length) + "px";
    house.append(card);
    cards.push({ card: card, full: full.amps, node: k + 1, tally: tally, values: values, bars: bars, own: inSlots });
  });
  const watch = new IntersectionObserver(function (entries) {
    entries.forEach(function (entry) {
      const card = cards[entry.target.dataset.card];
      if (entry.isIntersecting) { visible.add(card); showCard(card); nameLamps(card); } else visible.delete(card);
    });
  }, { rootMargin: "200px" });
  cards.forEach(function (each, k) { each.card.dataset.card = k; watch.observe(each.card); });
  function showCard(each) {
    const loadsOn = each.own.filter(function (i) { return start[i] <= seconds + 1e-12; }).length;
    put(each.tally, loadsOn + " of " + each.own.length + " on");
    nodes[each.node].phases.forEach(function (p, row) {
      const value = sums[each.node * phases.length + p];
      put(each.values[row], amps(value));
      each.bars[row].style.transform = "scaleX(" + Math.min(1, value / each.full) + ")";
    });
  }
  // What a breaker says of itself, brought up to date while it is near or reached, not in every picture.
  function nameLamp(i) {
    const state = on[i] < -1 ? "no output switches it" : on[i] < 0 ? "always on" : (start[i] <= seconds + 1e-12 ? "on" : "off") + ", comes on at " + on[i].toFixed(2) + " s";
    const words = plain(loads.id[i]) + ", slot " + loads.slots[i].replace(/, /g, " and ") + ", phase " + Array.from(loads.phases[i]).join(" and ") + ", " + state;
    lamps[i].forEach(function (lamp) { if (lamp.tagName === "BUTTON" && lamp.getAttribute("aria-label") !== words) lamp.setAttribute("aria-label", words); });
  }
  function nameLamps(card) { card.own.forEach(nameLamp); }
  function put(element, text) { if (element.textContent !== text) element.textContent = text; }

  // Long tables are drawn when somebody comes near, or prints.
  const waiting = new Set(document.querySelectorAll("script.later"));
  // Of these some row will name the load, though none is drawn yet.
  const everyLoad = new Set();
  waiting.forEach(function (script) { const section = script.closest("section.big"); if (section && script.textContent.indexOf("data-load") >= 0) everyLoad.add(section.id); });
  function unfold(script) {
    if (!waiting.delete(script)) return;
    const box = script.parentElement;
    box.innerHTML = script.textContent; // our own template with every name escaped
    learn(box);
    sortable(document);
  }
  const near = new IntersectionObserver(function (entries) {
    entries.forEach(function (entry) { if (entry.isIntersecting) { near.unobserve(entry.target); entry.target.querySelectorAll("script.later").forEach(unfold); } });
  }, { rootMargin: "600px" });
  waiting.forEach(function (script) { near.observe(script.closest(".panel, section.big")); });
  addEventListener("beforeprint", function () { Array.from(waiting).forEach(unfold); });

