// Puts the bench together.
import { entry, keptReading, read, remember, replaceText, shown, state, whenRead } from './bench.js';
import { droppedFiles, restore, takeIn } from './book.js';
import { button, byId, el, field, replace } from './dom.js';
import { call, ready } from './library.js';
import { fromFragment } from './link.js';
import { clearAll, load } from './store.js';
import { words } from './strings.js';
import { differences, showCard, showNumbers } from './view.js';
import { refreshBook, refreshTools, showTools } from './tools.js';

Object.assign(state, load());

const text = el('textarea', { id: 'text', rows: 12, spellcheck: 'false', autocapitalize: 'off', autocomplete: 'off', 'aria-describedby': 'field-help', placeholder: words.sample });
const day = el('input', { type: 'date', id: 'day', on: { change: setDay } });
const choosers = {};

function say(message) {
  byId('state').textContent = message;
}

function today() {
  const now = new Date();
  return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
}

async function setDay() {
  await call('SetDay', day.value || today());
  read();
}

/** Writes a line such as `glass: coupe` into the text, in the place of the one that is there. */
function writeDetail(word, value) {
  const rows = state.text.split('\n');
  const at = rows.findIndex((r) => r.trim().toLowerCase().startsWith(`${word}:`));
  const row = `${word}: ${value}`;
  if (at >= 0) value ? rows.splice(at, 1, row) : rows.splice(at, 1);
  else if (value) rows.push(row);
  setText(rows.join('\n'), state.path);
}

/** Sets the text and shows it. */
export function setText(value, path = '', keep = false) {
  replaceText(value, path, keep);
  text.value = state.text;
  showFile();
  read();
}

function showFile() {
  const note = byId('file-note');
  note.hidden = !state.path;
  note.textContent = state.path ? words.file(state.path) : '';
}

function chooser(word, list) {
  const select = el('select', { id: word, on: { change: () => writeDetail(word, list.find((w) => w.id === select.value)?.name.toLowerCase() ?? '') } }, el('option', { value: '' }, words.notChosen), list.map((w) => el('option', { value: w.id }, w.name)));
  choosers[word] = select;
  return field(words[word], select);
}

function showWriting(offered) {
  text.value = state.text;
  replace(byId('writing'),
    el('h2', { id: 'field-head' }, el('label', { for: 'text' }, words.field)),
    text,
    el('p', { id: 'file-note', class: 'small', hidden: true }),
    el('p', { id: 'field-help', class: 'small soft' }, words.fieldHelp),
    el('div', { id: 'which', class: 'choices', hidden: true }),
    offered && el('div', { class: 'row' }, chooser('style', offered.styles), chooser('glass', offered.glasses), chooser('family', offered.families)));
  showFile();
}

/** The choosers say what the text says. */
function showChosen(reading) {
  for (const [word, select] of Object.entries(choosers)) {
    select.disabled = !!state.path;
    select.value = reading.lines.find((l) => l.about?.toLowerCase() === word)?.value ?? (word === 'glass' ? reading.lines.find((l) => l.glass)?.glass : undefined) ?? '';
  }
}

function showWhich(reading) {
  const which = byId('which');
  which.hidden = reading.recipes.length < 2;
  replace(which, el('span', { class: 'small' }, words.several), reading.recipes.map((name, i) => button(name || `${i + 1}`, () => { state.which = i; read(); }, { 'aria-pressed': String(i === state.which), 'data-key': `which-${i}` })));
}

const act = {
  async choose(line, item) {
    const edit = JSON.parse(await call('Choose', ...entry(), line.line, item, line.itemWritten));
    if (edit.why) say(edit.why);
    else setText(edit.text, edit.path);
    text.focus();
  },
  async tryCorrection(finding) {
    const place = document.querySelector(`[data-trial="${CSS.escape(finding.fingerprint)}"]`);
    const edit = JSON.parse(await call('Correct', ...entry(), finding.fingerprint));
    if (edit.why) return replace(place, el('p', null, words.refused + edit.why));
    const after = JSON.parse(await call('Read', edit.text, edit.path, edit.path ? 0 : state.which, true, state.us));
    replace(place, differences(shown.reading, after), el('div', { class: 'choices' },
      button(words.take, () => { setText(edit.text, edit.path); text.focus(); }),
      button(words.leave, () => replace(place))));
    place.querySelector('button')?.focus();
  },
};

