  // The file that is handed back: figures as numbers, one entry a card and visit. What is no figure is named, never guessed.
  const TRUTH = { pass: true, right: true, fail: false, wrong: false };
  const LISTS = { pole: "poles", place: "places", device: "devices" };
  function entryOf(card, visit, left) {
    const entry = card.kind === "pole" ? { load: card.load } : { place: card.place }, phases = {};
    if (card.kind === "pole" && card.phase) entry.phase = card.phase;
    if (card.kind === "device") { entry.protects = card.protects; entry.rated_ma = card.rated_ma; }
    let any = false;
    card.asks.forEach(function (ask) {
      const text = textOf(visit, card, ask.key), value = numberOf(text);
      if (text && slip(text, ask.greatest)) left.push(card.head + ", " + ask.label + ": " + text);
      if (value === null || slip(text, ask.greatest)) return;
      any = true;
      const parts = ask.key.split(".");
      if (parts.length === 1) { entry[ask.key] = value; return; }
      phases[parts[0]] = phases[parts[0]] || { phase: parts[0] };
      phases[parts[0]][parts[1]] = value;
    });
    if (Object.keys(phases).length) entry.phases = Object.values(phases);
    extras(card).forEach(function (key) {
      const text = textOf(visit, card, key).trim();
      if (!text) return;
      any = true;
      entry[key === "rotation" ? "rotation_right" : key] = key === "remark" ? text : TRUTH[text];
    });
    if (card.kind !== "device") {
      if (site.visits[visit].date) entry.date = site.visits[visit].date;
      entry.meter = meterOf(visit).meter;
    }
    return any ? entry : null;
  }
  function meterEntry(meter, left) {
    const entry = { meter: meter.meter }, slips = meterSlips(meter);
    ["what", "calibrated_until"].forEach(function (key) { if (meter[key]) entry[key] = meter[key]; });
    Object.keys(GREATEST).forEach(function (key) { const value = numberOf(meter[key] || ""); if (value !== null && slips.indexOf(key) < 0) entry[key] = value; });
    if (slips.length) {
      left.push("instrument " + meter.meter + ": its " + (slips.indexOf("range_a") >= 0 ? "range" : "figures"));
      if (!("range_a" in entry)) delete entry.of_range_pct;
    }
    return entry;
  }
  function saved(left) {
    const file = { format: told.format, cautions: Array.from(document.querySelectorAll(".cautions li"), function (each) { return each.textContent; }),
      project: told.project, project_sha256: told.sha, plan_sha256: form.plan_sha256, meters: [], poles: [], places: [], devices: [] };
    const used = new Set();
    site.visits.forEach(function (visit, i) {
      form.cards.forEach(function (card) {
        const entry = entryOf(card, i, left);
        if (entry) { file[LISTS[card.kind]].push(entry); used.add(visit.meter); }
      });
    });
    site.meters.forEach(function (meter, i) { if (used.has(i)) file.meters.push(meterEntry(meter, left)); });
    return file;
  }
  function exchanged() {
    return form.cards.filter(function (card) {
      return card.kind === "pole" && site.visits.some(function (visit, i) {
        const idle = numberOf(textOf(i, card, "idle_a")), running = numberOf(textOf(i, card, "running_a"));
        return idle !== null && running !== null && idle > running;
      });
    }).map(function (card) { return card.head; });
  }
  function save() {
    const left = [], file = saved(left), count = file.poles.length + file.places.length + file.devices.length, swapped = exchanged();
    if (!count) { sayBack("There is no reading yet: nothing is saved." + (left.length ? " Not in the file: " + left.join("; ") + "." : ""), true); return; }
    const link = make("a"), address = URL.createObjectURL(new Blob([JSON.stringify(file, null, 1) + "\n"], { type: "application/json" }));
    link.href = address; link.download = told.project.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-+|-+$/g, "").slice(0, 60) + ".readings.json"; link.click();
    setTimeout(function () { URL.revokeObjectURL(address); }, 1000);
    isSaved = true;
    sayBack(counted(count, "row") + " of readings saved as " + link.download + "." + (left.length ? " Not in the file: " + left.join("; ") + "." : "")
      + (swapped.length ? " More idle than running, which evenrise commission refuses: " + swapped.join(", ") + "." : ""), left.length > 0 || swapped.length > 0);
  }
  function sayBack(text, isBad) { by("saved").classList.toggle("bad", !!isBad); put(by("saved"), text); }
  function takeIn(text) {
    let file = null;
    try { file = JSON.parse(text); } catch (error) { file = null; }
    if (!file || file.format !== told.format) { sayBack("This is no file of readings: expected one that this page has saved.", true); return; }
    const list = function (value) { return Array.isArray(value) ? value : []; };
    const meters = list(file.meters).filter(function (each) { return each && typeof each.meter === "string" && bare(each.meter); });
    meters.forEach(function (each) {
      const own = { meter: each.meter };
      ["what", "calibrated_until"].concat(Object.keys(GREATEST)).forEach(function (key) { if (each[key] !== undefined && each[key] !== null) own[key] = String(each[key]); });
      const at = site.meters.findIndex(function (one) { return bare(one.meter) === bare(own.meter); });
      if (at < 0) site.meters.push(own); else Object.assign(site.meters[at], own);
    });
    let count = 0, unknown = 0, visits = new Map();
    const visitOf = function (entry) {
      const name = typeof entry.meter === "string" && bare(entry.meter) ? entry.meter : "";
      let meter = name ? site.meters.findIndex(function (one) { return bare(one.meter) === bare(name); }) : site.visits[site.visit].meter;
      if (meter < 0) meter = site.meters.push({ meter: name }) - 1;
      const date = typeof entry.date === "string" ? entry.date : name ? "" : site.visits[site.visit].date, key = date + "\n" + meter;
      if (!visits.has(key)) {
        let at = site.visits.findIndex(function (one, i) { return one.date === date && one.meter === meter && i >= 0; });
        if (at < 0) {
          const isBlank = site.visits.length === 1 && !Object.keys(site.cells).length;
          at = isBlank ? 0 : site.visits.length;
          site.visits[at] = { date: date, meter: meter };
        }
        visits.set(key, at);
      }
      return visits.get(key);
    };
    Object.keys(LISTS).forEach(function (kind) {
      list(file[LISTS[kind]]).forEach(function (entry) {
        const card = entry && cardOf.get([kind, entry.load || entry.place, entry.phase || entry.protects || ""].join("\n"));
        if (!card) { unknown++; return; }
        const visit = visitOf(entry), set = function (key, value) { site.cells[cellOf(visit, card, key)] = String(value).slice(0, 400); };
        card.asks.forEach(function (ask) {
          const parts = ask.key.split("."), from = parts.length === 1 ? entry : list(entry.phases).find(function (each) { return each && each.phase === parts[0]; });
          const value = from && from[parts[parts.length - 1]];
          if (typeof value === "number") set(ask.key, value);
        });
        if (typeof entry.passed === "boolean") set("passed", entry.passed ? "pass" : "fail");
        if (typeof entry.rotation_right === "boolean") set("rotation", entry.rotation_right ? "right" : "wrong");
        if (typeof entry.remark === "string" && entry.remark) set("remark", entry.remark);
        count++;
      });
    });
    keep(); showVisits(); showCards();
    sayBack(counted(count, "row") + " taken in." + (unknown ? " " + counted(unknown, "row") + " left out: nothing of this plan has their load, pole or place." : "")
      + (file.plan_sha256 === form.plan_sha256 ? "" : " They were read by the page of another plan."), unknown > 0 || file.plan_sha256 !== form.plan_sha256);
  }
  function listenToHandback() {
    let isSure = false;
    by("save").addEventListener("click", save);
    by("take").addEventListener("change", function () { if (by("take").files.length) by("take").files[0].text().then(takeIn); });
    by("forget").addEventListener("click", function () {
      if (!isSure) { isSure = true; put(by("forget"), "Press again: all readings are gone then"); return; }
      isSure = false; put(by("forget"), "Forget all readings");
      site = fresh(); isSaved = true;
      if (store) store.removeItem(PLACE);
      tellKept(); showVisits(); showCards(); sayBack("All readings are forgotten.", false);
    });
    by("forget").addEventListener("blur", function () { isSure = false; put(by("forget"), "Forget all readings"); });
  }
