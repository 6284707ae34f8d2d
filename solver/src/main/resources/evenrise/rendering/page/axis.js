  // One axis of time for all that is drawn over time: a window on the whole, which is never narrower than this.
  const NARROWEST = 0.01, SVG = "http://www.w3.org/2000/svg", curves = drawing.querySelector("svg.curve"), lanes = drawing.querySelector("svg.lanes");
  let from = 0, until = end, painting = false;
  const across = function (s) { return plot.left + (plot.right - plot.left) * (s - from) / (until - from); };
  function shape(name, properties, text) {
    const element = document.createElementNS(SVG, name);
    Object.keys(properties).forEach(function (key) { element.setAttribute(key, properties[key]); });
    if (text) element.textContent = text;
    return element;
  }
  function stepOf(most, parts) {
    const power = Math.pow(10, Math.floor(Math.log10(most / parts)));
    return [1, 2, 5, 10].map(function (each) { return each * power; }).find(function (each) { return most / each <= parts + 1; });
  }
  // A tenth of a unit is finer than a screen; shorter and several times faster than a fixed number of decimals.
  const tenth = function (v) { return Math.round(10 * v) / 10; };
  const decimals = function (step) { return Math.max(0, -Math.floor(Math.log10(step) + 1e-9)); };
  function look(first, last) {
    const width = Math.min(end, Math.max(NARROWEST, last - first));
    from = Math.min(end - width, Math.max(0, first));
    until = from + width;
    paint();
  }
  // Many movements of the hand in one frame are one.
  function paint() {
    if (painting) return;
    painting = true;
    requestAnimationFrame(function () { painting = false; paintAll(); });
  }
  function paintAll() { drawCurves(); drawBands(); drawTicks(); drawStrip(); showWindow(); showCursor(); }
  function closer(at, factor) {
    const width = Math.min(end, Math.max(NARROWEST, (until - from) * factor));
    look(at - (at - from) * width / (until - from), at + (until - at) * width / (until - from));
  }
  function pan(part) { look(from + part * (until - from), until + part * (until - from)); }
  function showCursor() {
    const x = across(seconds), part = Math.min(plot.right, Math.max(plot.left, x)) / plot.width;
    cursor.classList.toggle("gone", seconds < from - 1e-9 || seconds > until + 1e-9);
    cursor.style.transform = "translateX(" + 100 * part + "%)";
    veil.style.transform = "scaleX(" + (1 - part) + ")";
    if (wide > seen + 1) drawing.parentElement.scrollLeft = part * wide - seen / 2;
  }
  function follow() { if (seconds > until || seconds < from) { const width = until - from; look(seconds - 0.2 * width, seconds + 0.8 * width); } }

  // The overview has the whole, the window on it, and the slider of the time on the same axis.
  const over = by("over"), handles = [by("window-from"), by("window-until")], pane = by("window");
  function showWindow() {
    const place = function (s) { return (plot.left + (plot.right - plot.left) * s / end) / plot.width; };
    pane.setAttribute("x", plot.width * place(from)); pane.setAttribute("width", plot.width * (place(until) - place(from)));
    handles.forEach(function (handle, k) {
      const at = k ? until : from;
      handle.style.left = k ? "min(" + 100 * place(at) + "%, 100% - 24px)" : 100 * place(at) + "%";
      handle.setAttribute("aria-valuenow", at.toFixed(3)); handle.setAttribute("aria-valuetext", at.toFixed(2) + " seconds");
    });
    by("whole").disabled = until - from >= end - 1e-9;
  }
  handles.forEach(function (handle, k) {
    handle.setAttribute("aria-valuemax", end.toFixed(3));
    const move = function (to) { if (k) look(from, Math.max(from + NARROWEST, to)); else look(Math.min(until - NARROWEST, Math.max(0, to)), until); };
    handle.addEventListener("pointerdown", function (event) { handle.setPointerCapture(event.pointerId); event.preventDefault(); handle.focus(); });
    handle.addEventListener("pointermove", function (event) {
      if (!event.buttons) return;
      const box = over.getBoundingClientRect(), x = (event.clientX - box.left) / box.width * plot.width;
      move((x - plot.left) / (plot.right - plot.left) * end);
    });
    handle.addEventListener("keydown", function (event) {
      const at = k ? until : from, step = (until - from) / 20;
      const to = { ArrowRight: at + step, ArrowUp: at + step, ArrowLeft: at - step, ArrowDown: at - step, Home: 0, End: end }[event.key];
      if (to === undefined) return;
      event.preventDefault(); move(to);
    });
  });
  by("closer").addEventListener("click", function () { closer(seconds, 0.5); });
  by("wider").addEventListener("click", function () { closer(seconds, 2); });
  by("whole").addEventListener("click", function () { look(0, end); });

  // By wheel where the drawing has the focus or a key is held, so that nobody who scrolls past is caught; by two fingers; by keys.
  const stage = drawing.parentElement, fingers = new Map();
  // Where the drawing lies is asked once, not at every movement, until something may have moved it.
  let box = null;
  const moved = function () { box = null; };
  new ResizeObserver(moved).observe(drawing);
  addEventListener("resize", moved); addEventListener("scroll", moved, { capture: true, passive: true });
  function pointed(event) {
    box = box || drawing.getBoundingClientRect();
    const x = (event.clientX - box.left) / box.width * plot.width;
    return from + (x - plot.left) / (plot.right - plot.left) * (until - from);
  }
  drawing.addEventListener("wheel", function (event) {
    if (!(event.ctrlKey || event.metaKey || event.altKey || document.activeElement === stage)) return;
    event.preventDefault();
    if (event.deltaX && Math.abs(event.deltaX) > Math.abs(event.deltaY)) pan(event.deltaX / 800); else closer(pointed(event), Math.exp(event.deltaY * 0.002));
  }, { passive: false });
  drawing.addEventListener("pointerdown", function (event) {
    if (event.pointerType === "touch") fingers.set(event.pointerId, event.clientX); else drawing.setPointerCapture(event.pointerId);
    if (playing) stop();
    if (fingers.size < 2) ask(pointed(event));
  });
  ["pointerup", "pointercancel"].forEach(function (type) { drawing.addEventListener(type, function (event) { fingers.delete(event.pointerId); }); });
  drawing.addEventListener("pointermove", function (event) {
    if (fingers.size === 2 && fingers.has(event.pointerId)) {
      const before = Array.from(fingers.values());
      fingers.set(event.pointerId, event.clientX);
      const now = Array.from(fingers.values());
      const apart = function (two) { return Math.max(20, Math.abs(two[0] - two[1])); };
      closer(pointed({ clientX: (now[0] + now[1]) / 2 }), apart(before) / apart(now));
      pan((before[0] + before[1] - now[0] - now[1]) / 2 / drawing.offsetWidth);
      return;
    }
    if (event.buttons) { ask(pointed(event)); return; }
    const near = tickAt(event);
    if (near >= 0) pick(near);
  });
  stage.addEventListener("keydown", function (event) {
    if (event.target !== stage || event.ctrlKey || event.metaKey || event.altKey) return;
    const does = { "+": function () { closer(seconds, 0.5); }, "=": function () { closer(seconds, 0.5); }, "-": function () { closer(seconds, 2); }, "0": function () { look(0, end); },
      ArrowLeft: function () { pan(-0.1); }, ArrowRight: function () { pan(0.1); }, PageUp: function () { go(earlier()); follow(); }, PageDown: function () { go(later()); follow(); },
      Home: function () { go(0); follow(); }, End: function () { go(end); follow(); }, " ": function () { play.click(); }, p: function () { by("to-peak").click(); } }[event.key];
    if (!does) return;
    event.preventDefault(); does();
  });
