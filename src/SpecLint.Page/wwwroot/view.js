// Shows a reading: the card with its findings, and the numbers.
import { el, button, byId, replace, sentence } from './dom.js';
import { glass, scale } from './draw.js';
import { showRule } from './rulepage.js';
import { words } from './strings.js';

/** Figures that stand before the others. */
const FIRST = {
  drink: ['servedVolume', 'abv', 'sugar', 'acid', 'sugarAcidRatio', 'ph', 'dilution', 'temperature', 'alcohol', 'energy', 'cost'],
  prep: ['abv', 'sugar', 'brix', 'acid', 'ph', 'waterActivity', 'salt', 'life', 'freezingPoint', 'energy', 'cost'],
};

const list = (items) => el('ul', null, items.map((i) => el('li', null, i)));

/**
 * The card: lines with what was understood and the findings about each. `act` does what its buttons ask for; while somebody is `typing`,
 * a name that is not whole yet does not forbid the drink.
 */
export function showCard(reading, act, typing) {
  const of = (line) => reading.findings.filter((f) => f.line === line);
  const known = new Set(reading.lines.map((l) => l.line));
  const whole = reading.findings.filter((f) => !known.has(f.line));
  const shown = new Set();
  const stopped = reading.verdict?.answer === 'no';
  replace(byId('card'),
    el('h2', { id: 'card-head' }, words.card),
    reading.name && el('p', { class: 'name' }, reading.name),
    reading.style && el('p', { class: 'soft' }, reading.style),
    stop(reading, typing),
    el('ol', { class: 'lines' }, reading.lines.map((line) => {
      const findings = shown.has(line.line) ? [] : of(line.line);
      shown.add(line.line);
      return el('li', null, lineOf(line, act), findings.map((f) => findingOf(f, act, stopped)));
    })),
    whole.length > 0 && el('h3', null, words.whole), whole.map((f) => findingOf(f, act, stopped)),
    reading.findingsBelow.length > 0 && el('h3', null, words.below), reading.findingsBelow.map((f) => findingOf(f, act, stopped)),
    reading.findings.length + reading.findingsBelow.length === 0 && reading.path && el('p', { class: 'soft' }, words.none),
    el('p', { class: 'small soft' }, reading.closing));
}

/** What forbids the recipe comes before all else, then its cautions, each once. */
function stop({ verdict, findings, findingsBelow }, typing) {
  if (verdict?.answer !== 'no') return null;
  const all = [...findings, ...findingsBelow];
  const harm = all.filter((f) => f.harm && f.level === 'error').length;
  if (typing && harm === 0) return null;
  const cautions = new Set(all.flatMap((f) => [f, ...(f.follows ?? [])]).filter((f) => f.harm && f.caution).map((f) => f.caution));
  return el('div', { class: 'stop' },
    el('h3', null, verdict.headline),
    harm > 0 && el('p', null, words.harmFirst(harm)),
    list(verdict.reasons.map(sentence)),
    [...cautions].map((c) => el('p', { class: 'caution' }, `${words.caution}: ${c}`)));
}

function lineOf(line, act) {
  const doubtful = line.certainty !== 'certain';
  const doubt = doubtful && line.kind !== 'heading' && el('p', { class: 'small' }, el('span', { class: 'tag' }, `? ${line.certainty === 'likely' ? words.likely : words.unclear}`), line.because && ` ${line.because}`);
  if (line.kind !== 'ingredient') return el('div', { class: doubtful ? 'doubtful' : '' }, el('p', { class: 'step what' }, line.written), line.reads && el('p', { class: 'small soft' }, line.reads), doubt);
  const role = line.role === 'part' ? '' : `, ${line.role}`;
  return el('div', { class: doubtful ? 'doubtful' : '' },
    el('p', { class: 'goes' }, el('span', { class: 'amount' }, line.amount ?? (line.role === 'garnish' ? '' : words.noAmount)), el('span', { class: 'what' }, (line.name ?? `${line.itemWritten ?? ''} (${words.noItem})`) + role)),
    doubt,
    line.choices?.length > 0 && el('div', { class: 'choices', role: 'group', 'aria-label': `${words.meant} ${line.itemWritten ?? ''}` }, el('span', { class: 'small' }, words.meant),
      line.choices.map((c) => button(c.name, () => act.choose(line, c.item), { 'data-key': `choose-${line.line}-${c.item}` }))));
}

