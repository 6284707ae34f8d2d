"use strict";
(function () {
  const data = JSON.parse(document.getElementById("played").textContent);
  const loads = data.loads, count = loads.id.length, phases = data.phases, plot = data.plot, nodes = data.nodes;
  const by = function (id) { return document.getElementById(id); };
  const numbers = function (list) { return Float64Array.from(list); };
  const plain = function (text) {
    const shown = text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/gu, "?");
    return shown.length > 60 ? shown.slice(0, 59) + "…" : shown;
  };
  const make = function (name, type, text) {
    const element = document.createElement(name);
    if (type) element.className = type;
    if (text) element.textContent = text;
    return element;
  };
  const amps = function (value) { return value.toFixed(1) + " A"; };

  // The loads in columns; those without a time, which are always on or have no output, start before everything.
  const base = numbers(loads.base_a), excess = numbers(loads.excess_a), half = numbers(loads.half_life_s), on = numbers(loads.on_s);
  // Where systems have commands of their own, one is played: what it does not switch is at its worst throughout, as the
  // node's rest says, and drawn by no load of its own.
  const systems = data.systems, many = systems.length > 0;
  let system = data.system;
  const switches = function (i) { return !many || loads.system[i] === system; };
  const start = new Float64Array(count);
  const ways = data.ways.nodes.map(function (places, k) { return new Map(places.map(function (node, j) { return [node, numbers(data.ways.parts[k][j])]; })); });
  const flows = ways.map(function (way) { return Array.from(way); });
  const touched = Uint8Array.from(loads.phases, function (letters) {
    return phases.reduce(function (mask, letter, p) { return letters.indexOf(letter) < 0 ? mask : mask | 1 << p; }, 0);
  });
  const indexOf = new Map(loads.id.map(function (id, i) { return [id, i]; }));
  const nodeOf = new Map(nodes.slice(1).map(function (node, i) { return [node.id, i + 1]; }));
  const home = Int32Array.from(loads.panel, function (panel) { return nodeOf.get(panel); });
  let order = [], starts = numbers([]);
  const fed = nodes.map(function () { return []; });
  function arrange() {
    for (let i = 0; i < count; i++) start[i] = on[i] < 0 || !switches(i) ? -Infinity : on[i] - data.tolerance_s;
    order = Array.from(loads.id.keys()).sort(function (a, b) { return start[a] - start[b] || a - b; });
    starts = numbers(order.map(function (i) { return start[i]; }));
  }
  arrange();
  order.forEach(function (i) { ways[loads.way[i]].forEach(function (_, at) { fed[at].push(i); }); });
  const begun = function (which) { return nodes[which].starts[many ? system : 0]; };

  // One pole's current by its envelope at nominal voltage, as the plan's referee computes it.
  function drawn(i, seconds) {
    const since = seconds - start[i];
    if (since < -1e-12) return 0;
    if (since === Infinity) return base[i];
    const decaying = Math.max(0, since - 2 * data.tolerance_s) / half[i];
    return decaying > 60 ? base[i] : base[i] + excess[i] * Math.pow(2, -decaying);
  }
  // How many of the sorted starts are not after that time.
  function litAt(seconds) {
    let low = 0, high = count;
    while (low < high) { const middle = low + high >> 1; if (starts[middle] <= seconds + 1e-12) low = middle + 1; else high = middle; }
    return low;
  }
  const sums = new Float64Array(nodes.length * phases.length), now = new Float64Array(count), through = new Float64Array(ways.length);
  function sum(seconds, lit) {
    nodes.forEach(function (_, n) { sums.set(begun(n).rest_a, n * phases.length); });
    through.fill(0);
    for (let k = 0; k < lit; k++) { const i = order[k]; if (switches(i)) through[loads.way[i]] += now[i] = drawn(i, seconds); }
    flows.forEach(function (flow, w) {
      if (through[w] !== 0) flow.forEach(function (each) { for (let p = 0; p < phases.length; p++) sums[each[0] * phases.length + p] += each[1][p] * through[w]; });
    });
  }

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
    name.type = "button"; name.dataset.node = k + 1; name.setAttribute("aria-label", "Show the current of panel " + plain(node.id));
    head.append(name, tally);
    slots.setAttribute("role", "group"); slots.setAttribute("aria-label", "Loads of panel " + plain(node.id));
    const inSlots = fed[k + 1].filter(function (i) { return home[i] === k + 1; }).sort(function (a, b) { return parseInt(loads.slots[a], 10) - parseInt(loads.slots[b], 10); });
    const taken = new Set(), most = node.slots, two = node.is_two_sided;
    if (two) slots.classList.add("two");
    inSlots.forEach(function (i, place) {
      const own = loads.slots[i].split(", ").map(Number), id = plain(loads.id[i]), cell = make("button", "lamp");
      // Ids of one house often begin alike: what is cut is the middle.
      cell.append(make("span", "head", id.slice(0, -5)), make("span", "", id.slice(-5)));
      cell.setAttribute("aria-label", id);
      own.forEach(function (slot) { taken.add(slot); });
      cell.type = "button"; cell.dataset.load = loads.id[i]; cell.tabIndex = place ? -1 : 0;
      cell.style.gridRow = (two ? own[0] + 1 >> 1 : own[0]) + " / span " + own.length;
      if (two) cell.style.gridColumn = own[0] % 2 ? 1 : 2;
      slots.append(cell);
    });
    for (let slot = 1; slot <= most; slot++) if (!taken.has(slot)) {
      const free = make("div", "free");
      free.style.gridRow = two ? slot + 1 >> 1 : slot;
      if (two) free.style.gridColumn = slot % 2 ? 1 : 2;
      slots.append(free);
    }
    const list = make("dl"), values = [], bars = [];
    node.phases.forEach(function (p) {
      const letter = phases[p], row = make("div"), bar = make("dd", "bar"), fill = make("i"), value = make("dd", "amps");
      bar.append(fill); row.append(make("dt", "", letter), bar, value); list.append(row); values.push(value); bars.push(fill);
    });
    card.append(head, slots, list);
    card.style.containIntrinsicSize = "auto " + (21 * (two ? most + 1 >> 1 : most) + 50 + 19 * node.phases.length) + "px";
    house.append(card);
    cards.push({ card: card, node: k + 1, tally: tally, values: values, bars: bars, own: inSlots });
  });
  const watch = new IntersectionObserver(function (entries) {
    entries.forEach(function (entry) {
      const card = cards[entry.target.dataset.card];
      if (entry.isIntersecting) { visible.add(card); showCard(card); } else visible.delete(card);
    });
  }, { rootMargin: "200px" });
  cards.forEach(function (each, k) { each.card.dataset.card = k; watch.observe(each.card); });
  function showCard(each) {
    const loadsOn = each.own.filter(function (i) { return start[i] <= seconds + 1e-12; }).length;
    put(each.tally, loadsOn + " of " + each.own.length + " on");
    nodes[each.node].phases.forEach(function (p, row) {
      const value = sums[each.node * phases.length + p], peak = begun(each.node).peak_a[p];
      put(each.values[row], amps(value));
      each.bars[row].style.transform = "scaleX(" + (peak > 0 ? Math.min(1, value / peak) : 0) + ")";
    });
  }
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
  }
  const near = new IntersectionObserver(function (entries) {
    entries.forEach(function (entry) { if (entry.isIntersecting) { near.unobserve(entry.target); entry.target.querySelectorAll("script.later").forEach(unfold); } });
  }, { rootMargin: "600px" });
  waiting.forEach(function (script) { near.observe(script.closest(".panel, section.big")); });
  addEventListener("beforeprint", function () { Array.from(waiting).forEach(unfold); });

  // The moment shown.
  const end = data.end_s, slider = by("time"), clock = by("clock"), litText = by("lit"), cursor = by("cursor"), veil = by("veil"), drawing = by("drawing");
  const meters = Array.from(by("meters").children, function (row) {
    return { row: row, line: row.querySelector(".phase"), bar: row.querySelector("i"), amps: row.querySelector(".amps"), peak: row.querySelector(".peak") };
  });
  let seconds = 0, node = 0, wide = 0, seen = 0;
  // Where the drawing is wider than its window, the cursor stays in view.
  new ResizeObserver(function () { wide = drawing.offsetWidth; seen = drawing.parentElement.clientWidth; }).observe(drawing.parentElement);
  slider.max = end;
  function show(to) {
    seconds = Math.min(end, Math.max(0, to));
    const nowLit = litAt(seconds);
    for (let k = Math.min(lit, nowLit); k < Math.max(lit, nowLit); k++) {
      const all = lamps[order[k]];
      for (let e = 0; e < all.length; e++) all[e].classList.toggle("on", k < nowLit);
    }
    lit = nowLit;
    sum(seconds, lit);
    slider.value = seconds;
    put(clock, seconds.toFixed(2) + " s");
    put(litText, lit + " of " + count + " on");
    slider.setAttribute("aria-valuetext", seconds.toFixed(2) + " seconds, " + lit + " of " + count + " loads on");
    const part = (plot.left + (plot.right - plot.left) * seconds / end) / plot.width;
    cursor.style.transform = "translateX(" + 100 * part + "%)";
    if (wide > seen + 1) drawing.parentElement.scrollLeft = part * wide - seen / 2;
    veil.style.transform = "scaleX(" + (1 - part) + ")";
    showMeters();
    visible.forEach(showCard);
    if (sharesSeen) showShares();
  }
  function showMeters() {
    meters.forEach(function (meter, p) {
      const value = sums[node * phases.length + p], peak = begun(node).peak_a[p];
      put(meter.amps, amps(value));
      meter.bar.style.transform = "scaleX(" + (peak > 0 ? Math.min(1, value / peak) : 0) + ")";
    });
  }
  const shares = by("shares"), rows = [];
  for (let k = 0; k < 10; k++) {
    const row = make("li"), who = make("span", "who"), bar = make("span", "share"), steady = make("i"), rest = make("i"), much = make("span", "much");
    bar.append(steady, rest); row.append(who, bar, much); shares.append(row);
    rows.push({ row: row, who: who, steady: steady, rest: rest, much: much });
  }
  const share = new Float64Array(count);
  let sharesSeen = false;
  new IntersectionObserver(function (entries) { sharesSeen = entries[entries.length - 1].isIntersecting; if (sharesSeen) showShares(); }).observe(by("moment"));
  function showShares() {
    let phase = 0;
    for (let p = 1; p < phases.length; p++) if (sums[node * phases.length + p] > sums[node * phases.length + phase] + 1e-9) phase = p;
    const most = [];
    let shared = 0;
    const part = function (i) { return ways[loads.way[i]].get(node)[phase]; };
    fed[node].forEach(function (i) {
      if (!switches(i) || part(i) === 0 || start[i] > seconds + 1e-12) return;
      shared++;
      const own = part(i) * now[i];
      if (most.length === rows.length && own <= share[most[most.length - 1]]) return;
      let at = most.length;
      while (at > 0 && share[most[at - 1]] < own) at--;
      share[i] = own;
      most.splice(at, 0, i);
      if (most.length > rows.length) most.pop();
    });
    put(by("moment-where"), "At " + nodeName(node) + ", phase " + phases[phase] + ", at " + seconds.toFixed(2) + " s: " + amps(sums[node * phases.length + phase])
      + " by the envelopes at nominal voltage. The largest of " + shared + " shares; plain: what stays, striped: what is left of the inrush."
      + (many ? " Beside them " + amps(begun(node).rest_a[phase]) + " of what is always on and of the other systems at their worst." : ""));
    const whole = most.length ? Math.max(share[most[0]], 1e-9) : 1;
    rows.forEach(function (each, k) {
      const i = most[k];
      each.row.classList.toggle("gone", i === undefined);
      if (i === undefined) return;
      put(each.who, plain(loads.id[i]) + " " + loads.name[i]);
      each.row.dataset.load = loads.id[i];
      const steady = part(i) * base[i];
      each.steady.style.width = 100 * steady / whole + "%"; each.rest.style.width = 100 * (share[i] - steady) / whole + "%";
      put(each.much, amps(share[i]));
    });
  }
  function nodeName(which) { return which ? nodes[which].kind + " " + plain(nodes[which].id) : "the supply"; }

  // The curves: the supply's stand in the page; a panel's are drawn when asked for.
  const svg = drawing.querySelector("svg.curve"), SVG = "http://www.w3.org/2000/svg", supplys = svg.innerHTML;
  function ticks(most) {
    const power = Math.pow(10, Math.floor(Math.log10(most / 5)));
    const step = [1, 2, 5, 10].map(function (each) { return each * power; }).find(function (each) { return most / each <= 6; });
    return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, function (_, i) { return i * step; });
  }
  function shape(name, properties, text) {
    const element = document.createElementNS(SVG, name);
    Object.keys(properties).forEach(function (key) { element.setAttribute(key, properties[key]); });
    if (text) element.textContent = text;
    return element;
  }
  function choose(which) {
    node = which;
    by("node").value = which;
    by("node-name").textContent = nodeName(which);
    const own = nodes[which];
    meters.forEach(function (meter, p) {
      const at = own.phases.indexOf(p);
      meter.row.classList.toggle("gone", at < 0);
      if (at >= 0) meter.line.setAttribute("stroke", own.colours[at]);
      meter.peak.textContent = "of " + amps(begun(which).peak_a[p]);
    });
    svg.innerHTML = supplys;
    if (which || many && system !== data.system) redraw(own, fed[which]);
    if (many) tellSystem(which);
    showMeters();
    showShares();
  }
  // What the curves cannot show: the current in use, which may be more than any start.
  function tellSystem(which) {
    const begins = begun(which), used = Math.max.apply(null, begins.used_a), phase = begins.used_a.indexOf(used);
    put(by("system-name"), "Drawn as the command of " + plain(systems[system]) + " is carried out, with " + amps(begins.rest_a[phase]) + " on phase " + phases[phase]
      + " of what is always on and of the other systems at their worst; once in use, " + amps(used) + " there.");
  }
  function begin(which) {
    system = which;
    arrange();
    for (let i = 0; i < count; i++) lamps[i].forEach(function (lamp) { lamp.classList.toggle("on", start[i] <= seconds + 1e-12); });
    lit = litAt(seconds);
    document.querySelectorAll("svg.lanes .ons").forEach(function (path) { path.classList.toggle("gone", many && Number(path.dataset.system) !== system); });
    drop();
    show(seconds);
    choose(node);
  }
  function redraw(own, of) {
    const begins = begun(nodes.indexOf(own)), at = nodes.indexOf(own);
    const worst = begins.peak_a.indexOf(Math.max.apply(null, begins.peak_a)), most = 1.08 * Math.max(1, begins.peak_a[worst]);
    const x = function (s) { return plot.left + (plot.right - plot.left) * s / end; };
    const y = function (a) { return plot.bottom - (plot.bottom - plot.top) * a / most; };
    svg.querySelector("title").textContent = "Current of " + nodeName(at) + " by the envelopes at nominal voltage, on each phase over time";
    const scale = svg.querySelector("g.amps");
    scale.replaceChildren();
    ticks(most).forEach(function (a) {
      scale.append(shape("line", { class: "grid", x1: plot.left, x2: plot.right, y1: y(a), y2: y(a) }),
        shape("text", { class: "tick", x: plot.left - 6, y: y(a) + 4, "text-anchor": "end" }, (Number.isInteger(a) ? a : a.toFixed(1)) + " A"));
    });
    const instants = [];
    for (let k = 0; k <= 500; k++) instants.push(end * k / 500);
    of.forEach(function (i) { if (on[i] >= 0 && switches(i)) instants.push(Math.max(0, start[i]), Math.max(0, start[i] - 1e-6)); });
    instants.sort(function (a, b) { return a - b; });
    svg.querySelectorAll("polyline").forEach(function (line) { line.remove(); });
    const dashes = ["none", "8 3", "2 3"];
    own.phases.forEach(function (p, k) {
      const parts = of.filter(switches).map(function (i) { return [i, ways[loads.way[i]].get(at)[p]]; }).filter(function (each) { return each[1] !== 0; });
      const points = instants.map(function (s) {
        let total = begins.rest_a[p];
        parts.forEach(function (each) { total += each[1] * drawn(each[0], s); });
        return x(s).toFixed(1) + "," + y(total).toFixed(1);
      }).join(" ");
      [["edge e", "#ffffff", "4"], ["phase p", own.colours[k], "1.8"]].forEach(function (look) {
        svg.insertBefore(shape("polyline", { class: look[0] + p, fill: "none", stroke: look[1], "stroke-width": look[2], "stroke-dasharray": dashes[p], points: points }), svg.querySelector("line.peak"));
      });
    });
    const px = x(Math.max(0, begins.peak_at_s[worst] - data.tolerance_s)), py = y(begins.peak_a[worst]), line = svg.querySelector("line.peak"), mark = svg.querySelector("circle.peak"), words = svg.querySelector(".peaked");
    line.setAttribute("x1", px); line.setAttribute("x2", px); line.setAttribute("y2", py - 6);
    mark.setAttribute("cx", px); mark.setAttribute("cy", py);
    words.setAttribute("x", px); words.setAttribute("text-anchor", px > plot.width - 150 ? "end" : px < plot.left + 110 ? "start" : "middle");
    words.textContent = "peak " + amps(begins.peak_a[worst]) + ", phase " + phases[worst] + ", " + begins.peak_at_s[worst].toFixed(2) + " s";
  }

  // Playing and scrubbing. What is said aloud waits until the hand rests.
  const play = by("play"), speed = by("speed"), calm = matchMedia("(prefers-reduced-motion: reduce)");
  let playing = false, last = 0, asked = null, saying = 0;
  function say() {
    clearTimeout(saying);
    saying = setTimeout(function () {
      by("said").textContent = seconds.toFixed(2) + " seconds: " + lit + " of " + count + " loads on; " + nodeName(node) + ", "
        + nodes[node].phases.map(function (p) { return "phase " + phases[p] + " " + amps(sums[node * phases.length + p]); }).join(", ") + ".";
    }, 400);
  }
  function label() { play.querySelector(".sign").textContent = playing ? "❚❚" : "▶"; play.querySelector(".word").textContent = playing ? "Pause" : "Play"; }
  function stop() { playing = false; label(); say(); }
  function step(stamp) {
    if (!playing) return;
    // Who wants no motion sees two pictures a second.
    if (!calm.matches || stamp - last >= 500) { show(seconds + (stamp - last) / 1000 * speed.value); last = stamp; }
    if (seconds >= end) stop(); else requestAnimationFrame(step);
  }
  play.addEventListener("click", function () {
    if (playing) { stop(); return; }
    playing = true; label();
    if (seconds >= end) show(0);
    last = performance.now(); requestAnimationFrame(step);
  });
  // Many movements of the hand in one frame are one.
  function ask(to) {
    if (asked === null) requestAnimationFrame(function () { const to = asked; asked = null; show(to); });
    asked = to;
    if (!playing) say();
  }
  // To a load's switch-on, by the command that switches it.
  function goTo(i) {
    if (!switches(i)) { by("system").value = loads.system[i]; begin(loads.system[i]); pick(i); }
    go(start[i]);
  }
  function go(to) { asked = null; if (playing) stop(); show(to); say(); }
  slider.addEventListener("input", function () { ask(Number(slider.value)); });
  function later() { const at = litAt(seconds + 1e-9); return at < count ? starts[at] : end; }
  function earlier() {
    let at = litAt(seconds) - 1;
    while (at >= 0 && starts[at] >= seconds - 1e-9) at--;
    return at >= 0 && starts[at] > 0 ? starts[at] : 0;
  }
  slider.addEventListener("keydown", function (event) {
    const to = { ArrowRight: seconds + 0.1, ArrowUp: seconds + 0.1, ArrowLeft: seconds - 0.1, ArrowDown: seconds - 0.1, PageUp: earlier(), PageDown: later(), Home: 0, End: end }[event.key];
    if (to === undefined) return;
    event.preventDefault(); go(to);
  });
  by("earlier").addEventListener("click", function () { go(earlier()); });
  by("later").addEventListener("click", function () { go(later()); });
  by("to-peak").addEventListener("click", function () {
    const own = begun(node), worst = own.peak_a.indexOf(Math.max.apply(null, own.peak_a));
    go(own.peak_at_s[worst] - data.tolerance_s);
  });
  if (many) by("system").addEventListener("input", function () { if (playing) stop(); begin(Number(by("system").value)); say(); });
  by("node").addEventListener("input", function () { choose(Number(by("node").value)); say(); });
  function pointed(event) {
    const box = drawing.getBoundingClientRect(), x = (event.clientX - box.left) / box.width * plot.width;
    return (x - plot.left) / (plot.right - plot.left) * end;
  }
  drawing.addEventListener("pointerdown", function (event) { if (event.pointerType !== "touch") drawing.setPointerCapture(event.pointerId); if (playing) stop(); ask(pointed(event)); });
  drawing.addEventListener("pointermove", function (event) {
    if (event.buttons && event.pointerType !== "touch") { ask(pointed(event)); return; }
    const box = lanes.getBoundingClientRect(), row = Math.floor((event.clientY - box.top) / box.height * (data.lane_height * data.lanes.length + 1) / data.lane_height);
    if (row < 0 || row >= data.lanes.length) return;
    const at = pointed(event);
    let best = -1, distance = 8 * end / (plot.right - plot.left);
    (inLane[row] || []).filter(switches).forEach(function (i) { const away = Math.abs(on[i] - at); if (away < distance) { distance = away; best = i; } });
    if (best >= 0) pick(best);
  });
  const lanes = drawing.querySelector("svg.lanes"), laneOf = new Map(data.lanes.map(function (id, i) { return [id, i]; })), inLane = data.lanes.map(function () { return []; });
  const lane = function (i) { return laneOf.get(data.lanes_of === "board" ? loads.board[i] : loads.panel[i]); };
  order.forEach(function (i) { if (on[i] >= 0) inLane[lane(i)].push(i); });

  // One load, everywhere.
  const about = by("about"), aboutText = by("about-text"), aboutPlaces = by("about-places");
  function drop() {
    if (picked < 0) return;
    places[picked].forEach(function (element) { element.classList.remove("picked"); });
    by("lane-mark").setAttribute("d", ""); about.hidden = true; picked = -1;
  }
  function pick(i) {
    if (i === picked) return;
    drop();
    picked = i;
    places[i].forEach(function (element) { element.classList.add("picked"); });
    if (on[i] >= 0 && switches(i)) {
      const x = plot.left + (plot.right - plot.left) * on[i] / end;
      by("lane-mark").setAttribute("d", "M" + x + " " + data.lane_height * lane(i) + "v" + data.lane_height);
    }
    const title = make("b", "", plain(loads.id[i]) + (loads.name[i] ? " " + loads.name[i] : ""));
    aboutText.replaceChildren(title, document.createTextNode(": " + [loads.role[i], "panel " + plain(loads.panel[i]) + " slot " + loads.slots[i], "phase " + loads.phases[i],
      loads.board[i] && "board " + plain(loads.board[i]), loads.group[i] && "group " + plain(loads.group[i]), loads.running_a[i].toFixed(2) + " A running",
      "peak " + amps(base[i] + excess[i]), on[i] < -1 ? "not assigned: no output switches it" : on[i] < 0 ? "always on" : "on at " + on[i].toFixed(2) + " s" + (many ? " of " + plain(systems[loads.system[i]]) : "")].filter(Boolean).join(", ")));
    aboutPlaces.replaceChildren(make("span", "", "See it:"));
    if (on[i] >= 0) aboutPlaces.append(make("button", "", "at its switch-on"));
    document.querySelectorAll("section[id]").forEach(function (section) {
      const has = section.id === "schedules" || everyLoad.has(section.id) || places[i].some(function (element) { return section.contains(element); });
      if (!has || section.id === "moment") return;
      const link = make("button", "", section.querySelector("h2").textContent.split(":")[0]);
      link.dataset.section = section.id;
      aboutPlaces.append(link);
    });
    about.hidden = false;
  }
  aboutPlaces.addEventListener("click", function (event) {
    const button = event.target.closest("button"), i = picked;
    if (!button || i < 0) return;
    if (!button.dataset.section) { goTo(i); return; }
    const section = by(button.dataset.section);
    section.querySelectorAll("script.later").forEach(function (script) { if (script.textContent.indexOf("data-load") >= 0) unfold(script); });
    const element = places[i].find(function (each) { return section.contains(each); });
    (element || section).scrollIntoView({ block: "center", behavior: "instant" });
  });
  by("about-close").addEventListener("click", drop);
  document.addEventListener("keydown", function (event) { if (event.key === "Escape") drop(); });
  function loadAt(target) { const element = target.closest && target.closest("[data-load]"), i = element ? indexOf.get(element.dataset.load) : undefined; return i === undefined ? -1 : i; }
  // A page that scrolls under a resting pointer points at nothing.
  let lastX = -1, lastY = -1;
  function point(event) {
    if (event.clientX === lastX && event.clientY === lastY && event.type === "pointermove") return;
    lastX = event.clientX; lastY = event.clientY;
    const i = loadAt(event.target);
    if (i >= 0) pick(i);
  }
  document.addEventListener("pointermove", point);
  document.addEventListener("pointerdown", point);
  document.addEventListener("focusin", function (event) { const i = loadAt(event.target); if (i >= 0) pick(i); });
  house.addEventListener("click", function (event) {
    const i = loadAt(event.target), other = event.target.closest("[data-node]");
    if (i >= 0 && on[i] >= 0) goTo(i);
    if (other) { choose(Number(other.dataset.node)); say(); }
  });
  // Arrows go from breaker to breaker as they are seated.
  house.addEventListener("keydown", function (event) {
    const cell = event.target.closest(".slots button");
    if (!cell || !/^(Arrow|Home|End)/.test(event.key)) return;
    event.preventDefault();
    const all = Array.from(cell.parentElement.querySelectorAll("button")), box = cell.getBoundingClientRect();
    let to = event.key === "Home" ? all[0] : event.key === "End" ? all[all.length - 1] : null;
    if (!to) {
      const down = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0, right = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
      let best = Infinity;
      all.forEach(function (each) {
        const other = each.getBoundingClientRect(), dx = other.left - box.left, dy = other.top - box.top;
        const ahead = down ? down * dy : right * dx, aside = down ? Math.abs(dx) : Math.abs(dy);
        if (each !== cell && ahead > 1 && ahead + 4 * aside < best) { best = ahead + 4 * aside; to = each; }
      });
    }
    if (to) { cell.tabIndex = -1; to.tabIndex = 0; to.focus(); }
  });

  // Filters: in their slots the others step back, in the tables they are left out.
  const search = by("search"), panel = by("f-panel"), group = by("f-group"), phase = by("f-phase"), found = by("found"), form = document.querySelector(".filters");
  const text = loads.id.map(function (id, i) { return (id + " " + loads.name[i]).toLowerCase(); });
  function filter() {
    const words = search.value.trim().toLowerCase(), mask = phase.value ? 1 << phases.indexOf(phase.value) : 0;
    const active = Boolean(words || panel.value || group.value || mask), kept = new Set();
    let hits = 0;
    fits = active ? new Uint8Array(count) : null;
    for (let i = 0; i < count; i++) {
      const fit = !active || (!words || text[i].indexOf(words) >= 0) && (!panel.value || loads.panel[i] === panel.value)
        && (!group.value || loads.group[i] === group.value) && (!mask || touched[i] & mask);
      if (fit) { hits++; kept.add(loads.panel[i]); }
      if (active) fits[i] = fit ? 1 : 0;
      places[i].forEach(function (element) { if (element.tagName === "TR") element.classList.toggle("gone", !fit); else if (element.tagName === "BUTTON") element.classList.toggle("fits", active && Boolean(fit)); });
    }
    house.classList.toggle("filtered", active);
    cards.forEach(function (each) { each.card.classList.toggle("gone", active && !kept.has(nodes[each.node].id)); });
    document.querySelectorAll(".panel").forEach(function (each) { each.classList.toggle("gone", active && !kept.has(each.dataset.panel)); });
    found.textContent = active ? hits + " of " + count + " loads; tables show these alone" : "";
  }
  form.addEventListener("input", filter);
  form.addEventListener("reset", function () { setTimeout(filter); });
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    const first = fits ? fits.indexOf(1) : -1, element = first < 0 ? null : places[first].find(function (each) { return each.tagName === "BUTTON"; });
    if (element) { element.focus(); }
  });
  by("look").addEventListener("input", function () { document.documentElement.dataset.look = by("look").value; });

  learn(document);
  choose(0);
  show(0);
  document.documentElement.dataset.ready = "true";
})();
