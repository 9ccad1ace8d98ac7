// The tools beneath the field: solve, begin a preparation, write a reading, compare, the book, the bar, paper and link.
import { entry, keepVersion, read, shown, state } from './bench.js';
import { drop, files, folderFiles, put, saveFolder, takeIn, textOf, zip } from './book.js';
import { button, byId, el, field, replace, sentence } from './dom.js';
import { code } from './draw.js';
import { call } from './library.js';
import { toFragment } from './link.js';
import { show } from './paper.js';
import { words } from './strings.js';
import { differences, table } from './view.js';

let bench;

const number = (properties) => el('input', { type: 'text', inputmode: 'decimal', autocomplete: 'off', ...properties });
const text = (properties) => el('input', { type: 'text', autocomplete: 'off', ...properties });
const choice = (id, list) => el('select', { id }, list.map((w) => el('option', { value: w.id }, w.name)));
const panel = (key, title, ...children) => el('details', { data: { key } }, el('summary', null, el('h2', null, title)), ...children);
const answer = (id) => el('div', { id, role: 'group', 'aria-live': 'polite' });

/** Shows the tools; `given` is what they need of the page. */
export function showTools(given) {
  bench = given;
  replace(byId('tools'),
    el('h2', { id: 'tools-head', class: 'soft small' }, words.tools),
    panel('solve', words.solve, solving()),
    panel('prepare', words.prepare, preparing()),
    panel('reading', words.reading, recording()),
    panel('compare', words.compare, el('div', { id: 'compared' })),
    panel('book', words.book, el('div', { id: 'shelf' })),
    panel('bar', words.bar, barForm()),
    panel('prices', words.prices, priceForm()),
    panel('paper-and-link', words.paper, papers()));
  refreshBook();
  for (const key of ['compare', 'solve']) document.querySelector(`details[data-key=${key}]`).addEventListener('toggle', () => shown.reading && refreshTools(shown.reading));
}

/** Brings what shows the files of the book up to date. */
export function refreshBook() {
  if (!bench) return;
  showShelf();
  fillBar();
  fillPrices();
}

/** Brings what depends on the reading up to date. */
export function refreshTools(reading) {
  if (!bench) return;
  showHolds(reading);
  if (document.querySelector('details[data-key=compare]').open) showCompared(reading);
}

// Solve

function solving() {
  const targets = Object.entries(words.targets).map(([fact, label]) => field(label, number({ id: `target-${fact}`, placeholder: fact === 'abv' ? words.targetExample : '' })));
  return [
    el('p', { class: 'small soft' }, words.solveHelp),
    el('div', { class: 'row' }, targets),
    el('div', { class: 'row' }, field(words.like, text({ id: 'target-like' })), field(words.fits, el('select', { id: 'target-glass' }, el('option', { value: '' }, words.notChosen), bench.library.words.glasses.map((g) => el('option', { value: g.id }, g.name)))), field(words.add, text({ id: 'target-add' }))),
    el('fieldset', { id: 'holds' }, el('legend', null, words.hold)),
    button(words.solveButton, solve, { id: 'solve' }),
    answer('solved'),
  ];
}

function showHolds(reading) {
  const box = byId('holds');
  const held = new Set([...box.querySelectorAll('input:checked')].map((i) => i.value));
  const lines = reading.lines.filter((l) => l.item && l.kind === 'ingredient' && l.role !== 'garnish');
  replace(box, el('legend', null, words.hold), lines.length === 0 ? el('p', { class: 'soft small' }, words.holdNone) : lines.map((l) => el('label', null, el('input', { type: 'checkbox', value: l.item, checked: held.has(l.item), data: { key: `hold-${l.item}` } }), `${l.name} `)));
}

function ends(value) {
  const [low, high = low] = value.replace(/[–—]/g, '-').replaceAll(',', '.').split('-').map((t) => Number(t.trim() || NaN));
  return { low, high };
}

