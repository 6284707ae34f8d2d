  by("look").addEventListener("input", function () { document.documentElement.dataset.look = by("look").value; });
  recall();
  listenToVisits();
  listenToCards();
  listenToHandback();
  showVisits();
  showCards();
  document.documentElement.dataset.ready = "true";
