  // Every switch-on in its lane, by role; the order that plans keep stands above as bands.
  const laneOf = new Map(data.lanes.map(function (id, i) { return [id, i]; }));
  const lane = function (i) { return laneOf.get(data.lanes_of === "board" ? loads.board[i] : loads.panel[i]); };
  // What is the same for every window: loads and times of each lane as they come on, and how long one settles at most; of
  // each role its first and last switch-on, and when all of it is settled.
  let inLane = [], onInLane = [], slowest = 0, spans = [];
  function arrangeLanes() {
    inLane = data.lanes.map(function () { return []; }); slowest = 0;
    spans = ROLES.map(function () { return { first: Infinity, last: -Infinity, ready: -Infinity }; });
    for (let i = 0; i < count; i++) {
      if (!switches(i) || on[i] < 0) continue;
      const span = spans[roleOf[i]], settle = loads.settle_s[i];
      inLane[lane(i)].push(i);
      slowest = Math.max(slowest, settle);
      span.first = Math.min(span.first, on[i]); span.last = Math.max(span.last, on[i]); span.ready = Math.max(span.ready, on[i] + settle);
    }
    inLane.forEach(function (each) { each.sort(function (a, b) { return on[a] - on[b] || a - b; }); });
    onInLane = inLane.map(function (each) { return Float64Array.from(each, function (i) { return on[i]; }); });
  }
  arrangeLanes();
  function firstFrom(times, s) {
    let low = 0, high = times.length;
    while (low < high) { const middle = low + high >> 1; if (times[middle] < s) low = middle + 1; else high = middle; }
    return low;
  }
  lanes.querySelectorAll(".ons").forEach(function (path) { path.remove(); });
  const marks = ["dim", "bright"].map(function (look) { return ROLES.map(function (role) { const path = shape("path", { class: "ons " + look + " " + role }); lanes.append(path); return path; }); });
  const settling = shape("path", { class: "settling" }), chains = shape("path", { class: "chain" });
  lanes.append(settling, chains);
  const isDim = function (i) { return fits ? fits[i] !== 1 : node > 0 && !ways[loads.way[i]].has(node); };
  // Places along the axis as text, in tenths, and how far down a lane a tick of a role stands, each made once.
  const along = [], HIGH = [[0.12, 0.76], [0.46, 0.42], [0.12, 0.76]];
  function at(x) { const k = Math.round(10 * x); return along[k] || (along[k] = "M" + k / 10 + " "); }
  const ticked = data.lanes.map(function (_, row) {
    return HIGH.map(function (high) {
      const height = data.lane_height, down = tenth(height * (row + high[0])) + "v" + tenth(height * high[1]);
      return [down, down + "h2.4"];
    });
  });
  function drawTicks() {
    const height = data.lane_height, paths = marks.map(function (roles) { return roles.map(function () { return ""; }); }), last = new Int32Array(2 * ROLES.length);
    const scaled = (plot.right - plot.left) / (until - from);
    let settled = "";
    for (let row = 0; row < inLane.length; row++) {
      const each = inLane[row], times = onInLane[row];
      last.fill(-1);
      for (let k = firstFrom(times, from - slowest); k < times.length && times[k] <= until; k++) {
        const i = each[k], x = plot.left + scaled * (times[k] - from), ready = x + scaled * loads.settle_s[i];
        if (ready < plot.left) continue;
        const bright = isDim(i) ? 0 : 1, role = roleOf[i], column = Math.round(2 * x);
        // What falls on one column of a lane is one tick.
        if (last[2 * role + bright] === column) continue;
        last[2 * role + bright] = column;
        if (x >= plot.left) paths[bright][role] += at(x) + ticked[row][role][loads.drops[i] ? 1 : 0];
        if (bright && ready > x + 0.5) settled += at(Math.max(plot.left, x)) + tenth(height * (row + 0.88)) + "H" + tenth(Math.min(plot.right, ready));
      }
    }
    marks.forEach(function (roles, bright) { roles.forEach(function (path, role) { redraw(path, paths[bright][role]); }); });
    redraw(settling, settled);
    if (data.chains.length) drawChains();
    if (picked >= 0) markPicked();
  }
  function redraw(path, d) { if (d || path.hasAttribute("d")) path.setAttribute("d", d); }
  function drawChains() {
    const height = data.lane_height;
    chains.setAttribute("d", data.chains.map(function (pair) {
      const one = inLane[pair[0]], other = inLane[pair[1]];
      if (!one.length || !other.length) return "";
      const a = across(on[one[one.length - 1]]), b = across(on[other[0]]), limit = function (x) { return Math.min(plot.right, Math.max(plot.left, x)).toFixed(1); };
      return Math.max(a, b) < plot.left || Math.min(a, b) > plot.right ? "" : "M" + limit(a) + " " + (pair[0] + 0.5) * height + "L" + limit(b) + " " + (pair[1] + 0.5) * height;
    }).join(""));
  }
  function markPicked() {
    const i = picked, x = across(on[i]);
    by("lane-mark").setAttribute("d", on[i] >= 0 && switches(i) && x >= plot.left && x <= plot.right ? "M" + x + " " + data.lane_height * lane(i) + "v" + data.lane_height : "");
  }
  function tickAt(event) {
    const box = lanes.getBoundingClientRect(), row = Math.floor((event.clientY - box.top) / box.height * (data.lane_height * data.lanes.length + 1) / data.lane_height);
    if (row < 0 || row >= data.lanes.length) return -1;
    const at = pointed(event);
    let best = -1, distance = 8 * (until - from) / (plot.right - plot.left);
    inLane[row].forEach(function (i) { const away = Math.abs(on[i] - at); if (away < distance) { distance = away; best = i; } });
    return best;
  }
  // From the first switch-on of a role to its last, and paler until all of it is settled.
  const bands = by("bands"), bandOf = ROLES.map(function (role, k) {
    const top = 2 + 14 * k, settle = shape("rect", { class: "settle", y: top + 2, height: 8 }), band = shape("rect", { class: "band " + role, y: top + 2, height: 8 }), words = shape("text", { y: top + 9 });
    bands.append(shape("text", { x: plot.left - 6, y: top + 9, "text-anchor": "end" }, role), settle, band, words);
    return { settle: settle, band: band, words: words };
  });
  function drawBands() {
    const cut = function (x) { return tenth(Math.min(plot.right, Math.max(plot.left, across(x)))); };
    bandOf.forEach(function (each, k) {
      const span = spans[k], any = span.first < Infinity, first = any ? cut(span.first) : plot.left, last = any ? cut(span.last) : first, ready = any ? cut(span.ready) : first;
      const here = any && span.first <= until && span.last >= from;
      each.settle.setAttribute("x", first); each.settle.setAttribute("width", Math.max(0, ready - first));
      each.band.setAttribute("x", first); each.band.setAttribute("width", here ? Math.max(1, last - first) : 0);
      const before = ready > plot.right - 190;
      each.words.setAttribute("x", !any ? plot.left + 4 : before ? Math.max(plot.left + 190, first - 5) : ready + 5);
      each.words.setAttribute("text-anchor", before ? "end" : "start");
      put(each.words, any ? span.first.toFixed(2) + " to " + span.last.toFixed(2) + " s" + (span.ready > span.last + 1e-9 ? ", settled " + span.ready.toFixed(2) + " s" : "") : "none");
    });
  }
