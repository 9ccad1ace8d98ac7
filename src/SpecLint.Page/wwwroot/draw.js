// Drawings: a figure on its scale, and a glass filled to its level. What they show stands beside them as text.
import { svg } from './dom.js';
import { words } from './strings.js';

const LONGEST_CODE = 1200;
const WIDTH = 300;
const LEFT = 4;
const RIGHT = 296;
const number = (n) => String(Math.abs(n) >= 100 ? Math.round(n) : Number(n.toPrecision(3)));

/** A value as it is shown: the library gives mL and °C. */
function shown(value, unit, us) {
  if (!us) return value;
  return unit === 'mL' ? value / 29.5735295625 : unit === 'Cel' ? value * 1.8 + 32 : value;
}

/** The ends of the scale: all that is drawn on it fits, and nought is on it where it is near. */
function ends(figure) {
  const all = [figure.low, figure.high, figure.usual?.low, figure.usual?.high, figure.seen?.low, figure.seen?.high].filter(Number.isFinite);
  let low = Math.min(...all);
  let high = Math.max(...all);
  if (high === low) { low -= Math.abs(low) * 0.5; high += Math.abs(high) * 0.5 || 1; }
  const room = (high - low) * (figure.usual || figure.seen ? 0.1 : 0.6);
  if (low >= 0 && low - room < high * 0.35) low = 0; else low -= room;
  return [low, high + room];
}

/** A figure on its scale: the style's band as a box, the wider band as a bracket, the range as a bar, the value as a diamond. */
export function scale(figure, us) {
  const [low, high] = ends(figure);
  const x = (v) => LEFT + ((RIGHT - LEFT) * (v - low)) / (high - low);
  const unit = { mL: us ? 'oz' : 'mL', Cel: us ? '°F' : '°C' }[figure.unit] ?? '';
  const from = number(shown(low, figure.unit, us));
  const to = number(shown(high, figure.unit, us));
  const told = [figure.label, figure.text, figure.usual && words.usual(figure.usual.text, figure.usual.source), figure.seen && words.seen(figure.seen.text, figure.seen.source), words.axis(from, to, unit)];
  const at = x(figure.value);
  return svg('svg', { class: 'scale', viewBox: `0 0 ${WIDTH} 34`, role: 'img', 'aria-label': told.filter(Boolean).join('; ') },
    figure.usual && svg('rect', { class: 'usual', x: x(figure.usual.low), y: 4, width: x(figure.usual.high) - x(figure.usual.low), height: 14 }),
    svg('line', { class: 'axis', x1: LEFT, x2: RIGHT, y1: 11, y2: 11 }),
    figure.seen && svg('path', { class: 'seen', d: `M${x(figure.seen.low)} 2 v18 M${x(figure.seen.high)} 2 v18` }),
    svg('line', { class: 'spread', x1: x(figure.low), x2: x(figure.high), y1: 11, y2: 11 }),
    svg('path', { class: 'value', d: `M${at} 4 l5 7 l-5 7 l-5 -7 z` }),
    svg('text', { class: 'end', x: LEFT, y: 32 }, from),
    svg('text', { class: 'end', x: RIGHT, y: 32, 'text-anchor': 'end' }, to));
}

/** A glass seen from the side, filled to its level; the hatched part is the range. */
export function glass(given) {
  const height = 120;
  const top = 8;
  const brim = given.brim.value;
  const y = (v) => top + height - Math.min(1.08, Math.max(0, v / brim)) * height;
  const level = y(given.fill.value);
  const upper = y(given.fill.high);
  const lower = y(given.fill.low);
  const wall = (at) => 10 * (1 - (top + height - at) / height);
  const side = (at) => [12 + wall(at), 88 - wall(at)];
  const [l, r] = side(level);
  const [bl, br] = side(top + height);
  const part = (from, to, css) => { const [a, b] = side(from); const [c, d] = side(to); return svg('path', { class: css, d: `M${a} ${from} L${b} ${from} L${d} ${to} L${c} ${to} Z` }); };
  return svg('svg', { class: 'glass', viewBox: '0 0 100 140', role: 'img', 'aria-label': `${words.glassOf(given.name)}; ${words.holds}${given.holds}; ${words.brim}${given.brim.text}` },
    svg('defs', null, svg('pattern', { id: 'hatch', width: 5, height: 5, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' }, svg('line', { class: 'hatch', x1: 0, x2: 0, y1: 0, y2: 5 }))),
    svg('path', { class: 'liquid', d: `M${l} ${level} L${r} ${level} L${br} ${top + height} L${bl} ${top + height} Z` }),
    part(Math.max(2, upper), lower, 'doubt'),
    svg('path', { class: 'wall', d: `M12 ${top} L${bl} ${top + height} L${br} ${top + height} L88 ${top}` }),
    svg('line', { class: 'level', x1: l, x2: r, y1: level, y2: level }),
    Number.isFinite(given.washLine) && svg('line', { class: 'wash', x1: 6, x2: 94, y1: y(given.washLine), y2: y(given.washLine) }));
}

/** A QR code (ISO/IEC 18004) of an address, dark on white as readers expect; null where it would be too fine to be read from a screen. */
export async function code(address) {
  if (address.length > LONGEST_CODE) return null;
  const { encode } = await import('./vendor/uqr.js');
  const { size, data } = encode(address, { ecc: 'L', border: 4 });
  const path = data.flatMap((row, y) => row.map((dark, x) => dark ? `M${x} ${y}h1v1h-1z` : '')).join('');
  return svg('svg', { class: 'code', viewBox: `0 0 ${size} ${size}`, role: 'img', 'aria-label': words.code, 'shape-rendering': 'crispEdges' },
    svg('rect', { class: 'light', width: size, height: size }), svg('path', { class: 'dark', d: path }));
}
