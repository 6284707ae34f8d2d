// The front of cures as a picture: objective against what a night costs, with a slider over it.

import { draw, make, number, plain } from "./parts.js";

const WIDE = 1000, HIGH = 280, LEFT = 70, RIGHT = 40;

/** @param choose is told the number of the cure that is chosen */
export function frontBox(choose) {
  const slider = make("input", { id: "cure", type: "range", min: "0", max: "0", value: "0", "aria-label": "Cure", oninput: () => choose(Number(slider.value)) });
  const picture = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Front of cures" }), facts = make("dl", { class: "found" }), kinds = make("p", { class: "note" });
  const rows = make("tbody"), table = make("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": "Cures" }, make("table", { class: "small cures" }, make("thead", {}, make("tr", {}, ...["Cure", "Moves", "Minutes in one go", "Stages", "Nights", "Outages of groups", "Dead", "Systems off", "Rules broken", "Objective", "Spare, %"].map((each) => make("th", { scope: "col" }, each)))), rows));
  const element = make("section", { class: "box front" }, make("h3", {}, "Cures: objective against what a night costs"), picture, make("div", { class: "tools" }, make("label", { for: "cure" }, "Least work"), slider, make("span", { class: "note" }, "best plan")), facts, kinds, table);

  function level(each) { return each.label || each.moves + " moves"; }

  function words(each) {
    return level(each) + ": " + each.moves + (each.moves === 1 ? " move, " : " moves, ") + number(each.minutes, 0) + " min, objective " + number(each.objective, 2) + (each.hard_violations ? ", " + each.hard_violations + " rules broken" : "");
  }

  function paint(view, at) {
    const all = [view.built, ...view.cures], longest = Math.max(1, ...all.map((each) => each.minutes)), most = Math.max(...all.map((each) => each.objective)), least = Math.min(...all.map((each) => each.objective)), span = most - least || 1;
    const x = (minutes) => LEFT + (WIDE - LEFT - RIGHT) * minutes / longest, y = (objective) => 20 + (HIGH - 64) * (most - objective) / span;
    const text = (tx, ty, say, anchor = "start", kind = "") => { const it = draw("text", { x: tx, y: ty, "text-anchor": anchor, class: kind }); it.textContent = plain(say, 90); return it; };
    const svg = draw("svg", { viewBox: "0 0 " + WIDE + " " + HIGH, class: "curve", role: "img", "aria-label": "Objective against minutes of work, " + view.cures.length + " cures. Chosen: " + words(view.cures[at]) });
    const step = [5, 10, 30, 60, 120, 240, 480, 960, 2400, 4800].find((each) => longest / each <= 9) || 9600;
    for (let minutes = 0; minutes <= longest; minutes += step) svg.append(draw("line", { class: "grid", x1: x(minutes), x2: x(minutes), y1: 20, y2: HIGH - 40 }), text(x(minutes), HIGH - 24, minutes + " min", "middle"));
    svg.append(text(LEFT - 14, y(most) + 4, number(most, 1), "end"), ...(most > least ? [text(LEFT - 14, y(least) + 4, number(least, 1), "end")] : []), text(LEFT, HIGH - 6, "minutes of one crew, all in one go; the objective upwards is worse"));
    svg.append(draw("path", { class: "phase p2", d: "M" + view.cures.map((each, i) => (i ? "H" + x(each.minutes).toFixed(1) + "V" : x(each.minutes).toFixed(1) + " ") + y(each.objective).toFixed(1)).join("") }));
    const taken = [];
    // Names of cures that cost alike stand below one another.
    const free = (tx, ty) => { let at = ty; while (taken.some(([ox, oy]) => Math.abs(ox - tx) < 220 && Math.abs(oy - at) < 15)) at += 16; taken.push([tx, at]); return at; };
    all.forEach((each) => {
      const cx = x(each.minutes), cy = y(each.objective), is = each.number === at;
      const dot = draw("circle", { class: (each.hard_violations ? "limits" : "sound") + (is ? " is" : ""), cx, cy, r: is ? 9 : 6, data: { cure: each.number } }), title = draw("title");
      title.textContent = words(each);
      dot.append(title);
      if (each.number >= 0) dot.addEventListener("click", () => choose(each.number));
      svg.append(dot);
      if (is || each.label) svg.append(text(Math.min(cx + 14, WIDE - 8), free(cx, cy - 5), level(each) + (is ? ", chosen" : ""), cx > WIDE * 0.8 ? "end" : "start", is ? "is" : ""));
    });
    picture.replaceChildren(svg);
  }

  const cell = (say, isBad) => make("td", { class: "n" + (isBad ? " bad" : "") }, say);

  function row(each, at) {
    const night = each.night, dead = each.kinds.find((kind) => kind.words === "panel or board isolated"), off = each.kinds.find((kind) => kind.words === "system off and on");
    return make("tr", { class: each.number === at ? "chosen" : "", data: { cure: each.number } },
      make("th", { scope: "row" }, each.number < 0 ? "as built" : make("button", { type: "button", class: "link", "aria-pressed": String(each.number === at), onclick: () => choose(each.number) }, level(each))),
      cell(String(each.moves)), cell(number(each.minutes, 0)),
      cell(night ? String(night.stages) : each.number < 0 ? "–" : "…"), cell(night ? nights(night) : each.number < 0 ? "–" : "…", night && night.left > 0), cell(night ? String(night.outages) : each.number < 0 ? "–" : "…"),
      cell(String(dead ? dead.count : 0)), cell(String(off ? off.count : 0)), cell(String(each.hard_violations), each.hard_violations > 0), cell(number(each.objective, 2)), cell(number(each.spare_pct), each.spare_pct < 0));
  }

  function nights(night) {
    return night.nights + (night.left ? ", none left for " + night.left : "");
  }

  let shown = "";

  return {
    element,
    show(view, at) {
      // Told several times a second while orders are found: what is the same stays, and keeps the focus.
      const look = JSON.stringify([at, view.search, view.cures]);
      if (look === shown) return;
      shown = look;
      const focus = table.contains(document.activeElement) && document.activeElement.closest("tr").dataset.cure;
      slider.max = String(Math.max(0, view.cures.length - 1));
      slider.value = String(at);
      const each = view.cures[at], night = each.night;
      slider.setAttribute("aria-valuetext", plain(words(each), 200));
      paint(view, at);
      rows.replaceChildren(row(view.built, at), ...view.cures.map((cure) => row(cure, at)));
      if (focus) rows.querySelector("[data-cure='" + focus + "'] button").focus();
      const fact = (term, say) => make("div", {}, make("dt", {}, term), make("dd", {}, say));
      facts.replaceChildren(fact("Chosen", level(each)), fact("Moves", String(each.moves)), fact("Breakers, leads, settings, out", [each.breakers, each.leads, each.settings, each.removals].join(", ")), fact("Minutes in one go", number(each.minutes, 0)),
        fact(night && !night.are_stated ? "Shifts of 480 min" : "Nights", night ? nights(night) : "being put in order…"), fact("In stages", night ? night.stages + ", " + number(night.minutes, 0) + " min" : "…"), fact("Outages of groups", night ? String(night.outages) : "…"), fact("Rules broken after it", String(each.hard_violations)), fact("Objective", number(view.built.objective, 2) + " → " + number(each.objective, 2)));
      kinds.textContent = plain("Work by kind: " + (each.kinds.map((kind) => kind.count + " × " + kind.words + " (" + number(kind.each_min, 0) + " min each" + (kind.is_stated ? "" : ", a usual value, no source") + ")").join(", ") || "none") + ".", 900);
    },
  };
}
