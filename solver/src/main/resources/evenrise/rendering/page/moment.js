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
    showCursor();
    showMeters();
    visible.forEach(showCard);
    if (sharesSeen) showShares();
  }
  function showMeters() {
    meters.forEach(function (meter, p) {
      const value = sums[node * phases.length + p], full = fullAt(node).amps;
      put(meter.amps, amps(value));
      meter.bar.style.transform = "scaleX(" + Math.min(1, value / full) + ")";
      meter.row.classList.toggle("over", value > full + 1e-6);
    });
  }
  const shares = by("shares"), rows = [];
  for (let k = 0; k < 10; k++) {
    const row = make("li"), who = make("span", "who"), bar = make("span", "share"), steady = make("i"), rest = make("i"), much = make("span", "much");
    bar.append(steady, rest); row.append(who, bar, much); shares.append(row);
    rows.push({ row: row, who: who, steady: steady, rest: rest, much: much });
  }
  // On every phase, what each role makes of it.
  const byRole = by("by-role"), kinds = ROLES.concat(["rest"]);
  const roleRows = phases.map(function (letter) {
    const row = make("div", "share-row"), bar = make("span", "share"), parts = kinds.map(function (kind) { const part = make("i", kind); bar.append(part); return part; }), much = make("span", "much");
    row.append(make("b", "", letter), bar, much);
    byRole.append(row);
    return { row: row, parts: parts, much: much };
  });
  const ofRole = new Float64Array(phases.length * kinds.length);
  function showRoles() {
    ofRole.fill(0);
    fed[node].forEach(function (i) {
      if (!switches(i) || start[i] > seconds + 1e-12) return;
      const parts = ways[loads.way[i]].get(node), kind = on[i] < 0 ? kinds.length - 1 : roleOf[i];
      for (let p = 0; p < phases.length; p++) ofRole[p * kinds.length + kind] += parts[p] * now[i];
    });
    const full = Math.max(1e-9, Math.max.apply(null, phases.map(function (_, p) { return sums[node * phases.length + p]; })));
    roleRows.forEach(function (each, p) {
      each.row.classList.toggle("gone", nodes[node].phases.indexOf(p) < 0);
      ofRole[p * kinds.length + kinds.length - 1] += begun(node).rest_a[p];
      const words = [];
      each.parts.forEach(function (part, k) {
        const value = ofRole[p * kinds.length + k];
        part.style.width = 100 * value / full + "%";
        if (value > 0.05) words.push((kinds[k] === "rest" ? "not switched " : kinds[k] + " ") + value.toFixed(1));
      });
      put(each.much, words.length ? words.join(", ") + " A" : "0.0 A");
    });
  }
  const share = new Float64Array(count);
  let sharesSeen = false;
  new IntersectionObserver(function (entries) { sharesSeen = entries[entries.length - 1].isIntersecting; if (sharesSeen) showShares(); }).observe(by("moment"));
  function showShares() {
    showRoles();
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

