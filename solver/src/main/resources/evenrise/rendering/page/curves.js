  // The curves: a lane a phase, with exact corners.
  // By an earlier plan, where the page has one: the corners of a phase of the supply.
  function earlierOf(k) {
    const own = (data.earlier || []).find(function (each) { return each.system === system; });
    if (node !== 0 || !own) return null;
    const corners = own.phases[k];
    return { t: numbers(corners.filter(function (_, j) { return j % 2 === 0; })), v: numbers(corners.filter(function (_, j) { return j % 2; })) };
  }
  // A curve is nowhere drawn further from the true one than this part of its scale, less than a fifth of a unit.
  const PRECISE = 2000;
  let plotted = null;
  const seconded = curves.querySelector("g.seconds"), laned = curves.querySelector("g.phases"), scale = curves.querySelector("g.amps");
  seconded.replaceChildren();
  function limitOf(which) { const limit = nodes[which].inrush_limit_a; return limit === undefined || limit === null ? 0 : limit; }
  // What is the same for every window: lanes, scale, limit, who is seen.
  function prepare() {
    const own = nodes[node], begins = begun(node), limit = limitOf(node), peaks = own.phases.map(function (p) { return begins.peak_a[p]; });
    const worst = own.phases[peaks.indexOf(Math.max.apply(null, peaks))], peak = begins.peak_a[worst];
    let most = 1.1 * Math.max(1, peak, Math.max.apply(null, begins.used_a));
    own.phases.forEach(function (p, k) { const was = earlierOf(k); if (was) was.v.forEach(function (v) { most = Math.max(most, 1.1 * v); }); });
    if (limit > 0 && limit < 1.8 * most) most = Math.max(most, 1.08 * limit);
    const room = (plot.bottom - plot.top) / own.phases.length, height = room - 10;
    plotted = { own: own, most: most, limit: limit, worst: worst, peak: peak, height: height,
      lanes: own.phases.map(function (p, k) {
        const foot = plot.top + room * k + height, list = seenBy(node, p, null);
        return { phase: p, colour: own.colours[k], foot: foot, y: function (a) { return foot - height * a / most; }, list: list, trace: traceOf(list, begins.rest_a[p], most / PRECISE), before: earlierOf(k) };
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
      const path = traced(lane.trace, lane.y);
      lane.line.setAttribute("d", path); lane.edge.setAttribute("d", path);
      if (lane.before) lane.was.setAttribute("d", traced(lane.before, lane.y));
    });
    drawShare();
    drawSeconds();
    drawPeak();
  }
  // Lines of the seconds, kept from window to window.
  const second = [];
  function drawSeconds() {
    const step = stepOf(until - from, 7), digits = decimals(step);
    let k = 0;
    for (let t = Math.ceil(from / step - 1e-9) * step; t <= until + step * 1e-6; t += step, k++) {
      if (k === second.length) {
        second.push({ line: shape("path", { class: "grid", d: "M0 " + plot.top + "V" + (plot.bottom + 5) }), text: shape("text", { class: "tick", y: plot.bottom + 19 }) });
        seconded.append(second[k].line, second[k].text);
      }
      const x = tenth(across(t)), own = second[k];
      own.line.setAttribute("transform", "translate(" + x + ")"); own.line.setAttribute("visibility", "visible");
      own.text.setAttribute("x", x); own.text.setAttribute("text-anchor", x > plot.width - 40 ? "end" : "middle");
      put(own.text, t.toFixed(digits) + " s");
    }
    for (; k < second.length; k++) { second[k].line.setAttribute("visibility", "hidden"); put(second[k].text, ""); }
  }
  function drawPeak() {
    const at = Math.max(0, begun(node).peak_at_s[plotted.worst] - data.tolerance_s), mark = curves.querySelector("circle.peak"), words = curves.querySelector(".peaked");
    const x = Math.min(plot.right, Math.max(plot.left, across(at))), here = at >= from - 1e-9 && at <= until + 1e-9, top = plotted.lanes[plotted.own.phases.indexOf(plotted.worst)];
    mark.classList.toggle("gone", !here);
    mark.setAttribute("cx", x.toFixed(1)); mark.setAttribute("cy", top.y(plotted.peak).toFixed(1));
    // What is said of the limit stands on the left.
    const free = plot.left + 390;
    words.setAttribute("x", Math.max(free, x).toFixed(1)); words.setAttribute("text-anchor", x > plot.width - 150 ? "end" : x < free + 110 ? "start" : "middle");
  }
  // Of what is chosen, how much of the current it is: worked out anew where something else is chosen, not for another window.
  function drawShare() {
    if (!plotted) return;
    const of = fits || picked;
    const which = fits ? function (i) { return fits[i] === 1; } : picked >= 0 ? function (i) { return i === picked; } : null;
    plotted.lanes.forEach(function (lane) {
      if (lane.of !== of) {
        lane.of = of;
        lane.part = which && traceOf(fits ? lane.list.filter(function (each) { return which(each[0]); }) : seenBy(node, lane.phase, which), 0, plotted.most / PRECISE);
        if (!which) lane.share.setAttribute("d", "");
      }
      if (lane.part) lane.share.setAttribute("d", traced(lane.part, lane.y) + "V" + lane.foot + "H" + plot.left + "Z");
    });
  }
  // The fullest phase over the whole time.
  function drawOverview() {
    const line = by("over-line"), high = 40, columns = new Float64Array(880);
    plotted.lanes.forEach(function (lane) {
      mostOf(lane.trace, 880, function (c, v) { if (v > columns[c]) columns[c] = v; });
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
    arrangeLanes();
    measureStrip();
    choose(node);
  }
