  // A figure as somebody types it, and what the plan says of it. Whoever reads the file judges anew, and more.
  const NUMBER = /^\d*[.,]?\d+$|^\d+[.,]$/;
  // One comma before three digits may be a decimal mark or part thousands: asked for, as the reader of sheets does.
  const TWOFOLD = /^[1-9]\d{0,2},\d{3}$/;
  function numberOf(text) {
    const bare = text.trim();
    return bare === "" || !NUMBER.test(bare) || TWOFOLD.test(bare) ? null : Number(bare.replace(",", "."));
  }
  function slip(text, greatest) {
    const bare = text.trim(), value = numberOf(text);
    if (bare === "") return "";
    if (TWOFOLD.test(bare)) return "can be read in two ways: write a point";
    if (value === null) return "no number: such as 12.4";
    return value > greatest ? "more than can be: another unit?" : "";
  }
  function errorOf(kind, value, meter) {
    if (kind === "none") return 0;
    const stated = function (key) { return meter ? numberOf(meter[key] || "") : null; };
    if (kind === "time") { const own = stated("off_by_s"); return own === null ? form.usual_s : own; }
    const range = stated("range_a"), ofRange = stated("of_range_pct"), ofReading = stated("of_reading_pct");
    if (ofRange === null && ofReading === null) return form.usual_least_a + form.usual_of_reading_pct / 100 * value;
    return (ofRange || 0) / 100 * (range || 0) + (ofReading || 0) / 100 * value;
  }
  // Class and word; none where nothing is read.
  function judge(ask, text, meter) {
    if (text.trim() === "") return null;
    const wrong = slip(text, ask.greatest);
    if (wrong) return ["bad", wrong, true];
    const value = numberOf(text), error = errorOf(ask.error, value, meter);
    const has = function (bound) { return bound !== null && bound !== undefined; };
    if (has(ask.floor) && value < ask.floor) return ["bad", "✕ unsafe"];
    if (has(ask.limit) && value + error > ask.limit) return ["bad", value > ask.limit ? "✕ unsafe" : "✕ unsafe: the meter cannot rule it out"];
    const range = meter ? numberOf(meter.range_a || "") : null;
    if (ask.error === "current" && range !== null && value > range) return ["warn", "△ beyond the instrument's range"];
    if (has(ask.most) && value > ask.most + error) return ["warn", "△ outside: more"];
    if (has(ask.least) && value < ask.least - error) return ["warn", "△ outside: less"];
    return has(ask.floor) || has(ask.limit) || has(ask.most) || has(ask.least) ? ["good", "✓ within"] : ["", "taken in"];
  }