let spoken;
whenRead((reading, since, quick) => {
  if (!reading) return say(words.tooLong);
  if (reading.failed) return say(reading.failed);
  showCard(reading, act, quick);
  showNumbers(reading, state.us, quick);
  showWhich(reading);
  showChosen(reading);
  if (quick) document.documentElement.dataset.took = String(Math.round((performance.now() - since) * 10) / 10);
  document.documentElement.dataset.read = String(Number(document.documentElement.dataset.read ?? 0) + 1);
  refreshTools(reading);
  if (quick) return;
  document.documentElement.dataset.whole = state.text.length.toString();
  clearTimeout(spoken);
  const of = (level) => reading.findings.filter((f) => f.level === level).length;
  spoken = setTimeout(() => say(reading.path ? words.counts(of('error'), of('warning'), of('note')) : words.ready), 600);
});

function showFooter(version) {
  const units = (us, label) => el('label', null, el('input', { type: 'radio', name: 'units', checked: state.us === us, on: { change: () => { state.us = us; shown.keptReading = null; read(); } } }), label);
  replace(document.querySelector('footer'),
    el('div', { class: 'row' },
      el('fieldset', null, el('legend', null, words.units), units(false, words.metric), ' ', units(true, words.us)),
      el('label', { class: 'field day' }, el('span', null, words.day), day),
      button(words.clear, clear)),
    el('p', { class: 'small soft' }, words.storage),
    el('p', { class: 'small soft' }, `SpecLint ${version}`));
}

async function clear() {
  if (!confirm(words.clearSure)) return;
  await clearAll();
  await call('Clear');
  Object.assign(state, { text: '', path: '', which: 0, kept: null });
  location.reload();
}

function dropped() {
  addEventListener('dragover', (e) => { if ([...e.dataTransfer.types].includes('Files')) { e.preventDefault(); document.body.classList.add('drop'); } });
  addEventListener('dragleave', (e) => { if (!e.relatedTarget) document.body.classList.remove('drop'); });
  addEventListener('drop', async (e) => {
    document.body.classList.remove('drop');
    if (!e.dataTransfer.files.length) return;
    e.preventDefault();
    await takeFiles(await droppedFiles(e.dataTransfer));
    refreshBook();
  });
}

/** Takes files in; a single recipe is also opened. */
export async function takeFiles(list) {
  try {
    const { taken, left } = await takeIn(list);
    if (taken.length === 1 && /\.(drink|prep)\.json$/.test(taken[0].path)) setText(new TextDecoder().decode(taken[0].bytes), taken[0].path, true);
    else read();
    say(left > 0 ? words.skipped(left) : words.files(taken.length));
  } catch (e) {
    say(`${words.badZip} ${e.message}`);
  }
}

/** Takes the recipe of a link into the field; the address then holds it no longer. */
async function takeLink() {
  const linked = await fromFragment(location.hash);
  if (linked === null) return false;
  setText(linked, '', true);
  history.replaceState(null, '', location.pathname + location.search);
  return true;
}

async function begin() {
  text.addEventListener('input', (e) => { state.text = text.value; read(e.timeStamp || performance.now()); });
  document.title = words.title;
  document.querySelector('h1').textContent = words.title;
  say(words.starting);
  showWriting(null);
  dropped();
  const linked = await takeLink();
  addEventListener('hashchange', async () => { if (await takeLink()) say(words.fromLink); });
  let library;
  try {
    library = await ready;
  } catch (e) {
    return say(words.failed + e.message);
  }
  document.documentElement.dataset.running = String(Math.round(performance.now()));
  const focused = document.activeElement === text ? [text.selectionStart, text.selectionEnd] : null;
  showWriting(library.words);
  if (focused) { text.focus(); text.setSelectionRange(...focused); }
  day.value = today();
  await call('SetDay', day.value);
  await restore();
  showTools({ library, setText, takeFiles, say, keptReading, remember, text });
  showFooter(library.version);
  if (!state.text.trim()) await call('Read', words.sample, '', 0, true, state.us);
  say(linked ? words.fromLink : words.ready);
  document.documentElement.dataset.ready = String(Math.round(performance.now()));
  read();
}

begin();
if ('serviceWorker' in navigator && location.protocol !== 'file:') navigator.serviceWorker.register('sw.js').catch(() => {});
