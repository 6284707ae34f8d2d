  // A visit is a day and an instrument; each reading belongs to one.
  function showVisits() {
    const choose = function (select, words, chosen) {
      select.replaceChildren.apply(select, words.map(function (word, i) { const option = make("option", "", word); option.value = i; return option; }));
      select.value = chosen;
    };
    choose(by("visits"), site.visits.map(function (each, i) { return (i + 1) + ": " + (each.date || "no date") + ", " + site.meters[each.meter].meter; }), site.visit);
    choose(by("meters"), site.meters.map(function (each) { return each.meter; }), site.visits[site.visit].meter);
    by("date").value = site.visits[site.visit].date;
    document.querySelectorAll("[data-meter]").forEach(function (input) {
      if (document.activeElement !== input) input.value = meterOf(site.visit)[input.dataset.meter] || "";
    });
    sayMeter();
  }
  const GREATEST = { range_a: 1e6, of_range_pct: 100, of_reading_pct: 100, off_by_s: 3600 };
  function meterSlips(meter) {
    const slips = Object.keys(GREATEST).filter(function (key) { return slip(meter[key] || "", GREATEST[key]) || key === "range_a" && numberOf(meter[key] || "") === 0; });
    if (numberOf(meter.of_range_pct || "") !== null && numberOf(meter.range_a || "") === null && slips.indexOf("range_a") < 0) slips.push("range_a");
    return slips;
  }
  function sayMeter() {
    const meter = meterOf(site.visit), slips = meterSlips(meter), words = [];
    const stated = ["of_range_pct", "of_reading_pct"].some(function (key) { return numberOf(meter[key] || "") !== null; });
    if (slips.length) words.push(slips.indexOf("range_a") >= 0 && !(meter.range_a || "").trim() ? "It is off by a part of its range: state the range." : "A figure of it is no number, or more than can be.");
    if (!stated) words.push("Nothing is stated of its currents: " + form.usual_of_reading_pct + " % of the reading and " + form.usual_least_a + " A are taken (common practice, no source).");
    if (numberOf(meter.off_by_s || "") === null) words.push("Times are taken as off by " + form.usual_s + " s (common practice, no source).");
    put(by("m-said"), words.join(" "));
    document.querySelectorAll("[data-meter]").forEach(function (input) { input.setAttribute("aria-invalid", slips.indexOf(input.dataset.meter) >= 0); });
  }
  const bare = function (name) { return name.toLowerCase().replace(/\s+/g, ""); };
  function listenToVisits() {
    by("visits").addEventListener("input", function () { site.visit = Number(by("visits").value); keep(); showVisits(); showCards(); });
    by("date").addEventListener("input", function () { site.visits[site.visit].date = by("date").value; keep(); showVisits(); });
    by("meters").addEventListener("input", function () { site.visits[site.visit].meter = Number(by("meters").value); keep(); showVisits(); showCards(); });
    by("new-visit").addEventListener("click", function () {
      site.visits.push({ date: today(), meter: site.visits[site.visit].meter });
      site.visit = site.visits.length - 1; keep(); showVisits(); showCards();
    });
    by("new-meter").addEventListener("click", function () {
      let number = site.meters.length + 1;
      while (site.meters.some(function (each) { return bare(each.meter) === "m" + number; })) number++;
      site.meters.push({ meter: "M" + number });
      site.visits[site.visit].meter = site.meters.length - 1; keep(); showVisits(); showCards();
      by("meter").open = true; by("m-name").focus();
    });
    by("meter").addEventListener("input", function (event) {
      const key = event.target.dataset.meter, text = event.target.value, meter = meterOf(site.visit);
      const isTaken = key === "meter" && (!bare(text) || site.meters.some(function (each) { return each !== meter && bare(each.meter) === bare(text); }));
      if (!isTaken) { meter[key] = text.trim(); keep(); showVisits(); judgeAll(); }
      if (isTaken) { event.target.setAttribute("aria-invalid", "true"); put(by("m-said"), "Another instrument has this name, or it is empty: it stays " + meter.meter + "."); }
    });
  }
