  // Which is tight when: every place over the whole time, of its inrush limit or, where none is stated, of the crest of its rating.
  const strip = by("strip-rows"), BINS = 876, ROW = 24, SEEN_ROWS = 24;
  let stripRows = [], stripSeen = false, stripNear = false;
  function fullAt(which) {
    const limit = limitOf(which), crest = Math.SQRT2 * nodes[which].rated_a;
    return limit > 0 ? { amps: limit, words: "of " + Number(limit.toFixed(3)) + " A" } : { amps: crest, words: "crest " + Number(crest.toFixed(0)) + " A" };
  }
  function measureStrip() {
    stripRows = []; above = 0;
    strip.replaceChildren();
    const all = nodes.map(function (_, at) { return { at: at, most: Math.max.apply(null, begun(at).peak_a) / fullAt(at).amps }; }).sort(function (a, b) { return b.most - a.most; }).slice(0, 60);
    all.forEach(function (each) {
      const row = make("div", "row"), name = make("button", "", plain(each.at ? nodes[each.at].id : "supply")), canvas = document.createElement("canvas"), much = Math.round(100 * each.most);
      name.type = "button"; name.dataset.node = each.at;
      name.setAttribute("aria-label", "Show the current of " + nodeName(each.at) + ": at most " + much + " % of " + (limitOf(each.at) > 0 ? "its inrush limit" : "the crest of its rating, no inrush limit stated"));
      canvas.width = BINS; canvas.height = 1; canvas.setAttribute("aria-hidden", "true");
      row.append(name, canvas, make("span", "much" + (limitOf(each.at) > 0 ? "" : " note"), much + " %" + (limitOf(each.at) > 0 ? "" : "*")));
      strip.append(row);
      stripRows.push({ at: each.at, canvas: canvas, used: null });
    });
    // Worked out when somebody comes near.
    if (!stripSeen) return;
    let next = 0;
    const rows = stripRows;
    (function some() {
      const begun = performance.now();
      while (rows === stripRows && next < rows.length && performance.now() - begun < 6) measure(rows[next++]);
      if (rows === stripRows && next < rows.length) setTimeout(some); else drawStrip();
    })();
  }
  function measure(row) {
    const full = fullAt(row.at).amps, begins = begun(row.at);
    row.used = new Float64Array(BINS);
    nodes[row.at].phases.forEach(function (p) {
      mostOf(traceOf(seenBy(row.at, p, null), begins.rest_a[p], full / PRECISE), BINS, function (c, v) { if (v / full > row.used[c]) row.used[c] = v / full; });
    });
  }
  // Five steps of darkness, so that a step can be told from its neighbour; over the limit in another colour. Rows that
  // are scrolled out of sight wait until they are seen; neighbours of one shade are one stroke.
  let shades = null, above = 0;
  function drawStrip() {
    if (!stripNear || !stripRows.length) return;
    if (!shades) { const style = getComputedStyle(strip); shades = [1, 2, 3, 4, 5, 6].map(function (k) { return style.getPropertyValue("--shade" + k); }); }
    const first = Math.max(0, Math.floor(above / ROW) - 1);
    stripRows.slice(first, first + SEEN_ROWS).forEach(drawRow);
  }
  function drawRow(row) {
    if (!row.used) return;
    const pen = row.canvas.getContext("2d"), perPixel = (until - from) / end;
    pen.clearRect(0, 0, BINS, 1);
    let begun = 0, shade = -1;
    for (let x = 0; x <= BINS; x++) {
      let now = -1;
      if (x < BINS) {
        const low = Math.floor(BINS * from / end + perPixel * x), high = Math.min(BINS, Math.max(low + 1, Math.ceil(BINS * from / end + perPixel * (x + 1))));
        let most = 0;
        for (let c = low; c < high; c++) if (row.used[c] > most) most = row.used[c];
        now = most > 1 + 1e-9 ? 5 : Math.min(4, Math.floor(5 * most));
      }
      if (now === shade) continue;
      if (shade >= 0) { pen.fillStyle = shades[shade]; pen.fillRect(begun, 0, x - begun, 1); }
      begun = x; shade = now;
    }
  }
  strip.addEventListener("scroll", function () { above = strip.scrollTop; drawStrip(); }, { passive: true });
  new IntersectionObserver(function (entries) {
    stripNear = entries[entries.length - 1].isIntersecting;
    if (stripNear && !stripSeen) { stripSeen = true; measureStrip(); } else drawStrip();
  }, { rootMargin: "300px" }).observe(strip);
  strip.addEventListener("click", function (event) {
    const row = event.target.closest(".row"), name = row && row.querySelector("button");
    if (!name) return;
    if (event.target.tagName === "CANVAS") { const box = event.target.getBoundingClientRect(); go(from + (until - from) * (event.clientX - box.left) / box.width); }
    choose(Number(name.dataset.node)); say();
  });
