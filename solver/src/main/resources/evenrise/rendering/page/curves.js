  // The curves: a lane a phase, with exact corners. Loads that halve alike are summed as one.
  const halves = Array.from(new Set(half)), halving = Int32Array.from(half, function (each) { return halves.indexOf(each); });
  // Loads that a phase of a node sees in the order in which they start, each with its part.
  function seenBy(at, p, which) {
    const list = [];
    order.forEach(function (i) {
      const parts = switches(i) && (!which || which(i)) ? ways[loads.way[i]].get(at) : undefined;
      if (parts && parts[p] !== 0) list.push([i, parts[p]]);
    });
    return list;
  }
  // Current over a window, told before and after every jump, and at even distances between them.
  function sweep(list, rest, a, b, samples, told) {
    const plateau = 2 * data.tolerance_s, decaying = new Float64Array(halves.length);
    let active = [], steady = rest, held = 0, k = 0, q = 0, now = a, sample = 1;
    function decay(i, amount) {
      const c = halving[i];
      if (decaying[c] === 0) active.push(c);
      decaying[c] += amount;
    }
    const total = function () { let sum = steady + held; for (let j = 0; j < active.length; j++) sum += decaying[active[j]]; return sum; };
    for (; k < list.length && start[list[k][0]] <= a + 1e-12; k++) {
      const i = list[k][0], part = list[k][1], since = a - start[i];
      steady += part * base[i];
      if (since === Infinity || since < plateau) { if (since < plateau) held += part * excess[i]; else q = k + 1; continue; }
      q = k + 1;
      const times = (since - plateau) / half[i];
      if (times < 40) decay(i, part * excess[i] * Math.pow(2, -times));
    }
    told(a, total());
    for (;;) {
      const starting = k < list.length ? start[list[k][0]] : Infinity, ending = q < k ? start[list[q][0]] + plateau : Infinity, even = a + (b - a) * sample / samples;
      const next = Math.min(starting, ending, even);
      if (next > b || sample > samples) { told(b, total()); return; }
      const since = next - now;
      if (since > 0) {
        let faded = false;
        for (let j = 0; j < active.length; j++) {
          const c = active[j];
          decaying[c] *= Math.pow(2, -since / halves[c]);
          if (Math.abs(decaying[c]) < 1e-7) { decaying[c] = 0; faded = true; }
        }
        if (faded) active = active.filter(function (c) { return decaying[c] !== 0; });
      }
      now = next;
      told(now, total());
      if (next === ending) { const i = list[q][0], amount = list[q][1] * excess[i]; q++; held -= amount; decay(i, amount); }
      else if (next === starting) { const i = list[k][0]; steady += list[k][1] * base[i]; held += list[k][1] * excess[i]; k++; told(now, total()); }
      else sample++;
    }
  }
  // A path that keeps, of what falls on one column, the first, the least, the greatest and the last.
  function traced(list, rest, a, b, x, y) {
    const path = [];
    let column = -1, first = 0, least = 0, greatest = 0, last = 0, px = 0, lowFirst = false;
    function flush() {
      if (column < 0) return;
      const at = tenth(px), both = lowFirst ? [first, least, greatest, last] : [first, greatest, least, last];
      let before = NaN;
      both.forEach(function (v) { if (v !== before) path.push((path.length ? "L" : "M") + at + " " + tenth(y(v))); before = v; });
    }
    sweep(list, rest, a, b, 438, function (t, v) {
      const to = x(t), c = Math.round(2 * to);
      if (c !== column) { flush(); column = c; px = to; first = least = greatest = v; lowFirst = false; }
      else if (v < least) { least = v; lowFirst = false; }
      else if (v > greatest) { greatest = v; lowFirst = true; }
      last = v;
    });
    flush();
    return path.join("");
  }
  // By an earlier plan, where the page has one: the corners of a phase of the supply, seconds and amperes in turns.
  function earlierOf(k) {
    const own = (data.earlier || []).find(function (each) { return each.system === system; });
    return node === 0 && own ? own.phases[k] : null;
  }
  function tracedBefore(corners, x, y) {
    const count = corners.length / 2;
    let j = 0, high = count;
    while (j < high) { const middle = (j + high) >> 1; if (corners[2 * middle] < from) j = middle + 1; else high = middle; }
    // On the straight line between two corners; what is beyond the last stays as it is.
    function between(t, k) {
      if (k <= 0 || k >= count) return corners[2 * Math.min(count - 1, k) + 1];
      const a = corners[2 * k - 2], width = corners[2 * k] - a;
      return corners[2 * k - 1] + (corners[2 * k + 1] - corners[2 * k - 1]) * (width > 0 ? (t - a) / width : 1);
    }
    let path = "M" + x(from).toFixed(1) + " " + y(between(from, j)).toFixed(1);
    for (; j < count && corners[2 * j] <= until; j++) path += "L" + x(corners[2 * j]).toFixed(1) + " " + y(corners[2 * j + 1]).toFixed(1);
    return path + "L" + x(until).toFixed(1) + " " + y(between(until, j)).toFixed(1);
  }
  let plotted = null;
  const seconded = curves.querySelector("g.seconds"), laned = curves.querySelector("g.phases"), scale = curves.querySelector("g.amps");
  function limitOf(which) { const limit = nodes[which].inrush_limit_a; return limit === undefined || limit === null ? 0 : limit; }
  // What is the same for every window: lanes, scale, limit, who is seen.
  function prepare() {
    const own = nodes[node], begins = begun(node), limit = limitOf(node), peaks = own.phases.map(function (p) { return begins.peak_a[p]; });
    const worst = own.phases[peaks.indexOf(Math.max.apply(null, peaks))], peak = begins.peak_a[worst];
    let most = 1.1 * Math.max(1, peak, Math.max.apply(null, begins.used_a));
    own.phases.forEach(function (p, k) { (earlierOf(k) || []).forEach(function (v, j) { if (j % 2) most = Math.max(most, 1.1 * v); }); });
    if (limit > 0 && limit < 1.8 * most) most = Math.max(most, 1.08 * limit);
    const room = (plot.bottom - plot.top) / own.phases.length, height = room - 10;
    plotted = { own: own, most: most, limit: limit, worst: worst, peak: peak, height: height,
      lanes: own.phases.map(function (p, k) {
        const foot = plot.top + room * k + height;
        return { phase: p, colour: own.colours[k], foot: foot, y: function (a) { return foot - height * a / most; }, rest: begins.rest_a[p], list: seenBy(node, p, null), before: earlierOf(k) };
      }) };
    const distance = limit > 0 ? "limit " + Number(limit.toFixed(3)) + " A, " + amps(Math.abs(limit - peak)) + (limit < peak - 1e-6 ? " below the peak" : " above the peak") : "no inrush limit stated";
    const found = "peak " + amps(peak) + ", phase " + phases[worst] + ", " + begins.peak_at_s[worst].toFixed(2) + " s";
    curves.querySelector("title").textContent = "Current of " + nodeName(node) + " on each phase over time: " + found + "; " + distance + ". By the envelopes at nominal voltage.";
    curves.querySelector(".peaked").textContent = found;
    curves.querySelector(".bounded").textContent = distance + (limit > most ? ", beyond the scale" : "");
    scale.replaceChildren(); laned.replaceChildren();
    const step = stepOf(most, 3);
    plotted.lanes.forEach(function (lane) {
      for (let a = 0; a <= most; a += step) scale.append(shape("line", { class: "grid", x1: plot.left, x2: plot.right, y1: lane.y(a), y2: lane.y(a) }),
        shape("text", { class: "tick", x: plot.left - 6, y: lane.y(a) + 4, "text-anchor": "end" }, a.toFixed(decimals(step)) + (a ? "" : " A")));
      laned.append(shape("text", { class: "letter", x: plot.left - 58, y: lane.foot - plotted.height / 2 + 6, "text-anchor": "end" }, phases[lane.phase]));
      lane.share = shape("path", { class: "part" }); lane.edge = shape("path", { class: "edge", fill: "none" }); lane.line = shape("path", { class: "phase", fill: "none", stroke: lane.colour });
      laned.append(lane.share, lane.edge, lane.line);
      if (lane.before) { lane.was = shape("path", { class: "earlier" }); laned.append(lane.was); }
      if (limit > 0 && limit <= most) laned.append(shape("path", { class: "limit", d: "M" + plot.left + " " + lane.y(limit) + "H" + plot.right }));
    });
    drawOverview();
  }
  function drawCurves() {
    if (!plotted) return;
    plotted.lanes.forEach(function (lane) {
      const path = traced(lane.list, lane.rest, from, until, across, lane.y);
      lane.line.setAttribute("d", path); lane.edge.setAttribute("d", path);
      if (lane.before) lane.was.setAttribute("d", tracedBefore(lane.before, across, lane.y));
    });
    drawShare();
    seconded.replaceChildren();
    const step = stepOf(until - from, 7), digits = decimals(step);
    for (let t = Math.ceil(from / step - 1e-9) * step; t <= until + step * 1e-6; t += step) {
      const x = across(t);
      seconded.append(shape("path", { class: "grid", d: "M" + x.toFixed(1) + " " + plot.top + "V" + (plot.bottom + 5) }),
        shape("text", { class: "tick", x: x.toFixed(1), y: plot.bottom + 19, "text-anchor": x > plot.width - 40 ? "end" : "middle" }, t.toFixed(digits) + " s"));
    }
    const at = Math.max(0, begun(node).peak_at_s[plotted.worst] - data.tolerance_s), mark = curves.querySelector("circle.peak"), words = curves.querySelector(".peaked");
    const x = Math.min(plot.right, Math.max(plot.left, across(at))), here = at >= from - 1e-9 && at <= until + 1e-9, top = plotted.lanes[plotted.own.phases.indexOf(plotted.worst)];
    mark.classList.toggle("gone", !here);
    mark.setAttribute("cx", x.toFixed(1)); mark.setAttribute("cy", top.y(plotted.peak).toFixed(1));
    // What is said of the limit stands on the left.
    const free = plot.left + 390;
    words.setAttribute("x", Math.max(free, x).toFixed(1)); words.setAttribute("text-anchor", x > plot.width - 150 ? "end" : x < free + 110 ? "start" : "middle");
  }
  // Of what is chosen, how much of the current it is.
  function drawShare() {
    if (!plotted) return;
    const which = fits ? function (i) { return fits[i] === 1; } : picked >= 0 ? function (i) { return i === picked; } : null;
    plotted.lanes.forEach(function (lane) {
      if (!which) { lane.share.setAttribute("d", ""); return; }
      const path = traced(fits ? lane.list.filter(function (each) { return which(each[0]); }) : seenBy(node, lane.phase, which), 0, from, until, across, lane.y);
      lane.share.setAttribute("d", path + "V" + lane.foot + "H" + plot.left + "Z");
    });
  }
  // The fullest phase over the whole time.
  function drawOverview() {
    const line = by("over-line"), high = 40, columns = new Float64Array(880);
    plotted.lanes.forEach(function (lane) {
      sweep(lane.list, lane.rest, 0, end, 438, function (t, v) { const c = Math.min(879, Math.floor(880 * t / end)); if (v > columns[c]) columns[c] = v; });
    });
    let path = "M" + plot.left + " " + high;
    columns.forEach(function (v, c) { if (v > 0) path += "L" + (plot.left + (plot.right - plot.left) * c / 880).toFixed(1) + " " + (high - (high - 2) * v / plotted.most).toFixed(1); });
    line.setAttribute("d", path + "V" + high + "Z");
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
      meter.peak.textContent = fullAt(which).words;
    });
    prepare();
    paintAll();
    if (many) tellSystem(which);
    showMeters();
    showShares();
  }
  // What the curves cannot show: the current in use, which may be more than any start.
  function tellSystem(which) {
    const begins = begun(which), used = Math.max.apply(null, begins.used_a), phase = begins.used_a.indexOf(used);
    put(by("system-name"), "Drawn as system " + plain(systems[system]) + " is switched on, with " + amps(begins.rest_a[phase]) + " on phase " + phases[phase]
      + " of what is always on and of the other systems at their worst; once in use, " + amps(used) + " there.");
  }
  function begin(which) {
    system = which;
    arrange();
    for (let i = 0; i < count; i++) lamps[i].forEach(function (lamp) { lamp.classList.toggle("on", start[i] <= seconds + 1e-12); });
    lit = litAt(seconds);
    drop();
    show(seconds);
    measureStrip();
    choose(node);
  }
