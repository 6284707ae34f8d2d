  // One load, everywhere.
  const about = by("about"), aboutText = by("about-text"), aboutPlaces = by("about-places");
  function drop() {
    if (picked < 0) return;
    places[picked].forEach(function (element) { element.classList.remove("picked"); });
    by("lane-mark").setAttribute("d", ""); about.hidden = true; picked = -1;
    if (!fits) drawShare();
  }
  function pick(i) {
    if (i === picked) return;
    drop();
    picked = i;
    places[i].forEach(function (element) { element.classList.add("picked"); });
    markPicked();
    if (!fits) drawShare();
    const title = make("b", "", plain(loads.id[i]) + (loads.name[i] ? " " + loads.name[i] : ""));
    aboutText.replaceChildren(title, document.createTextNode(": " + [loads.role[i], "panel " + plain(loads.panel[i]) + " slot " + loads.slots[i], "phase " + loads.phases[i],
      loads.board[i] && "board " + plain(loads.board[i]), loads.group[i] && "group " + plain(loads.group[i]), loads.running_a[i].toFixed(2) + " A running",
      "peak " + amps(base[i] + excess[i]), on[i] < -1 ? "not assigned: no output switches it" : on[i] < 0 ? "always on" : "on at " + on[i].toFixed(2) + " s" + (many ? " of " + plain(systems[loads.system[i]]) : "")].filter(Boolean).join(", ")));
    aboutPlaces.replaceChildren(make("span", "", "See it:"));
    if (on[i] >= 0) aboutPlaces.append(make("button", "", "at its switch-on"));
    document.querySelectorAll("section[id]").forEach(function (section) {
      const has = section.id === "schedules" || everyLoad.has(section.id) || places[i].some(function (element) { return section.contains(element); });
      if (!has || section.id === "moment") return;
      const link = make("button", "", section.querySelector("h2").textContent.split(":")[0]);
      link.dataset.section = section.id;
      aboutPlaces.append(link);
    });
    about.hidden = false;
  }
  aboutPlaces.addEventListener("click", function (event) {
    const button = event.target.closest("button"), i = picked;
    if (!button || i < 0) return;
    if (!button.dataset.section) { goTo(i); return; }
    const section = by(button.dataset.section);
    section.querySelectorAll("script.later").forEach(function (script) { if (script.textContent.indexOf("data-load") >= 0) unfold(script); });
    const element = places[i].find(function (each) { return section.contains(each); });
    (element || section).scrollIntoView({ block: "center", behavior: "instant" });
  });
  by("about-close").addEventListener("click", drop);
  document.addEventListener("keydown", function (event) { if (event.key === "Escape") drop(); });
  function loadAt(target) { const element = target.closest && target.closest("[data-load]"), i = element ? indexOf.get(element.dataset.load) : undefined; return i === undefined ? -1 : i; }
  // A page that scrolls under a resting pointer points at nothing.
  let lastX = -1, lastY = -1;
  function point(event) {
    if (event.clientX === lastX && event.clientY === lastY && event.type === "pointermove") return;
    lastX = event.clientX; lastY = event.clientY;
    const i = loadAt(event.target);
    if (i >= 0) pick(i);
  }
  document.addEventListener("pointermove", point);
  document.addEventListener("pointerdown", point);
  document.addEventListener("focusin", function (event) { const i = loadAt(event.target); if (i < 0) return; if (event.target.tagName === "BUTTON") nameLamp(i); pick(i); });
  house.addEventListener("click", function (event) {
    const i = loadAt(event.target), other = event.target.closest("[data-node]");
    if (i >= 0 && on[i] >= 0) goTo(i);
    if (other) { choose(Number(other.dataset.node)); say(); }
  });