function findingOf(finding, act, stopped) {
  const key = finding.fingerprint;
  return el('div', { class: `finding is-${finding.level}` },
    el('p', null, el('span', { class: `tag ${finding.level}` }, `${words.sign[finding.level]} ${words.level[finding.level]}`), ' ', finding.of && `${words.of(finding.of)}: `, sentence(finding.message)),
    finding.advice && el('p', null, words.toPutRight, sentence(finding.advice)),
    finding.caution && (!finding.harm || !stopped) && el('p', { class: 'caution' }, `${words.caution}: ${finding.caution}`),
    finding.corrections.slice(0, 1).map((c) => el('div', null,
      el('p', null, words.grade[c.grade], sentence(c.description)),
      button(words.tryIt, () => act.tryCorrection(finding), { 'data-key': `try-${key}` }),
      el('div', { class: 'trial', data: { trial: key } }))),
    el('details', { data: { key: `where-${key}` } }, el('summary', { class: 'small' }, `${words.where} · ${words.rule(finding.rule)}`),
      finding.sources.length > 0 ? list(finding.sources) : null,
      el('p', { class: 'small soft' }, finding.name),
      button(words.rulePage(finding.rule), () => showRule(finding.rule), { 'data-key': `page-${key}` })),
    finding.follows && el('details', { data: { key: `follows-${key}` } }, el('summary', { class: 'small' }, words.follows(finding.follows.length)), list(finding.follows.map((f) => sentence(f.message)))));
}

/**
 * The numbers: verdict, glass, figures on their scales, what to measure, allergens. While somebody is `typing` a name that is not whole
 * yet, those from before that line stay, and say so.
 */
export function showNumbers(reading, us, typing) {
  const place = byId('numbers');
  const worked = (reading.figures ?? []).some((f) => f.fact === 'abv' && f.text !== undefined);
  if (typing && !worked && place.dataset.worked === 'yes' && reading.lines.some((l) => l.certainty === 'unclear')) {
    place.dataset.stale = 'yes';
    return;
  }
  place.dataset.worked = worked ? 'yes' : 'no';
  delete place.dataset.stale;
  const first = FIRST[reading.kind] ?? [];
  const figures = (reading.figures ?? []).filter((f) => f.text !== undefined);
  const open = (reading.figures ?? []).filter((f) => f.open !== undefined);
  const main = first.map((n) => figures.find((f) => f.fact === n)).filter(Boolean);
  const more = figures.filter((f) => !first.includes(f.fact));
  replace(place,
    el('h2', { id: 'numbers-head' }, words.numbers),
    el('p', { class: 'stale small' }, words.stale),
    reading.kind ? [
      keeping(reading),
      reading.glass && glassOf(reading.glass),
      el('p', { class: 'small soft' }, `${reading.basis}. ${words.range}`),
      el('dl', { class: 'figures' }, main.map((f) => figureOf(f, us))),
      reading.cost && costOf(reading.cost),
      more.length > 0 && el('details', { data: { key: 'more' } }, el('summary', null, words.moreFigures), el('dl', { class: 'figures' }, more.map((f) => figureOf(f, us)))),
      open.length > 0 && el('details', { data: { key: 'open' } }, el('summary', null, `${words.open} (${open.length})`), list(open.map((f) => [`${f.label}: `, sentence(f.open)]))),
      allergensOf(reading.allergens),
    ] : el('p', { class: 'soft' }, words.nothing));
}

