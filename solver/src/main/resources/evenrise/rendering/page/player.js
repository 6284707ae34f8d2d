  // Playing and scrubbing. What is said aloud waits until the hand rests.
  const play = by("play"), speed = by("speed"), calm = matchMedia("(prefers-reduced-motion: reduce)");
  let playing = false, last = 0, asked = null, saying = 0;
  function say() {
    clearTimeout(saying);
    saying = setTimeout(function () {
      visible.forEach(nameLamps); writeHash();
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
    follow();
    if (seconds >= end) stop(); else requestAnimationFrame(step);
  }
  play.addEventListener("click", function () {
    if (playing) { stop(); return; }
    playing = true; label();
    if (seconds >= end) show(0);
    last = performance.now(); requestAnimationFrame(step);
  });
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
  function go(to) { asked = null; if (playing) stop(); show(to); follow(); say(); }
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
