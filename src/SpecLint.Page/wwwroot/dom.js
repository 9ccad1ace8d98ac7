// Makes elements. A text is only ever set as text: nothing here or elsewhere on the page reads it as markup.

const SVG = 'http://www.w3.org/2000/svg';

function fill(node, properties, children) {
  for (const [name, value] of Object.entries(properties ?? {})) {
    if (value === undefined || value === null || value === false) continue;
    if (name === 'on') for (const [event, handler] of Object.entries(value)) node.addEventListener(event, handler);
    else if (name === 'data') Object.assign(node.dataset, value);
    else if (name === 'text') node.textContent = clean(value);
    else if (name in node && typeof value !== 'string' && !(node instanceof SVGElement)) node[name] = value;
    else node.setAttribute(name, value === true ? '' : String(value));
  }
  for (const child of children.flat(Infinity)) {
    if (child === null || child === undefined || child === false || child === '') continue;
    node.append(child instanceof Node ? child : clean(String(child)));
  }
  return node;
}

export const el = (tag, properties, ...children) => fill(document.createElement(tag), properties, children);
export const svg = (tag, properties, ...children) => fill(document.createElementNS(SVG, tag), properties, children);
export const byId = (id) => document.getElementById(id);

/** A sentence of the library: what stands in backticks is shown as code. */
export const sentence = (text) => String(text ?? '').split('`').map((part, i, all) => i % 2 && i < all.length - 1 ? el('code', null, part) : i % 2 ? '`' + part : part);

/** What could turn the direction of writing or steer a terminal shows as a mark of its own. */
export const clean = (text) => text.replace(/[\u0000-\u0008\u000B-\u001F\u007F-\u009F\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF]/g, '\uFFFD');

/** Puts children in the place of those of a node; the focus stays on the element of the same key. */
export function replace(node, ...children) {
  const key = node.contains(document.activeElement) ? document.activeElement.dataset.key : undefined;
  const open = new Set([...node.querySelectorAll('details[open][data-key]')].map((d) => d.dataset.key));
  node.replaceChildren(...children.flat(Infinity).filter((c) => c));
  for (const details of node.querySelectorAll('details[data-key]')) if (open.has(details.dataset.key)) details.open = true;
  if (key) node.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus();
}

export const button = (text, handler, properties) => el('button', { type: 'button', on: { click: handler }, ...properties }, text);

/** A labelled field of a form. */
export function field(label, input) {
  return el('label', { class: 'field' }, el('span', null, label), input);
}
