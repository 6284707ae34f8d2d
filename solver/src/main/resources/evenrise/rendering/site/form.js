  // What is asked for, as the plan was made: nothing of it is changed here.
  const by = function (id) { return document.getElementById(id); };
  const form = JSON.parse(by("form").textContent), told = by("form").dataset;
  const make = function (name, type, text) {
    const element = document.createElement(name);
    if (type) element.className = type;
    if (text) element.textContent = text;
    return element;
  };
  const put = function (element, text) { if (element.textContent !== text) element.textContent = text; };
  const keyOf = function (card) { return [card.kind, card.load || card.place, card.phase || card.protects].join("\n"); };
  form.cards.forEach(function (card) { card.key = keyOf(card); });
  const cardOf = new Map(form.cards.map(function (card) { return [card.key, card]; }));
  const counted = function (count, what) { return count + " " + what + (count === 1 ? "" : "s"); };
  const today = function () {
    const now = new Date(), two = function (number) { return String(number).padStart(2, "0"); };
    return now.getFullYear() + "-" + two(now.getMonth() + 1) + "-" + two(now.getDate());
  };
