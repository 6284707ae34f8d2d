  // Everything that was typed, kept at once: a tablet that goes flat loses nothing. Some browsers keep nothing for files.
  const PLACE = "evenrise-readings " + told.sha + " " + form.plan_sha256;
  let store = null, isSaved = true;
  function fresh() { return { visits: [{ date: today(), meter: 0 }], visit: 0, meters: [{ meter: "M1" }], cells: {} }; }
  let site = fresh();
  const cellOf = function (visit, card, key) { return visit + "\n" + key + "\n" + card.key; };
  const textOf = function (visit, card, key) { return site.cells[cellOf(visit, card, key)] || ""; };
  const meterOf = function (visit) { return site.meters[site.visits[visit].meter]; };
  function keep() {
    isSaved = false;
    if (store) try {
      store.setItem(PLACE, JSON.stringify(site));
      tellKept();
    } catch (error) {
      store = null; tellKept();
    }
  }
  function tellKept() {
    const count = Object.keys(site.cells).length;
    by("kept").classList.toggle("bad", !store);
    put(by("kept"), store ? (count ? (count === 1 ? "1 entry" : count + " entries") + " kept in this browser, on this device alone." : "What is typed is kept in this browser at once, on this device alone.")
      : "This browser keeps nothing of what is typed. Save the readings as a file before the page is closed, and take that file in to go on.");
  }
  function isSite(value) {
    return value && Array.isArray(value.visits) && value.visits.length > 0 && Array.isArray(value.meters) && value.meters.length > 0
      && typeof value.cells === "object" && value.visits.every(function (each) { return value.meters[each.meter]; }) && !!value.visits[value.visit];
  }
  function recall() {
    try {
      store = window.localStorage;
      store.setItem(PLACE + " tried", "1"); store.removeItem(PLACE + " tried");
      const kept = JSON.parse(store.getItem(PLACE) || "null");
      if (isSite(kept)) site = kept;
    } catch (error) {
      store = null;
    }
    tellKept();
  }
  addEventListener("beforeunload", function (event) { if (!store && !isSaved) event.preventDefault(); });
