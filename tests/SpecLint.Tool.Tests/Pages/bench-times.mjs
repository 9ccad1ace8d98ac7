// Prints what the bench costs: its compressed size, its start, and the time from a keystroke to its numbers. Not a test: the figures are
// of the machine that it runs on. node bench-times.mjs PAGE MODULES [CHROMIUM]: the published page, the folder where playwright-core is
// installed, the browser.
import { createRequire } from 'node:module';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { serve } from './serve.mjs';

const [page, modules, executablePath = '/usr/bin/chromium'] = process.argv.slice(2);
const { chromium } = createRequire(join(modules, 'package.json'))('playwright-core');
const ROUNDS = 9;
const STROKES = 60;
const TEXT = 'Ebb Tide\n50 ml gin\n25 ml lime juice\n20 ml simple syrup\n2 dashes orange bitters\nShake with cubed ice for 12 s, fine strain into a coupe\nstyle: shaken sour';

const files = (folder) => readdirSync(folder).flatMap((n) => (statSync(join(folder, n)).isDirectory() ? files(join(folder, n)) : [join(folder, n)]));
const all = files(page).map((f) => readFileSync(f));
const megabytes = (n) => `${(n / 1e6).toFixed(2)} MB`;
const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const p95 = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length * 0.95)];

console.log(`size: ${megabytes(all.reduce((n, b) => n + b.length, 0))}; brotli ${megabytes(all.reduce((n, b) => n + brotliCompressSync(b).length, 0))}; gzip ${megabytes(all.reduce((n, b) => n + gzipSync(b, { level: 9 }).length, 0))}`);

const server = await serve(page);
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
console.log(`browser: Chromium ${browser.version()}`);
const starts = [];
for (let i = 0; i < ROUNDS; i++) {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const tab = await context.newPage();
  await tab.goto(server.address);
  await tab.waitForFunction(() => document.documentElement.dataset.running, null, { timeout: 120_000 });
  starts.push(Number(await tab.evaluate(() => document.documentElement.dataset.running)));
  await context.close();
}
console.log(`start, from the request to a library that answers: median ${Math.round(median(starts))} ms, of ${starts.map(Math.round).join(', ')}`);

const tab = await browser.newPage();
await tab.goto(server.address);
await tab.waitForFunction(() => document.documentElement.dataset.ready, null, { timeout: 120_000 });
await tab.fill('#text', TEXT);
await tab.waitForTimeout(1500);
const strokes = [];
await tab.locator('#text').focus();
await tab.keyboard.press('Control+End');
for (let i = 0; i < STROKES; i++) {
  const before = await tab.evaluate(() => document.documentElement.dataset.read);
  await tab.keyboard.press(i % 2 ? 'Backspace' : 'x');
  await tab.waitForFunction((n) => document.documentElement.dataset.read !== n, before);
  strokes.push(Number(await tab.evaluate(() => document.documentElement.dataset.took)));
  await tab.waitForTimeout(500);
}
console.log(`keystroke to its numbers on the screen, a drink of five parts: median ${median(strokes)} ms, p95 ${p95(strokes)} ms, ${STROKES} keystrokes`);
await browser.close();
server.close();
