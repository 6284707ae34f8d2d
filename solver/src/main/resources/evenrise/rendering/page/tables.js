  // Tables are sorted by a header and taken away as they stand, with the cautions.
  function number(text) { const value = parseFloat(text.replace(/[^0-9.eE+-]/g, "")); return Number.isNaN(value) ? -Infinity : value; }
  function sort(header) {
    const table = header.closest("table"), body = table.tBodies[0], k = header.cellIndex, down = header.getAttribute("aria-sort") === "ascending", isNumber = header.classList.contains("n");
    table.querySelectorAll("th[aria-sort]").forEach(function (each) { each.removeAttribute("aria-sort"); });
    header.setAttribute("aria-sort", down ? "descending" : "ascending");
    const key = function (row) { const text = row.cells[k].textContent.trim(); return isNumber ? number(text) : text; };
    const keyed = Array.from(body.rows, function (row, place) { return { row: row, key: key(row), place: place }; });
    keyed.sort(function (a, b) {
      const order = isNumber ? a.key - b.key || 0 : a.key.localeCompare(b.key, "en", { numeric: true });
      return (down ? -order : order) || a.place - b.place;
    });
    body.append.apply(body, keyed.map(function (each) { return each.row; }));
  }
  function cell(text) {
    const shown = /^[=+@\t\r-]/.test(text) && !/^[-+]?[0-9.]+$/.test(text) ? "'" + text : text;
    return /[",\n\r;]/.test(shown) ? '"' + shown.replace(/"/g, '""') + '"' : shown;
  }
  function taken(table) {
    const lines = Array.from(table.rows, function (row) { return Array.from(row.cells, function (each) { return cell(each.textContent.trim()); }).join(","); });
    document.querySelectorAll(".cautions li").forEach(function (caution) { lines.push(cell("# Caution: " + caution.textContent)); });
    return lines.join("\r\n") + "\r\n";
  }
  function offer(section) {
    const bar = make("p", "tools"), button = make("button", "", "Download this table (CSV)");
    button.type = "button";
    button.addEventListener("click", function () {
      section.querySelectorAll("script.later").forEach(unfold);
      const link = make("a"), address = URL.createObjectURL(new Blob([taken(section.querySelector("table"))], { type: "text/csv;charset=utf-8" }));
      link.href = address; link.download = section.id + ".csv"; link.click();
      setTimeout(function () { URL.revokeObjectURL(address); }, 1000);
    });
    bar.append(button);
    section.querySelector(".scroll").before(bar);
  }
  function sortable(root) {
    root.querySelectorAll("section.big table thead th, .sorts thead th").forEach(function (header) {
      if (header.querySelector("button")) return;
      const button = make("button", "sort", header.textContent);
      button.type = "button";
      header.replaceChildren(button);
    });
  }
  document.addEventListener("click", function (event) { const button = event.target.closest && event.target.closest("th button.sort"); if (button) sort(button.parentElement); });
  document.querySelectorAll("section.big").forEach(function (section) { if (section.querySelector(".scroll") && section.id !== "drawings") offer(section); });
