/**
 * Remembers ticks in the browser and counts them. It reads no text of the plan, so it is the same in every
 * book and its hash can stand in the page's security policy.
 */
export const BOOK_SCRIPT = `(function () {
  "use strict";
  var key = "crossgrain-book-" + document.documentElement.getAttribute("data-key");
  var boxes = Array.prototype.slice.call(document.querySelectorAll("input[data-tick]"));
  var read = function () {
    try { return JSON.parse(localStorage.getItem(key) || "[]"); } catch (error) { return []; }
  };
  var write = function () {
    var ticked = boxes.filter(function (box) { return box.checked; }).map(function (box) { return box.id; });
    try { localStorage.setItem(key, JSON.stringify(ticked)); } catch (error) { return; }
  };
  var count = function () {
    Array.prototype.forEach.call(document.querySelectorAll("[data-progress]"), function (line) {
      var own = Array.prototype.slice.call(line.parentNode.parentNode.querySelectorAll("ol input[data-tick], h3 input[data-tick]"));
      var done = own.filter(function (box) { return box.checked; }).length;
      line.textContent = line.getAttribute("data-progress").replace("{done}", done).replace("{all}", own.length);
    });
  };
  var ticked = read();
  boxes.forEach(function (box) {
    box.checked = Array.isArray(ticked) && ticked.indexOf(box.id) >= 0;
    box.addEventListener("change", function () { write(); count(); });
  });
  var clear = document.querySelector("[data-clear]");
  if (clear) clear.hidden = false;
  if (clear) clear.addEventListener("click", function () {
    if (!window.confirm(clear.getAttribute("data-clear"))) return;
    boxes.forEach(function (box) { box.checked = false; });
    write();
    count();
  });
  var print = document.querySelector("[data-print]");
  print.hidden = false;
  print.addEventListener("click", function () { window.print(); });
  count();
})();
`;

/** SHA-256 of the script, in base 64, as a security policy names it. */
export const BOOK_SCRIPT_HASH = "RkLBkAdwcxgia4jMUq/3+C2EcUItL2jhDeZSTYC6oQ4=";
