  // A link to a moment, a place, a window and a load.
  let written = "";
  function writeHash() {
    const parts = ["t=" + seconds.toFixed(2)];
    if (node) parts.push("at=" + encodeURIComponent(nodes[node].id));
    if (many && system !== data.system) parts.push("system=" + encodeURIComponent(systems[system]));
    if (until - from < end - 1e-9) parts.push("from=" + from.toFixed(3), "until=" + until.toFixed(3));
    if (picked >= 0) parts.push("load=" + encodeURIComponent(loads.id[picked]));
    written = "#" + parts.join("&");
    history.replaceState(null, "", written);
  }
  function readHash() {
    if (location.hash === written || !/^#(t|at|load)=/.test(location.hash)) return;
    const said = new URLSearchParams(location.hash.slice(1)), at = nodes.findIndex(function (each) { return each.id === said.get("at"); });
    const asked = systems.indexOf(said.get("system")), load = indexOf.get(said.get("load"));
    if (many && asked >= 0 && asked !== system) { by("system").value = asked; begin(asked); }
    if (at >= 0) choose(at);
    if (said.has("from") && said.has("until")) { const a = Number(said.get("from")), b = Number(said.get("until")); if (a >= 0 && b > a) look(a, b); }
    if (said.has("t") && Number.isFinite(Number(said.get("t")))) { show(Number(said.get("t"))); follow(); }
    if (load !== undefined) {
      pick(load);
      const element = places[load].find(function (each) { return each.tagName === "BUTTON"; });
      if (element && !said.has("t")) { show(Math.max(0, start[load])); element.scrollIntoView({ block: "center", behavior: "instant" }); }
    }
  }
  addEventListener("hashchange", readHash);
  by("keys-help").addEventListener("click", function () { by("help").showModal(); });
  by("help-close").addEventListener("click", function () { by("help").close(); });
