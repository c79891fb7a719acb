/**
 * What the page does by itself, as the browser runs it. It is written for old tablets, builds every element by hand
 * and puts all text in as text. Ticks are kept under a name made of job and plan, so that a new plan starts afresh.
 */
export const pageScript = String.raw`
(function () {
'use strict';
var page = document.documentElement;
var store = page.getAttribute('data-store');
var says = JSON.parse(document.getElementById('says').textContent);
var kept = true;
function all(selector, inside) { return Array.prototype.slice.call((inside || document).querySelectorAll(selector)); }
function read(key) { try { return localStorage.getItem(key); } catch (e) { kept = false; return null; } }
function write(key, text) { try { localStorage.setItem(key, text); } catch (e) { kept = false; } showKept(); }
function showKept() { document.getElementById('kept').textContent = kept ? says.ticksStay : says.noTicksKept; }
function fill(text, values) { return text.replace(/\{(\d)\}/g, function (_, i) { return values[i]; }); }

var boxes = all('input[data-tick]');
var byKey = Object.create(null);
boxes.forEach(function (box) { byKey[box.getAttribute('data-tick')] = box; });
var ofPanel = Object.create(null);
boxes.forEach(function (box) {
  var panel = box.getAttribute('data-panel');
  if (panel !== null) (ofPanel[panel] = ofPanel[panel] || []).push(box);
});
var rows = all('tr[data-counts]');
var hits = all('.hit');
function ticked(box) { return box.checked; }
function hitBoxes(hit) {
  return JSON.parse(hit.getAttribute('data-ticks')).map(function (key) { return byKey[key]; });
}
function show() {
  rows.forEach(function (row) {
    var own = ofPanel[row.getAttribute('data-counts')] || [];
    var done = own.filter(ticked).length;
    row.cells[row.cells.length - 1].textContent = fill(says.ticked, [done, own.length]);
    row.classList.toggle('all', own.length > 0 && done === own.length);
  });
  hits.forEach(function (hit) { hit.classList.toggle('done', hitBoxes(hit).every(ticked)); });
  var panels = boxes.filter(function (box) { return box.hasAttribute('data-panel'); });
  document.getElementById('progress').textContent = fill(says.ticked, [panels.filter(ticked).length, panels.length]);
}
function keep() {
  write(store, JSON.stringify(boxes.filter(ticked).map(function (box) { return box.getAttribute('data-tick'); })));
  show();
}
try {
  JSON.parse(read(store) || '[]').forEach(function (key) { if (byKey[key]) byKey[key].checked = true; });
} catch (e) { /* What is kept is not ours: start afresh. */ }
document.addEventListener('change', function (event) {
  if (event.target.hasAttribute('data-tick')) keep();
});
hits.forEach(function (hit) {
  hit.addEventListener('click', function () {
    var own = hitBoxes(hit);
    var next = own.filter(function (box) { return !box.checked; })[0];
    if (next) next.checked = true; else own.forEach(function (box) { box.checked = false; });
    keep();
  });
});
var clear = document.getElementById('clear');
clear.addEventListener('click', function () {
  if (clear.textContent !== says.reallyClear) { clear.textContent = says.reallyClear; return; }
  boxes.forEach(function (box) { box.checked = false; });
  clear.textContent = says.clear;
  keep();
});
clear.addEventListener('blur', function () { clear.textContent = says.clear; });

// On a narrow screen each row is a card whose cells bear the words of their columns; rows and cells stay what they are.
all('table').forEach(function (table) {
  var heads = all('th', table).map(function (head) { return head.textContent; });
  table.setAttribute('role', 'table');
  all('thead, tbody', table).forEach(function (part) { part.setAttribute('role', 'rowgroup'); });
  all('tr', table).forEach(function (row) {
    row.setAttribute('role', 'row');
    Array.prototype.forEach.call(row.cells, function (cell, index) {
      if (cell.tagName === 'TH') { cell.setAttribute('role', 'columnheader'); return; }
      cell.setAttribute('role', 'cell');
      cell.setAttribute('data-head', heads[index]);
      if (cell.textContent.length > 26) cell.classList.add('long');
    });
  });
  table.classList.add('cards');
});

var theme = document.getElementById('theme');
function isDark() {
  var set = page.getAttribute('data-theme');
  return set ? set === 'dark' : !!(window.matchMedia && matchMedia('(prefers-color-scheme: dark)').matches);
}
function nameTheme() { theme.textContent = isDark() ? says.light : says.dark; }
var wanted = read('plywright:theme');
if (wanted === 'dark' || wanted === 'light') page.setAttribute('data-theme', wanted);
theme.addEventListener('click', function () {
  page.setAttribute('data-theme', isDark() ? 'light' : 'dark');
  write('plywright:theme', page.getAttribute('data-theme'));
  nameTheme();
});
document.getElementById('print').addEventListener('click', function () { window.print(); });

all('[data-zooms]').forEach(function (button) {
  button.addEventListener('click', function () {
    var by = button.getAttribute('data-zooms');
    all('.drawing', document.getElementById(button.getAttribute('data-of'))).forEach(function (drawing) {
      var first = matchMedia('(max-width:40rem)').matches ? 1 : 0;
      var now = Number(drawing.getAttribute('data-zoom') || first);
      drawing.setAttribute('data-zoom', String(by === 'fit' ? 0 : Math.max(0, Math.min(3, now + Number(by)))));
    });
  });
});

var find = document.getElementById('find');
var found = document.getElementById('found');
var count = document.getElementById('count');
var entries = boxes.filter(function (box) { return box.hasAttribute('data-panel'); }).map(function (box) {
  var section = box.closest('section');
  return { box: box, section: section, text: box.parentNode.textContent.trim(),
    number: box.getAttribute('data-panel'), where: section.querySelector('h3').textContent };
});
function go(entry) {
  hits.forEach(function (hit) {
    hit.classList.toggle('wanted', hit.closest('section') === entry.section &&
      hit.getAttribute('data-panel') === entry.number);
  });
}
function look() {
  while (found.firstChild) found.removeChild(found.firstChild);
  var words = find.value.trim().toLowerCase();
  if (words === '') { count.textContent = ''; go({}); return; }
  var seen = Object.create(null);
  var matches = entries.filter(function (entry) {
    var key = entry.number + ' ' + entry.section.id;
    var fits = /^\d+$/.test(words) ? entry.number === words : entry.text.toLowerCase().indexOf(words) >= 0;
    if (!fits || seen[key]) return false;
    seen[key] = true;
    return true;
  });
  count.textContent = fill(says.found, [matches.length]);
  matches.slice(0, 100).forEach(function (entry) {
    var item = document.createElement('li');
    var link = document.createElement('a');
    link.href = '#' + entry.section.id;
    link.textContent = entry.text + ' → ' + entry.where;
    link.addEventListener('click', function (event) {
      event.preventDefault();
      go(entry);
      while (found.firstChild) found.removeChild(found.firstChild);
      // By hand, since following the link would take the focus away from the box again.
      entry.section.scrollIntoView();
      entry.box.focus({ preventScroll: true });
    });
    item.appendChild(link);
    found.appendChild(item);
  });
}
find.addEventListener('input', look);
document.getElementById('search').addEventListener('submit', function (event) {
  event.preventDefault();
  var first = found.querySelector('a');
  if (first) first.click();
});
showKept();
nameTheme();
show();
})();
`;