function keeping(reading) {
  const { verdict } = reading;
  const asked = reading.findings.concat(reading.findingsBelow).filter((f) => f.answer === 'notShown');
  return [
    (verdict.keeping || verdict.answer !== 'ready') && el('h3', null, words.verdict),
    verdict.answer === 'no' && el('div', { class: 'stop' }, el('p', null, el('strong', null, verdict.headline))),
    verdict.answer === 'if' && [el('p', null, `${verdict.headline}:`), list(verdict.conditions.map(sentence))],
    verdict.keeping && el('p', null, verdict.keeping),
    el('details', { data: { key: 'measure' } }, el('summary', null, el('h3', null, `${words.measure} (${asked.length})`)),
      asked.length > 0 ? list(asked.map((f) => [sentence(f.message), ' ', sentence(f.advice)])) : el('p', { class: 'soft' }, words.measureNone)),
  ];
}

function glassOf(given) {
  return el('div', { class: 'vessel' }, glass(given), el('div', null,
    el('p', null, words.glassOf(given.name)),
    el('p', { class: 'small' }, words.holds + given.holds + '.'),
    el('p', { class: 'small' }, words.brim + given.brim.text, given.washText && `; ${words.wash}${given.washText}`, '.'),
    !given.house && el('p', { class: 'small soft' }, words.notHouse)));
}

function figureOf(figure, us) {
  return el('div', { class: 'figure' }, el('dt', null, figure.label), el('dd', null, figure.text),
    el('dd', { class: 'drawn' }, scale(figure, us),
      figure.usual && el('p', { class: 'small soft' }, words.usual(figure.usual.text, figure.usual.source)),
      figure.seen && !figure.usual && el('p', { class: 'small soft' }, words.seen(figure.seen.text, figure.seen.source)),
      figure.from && el('p', { class: 'small soft' }, figure.from)));
}

function costOf(cost) {
  return el('details', { data: { key: 'cost' } }, el('summary', null, words.costs(cost.per)),
    el('p', null, el('strong', null, cost.text), cost.open.length > 0 && ` ${words.without(cost.open.join('; '))}`),
    table([words.line, words.cost, words.how], cost.lines.map((l) => [l.name, l.text ?? words.costOpen, l.from])),
    el('p', { class: 'small soft' }, cost.leftOut));
}

function allergensOf({ contains, mayContain, notKnownOf }) {
  const none = contains.length + mayContain.length + notKnownOf.length === 0;
  return [el('h3', null, words.allergens),
    contains.length > 0 && el('p', null, words.contains, el('strong', null, contains.join(', ').toUpperCase()), '.'),
    mayContain.length > 0 && el('p', null, words.mayContain, el('strong', null, mayContain.join(', ').toUpperCase()), '.'),
    notKnownOf.length > 0 && el('p', null, el('strong', null, words.notKnownOf(notKnownOf.join(', ')))),
    none && el('p', null, words.noneKnown)];
}

/** A table of what differs between two readings; null where nothing does. */
export function differences(before, after) {
  const was = new Map((before.figures ?? []).map((f) => [f.fact, f]));
  const rows = (after.figures ?? []).map((f) => [f.label, was.get(f.fact)?.text ?? '', f.text ?? '']).filter(([, a, b]) => a !== b);
  const had = new Set(before.findings.map((f) => f.fingerprint));
  const has = new Set(after.findings.map((f) => f.fingerprint));
  const gone = before.findings.filter((f) => !has.has(f.fingerprint));
  const came = after.findings.filter((f) => !had.has(f.fingerprint));
  return [
    rows.length > 0 ? el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': words.compare }, table(['', words.before, words.after], rows)) : el('p', null, words.same),
    gone.map((f) => el('p', null, [`${words.gone}${words.level[f.level]}: `, sentence(f.message)])),
    came.map((f) => el('p', null, [`${words.came}${words.level[f.level]}: `, sentence(f.message)])),
  ];
}

export function table(heads, rows) {
  return el('table', null,
    el('thead', null, el('tr', null, heads.map((h) => h ? el('th', { scope: 'col' }, h) : el('td')))),
    el('tbody', null, rows.map((row) => el('tr', null, row.map((cell, i) => el(i === 0 ? 'th' : 'td', i === 0 ? { scope: 'row' } : null, cell))))));
}
