  // The current of a phase of a place as corners in time, worked out once and read for every window on it. Loads that
  // halve alike are summed as one. Jumps are exact; while currents decay, corners stand so close that the straight line
  // between two of them is nowhere further from the curve than is said.
  const halves = Array.from(new Set(half)), halving = Int32Array.from(half, function (each) { return halves.indexOf(each); });
  const fading = Float64Array.from(halves, function (each) { return Math.LN2 / each; }); // a second
  // Loads that a phase of a node sees in the order in which they start, each with its part.
  function seenBy(at, p, which) {
    const list = [];
    order.forEach(function (i) {
      const parts = switches(i) && (!which || which(i)) ? ways[loads.way[i]].get(at) : undefined;
      if (parts && parts[p] !== 0) list.push([i, parts[p]]);
    });
    return list;
  }
  function traceOf(list, rest, worst) {
    const t = [], v = [], plateau = 2 * data.tolerance_s, decaying = new Float64Array(halves.length);
    let active = [], steady = rest, held = 0, k = 0, q = 0, now = 0, sum = 0, bend = 0;
    function decay(i, amount) {
      const c = halving[i];
      if (decaying[c] === 0) active.push(c);
      decaying[c] += amount;
    }
    // What flows, and how strongly the curve bends, which only becomes less until the next event.
    function weigh() {
      sum = steady + held; bend = 0;
      for (let j = 0; j < active.length; j++) { const c = active[j], amount = decaying[c]; sum += amount; bend += Math.abs(amount) * fading[c] * fading[c]; }
    }
    function fade(since) {
      let kept = 0;
      for (let j = 0; j < active.length; j++) {
        const c = active[j], amount = decaying[c] * Math.exp(-since * fading[c]);
        if (amount < 1e-7 && amount > -1e-7) decaying[c] = 0; else { decaying[c] = amount; active[kept++] = c; }
      }
      active.length = kept;
    }
    const tell = function () { weigh(); t.push(now); v.push(sum); };
    for (; k < list.length && start[list[k][0]] <= 1e-12; k++) {
      const i = list[k][0], part = list[k][1], since = -start[i];
      steady += part * base[i];
      if (since < plateau) { held += part * excess[i]; continue; }
      q = k + 1;
      if (since < Infinity) decay(i, part * excess[i] * Math.exp(-(since - plateau) * fading[halving[i]]));
    }
    tell();
    while (now < end) {
      const starting = k < list.length ? start[list[k][0]] : Infinity, ending = q < k ? start[list[q][0]] + plateau : Infinity;
      const next = Math.min(starting, ending, end, bend > 0 ? now + Math.sqrt(8 * worst / bend) : Infinity);
      if (next > now) { fade(next - now); now = next; tell(); }
      if (next !== starting && next !== ending) continue;
      while (q < k && start[list[q][0]] + plateau === next) { const i = list[q][0], amount = list[q][1] * excess[i]; q++; held -= amount; decay(i, amount); }
      for (; k < list.length && start[list[k][0]] === next; k++) { const i = list[k][0]; steady += list[k][1] * base[i]; held += list[k][1] * excess[i]; }
      tell();
    }
    return { t: Float64Array.from(t), v: Float64Array.from(v) };
  }
  // The first corner that is not before that time.
  function cornerAt(trace, s) {
    let low = 0, high = trace.t.length;
    while (low < high) { const middle = low + high >> 1; if (trace.t[middle] < s) low = middle + 1; else high = middle; }
    return low;
  }
  // On the straight line to a corner from the one before; what is beyond the last stays as it is.
  function between(trace, s, k) {
    const last = trace.t.length - 1;
    if (k <= 0 || k > last) return trace.v[Math.min(last, k)];
    const width = trace.t[k] - trace.t[k - 1];
    return trace.v[k - 1] + (trace.v[k] - trace.v[k - 1]) * (width > 0 ? (s - trace.t[k - 1]) / width : 1);
  }
  // The most of each of so many equal parts of the whole time, handed on one after another.
  function mostOf(trace, parts, told) {
    let j = 0;
    for (let c = 0; c < parts; c++) {
      const until = end * (c + 1) / parts;
      let most = between(trace, end * c / parts, j);
      for (; j < trace.t.length && trace.t[j] <= until; j++) if (trace.v[j] > most) most = trace.v[j];
      told(c, Math.max(most, between(trace, until, j)));
    }
  }
  // A path over a window that keeps, of what falls on one column, the first, the least, the greatest and the last. Where
  // corners crowd, a column is a unit of the drawing, otherwise half a one.
  function traced(trace, y) {
    const first = cornerAt(trace, from), beyond = cornerAt(trace, until), fine = beyond - first > 3000 ? 1 : 2;
    const scaled = (plot.right - plot.left) / (until - from);
    let path = "M", column = -1, px = 0, opens = 0, least = 0, greatest = 0, closes = 0, lowFirst = false, before = NaN;
    function add(v) {
      const at = tenth(y(v));
      if (at === before) return;
      path += (path.length > 1 ? "L" : "") + px + " " + at;
      before = at;
    }
    function flush() { before = NaN; add(opens); if (lowFirst) { add(least); add(greatest); } else { add(greatest); add(least); } add(closes); }
    function tell(t, v) {
      const x = plot.left + scaled * (t - from), c = Math.round(fine * x);
      if (c !== column) {
        if (column >= 0) flush();
        column = c; px = tenth(x); opens = least = greatest = v; lowFirst = false;
      }
      else if (v < least) { least = v; lowFirst = false; }
      else if (v > greatest) { greatest = v; lowFirst = true; }
      closes = v;
    }
    tell(from, between(trace, from, first));
    for (let k = first; k < beyond; k++) tell(trace.t[k], trace.v[k]);
    tell(until, between(trace, until, beyond));
    flush();
    return path;
  }