async function solve() {
  const targets = Object.keys(words.targets).filter((f) => byId(`target-${f}`).value.trim()).map((fact) => ({ fact, ...ends(byId(`target-${fact}`).value) }));
  const request = {
    targets: targets.map((t) => ({ ...t, low: Number.isFinite(t.low) ? t.low : -1, high: Number.isFinite(t.high) ? t.high : -1 })),
    like: byId('target-like').value,
    glass: byId('target-glass').value,
    keep: [...byId('holds').querySelectorAll('input:checked')].map((i) => i.value),
    add: byId('target-add').value.split(',').map((t) => t.trim()).filter(Boolean),
  };
  const solved = JSON.parse(await call('Adjust', ...entry(), state.us, JSON.stringify(request)));
  const place = byId('solved');
  if (solved.why) return replace(place, el('p', null, `${words.refused}${solved.why}.`));
  replace(place,
    el('p', null, el('strong', null, solved.reached ? words.reached : words.notReached), solved.figures.map((f) => f.inTheWay).concat(solved.likeInTheWay ?? '').filter(Boolean).join(' ')),
    solved.figures.length > 0 && table([words.wanted, words.before, words.after], solved.figures.map((f) => [f.name, f.before, f.after])),
    solved.like && el('p', null, solved.like),
    table([words.line, words.before, words.after], solved.lines.map((l) => [l.name, l.before, l.changed ? el('strong', null, l.after) : l.after])),
    solved.remarks.map((r) => el('p', { class: 'small' }, r)),
    solved.harm.map((h) => el('p', { class: 'caution' }, words.harm + h)),
    el('div', { class: 'choices' }, solved.changed && solved.harm.length === 0 && button(words.take, () => take(solved, place)), button(words.leave, () => replace(place))));
}

function take(edit, place) {
  bench.setText(edit.text, edit.path, true);
  replace(place);
  bench.text.focus();
}

// Preparations

function preparing() {
  const forms = {
    sour: [field(words.sour.item, text({ name: 'item', value: 'orange juice' })), field(words.sour.grams, number({ name: 'grams', value: '1000' })), field(words.sour.like, text({ name: 'like', value: 'lime juice' }))],
    syrup: [field(words.syrup.item, text({ name: 'item', value: 'white sugar' })), field(words.syrup.grams, number({ name: 'grams', value: '500' })), field(words.syrup.ratio, text({ name: 'ratio' })), field(words.syrup.brix, number({ name: 'brix', value: '50' }))],
    saline: [field(words.saline.item, text({ name: 'item', value: 'salt' })), field(words.saline.grams, number({ name: 'grams', value: '100' })), field(words.saline.percent, number({ name: 'percent', value: '20' }))],
    dried: [field(words.dried.item, text({ name: 'item' })), field(words.dried.grams, number({ name: 'grams', value: '1000' })), field(words.dried.percent, number({ name: 'percent', value: '10' })), field(words.dried.at, number({ name: 'at' }))],
    batch: [field(words.batch.serves, number({ name: 'serves', value: '10' })), el('label', null, el('input', { type: 'checkbox', name: 'poured' }), words.batch.poured)],
  };
  return [
    el('p', { class: 'small soft' }, words.prepareHelp),
    Object.entries(forms).map(([kind, fields]) => el('form', { id: `prepare-${kind}`, on: { submit: (e) => { e.preventDefault(); prepare(kind, e.target); } } },
      el('fieldset', null, el('legend', null, words.preparations[kind]), el('div', { class: 'row' }, fields, el('button', { type: 'submit' }, words.write))))),
    answer('prepared'),
  ];
}

async function prepare(kind, form) {
  const request = { kind, ...Object.fromEntries([...new FormData(form)].map(([n, v]) => [n, String(v)])) };
  if (kind === 'batch') {
    request.poured = String(form.elements.poured.checked);

    // The batch names its drink, which then is in the book.
    if (shown.reading?.kind === 'drink' && !state.path) await put(shown.reading.path, shown.reading.file);
  }
  const made = JSON.parse(await call('Prepare', ...entry(), JSON.stringify(request)));
  if (made.why) return replace(byId('prepared'), el('p', null, words.refused + made.why));
  replace(byId('prepared'));
  showShelf();
  bench.setText(made.text, '', true);
  bench.text.focus();
}

