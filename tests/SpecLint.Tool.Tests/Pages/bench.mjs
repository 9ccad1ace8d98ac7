// Uses the bench in a headless browser as a person would, and writes what it saw as JSON. The first argument is the task: where the
// browser, the modules, the published page, the pictures and the books are; the second names the parts to run, all where it is missing.
import { createRequire } from 'node:module';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { serve } from './serve.mjs';

const task = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const require = createRequire(join(task.modules, 'package.json'));
const { chromium } = require('playwright-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const server = await serve(task.page);
const browser = await chromium.launch({ executablePath: task.chromium, args: ['--no-sandbox'] });
const seen = { version: browser.version(), messages: [], outside: [] };

/** A page that is ready; its messages and requests to elsewhere are noted. */
async function open(options = {}, hash = '', address = server.address) {
  const context = options.context ?? await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const tab = await context.newPage();
  tab.setDefaultTimeout(120_000);
  tab.on('console', (m) => { if (m.type() !== 'log' && m.type() !== 'info') seen.messages.push(`${m.type()}: ${m.text()}`); });
  tab.on('pageerror', (e) => seen.messages.push(`error: ${e.message}`));
  tab.on('request', (r) => { if (!r.url().startsWith(address) && !r.url().startsWith('blob:') && !r.url().startsWith('data:')) seen.outside.push(r.url()); });
  await tab.goto(address + hash);
  await ready(tab);
  return { context, tab };
}

const ready = (tab) => tab.waitForFunction(() => document.documentElement.dataset.ready, null, { timeout: 120_000 });

/** Sets the text and waits until the whole book has been checked with it. */
async function type(tab, text) {
  await tab.evaluate(() => { delete document.documentElement.dataset.whole; });
  await tab.fill('#text', text);

  // The check of what stood there before may still end: the text is told by its length.
  await tab.waitForFunction((length) => document.documentElement.dataset.whole === String(length), text.length, { timeout: 120_000 });
}

const whole = (tab) => tab.waitForFunction(() => document.documentElement.dataset.whole !== undefined, null, { timeout: 120_000 });
const openAll = (tab) => tab.evaluate(() => document.querySelectorAll('details').forEach((d) => { d.open = true; }));
const texts = (tab, selector) => tab.locator(selector).allTextContents();

/** Waits until an action has made the page read again. */
async function after(tab, action) {
  await tab.evaluate(() => { delete document.documentElement.dataset.whole; });
  await action();
  await whole(tab);
}

async function looks() {
  const shown = [];
  for (const scheme of ['light', 'dark']) {
    for (const width of [320, 768, 1280]) {
      const { context, tab } = await open({ viewport: { width, height: 900 }, colorScheme: scheme });
      await type(tab, task.texts.picture);
      await tab.screenshot({ path: join(task.pictures, `bench-${width}-${scheme}.png`), fullPage: true });
      if (scheme === 'light' && width === 1280) await tab.screenshot({ path: join(task.pictures, 'bench-top.png'), fullPage: true, clip: { x: 0, y: 0, width: 1280, height: 1100 } });
      await openAll(tab);
      await tab.waitForTimeout(200);
      await tab.evaluate(axe);
      const found = await tab.evaluate(async () => {
        const result = await globalThis.axe.run(document, { preload: false });
        return { checks: result.passes.length, violations: result.violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 200)).join(' | ')}`) };
      });
      const view = await tab.evaluate(() => ({ scrollWidth: document.documentElement.scrollWidth, paper: getComputedStyle(document.body).backgroundColor }));
      shown.push({ width, scheme, ...view, ...found });
      await context.close();
    }
  }
  return shown;
}

async function published() {
  const { context, tab } = await open();
  const shown = [];
  for (const text of task.texts.published) {
    await type(tab, text);
    const doubtful = await texts(tab, '#card .doubtful .what');

    // What is open is decided by its first choice.
    for (let i = 0; i < 3 && await tab.locator('#card .choices button').count() > 0; i++) await after(tab, () => tab.locator('#card .choices button').first().click());
    shown.push({
      doubtful,
      left: await texts(tab, '#card .doubtful .what'),
      name: await tab.locator('#card .name').textContent(),
      amounts: await texts(tab, '#card .goes .amount'),
      items: await texts(tab, '#card .goes .what'),
      errors: await texts(tab, '#card .finding.is-error'),
      figures: Object.fromEntries(await tab.locator('#numbers .figure').evaluateAll((rows) => rows.map((r) => [r.querySelector('dt').textContent, r.querySelector('dd').textContent]))),
      drawn: await tab.locator('#numbers svg.scale').count(),
    });
  }
  await context.close();
  return shown;
}

async function solved() {
  const { context, tab } = await open();
  await openAll(tab);
  await tab.locator('#prepare-sour input[name=item]').fill('orange juice');
  await tab.locator('#prepare-sour input[name=grams]').fill('1000');
  await tab.locator('#prepare-sour input[name=like]').fill('lime juice');
  await after(tab, () => tab.locator('#prepare-sour button').click());
  const sour = await tab.inputValue('#text');
  await type(tab, task.texts.picture);
  await tab.fill('#target-abv', '15');
  await tab.locator('#holds input').nth(1).check();
  await tab.locator('#solve').click();
  await tab.locator('#solved table').first().waitFor();
  const answer = await tab.locator('#solved').textContent();
  await after(tab, () => tab.locator('#solved button').first().click());
  const strength = await tab.locator('#numbers .figure', { hasText: 'strength' }).first().locator('dd').first().textContent();
  const text = await tab.inputValue('#text');
  await context.close();
  return { sour, answer, strength, text };
}

async function harm() {
  const { context, tab } = await open();
  await type(tab, task.texts.harm);
  const shown = {
    stop: await tab.locator('#card .stop').textContent(),
    first: await tab.locator('#card > *').evaluateAll((all) => all.findIndex((n) => n.classList.contains('stop'))),
    cautions: await texts(tab, '#card .caution'),
    whole: await tab.locator('body').textContent(),
  };
  await context.close();
  return shown;
}

async function corrected() {
  const { context, tab } = await open();
  await type(tab, task.texts.overflow);
  const before = await texts(tab, '#card .finding');
  await tab.getByRole('button', { name: 'Show what it changes' }).first().click();
  await tab.locator('.trial table').first().waitFor();
  const trial = await tab.locator('.trial').first().textContent();
  await after(tab, () => tab.getByRole('button', { name: 'Take it' }).first().click());
  const shown = { before, trial, text: await tab.inputValue('#text'), after: await texts(tab, '#card .finding') };
  await context.close();
  return shown;
}

async function kept() {
  const own = await serve(task.page);
  const { context, tab } = await open({}, '', own.address);
  await type(tab, task.texts.picture);
  await openAll(tab);
  await tab.locator('#keep').click();
  await type(tab, task.texts.picture.replace('50 ml', '60 ml'));
  await tab.locator('#compared table').waitFor();
  const compared = await tab.locator('#compared').textContent();
  await tab.reload();
  await ready(tab);
  await whole(tab);
  const text = await tab.inputValue('#text');

  // The service worker has the whole page: without a network it opens, and works.
  await tab.evaluate(() => navigator.serviceWorker.ready);
  await tab.waitForFunction(() => navigator.serviceWorker.controller !== null);
  own.close();
  await tab.reload();
  await ready(tab);
  await whole(tab);
  await type(tab, task.texts.picture.replace('50 ml', '55 ml'));
  const offline = { gone: await fetch(own.address).then(() => false, () => true), amounts: await texts(tab, '#card .goes .amount'), policy: await tab.evaluate(async () => (await fetch('worker.js')).headers.get('content-security-policy')) };

  // Cleared, nothing is left.
  tab.on('dialog', (d) => d.accept());
  await tab.getByRole('button', { name: 'Clear all that is stored here' }).click();
  await tab.waitForFunction(() => document.querySelector('#text')?.value === '' && document.documentElement.dataset.ready);
  const left = await tab.evaluate(async () => ({ local: localStorage.length, text: document.querySelector('#text').value }));
  await context.close();
  return { compared, text, offline, left };
}

const pagesOf = (pdf) => (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;

async function paper() {
  const { context, tab } = await open();
  await type(tab, task.texts.picture);
  await openAll(tab);
  await tab.locator('#print-card').click();
  await tab.locator('#paper:not([hidden])').waitFor();
  const card = await tab.locator('#paper').textContent();
  await tab.screenshot({ path: join(task.pictures, 'bench-card.png'), fullPage: true });
  const pages = pagesOf(await tab.pdf({ preferCSSPageSize: true }));
  await tab.getByRole('button', { name: 'Back to the bench' }).click();
  const back = await tab.locator('#text').isVisible();

  // With the code of the recipe in the place of its picture, still on one page.
  await tab.locator('#card-code').check();
  await tab.locator('#print-card').click();
  await tab.locator('#paper:not([hidden]) .picture svg').waitFor();
  const { data, width, height } = require('pngjs').PNG.sync.read(await tab.locator('#paper .picture svg').screenshot());
  const read = require('jsqr')(new Uint8ClampedArray(data), width, height)?.data ?? '';
  const coded = { text: read && await tab.evaluate(async (hash) => (await import('./link.js')).fromFragment(hash), new URL(read).hash), pages: pagesOf(await tab.pdf({ preferCSSPageSize: true })) };
  await tab.screenshot({ path: join(task.pictures, 'bench-card-code.png'), fullPage: true });
  await tab.getByRole('button', { name: 'Back to the bench' }).click();
  await type(tab, task.texts.label);
  await tab.locator('#print-label').click();
  await tab.locator('#paper:not([hidden])').waitFor();
  const label = await tab.locator('#paper').textContent();
  const placed = await tab.locator('#paper section').first().evaluate((n) => n.style.cssText);
  await context.close();
  return { card, pages, back, coded, label, placed };
}

async function book() {
  const { context, tab } = await open({ acceptDownloads: true });
  await openAll(tab);
  const files = task.books[0].files.map((f) => ({ name: f.path.split('/').pop(), mimeType: 'application/json', buffer: Buffer.from(f.base64, 'base64') }));
  await after(tab, () => tab.setInputFiles('#pick', files));
  await tab.locator('#save-book').waitFor();
  const [download] = await Promise.all([tab.waitForEvent('download'), tab.locator('#save-book').click()]);
  const zip = join(task.pictures, '..', 'bench-book.zip');
  await download.saveAs(zip);
  await tab.locator('#check-book').click();
  await tab.locator('#book-found p').first().waitFor();
  const found = await tab.locator('#book-found p').first().textContent();

  // The zip that it wrote is read again by a page that has nothing yet; what it holds is on this device after a reload.
  const other = await open();
  await openAll(other.tab);
  await after(other.tab, () => other.tab.setInputFiles('#pick', zip));
  await other.tab.reload();
  await ready(other.tab);
  await openAll(other.tab);
  const listed = await texts(other.tab, '#shelf .files span');
  const drink = files.find((f) => f.name === 'low-tide.drink.json');
  await after(other.tab, () => other.tab.getByRole('button', { name: 'Open low-tide.drink.json' }).click());
  const opened = await other.tab.inputValue('#text');
  const [saved] = await Promise.all([other.tab.waitForEvent('download'), other.tab.locator('#save-file').click()]);
  const same = readFileSync(await saved.path()).equals(drink.buffer);
  await other.context.close();
  await context.close();
  return { zip, found, listed, opened: opened === drink.buffer.toString('utf8'), same, savedAs: saved.suggestedFilename() };
}

async function hostile() {
  const { context, tab } = await open();
  const shown = [];
  tab.on('dialog', (d) => { shown.push({ dialog: d.message() }); d.dismiss(); });
  for (const text of task.texts.hostile) {
    await tab.evaluate((pasted) => {
      delete document.documentElement.dataset.whole;
      document.querySelector('#state').textContent = '';
      const field = document.querySelector('#text');
      field.value = pasted;
      field.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }, text);
    await tab.waitForFunction(() => document.documentElement.dataset.whole !== undefined || document.querySelector('#state').textContent.includes('too long'), null, { timeout: 120_000 });
    await tab.waitForTimeout(100);
    shown.push(await tab.evaluate(() => ({
      elements: [...document.querySelectorAll('#bench script, #bench img, #bench iframe, #bench object, #bench a, #bench style')].length,
      handlers: [...document.querySelectorAll('#bench *')].filter((n) => [...n.attributes].some((a) => a.name.startsWith('on'))).length,
      controls: /[\u0000-\u0008\u000B-\u001F\u202E]/.test(document.querySelector('#card').textContent),
      state: document.querySelector('#state').textContent,
      url: location.href,
      pwned: 'pwned' in globalThis,
    })));
  }
  await type(tab, task.texts.picture);
  const alive = await texts(tab, '#card .goes .amount');
  await context.close();
  const link = await open({}, '#recipe=' + Buffer.from('<img src=x onerror=alert(1)>').toString('base64url'));
  const linked = await link.tab.inputValue('#text');
  await link.context.close();
  return { shown, alive, linked };
}

async function linked() {
  const { context, tab } = await open();
  await openAll(tab);
  await type(tab, task.texts.picture);
  await tab.locator('#link').click();
  await tab.locator('#linked input').waitFor();
  const address = await tab.locator('#linked input').inputValue();
  await context.close();
  server.asked.length = 0;
  const other = await open({}, new URL(address).hash);
  const text = await other.tab.inputValue('#text');
  await other.context.close();
  return { same: text === task.texts.picture, sent: server.asked.some((a) => a.includes('recipe')), length: address.length };
}

/** The outputs of the command for each book, from the library in the browser. */
async function outputs() {
  const { context, tab } = await open();
  for (const { name, on, files } of task.books) {
    const [check, profile] = await tab.evaluate(async ({ day, list }) => {
      const { call, putAll } = await import('./library.js');
      await call('Clear');
      await call('SetDay', day);
      await putAll(list.map(({ path, base64 }) => ({ path, bytes: Uint8Array.from(atob(base64), (c) => c.charCodeAt(0)) })));
      return [await call('Check'), await call('Profile')];
    }, { day: on, list: files });
    writeFileSync(join(task.outputs, `${name}.check.json`), check);
    writeFileSync(join(task.outputs, `${name}.profile.json`), profile);
  }
  await context.close();
  return task.books.length;
}

/** The same drink in US units: what is shown changes, what is typed does not. */
async function units() {
  const { context, tab } = await open();
  await type(tab, task.texts.picture);
  await after(tab, () => tab.getByLabel('US', { exact: true }).check());
  const shown = { amounts: await texts(tab, '#card .goes .amount'), figures: await texts(tab, '#numbers .figure dd'), text: await tab.inputValue('#text') };
  await context.close();
  return shown;
}

/** While a name is typed, the numbers from before the line stay and say so; once typing rests, what is not known is said. */
async function halfway() {
  const { context, tab } = await open();
  await type(tab, task.texts.picture);
  const count = await tab.locator('#numbers .figure').count();
  await tab.evaluate(() => {
    const field = document.querySelector('#text');
    const seen = new MutationObserver(() => { if (document.querySelector('#numbers').dataset.stale) globalThis.wasStale = true; });
    seen.observe(document.querySelector('#numbers'), { attributes: true });
    delete document.documentElement.dataset.whole;
    field.value += '\n10 ml marsh thing';
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
  });
  await whole(tab);
  const shown = { count, stale: await tab.evaluate(() => globalThis.wasStale === true), rested: await tab.evaluate(() => document.querySelector('#numbers').dataset.stale ?? ''), stop: await texts(tab, '#card .stop h3') };
  await context.close();
  return shown;
}

async function keyboard() {
  const { context, tab } = await open({ viewport: { width: 320, height: 640 } });
  await type(tab, task.texts.unclear);
  await tab.locator('#text').focus();
  const names = [];
  for (let i = 0; i < 14; i++) {
    await tab.keyboard.press('Tab');
    names.push(await tab.evaluate(() => `${document.activeElement.tagName.toLowerCase()} ${document.activeElement.textContent.trim().slice(0, 40)}`));
  }
  const at = names.findIndex((n) => n.startsWith('button Orange bitters'));
  await tab.getByRole('button', { name: 'Orange bitters' }).focus();
  await after(tab, () => tab.keyboard.press('Enter'));
  const text = await tab.inputValue('#text');
  const status = await tab.locator('[role=status]').count();
  await context.close();
  return { reached: at >= 0, text, status, names };
}

/** Prices typed at the bench, and what the drink then costs; what is not understood is said. */
async function costs() {
  const { context, tab } = await open();

  // Without its garnish, of which nobody says how much goes in: its cost would be open.
  await type(tab, task.texts.picture.replace(/\ngarnish.*/, ''));
  await openAll(tab);
  await tab.locator('#bar-form input[name=currency]').fill('eur');
  await after(tab, () => tab.locator('#bar-form button').click());
  await tab.locator('#price-form textarea').fill('gin; 24,50; 700 ml\nlime juice, 9.80, 1 l\nsimple syrup; 2; 1 l\norange bitters; 16; 200 ml\nno such thing; 3; 1 kg');
  await after(tab, () => tab.locator('#price-form button').click());
  await openAll(tab);
  await tab.locator('details[data-key=cost] table').waitFor();
  const shown = {
    said: await tab.locator('#prices-said').textContent(),
    cost: await tab.locator('#numbers .figure', { hasText: 'cost' }).first().locator('dd').first().textContent(),
    lines: await texts(tab, 'details[data-key=cost] tbody tr'),
    listed: await texts(tab, '#shelf .files span'),
    file: await tab.evaluate(async () => (await import('./book.js')).textOf('bench.prices.json')),
    bar: await tab.evaluate(async () => (await import('./book.js')).textOf('bar.json')),
    drink: await tab.evaluate(async () => (await import('./bench.js')).shown.reading.file),
  };
  await context.close();
  return shown;
}

/** The page of a rule, from a finding, and without a server. */
async function rule() {
  const own = await serve(task.page);
  const { context, tab } = await open({}, '', own.address);
  await type(tab, task.texts.overflow);
  await tab.evaluate(() => navigator.serviceWorker.ready);
  await tab.waitForFunction(() => navigator.serviceWorker.controller !== null);
  own.close();
  await openAll(tab);
  await tab.getByRole('button', { name: 'Read the page of SL8001' }).first().click();
  await tab.locator('dialog h2').waitFor();
  const shown = { head: await tab.locator('dialog h2').textContent(), heads: await texts(tab, 'dialog h3'), code: await tab.locator('dialog pre').count(), gone: await fetch(own.address).then(() => false, () => true) };
  await tab.screenshot({ path: join(task.pictures, 'bench-rule.png') });
  await tab.evaluate(axe);
  shown.violations = await tab.evaluate(async () => (await globalThis.axe.run(document, { preload: false })).violations.map((v) => v.id));
  await tab.keyboard.press('Escape');
  shown.closed = await tab.locator('dialog').count() === 0;

  // Each page that a finding can lead to is read without markup that nothing makes of it.
  shown.odd = await tab.evaluate(async () => {
    const { lexer } = await import('./vendor/marked.js');
    const known = new Set(['heading', 'paragraph', 'code', 'list', 'table', 'space', 'blockquote', 'text', 'strong', 'em', 'codespan', 'link', 'escape', 'br', 'list_item', 'def']);
    const odd = [];
    const walk = (tokens) => { for (const t of tokens ?? []) { if (!known.has(t.type)) odd.push(`${t.type}: ${t.raw.slice(0, 60)}`); walk(t.tokens); for (const i of t.items ?? []) walk(i.tokens); for (const c of [...(t.header ?? []), ...(t.rows ?? []).flat()]) walk(c.tokens); } };
    walk(lexer(await (await fetch('rules.md')).text()));
    return odd;
  });
  await context.close();
  return shown;
}

/** The QR code of a link, read from the picture of the page by a reader of its own. */
async function code() {
  const shown = [];
  for (const scheme of ['light', 'dark']) {
    const { context, tab } = await open({ colorScheme: scheme, viewport: { width: 320, height: 800 } });
    await type(tab, task.texts.picture);
    await openAll(tab);
    await tab.locator('#link').click();
    await tab.locator('#linked svg').waitFor();
    const { data, width, height } = require('pngjs').PNG.sync.read(await tab.locator('#linked svg').screenshot());
    const read = require('jsqr')(new Uint8ClampedArray(data), width, height);
    const other = await open({}, read ? new URL(read.data).hash : '');
    shown.push({ address: await tab.locator('#linked input').inputValue() === read?.data, text: await other.tab.inputValue('#text') });

    // The address of another recipe, pasted while the page is open, takes its place; the one before is kept.
    await other.tab.evaluate(async (text) => { const { toFragment } = await import('./link.js'); location.hash = await toFragment(text); }, task.texts.overflow);
    await other.tab.waitForFunction((text) => document.querySelector('#text').value === text, task.texts.overflow);
    await other.tab.waitForFunction(async () => (await import('./bench.js')).state.kept !== null);
    shown.at(-1).kept = await other.tab.evaluate(async () => (await import('./bench.js')).state.kept.text);
    await other.context.close();
    await context.close();
  }
  return shown;
}

/** A folder: dropped as from a file manager, chosen, and written back. */
async function folder() {
  const { context, tab } = await open();
  const session = await context.newCDPSession(tab);
  const data = { items: [], files: [task.folder], dragOperationsMask: 1 };
  await openAll(tab);
  for (const type of ['dragEnter', 'dragOver', 'drop']) await session.send('Input.dispatchDragEvent', { type, x: 400, y: 300, data });
  await tab.locator('#save-folder').waitFor();
  const dropped = await texts(tab, '#shelf .files span');

  // The folder that a person would choose is one of the page's own here: a headless browser has no dialog.
  await tab.evaluate(() => { globalThis.showDirectoryPicker = async () => (await navigator.storage.getDirectory()).getDirectoryHandle('chosen', { create: true }); });
  await tab.locator('#save-folder').click();
  await tab.waitForFunction(() => /written/.test(document.querySelector('#state').textContent));
  const saved = await tab.locator('#state').textContent();
  await tab.evaluate(() => { document.querySelector('#state').textContent = ''; });
  await tab.locator('#save-folder').click();
  await tab.waitForFunction(() => /written/.test(document.querySelector('#state').textContent));
  const again = await tab.locator('#state').textContent();
  const other = await context.newPage();
  await other.goto(server.address);
  await ready(other);
  await other.evaluate(async () => { await (await import('./store.js')).clearAll(); });
  await other.reload();
  await ready(other);
  await openAll(other);
  await other.evaluate(() => { globalThis.showDirectoryPicker = async () => (await navigator.storage.getDirectory()).getDirectoryHandle('chosen'); });
  await after(other, () => other.locator('#open-folder').click());
  await other.waitForFunction(() => document.querySelectorAll('#shelf .files li').length > 1);
  const chosen = await texts(other, '#shelf .files span');
  const same = await other.evaluate(async (list) => {
    const { files } = await import('./book.js');
    return list.every(({ path, base64 }) => { const bytes = files.get(path); return bytes && btoa(String.fromCharCode(...bytes)) === base64; });
  }, task.books[0].files);
  await context.close();
  return { dropped, chosen, saved, again, same };
}

/** Each preparation of the forms, and a reading written into one. */
async function preparations() {
  const { context, tab } = await open();
  await openAll(tab);
  const shown = {};
  const write = async (kind, fields = {}) => {
    for (const [name, value] of Object.entries(fields)) await tab.locator(`#prepare-${kind} input[name=${name}]`).fill(value);
    await after(tab, () => tab.locator(`#prepare-${kind} button`).click());
    shown[kind] = { text: await tab.inputValue('#text'), figures: Object.fromEntries(await tab.locator('#numbers .figure').evaluateAll((rows) => rows.map((r) => [r.querySelector('dt').textContent, r.querySelector('dd').textContent]))), numbers: await tab.locator('#numbers').textContent() };
  };
  await type(tab, 'Start\n50 ml gin');
  await write('sour', { item: 'orange juice', grams: '500', like: 'lemon juice' });
  await write('syrup', { item: 'white sugar', grams: '600', brix: '60' });
  shown.brix = shown.syrup;
  await write('syrup', { item: 'white sugar', grams: '600', ratio: '2:1', brix: '' });
  await write('saline', { grams: '200', percent: '10' });
  await write('dried', { item: 'strawberries', grams: '1000', percent: '10', at: '57' });
  await type(tab, task.texts.picture);
  await tab.locator('#prepare-batch input[name=poured]').check();
  await write('batch', { serves: '20' });
  await type(tab, task.texts.label);
  await tab.locator('#record input[name=ph]').fill('6,8');
  await tab.locator('#record input[name=brix]').fill('20.1');
  await after(tab, () => tab.locator('#record button').click());
  shown.recorded = await tab.inputValue('#text');
  await context.close();
  return shown;
}

/** The targets of solving, each with what must stay. */
async function targets() {
  const { context, tab } = await open();
  await openAll(tab);
  const shown = {};
  const solve = async (name, text, fill) => {
    await type(tab, text);
    await tab.evaluate(() => document.querySelectorAll('[id^=target-]').forEach((n) => { n.value = ''; }));
    await tab.evaluate(() => document.querySelectorAll('#holds input').forEach((n) => { n.checked = false; }));
    await fill();
    await tab.locator('#solve').click();
    await tab.locator('#solved table').first().waitFor();
    shown[name] = { answer: await tab.locator('#solved').textContent(), lines: await texts(tab, '#solved table:last-of-type tbody tr') };
    await tab.getByRole('button', { name: 'Leave it' }).first().click();
    shown[name].left = await tab.inputValue('#text') === text;
  };
  await solve('strength', task.texts.picture, async () => { await tab.fill('#target-abv', '16-17'); await tab.locator('#holds input').nth(1).check(); });
  await solve('ratio', task.texts.picture, () => tab.fill('#target-sugarAcidRatio', '9'));
  await solve('glass', task.texts.overflow, () => tab.selectOption('#target-glass', 'coupe'));
  await solve('like', 'Soured apple\n500 g apple juice\n15 g citric acid\n5 g malic acid\nStir until dissolved\nfamily: acid-adjusted juice', async () => { await tab.fill('#target-like', 'lime juice'); await tab.locator('#holds input').nth(0).check(); });
  await solve('bottle', 'Neap batch\n400 ml gin\n80 ml dry vermouth\n100 ml water\nStir\nfamily: batch\nmakes 580 ml\nkeep at -18 °C in a bottle for 30 d', () => tab.fill('#target-volume', '750'));
  shown.freezing = await texts(tab, '#numbers .figure dt');
  await context.close();
  return shown;
}

const only = process.argv[3]?.split(',');
for (const [name, run] of Object.entries({ looks, published, solved, targets, preparations, costs, rule, code, folder, harm, corrected, kept, paper, book, hostile, linked, units, halfway, keyboard, outputs })) {
  if (only && !only.includes(name)) continue;
  try {
    seen[name] = await run();
  } catch (e) {
    seen[name] = { failed: `${name}: ${e.stack}` };
  }
}

await browser.close();
server.close();
process.stdout.write(JSON.stringify(seen));
