  // Arrows go from breaker to breaker as they are seated.
  house.addEventListener("keydown", function (event) {
    const cell = event.target.closest(".slots button");
    if (!cell || !/^(Arrow|Home|End)/.test(event.key)) return;
    event.preventDefault();
    const all = Array.from(cell.parentElement.querySelectorAll("button")), box = cell.getBoundingClientRect();
    let to = event.key === "Home" ? all[0] : event.key === "End" ? all[all.length - 1] : null;
    if (!to) {
      const down = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0, right = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
      let best = Infinity;
      all.forEach(function (each) {
        const other = each.getBoundingClientRect(), dx = other.left - box.left, dy = other.top - box.top;
        const ahead = down ? down * dy : right * dx, aside = down ? Math.abs(dx) : Math.abs(dy);
        if (each !== cell && ahead > 1 && ahead + 4 * aside < best) { best = ahead + 4 * aside; to = each; }
      });
    }
    if (to) { cell.tabIndex = -1; to.tabIndex = 0; to.focus(); }
  });