function recording() {
  return [
    el('p', { class: 'small soft' }, words.readingHelp),
    el('form', { id: 'record', on: { submit: (e) => { e.preventDefault(); record(e.target); } } }, el('div', { class: 'row' }, field(words.ph, number({ name: 'ph' })), field(words.brix, number({ name: 'brix' })), el('button', { type: 'submit' }, words.record))),
    answer('recorded'),
  ];
}

async function record(form) {
  const value = (name) => Number(form.elements[name].value.replace(',', '.').trim() || NaN);
  const edit = JSON.parse(await call('Record', ...entry(), value('ph'), value('brix')));
  replace(byId('recorded'), edit.why && el('p', null, edit.why));
  if (!edit.why) bench.setText(edit.text, edit.path);
}

// Compare

async function showCompared(reading) {
  const kept = await bench.keptReading();
  replace(byId('compared'),
    el('div', { class: 'choices' }, button(words.keep, () => { keepVersion(); showCompared(reading); }, { id: 'keep', 'data-key': 'keep' }), kept && button(words.backTo, () => { const { text: old, path } = state.kept; bench.setText(old, path, true); }, { 'data-key': 'back' })),
    kept ? [el('p', null, words.keptOf(kept.name ?? '')), differences(kept, reading)] : el('p', { class: 'soft' }, words.nothingKept));
}

// The book

const picksFolders = 'showDirectoryPicker' in globalThis;

function showShelf() {
  const pick = el('input', { type: 'file', id: 'pick', multiple: true, accept: '.json,.zip', class: 'small', on: { change: () => takeList([...pick.files]) } });
  const folder = el('input', { type: 'file', id: 'pick-folder', webkitdirectory: true, class: 'small', on: { change: () => takeList([...folder.files]) } });
  const takeList = async (list) => { await bench.takeFiles(list); refreshBook(); };
  const list = [...files.keys()].sort();
  replace(byId('shelf'),
    el('p', { class: 'small soft' }, words.bookHelp),
    el('div', { class: 'row' }, field(words.openFiles, pick), picksFolders ? button(words.openFolder, openFolder, { id: 'open-folder' }) : 'webkitdirectory' in folder && field(words.openFolder, folder)),
    el('p', { class: 'small soft' }, words.dropHere),
    el('div', { class: 'choices' },
      button(words.saveFile, saveFile, { id: 'save-file' }),
      button(words.addToBook, addToBook, { id: 'add-to-book' }),
      list.length > 0 && [button(words.saveBook, () => download('book.zip', zip()), { id: 'save-book' }), picksFolders && button(words.saveFolder, writeFolder, { id: 'save-folder' }), button(words.checkBook, checkBook, { id: 'check-book' })]),
    answer('book-found'),
    el('p', { class: 'small' }, list.length === 0 ? words.noFiles : words.files(list.length)),
    el('ul', { class: 'files' }, list.map((path) => el('li', null, el('span', null, path),
      button(words.edit(path), () => { bench.setText(textOf(path), path, true); bench.text.focus(); }, { 'data-key': `edit-${path}` }),
      button(words.remove(path), async () => { await drop(path); refreshBook(); read(); }, { 'data-key': `drop-${path}` })))));
}

async function openFolder() {
  try {
    const { taken, left } = await takeIn(await folderFiles());
    bench.say(left > 0 ? words.skipped(left) : words.files(taken.length));
    refreshBook();
    read();
  } catch (e) {
    if (e.name !== 'AbortError') bench.say(e.message);
  }
}

async function writeFolder() {
  try {
    bench.say(words.folderSaved(await saveFolder()));
  } catch (e) {
    if (e.name !== 'AbortError') bench.say(e.message);
  }
}

