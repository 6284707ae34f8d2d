  // Filters: in their slots the others step back, in the tables they are left out.
  const search = by("search"), panel = by("f-panel"), group = by("f-group"), phase = by("f-phase"), found = by("found"), form = document.querySelector(".filters");
  const text = loads.id.map(function (id, i) { return (id + " " + loads.name[i]).toLowerCase(); });
  function filter() {
    const words = search.value.trim().toLowerCase(), mask = phase.value ? 1 << phases.indexOf(phase.value) : 0;
    const active = Boolean(words || panel.value || group.value || mask), kept = new Set();
    let hits = 0;
    fits = active ? new Uint8Array(count) : null;
    for (let i = 0; i < count; i++) {
      const fit = !active || (!words || text[i].indexOf(words) >= 0) && (!panel.value || loads.panel[i] === panel.value)
        && (!group.value || loads.group[i] === group.value) && (!mask || touched[i] & mask);
      if (fit) { hits++; kept.add(loads.panel[i]); }
      if (active) fits[i] = fit ? 1 : 0;
      places[i].forEach(function (element) { if (element.tagName === "TR") element.classList.toggle("gone", !fit); else if (element.tagName === "BUTTON") element.classList.toggle("fits", active && Boolean(fit)); });
    }
    house.classList.toggle("filtered", active);
    cards.forEach(function (each) { each.card.classList.toggle("gone", active && !kept.has(nodes[each.node].id)); });
    document.querySelectorAll(".panel").forEach(function (each) { each.classList.toggle("gone", active && !kept.has(each.dataset.panel)); });
    paint();
    found.textContent = active ? hits + " of " + count + " loads; tables show these alone" : "";
  }
  form.addEventListener("input", filter);
  form.addEventListener("reset", function () { setTimeout(filter); });
  form.addEventListener("submit", function (event) {
    event.preventDefault();
    const first = fits ? fits.indexOf(1) : -1, element = first < 0 ? null : places[first].find(function (each) { return each.tagName === "BUTTON"; });
    if (element) { element.focus(); }
  });
