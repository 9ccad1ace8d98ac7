// Uses the bench in a headless Firefox (through WebDriver BiDi) as a person would, and writes what it saw as JSON: typing, solving a
// juice, reading a harm finding, a card, reload, use without the server, opening and saving a book, hostile text. The only argument is
// the task of bench.mjs.
import { createRequire } from 'node:module';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { serve } from './serve.mjs';

const task = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const require = createRequire(join(task.modules, 'package.json'));
const puppeteer = require('puppeteer-core');
const server = await serve(task.page);
const browser = await puppeteer.launch({ browser: 'firefox', executablePath: task.firefox, headless: true });
const seen = { version: await browser.version(), errors: [] };

async function open(address = server.address) {
  const context = await browser.createBrowserContext();
  const tab = await context.newPage();
  tab.on('pageerror', (e) => seen.errors.push(e.message));
  await tab.goto(address);
  await ready(tab);
  return { context, tab };
}

const ready = (tab) => tab.waitForFunction(() => document.documentElement.dataset.ready, { timeout: 180_000 });
const whole = (tab) => tab.waitForFunction(() => document.documentElement.dataset.whole !== undefined || document.querySelector('#state').textContent.includes('too long'), { timeout: 180_000 });
const texts = (tab, selector) => tab.$$eval(selector, (all) => all.map((n) => n.textContent));
const value = (tab) => tab.$eval('#text', (n) => n.value);

async function type(tab, text) {
  await tab.evaluate((typed) => {
    delete document.documentElement.dataset.whole;
    document.querySelector('#state').textContent = '';
    const field = document.querySelector('#text');
    field.value = typed;
    field.dispatchEvent(new InputEvent('input', { bubbles: true }));
  }, text);
  await whole(tab);
}

async function after(tab, action) {
  await tab.evaluate(() => { delete document.documentElement.dataset.whole; });
  await action();
  await whole(tab);
}

const openAll = (tab) => tab.evaluate(() => document.querySelectorAll('details').forEach((d) => { d.open = true; }));

const parts = {
  async published() {
    const { context, tab } = await open();
    const shown = [];
    for (const text of task.texts.published) {
      await type(tab, text);
      shown.push({ name: await tab.$eval('#card .name', (n) => n.textContent), doubtful: await texts(tab, '#card .doubtful .what'), figures: await texts(tab, '#numbers .figure dt') });
    }
    await context.close();
    return shown;
  },
  async keys() {
    const { context, tab } = await open();
    await tab.type('#text', '50 ml gin');
    await tab.waitForFunction(() => document.querySelector('#card .amount')?.textContent === '50 ml', { timeout: 60_000 });
    await context.close();
    return true;
  },
  async sour() {
    const { context, tab } = await open();
    await openAll(tab);
    await tab.$eval('#prepare-sour', (form) => form.requestSubmit());
    await tab.waitForFunction(() => document.querySelector('#text').value !== '', { timeout: 180_000 });
    const text = await value(tab);
    await context.close();
    return text;
  },
  async harm() {
    const { context, tab } = await open();
    await type(tab, task.texts.harm);
    const shown = { stop: await tab.$eval('#card .stop', (n) => n.textContent), cautions: await texts(tab, '#card .caution') };
    await context.close();
    return shown;
  },
  async card() {
    const { context, tab } = await open();
    await type(tab, task.texts.picture);
    await openAll(tab);
    await tab.$eval('#print-card', (n) => n.click());
    await tab.waitForFunction(() => !document.querySelector('#paper').hidden);
    const text = await tab.$eval('#paper', (n) => n.textContent);
    await context.close();
    return text;
  },
  async kept() {
    const own = await serve(task.page);
    const { context, tab } = await open(own.address);
    await type(tab, task.texts.picture);
    await tab.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await tab.waitForFunction(() => navigator.serviceWorker.controller !== null, { timeout: 60_000 });
    own.close();
    await tab.reload();
    await ready(tab);
    await whole(tab);
    const shown = { text: await value(tab), gone: await fetch(own.address).then(() => false, () => true), amounts: await texts(tab, '#card .goes .amount') };
    await context.close();
    return shown;
  },
  async book() {
    const { context, tab } = await open();
    await openAll(tab);
    const file = task.books[0].files.find((f) => f.path.endsWith('low-tide.drink.json'));
    const at = join(task.outputs, 'low-tide.drink.json');
    writeFileSync(at, Buffer.from(file.base64, 'base64'));
    const picker = await tab.$('#pick');
    await after(tab, () => picker.uploadFile(at));
    const opened = await value(tab);
    await tab.waitForSelector('#save-book');
    await tab.evaluate(() => {
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => { globalThis.saved = blob; return make.call(URL, blob); };
      document.querySelector('#save-book').click();
    });
    const zip = await tab.evaluate(() => globalThis.saved.text());
    await context.close();
    return { saved: zip.startsWith('PK') && zip.includes(Buffer.from(file.base64, 'base64').toString('utf8')), opened: opened === Buffer.from(file.base64, 'base64').toString('utf8') };
  },
  async hostile() {
    const { context, tab } = await open();
    const shown = [];
    tab.on('dialog', (d) => { shown.push({ dialog: d.message() }); d.dismiss(); });
    for (const text of task.texts.hostile) {
      await type(tab, text);
      shown.push(await tab.evaluate(() => ({ elements: document.querySelectorAll('#bench script, #bench img, #bench iframe, #bench a').length, pwned: 'pwned' in globalThis })));
    }
    await context.close();
    return shown;
  },
};

for (const [name, run] of Object.entries(parts)) {
  try {
    seen[name] = await run();
  } catch (e) {
    seen[name] = { failed: `${name}: ${e.stack}` };
  }
}

await browser.close();
server.close();
process.stdout.write(JSON.stringify(seen));