function download(name, blob) {
  const address = URL.createObjectURL(blob);
  const link = el('a', { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

function saveFile() {
  const { path, file } = shown.reading ?? {};
  if (!path) return bench.say(words.noCard);
  download(path.split('/').pop(), new Blob([file], { type: 'application/json' }));
}

async function addToBook() {
  const { path, file } = shown.reading ?? {};
  if (!path) return bench.say(words.noCard);
  await put(path, file);
  showShelf();
  read();
}

async function checkBook() {
  const found = JSON.parse(await call('Check'));
  const { error, warning, note } = found.counts;
  const of = (list, heading) => list.length > 0 && [el('h3', null, heading), el('ul', null, list.map((f) => el('li', null, el('span', { class: `tag ${f.level}` }, `${words.sign[f.level]} ${words.level[f.level]} ${f.rule}`), ` ${f.subject}: `, sentence(f.message), f.caution && el('p', { class: 'caution' }, `${words.caution}: ${f.caution}`))))];
  const guards = new Set(bench.library.words.harm);
  const isHarm = (f) => f.level === 'error' && guards.has(f.rule);
  const harm = found.findings.filter(isHarm);
  const once = new Set();
  for (const f of found.findings) { if (once.has(f.caution)) delete f.caution; else once.add(f.caution); }
  replace(byId('book-found'), el('p', null, words.bookFound(words.counts(error, warning, note))), of(harm, words.harmFirst(harm.length)), of(found.findings.filter((f) => !isHarm(f)), words.whole), el('p', { class: 'small soft' }, found.closing));
}

// The bar

function barForm() {
  return el('form', { id: 'bar-form', on: { submit: (e) => { e.preventDefault(); saveBar(e.target); } } },
    el('div', { class: 'row' }, field(words.barName, text({ name: 'name' })), field(words.countries, text({ name: 'countries' }))),
    el('div', { class: 'row' }, field(words.currency, text({ name: 'currency', maxlength: 3 })), field(words.mostCost, number({ name: 'most' }))),
    el('div', { class: 'row' }, field(words.scale, number({ name: 'scale' })), field(words.jigger, number({ name: 'jigger' })), field(words.fridge, number({ name: 'fridge' }))),
    field(words.glasses, el('textarea', { name: 'glasses', rows: 3 })),
    el('div', { class: 'row' }, el('button', { type: 'submit' }, words.saveBar)),
    answer('bar-said'));
}

/** The bar.json of the book as an object; null where there is none, undefined where it cannot be read. */
function barOf() {
  if (!files.has('bar.json')) return null;
  try {
    return JSON.parse(textOf('bar.json'));
  } catch {
    return undefined;
  }
}

const digits = (quantity) => /^[\d.]+/.exec(String(quantity ?? ''))?.[0] ?? '';

function fillBar() {
  const bar = barOf();
  const form = byId('bar-form');
  form.hidden = false;
  replace(byId('bar-said'), bar === undefined && el('p', null, words.badBar));
  for (const control of form.elements) control.disabled = bar === undefined;
  if (!bar) return;
  form.elements.name.value = bar.name ?? '';
  form.elements.countries.value = (bar.jurisdictions ?? []).join(', ');
  form.elements.currency.value = bar.costs?.currency ?? '';
  form.elements.most.value = bar.costs?.mostPerServe ?? '';
  form.elements.scale.value = digits(bar.tools?.scale);
  form.elements.jigger.value = digits(bar.tools?.jigger);
  form.elements.fridge.value = digits(bar.tools?.fridge);
  form.elements.glasses.value = Object.entries(bar.glasses ?? {}).map(([id, g]) => [g.name ?? id, digits(g.brim), digits(g.washLine)].filter(Boolean).join(', ')).join('\n');
}

async function saveBar(form) {
  const value = (name) => form.elements[name].value.trim();
  const bar = barOf() ?? {};
  bar.name = value('name') || words.barUnnamed;
  const countries = value('countries').split(/[\s,]+/).filter(Boolean).map((c) => c.toUpperCase());
  if (countries.length > 0) bar.jurisdictions = countries; else delete bar.jurisdictions;
  const costs = bar.costs ?? {};
  if (value('currency')) costs.currency = value('currency').toUpperCase(); else delete costs.currency;
  const most = Number(value('most').replace(',', '.') || NaN);
  if (most > 0) costs.mostPerServe = most; else delete costs.mostPerServe;
  if (Object.keys(costs).length > 0) bar.costs = costs; else delete bar.costs;
  const tools = bar.tools ?? {};
  for (const [name, unit] of [['scale', 'g'], ['jigger', 'ml'], ['fridge', '°C']]) { if (value(name)) tools[name] = `${value(name)} ${unit}`; else delete tools[name]; }
  if (Object.keys(tools).length > 0) bar.tools = tools; else delete bar.tools;
  const glasses = {};
  for (const row of value('glasses').split('\n').map((r) => r.split(',').map((c) => c.trim())).filter((r) => r[0] && r[1])) {
    const id = row[0].toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
    glasses[id] = { ...(bar.glasses ?? {})[id], name: row[0], brim: `${row[1]} ml`, ...(row[2] ? { washLine: `${row[2]} ml` } : {}) };
  }
  if (Object.keys(glasses).length > 0) bar.glasses = glasses; else delete bar.glasses;
  await put('bar.json', JSON.stringify(bar, null, 2) + '\n');
  showShelf();
  read();
}

// Prices

const PRICES = 'bench.prices.json';

function priceForm() {
  return el('form', { id: 'price-form', on: { submit: (e) => { e.preventDefault(); savePrices(e.target); } } },
    el('p', { class: 'small soft' }, words.pricesHelp),
    field(words.priceLines, el('textarea', { name: 'lines', rows: 5, spellcheck: 'false' })),
    el('div', { class: 'row' }, el('button', { type: 'submit' }, words.savePrices)),
    answer('prices-said'));
}

function fillPrices() {
  const area = byId('price-form').elements.lines;
  if (!files.has(PRICES) || area.value.trim()) return;
  try {
    area.value = JSON.parse(textOf(PRICES)).prices.map((p) => `${p.item}; ${p.price}; ${p.for}`).join('\n');
  } catch { /* It is opened in the field like any file. */ }
}

async function savePrices(form) {
  const { rows, path, file } = JSON.parse(await call('Prices', form.elements.lines.value, words.priceList));
  const unclear = rows.filter((r) => r.unclear);
  if (rows.length > unclear.length) await put(path, file); else await drop(path);
  replace(byId('prices-said'), el('p', null, words.pricesTaken(rows.length - unclear.length)), unclear.length > 0 && el('ul', null, unclear.map((r) => el('li', null, `${r.written}: ${r.unclear}`))));
  showShelf();
  read();
}

// Paper and link

function papers() {
  return [
    el('div', { class: 'row' }, field(words.paperSize, choice('paper-size', [{ id: 'a4', name: 'A4' }, { id: 'letter', name: 'Letter' }, { id: 'a6', name: 'A6' }])), button(words.printCard, printCard, { id: 'print-card' }), el('label', null, el('input', { type: 'checkbox', id: 'card-code' }), words.cardCode)),
    el('div', { class: 'row' }, field(words.labelStock, choice('label-stock', bench.library.words.labels)), field(words.by, text({ id: 'by' })), button(words.printLabel, printLabel, { id: 'print-label' })),
    el('div', { class: 'row' }, button(words.link, copyLink, { id: 'link' })),
    answer('linked'),
  ];
}

async function printCard() {
  const page = await call('Card', ...entry(), state.us, byId('paper-size').value);
  const drawn = byId('card-code').checked ? await code(await addressOf(state.text)) : undefined;
  if (drawn === null) bench.say(words.codeTooLong);
  if (page) show(page, drawn); else bench.say(words.noCard);
}

async function printLabel() {
  const page = await call('Label', ...entry(), state.us, byId('label-stock').value, byId('by').value.trim());
  if (page) show(page); else bench.say(words.noLabel);
}

const addressOf = async (recipe) => location.origin + location.pathname + await toFragment(recipe);

async function copyLink() {
  const address = await addressOf(state.text);
  const box = text({ value: address, readOnly: true, size: 40, 'aria-label': words.linkHere });
  let copied = false;
  try { await navigator.clipboard.writeText(address); copied = true; } catch { /* Without the right to, the address stands in the field. */ }
  replace(byId('linked'), el('p', null, copied ? words.linkCopied : words.linkHere), box, await code(address) ?? el('p', { class: 'small soft' }, words.codeTooLong));
  box.select();
}
