  const data = JSON.parse(document.getElementById("played").textContent);
  const loads = data.loads, count = loads.id.length, phases = data.phases, plot = data.plot, nodes = data.nodes;
  const by = function (id) { return document.getElementById(id); };
  const numbers = function (list) { return Float64Array.from(list); };
  const plain = function (text) {
    const shown = text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/gu, "?");
    return shown.length > 60 ? shown.slice(0, 59) + "…" : shown;
  };
  const make = function (name, type, text) {
    const element = document.createElement(name);
    if (type) element.className = type;
    if (text) element.textContent = text;
    return element;
  };
  // Ids of one house often begin alike: where there is no room, what is cut is the middle.
  const idPart = function (id) {
    const part = make("span", "id");
    part.append(make("span", "stem", id.slice(0, -5)), make("span", "", id.slice(-5)));
    return part;
  };
  const amps = function (value) { return value.toFixed(1) + " A"; };

  const ROLES = data.roles, roleOf = Int8Array.from(loads.role, function (role) { return ROLES.indexOf(role); });

  // The loads in columns; those without a time, which are always on or have no output, start before everything.
  const base = numbers(loads.base_a), excess = numbers(loads.excess_a), half = numbers(loads.half_life_s), on = numbers(loads.on_s);
  // Where systems have commands of their own, one is played: what it does not switch is at its worst throughout, as the
  // node's rest says, and drawn by no load of its own.
  const systems = data.systems, many = systems.length > 0;
  let system = data.system;
  const switches = function (i) { return !many || loads.system[i] === system; };
  const start = new Float64Array(count);
  const ways = data.ways.nodes.map(function (places, k) { return new Map(places.map(function (node, j) { return [node, numbers(data.ways.parts[k][j])]; })); });
  const flows = ways.map(function (way) { return Array.from(way); });
  const touched = Uint8Array.from(loads.phases, function (letters) {
    return phases.reduce(function (mask, letter, p) { return letters.indexOf(letter) < 0 ? mask : mask | 1 << p; }, 0);
  });
  const indexOf = new Map(loads.id.map(function (id, i) { return [id, i]; }));
  const nodeOf = new Map(nodes.slice(1).map(function (node, i) { return [node.id, i + 1]; }));
  const home = Int32Array.from(loads.panel, function (panel) { return nodeOf.get(panel); });
  let order = [], starts = numbers([]);
  const fed = nodes.map(function () { return []; });
  function arrange() {
    for (let i = 0; i < count; i++) start[i] = on[i] < 0 || !switches(i) ? -Infinity : on[i] - data.tolerance_s;
    order = Array.from(loads.id.keys()).sort(function (a, b) { return start[a] - start[b] || a - b; });
    starts = numbers(order.map(function (i) { return start[i]; }));
  }
  arrange();
  order.forEach(function (i) { ways[loads.way[i]].forEach(function (_, at) { fed[at].push(i); }); });
  const begun = function (which) { return nodes[which].starts[many ? system : 0]; };

  // One pole's current by its envelope at nominal voltage, as the plan's referee computes it.
  function drawn(i, seconds) {
    const since = seconds - start[i];
    if (since < -1e-12) return 0;
    if (since === Infinity) return base[i];
    const decaying = Math.max(0, since - 2 * data.tolerance_s) / half[i];
    return decaying > 60 ? base[i] : base[i] + excess[i] * Math.pow(2, -decaying);
  }
  // How many of the sorted starts are not after that time.
  function litAt(seconds) {
    let low = 0, high = count;
    while (low < high) { const middle = low + high >> 1; if (starts[middle] <= seconds + 1e-12) low = middle + 1; else high = middle; }
    return low;
  }
  const sums = new Float64Array(nodes.length * phases.length), now = new Float64Array(count), through = new Float64Array(ways.length);
  function sum(seconds, lit) {
    nodes.forEach(function (_, n) { sums.set(begun(n).rest_a, n * phases.length); });
    through.fill(0);
    for (let k = 0; k < lit; k++) { const i = order[k]; if (switches(i)) through[loads.way[i]] += now[i] = drawn(i, seconds); }
    flows.forEach(function (flow, w) {
      if (through[w] !== 0) flow.forEach(function (each) { for (let p = 0; p < phases.length; p++) sums[each[0] * phases.length + p] += each[1][p] * through[w]; });
    });
  }

