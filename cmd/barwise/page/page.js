
"use strict";
// Search: an inspection stays where it holds every word; whole sections go where
// none is left. Text is only ever compared and marked, never made into markup.
(function () {
  var form = document.getElementById("search");
  var words = document.getElementById("words");
  var found = document.getElementById("found");
  var articles = Array.prototype.slice.call(document.querySelectorAll("article"));
  var sections = Array.prototype.slice.call(document.querySelectorAll("section.hive"));
  var texts = articles.map(function (a) { return a.textContent.toLowerCase(); });
  var opened = [];
  form.hidden = false;

  function unmark() {
    document.querySelectorAll("mark").forEach(function (m) {
      var parent = m.parentNode;
      parent.replaceChild(document.createTextNode(m.textContent), m);
      parent.normalize();
    });
    opened.forEach(function (d) { d.open = false; });
    opened = [];
  }

  function mark(article, terms) {
    var walker = document.createTreeWalker(article, NodeFilter.SHOW_TEXT), nodes = [];
    while (walker.nextNode()) { nodes.push(walker.currentNode); }
    nodes.forEach(function (node) {
      if (node.parentNode.closest("pre, summary")) { return; }
      for (;;) {
        var low = node.data.toLowerCase(), at = -1, length = 0;
        if (low.length !== node.data.length) { return; }
        terms.forEach(function (t) {
          var i = low.indexOf(t);
          if (i >= 0 && (at < 0 || i < at)) { at = i; length = t.length; }
        });
        if (at < 0) { return; }
        var hit = node.splitText(at);
        var rest = hit.splitText(length);
        var m = document.createElement("mark");
        hit.parentNode.replaceChild(m, hit);
        m.appendChild(hit);
        var details = m.closest("details");
        if (details && !details.open) { details.open = true; opened.push(details); }
        node = rest;
      }
    });
  }

  function search() {
    var terms = words.value.toLowerCase().split(/\s+/).filter(Boolean);
    unmark();
    var left = 0, marked = 0;
    articles.forEach(function (a, i) {
      var fits = terms.every(function (t) { return texts[i].indexOf(t) >= 0; });
      a.hidden = !fits;
      if (!fits) { return; }
      left++;
      if (terms.length && marked < 200) { mark(a, terms); marked++; }
    });
    sections.forEach(function (s) { s.hidden = terms.length > 0 && !s.querySelector("article:not([hidden])"); });
    document.body.classList.toggle("searching", terms.length > 0);
    found.textContent = terms.length ? left + (left === 1 ? " inspection" : " inspections") : "";
  }

  words.addEventListener("input", search);
  form.addEventListener("submit", function (e) { e.preventDefault(); });
  if (location.hash.indexOf("#find=") === 0) {
    words.value = decodeURIComponent(location.hash.slice(6));
    search();
  }
  // Paper cannot be unfolded; the combs of every day would fill a page each.
  window.addEventListener("beforeprint", function () {
    document.querySelectorAll("details:not(.combs)").forEach(function (d) { d.open = true; });
  });
})();
