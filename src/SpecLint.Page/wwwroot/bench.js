// The state of the bench, and the way from a keystroke to the numbers: what is typed goes to the library, the newest text wins.
import { call } from './library.js';
import { save } from './store.js';

/** What is stored: the text, the path where it is a file, which recipe of it, the kept version, units. */
export const state = { text: '', path: '', which: 0, kept: null, us: false };

/** The last reading, and the one of the kept version. */
export const shown = { reading: null, keptReading: null };

const LONGEST = 40_000;
const IDLE = 400;

let onReading = () => {};
let running = false;
let wanted = null;
let idle;

export function whenRead(handler) {
  onReading = handler;
}

export function remember() {
  save(state.text || state.kept || state.us ? state : null);
}

export const entry = () => [state.text, state.path, state.which];

/** Reads the text as it stands; `since` is when it was typed. */
export function read(since = performance.now(), quick = true) {
  remember();
  clearTimeout(idle);
  if (quick) idle = setTimeout(() => read(since, false), IDLE);
  wanted = { since, quick };
  if (!running) run();
}

async function run() {
  running = true;
  while (wanted) {
    const { since, quick } = wanted;
    wanted = null;
    if (state.text.length > LONGEST) {
      onReading(null, since, quick);
      continue;
    }
    try {
      const json = await call('Read', ...entry(), quick, state.us);
      if (wanted && quick) continue;
      shown.reading = JSON.parse(json);
      onReading(shown.reading, since, quick);
    } catch (e) {
      onReading({ failed: e.message }, since, quick);
    }
  }
  running = false;
}

/** Puts another text in the place of the one that is there. What stood there becomes the kept version where it is not empty. */
export function replaceText(text, path = '', keep = false) {
  if (keep && state.text.trim().length > 0 && state.text !== text) keepVersion();
  state.text = text;
  state.path = path;
  state.which = 0;
}

export function keepVersion() {
  state.kept = { text: state.text, path: state.path, which: state.which };
  shown.keptReading = null;
  remember();
}

/** The reading of the kept version; null where none is kept. */
export async function keptReading() {
  if (!state.kept) return null;
  shown.keptReading ??= JSON.parse(await call('Read', state.kept.text, state.kept.path, state.kept.which, true, state.us));
  return shown.keptReading;
}
