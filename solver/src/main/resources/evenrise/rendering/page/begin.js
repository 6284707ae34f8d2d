  by("look").addEventListener("input", function () { document.documentElement.dataset.look = by("look").value; drawStrip(); });

  learn(document);
  sortable(document);
  measureStrip();
  choose(0);
  show(0);
  readHash();
  document.documentElement.dataset.ready = "true";
