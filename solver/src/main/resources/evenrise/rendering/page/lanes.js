  // Every switch-on in its lane, by role; the order that plans keep stands above as bands.
  const laneOf = new Map(data.lanes.map(function (id, i) { return [id, i]; })), inLane = data.lanes.map(function () { return []; });
  const lane = function (i) { return laneOf.get(data.lanes_of === "board" ? loads.board[i] : loads.panel[i]); };
  order.forEach(function (i) { if (on[i] >= 0) inLane[lane(i)].push(i); });
  lanes.querySelectorAll(".ons").forEach(function (path) { path.remove(); });
  const marks = ["dim", "bright"].map(function (look) { return ROLES.map(function (role) { const path = shape("path", { class: "ons " + look + " " + role }); lanes.append(path); return path; }); });
  const settling = shape("path", { class: "settling" }), chains = shape("path", { class: "chain" });
  lanes.append(settling, chains);
  const isDim = function (i) { return fits ? fits[i] !== 1 : node > 0 && !ways[loads.way[i]].has(node); };
  function drawTicks() {
    const height = data.lane_height, paths = [0, 1].map(function () { return ROLES.map(function () { return []; }); }), settled = [], taken = new Set();
    inLane.forEach(function (each, row) {
      const top = row * height;
      each.forEach(function (i) {
        if (!switches(i)) return;
        const x = across(on[i]), ready = across(on[i] + loads.settle_s[i]);
        if (ready < plot.left || x > plot.right) return;
        const bright = isDim(i) ? 0 : 1, role = roleOf[i];
        const key = ((row * 2000 + Math.round(2 * x)) * 3 + role) * 2 + bright;
        if (taken.has(key)) return;
        taken.add(key);
        if (x >= plot.left) {
          const high = role === 0 ? [0.12, 0.76] : role === 1 ? [0.46, 0.42] : [0.12, 0.76];
          paths[bright][role].push("M" + tenth(x) + " " + tenth(top + height * high[0]) + "v" + tenth(height * high[1]) + (loads.drops[i] ? "h2.4" : ""));
        }
        if (bright && ready > x + 0.5) settled.push("M" + tenth(Math.max(plot.left, x)) + " " + tenth(top + height * 0.88) + "H" + tenth(Math.min(plot.right, ready)));
      });
    });
    paths.forEach(function (roles, bright) { roles.forEach(function (path, role) { marks[bright][role].setAttribute("d", path.join("")); }); });
    settling.setAttribute("d", settled.join(""));
    chains.setAttribute("d", data.chains.map(function (pair) {
      const one = inLane[pair[0]].filter(switches), other = inLane[pair[1]].filter(switches);
      if (!one.length || !other.length) return "";
      const a = across(on[one[one.length - 1]]), b = across(on[other[0]]), limit = function (x) { return Math.min(plot.right, Math.max(plot.left, x)).toFixed(1); };
      return Math.max(a, b) < plot.left || Math.min(a, b) > plot.right ? "" : "M" + limit(a) + " " + (pair[0] + 0.5) * height + "L" + limit(b) + " " + (pair[1] + 0.5) * height;
    }).join(""));
    if (picked >= 0) markPicked();
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
    inLane[row].filter(switches).forEach(function (i) { const away = Math.abs(on[i] - at); if (away < distance) { distance = away; best = i; } });
    return best;
  }
  // From the first switch-on of a role to its last, and paler until all of it is settled.
  const bands = by("bands");
  function drawBands() {
    bands.replaceChildren();
    ROLES.forEach(function (role, k) {
      let first = Infinity, last = -Infinity, ready = -Infinity;
      for (let i = 0; i < count; i++) if (on[i] >= 0 && switches(i) && roleOf[i] === k) { first = Math.min(first, on[i]); last = Math.max(last, on[i]); ready = Math.max(ready, on[i] + loads.settle_s[i]); }
      const top = 2 + 14 * k, cut = function (x) { return Math.min(plot.right, Math.max(plot.left, across(x))); };
      bands.append(shape("text", { x: plot.left - 6, y: top + 9, "text-anchor": "end" }, role));
      if (first === Infinity) { bands.append(shape("text", { x: plot.left + 4, y: top + 9 }, "none")); return; }
      bands.append(shape("rect", { class: "settle", x: cut(first), width: Math.max(0, cut(ready) - cut(first)), y: top + 2, height: 8 }), shape("rect", { class: "band " + role, x: cut(first), width: across(first) > plot.right || across(last) < plot.left ? 0 : Math.max(1, cut(last) - cut(first)), y: top + 2, height: 8 }));
      const end = cut(ready), words = first.toFixed(2) + " to " + last.toFixed(2) + " s" + (ready > last + 1e-9 ? ", settled " + ready.toFixed(2) + " s" : "");
      bands.append(end > plot.right - 190 ? shape("text", { x: Math.max(plot.left + 190, cut(first) - 5), y: top + 9, "text-anchor": "end" }, words) : shape("text", { x: end + 5, y: top + 9 }, words));
    });
  }
