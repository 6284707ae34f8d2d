  // One place at a time: a phone holds it, and whoever reads stands there.
  const CHOICES = { passed: ["Pass or fail", "pass", "fail"], rotation: ["Phase rotation", "right", "wrong"] };
  const extras = function (card) { return (card.has_rotation ? ["rotation"] : []).concat(["passed"], card.kind === "pole" ? ["remark"] : []); };
  const keysOf = function (card) { return card.asks.map(function (ask) { return ask.key; }).concat(extras(card)); };
  const isRead = function (card) { return site.visits.some(function (visit, i) { return keysOf(card).some(function (key) { return textOf(i, card, key) !== ""; }); }); };
  let shown = [];
  function showCards() {
    const place = by("where").value, onlyOpen = by("open").checked;
    shown = form.cards.filter(function (card) { return card.under === place && !(onlyOpen && isRead(card)); }).map(cardElement);
    by("cards").replaceChildren.apply(by("cards"), shown.map(function (each) { return each.element; }));
    if (!shown.length) by("cards").append(make("p", "note", "All of it is read."));
    judgeAll();
  }
  function earlier(card, key) {
    return site.visits.map(function (visit, i) { return i === site.visit || !textOf(i, card, key) ? "" : (visit.date || "visit " + (i + 1)) + ": " + textOf(i, card, key); }).filter(String).join("; ");
  }
  function cardElement(card, number) {
    const element = make("article", "card"), asks = make("div", "asks"), entry = { card: card, element: element, inputs: [] };
    const head = make("h3", "", card.head);
    head.id = "card-" + number; element.setAttribute("aria-labelledby", head.id);
    element.append(head, make("p", "note", card.note), asks);
    card.asks.forEach(function (ask, i) { asks.append(field(entry, ask.key, ask.label, ask.planned, number + "-" + i, ask)); });
    extras(card).forEach(function (key) { asks.append(field(entry, key, key === "remark" ? "Remark" : CHOICES[key][0], "", number + "-" + key, null)); });
    return entry;
  }
  function field(entry, key, label, planned, id, ask) {
    const box = make("div"), name = make("label", "", label), input = make(CHOICES[key] ? "select" : "input"), word = make("p", "word");
    if (CHOICES[key]) ["", CHOICES[key][1], CHOICES[key][2]].forEach(function (choice) { input.append(new Option(choice || "not said", choice)); });
    input.id = "in-" + id; input.dataset.key = key; name.htmlFor = input.id;
    if (ask) { input.inputMode = "decimal"; input.autocomplete = "off"; }
    input.value = textOf(site.visit, entry.card, key);
    name.append(input); box.append(name);
    const notes = [];
    const describe = function (line, of) { line.id = of + id; notes.push(line.id); box.append(line); };
    if (planned) describe(make("p", "plan", planned), "p-");
    const before = earlier(entry.card, key);
    if (before) describe(make("p", "earlier", before), "e-");
    if (ask || CHOICES[key]) describe(word, "w-");
    if (notes.length) input.setAttribute("aria-describedby", notes.join(" "));
    entry.inputs.push({ key: key, input: input, ask: ask, word: word });
    input.addEventListener("input", function () {
      const cell = cellOf(site.visit, entry.card, key), text = input.value.slice(0, 400);
      if (text.trim()) site.cells[cell] = text; else delete site.cells[cell];
      keep(); judgeCard(entry); showProgress();
    });
    if (ask) input.addEventListener("change", function () { if (word.textContent) put(by("said"), entry.card.head + ", " + label + ": " + word.textContent); });
    return box;
  }
  function judgeCard(entry) {
    const words = entry.inputs.map(function (each) {
      const text = each.input.value;
      let found = each.ask ? judge(each.ask, text, meterOf(site.visit))
        : text === "fail" || text === "wrong" ? [text === "wrong" ? "bad" : "warn", text === "wrong" ? "✕ motors may turn the wrong way" : "✕ failed"] : text === "pass" || text === "right" ? ["good", "✓"] : null;
      if (each.key === "idle_a" && entry.card.kind === "pole") {
        const running = numberOf(textOf(site.visit, entry.card, "running_a")), idle = numberOf(text);
        if (idle !== null && running !== null && idle > running) found = ["bad", "more idle than running: exchanged?", true];
      }
      each.word.className = "word " + (found ? found[0] : "");
      put(each.word, found ? found[1] : "");
      if (each.ask) each.input.setAttribute("aria-invalid", !!(found && found[2]));
      return found ? found[0] : "";
    });
    entry.element.className = "card " + (["bad", "warn", "good"].find(function (each) { return words.indexOf(each) >= 0; }) || "");
  }
  function judgeAll() { shown.forEach(judgeCard); showProgress(); }
  function showProgress() {
    const place = by("where").value, here = form.cards.filter(function (card) { return card.under === place; });
    put(by("progress"), here.filter(isRead).length + " of " + here.length + " read here, " + form.cards.filter(isRead).length + " of " + form.cards.length + " in all.");
  }
  function listenToCards() {
    by("where").addEventListener("input", showCards);
    by("open").addEventListener("input", showCards);
    by("next").addEventListener("click", function () {
      by("where").selectedIndex = (by("where").selectedIndex + 1) % by("where").options.length;
      showCards(); by("h-readings").scrollIntoView({ block: "start" }); by("where").focus();
    });
  }
