// Opens pages in a headless Chromium and prints, as JSON, what is seen there. It judges nothing: the tests do.
// Usage: node look.mjs TASK.json, where the task is
//   { "chromium": path, "modules": folder of node_modules, "pictures": folder,
//     "pages": [ { "name": text, "file": path, "jumps": [ selector of links to follow, ... ] } ] }
import { createRequire } from 'node:module';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const task = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const require = createRequire(join(task.modules, 'here.js'));
const { chromium } = require('playwright-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const browser = await chromium.launch({ executablePath: task.chromium, args: ['--no-sandbox', '--disable-gpu', '--hide-scrollbars'] });
const seen = [];
try {
  for (const page of task.pages) {
    for (const scheme of ['light', 'dark']) {
      for (const width of [320, 375, 1280]) seen.push(await look(page, scheme, width));
    }
  }
} finally {
  await browser.close();
}

process.stdout.write(JSON.stringify(seen));

async function look(page, scheme, width) {
  const address = pathToFileURL(page.file).href;
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme: scheme });
  const tab = await context.newPage();
  const messages = [];
  const requests = [];
  tab.on('console', (m) => messages.push(`${m.type()}: ${m.text()}`));
  tab.on('pageerror', (e) => messages.push(`error: ${e.message}`));
  tab.on('dialog', (d) => { messages.push(`dialog: ${d.message()}`); d.dismiss(); });
  tab.on('request', (r) => { if (r.url() !== address) requests.push(r.url()); });
  await tab.goto(address, { waitUntil: 'load' });
  await tab.waitForTimeout(100);

  const view = await tab.evaluate(() => ({
    title: document.title,
    scrollWidth: document.documentElement.scrollWidth,
    cut: [...document.querySelectorAll('.stacks')].filter((t) => t.parentElement.scrollWidth > t.parentElement.clientWidth + 1).map((t) => t.caption.textContent),
    paper: getComputedStyle(document.body).backgroundColor,
    marks: Object.fromEntries([...document.querySelectorAll('svg')].map((s) => [s.getAttribute('aria-label').split(';')[0], s.querySelectorAll('g.mark').length])),
    outside: [...document.querySelectorAll('svg g.mark')].filter((g) => {
      const box = g.ownerSVGElement.viewBox.baseVal;
      const own = g.getBBox();
      return own.x < box.x - 1 || own.y < box.y - 1 || own.x + own.width > box.x + box.width + 1 || own.y + own.height > box.y + box.height + 1;
    }).map((g) => g.querySelector('title').textContent),
    tables: [...document.querySelectorAll('table')].map((t) => ({ caption: t.caption?.textContent ?? '', rows: t.tBodies[0].rows.length })),
    sections: [...document.querySelectorAll('main section')].map((s) => ({ height: s.scrollHeight, least: s.clientHeight })),
    deadLinks: [...document.querySelectorAll('a[href]')].map((a) => a.getAttribute('href')).filter((h) => !h.startsWith('#') || !document.getElementById(decodeURIComponent(h.slice(1)))),
  }));
  await tab.screenshot({ path: join(task.pictures, `${page.name}-${width}-${scheme}.png`), fullPage: true });
  if (scheme === 'light' && width === 1280) await tab.screenshot({ path: join(task.pictures, `${page.name}-top.png`), clip: { x: 0, y: 0, width: 1280, height: 860 } });

  const jumps = [];
  for (const selector of page.jumps ?? []) {
    await tab.evaluate(() => { location.hash = ''; scrollTo(0, 0); document.querySelectorAll('details').forEach((d) => { d.open = true; }); });
    const count = await tab.locator(selector).count();
    if (count === 0) { jumps.push({ selector, count }); continue; }
    await tab.locator(selector).last().click();
    await tab.waitForTimeout(50);
    jumps.push({
      selector,
      count,
      ...await tab.evaluate(() => {
        const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
        const top = target?.getBoundingClientRect().top ?? NaN;
        return { hash: location.hash, within: target?.closest('article')?.id ?? '', text: target?.textContent.slice(0, 400) ?? '', inView: top >= -1 && top < innerHeight };
      }),
    });
  }

  // Everything is opened, so that what is folded away is judged too. Requests from here on are the checker's own.
  const before = requests.length;
  await tab.evaluate(axe);
  const found = await tab.evaluate(async () => {
    document.querySelectorAll('details').forEach((d) => { d.open = true; });
    const result = await globalThis.axe.run(document, { preload: false, resultTypes: ['violations'] });
    return { checks: result.passes.length, violations: result.violations.map((v) => `${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.html.slice(0, 200)).join(' | ')}`) };
  });
  await context.close();
  return { page: page.name, scheme, width, messages, requests: requests.slice(0, before), ...view, jumps, ...found };
}
