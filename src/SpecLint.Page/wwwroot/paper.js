// Paper: the card and the label as the tool writes them, in the place of the page while they are looked at and printed.
import { button, byId, el } from './dom.js';
import { words } from './strings.js';

let sheet;

const STYLE = /<style>([^]*?)<\/style>/g;

/**
 * Shows a page that the library wrote. It holds no script; its style becomes a style sheet of this document while it is shown. In what
 * the library writes a quotation mark is part of a tag and never of a text, so that attributes can be told by their text.
 * A picture takes the first place that the page leaves for one.
 */
export function show(html, picture) {
  sheet = new CSSStyleSheet();
  sheet.replaceSync([...html.matchAll(STYLE)].map((m) => m[1]).join('\n'));

  // The policy of this page takes no style from markup; the same set by the script is allowed.
  const markup = html.replace(STYLE, '').replaceAll(' style="', ' data-style="');
  const page = new DOMParser().parseFromString(markup, 'text/html');
  page.querySelectorAll('script,style,link,meta,img,iframe,object,form').forEach((n) => n.remove());
  const close = button(words.closePaper, hide);
  const bar = el('div', { class: 'papers' }, button(words.print, () => print()), close);
  byId('paper').replaceChildren(bar, ...[...page.body.childNodes].map((n) => document.importNode(n, true)));
  for (const placed of byId('paper').querySelectorAll('[data-style]')) placed.style.cssText = placed.dataset.style;
  if (picture) byId('paper').querySelector('.picture')?.replaceChildren(picture);
  byId('look').disabled = true;
  document.adoptedStyleSheets = [sheet, head()];
  byId('bench').hidden = true;
  byId('paper').hidden = false;
  scrollTo(0, 0);
  close.focus();
}

function head() {
  const own = new CSSStyleSheet();
  own.replaceSync('.papers{display:flex;gap:.5rem;padding:.5rem 0}.papers button{font:inherit;min-height:2.5rem;padding:.3rem .8rem}[hidden]{display:none!important}.code{display:block;width:100%;min-width:11rem;height:auto}.code .light{fill:#fff}.code .dark{fill:#000}@media print{.papers{display:none}}');
  return own;
}

export function hide() {
  document.adoptedStyleSheets = [];
  byId('look').disabled = false;
  byId('paper').hidden = true;
  byId('paper').replaceChildren();
  byId('bench').hidden = false;
  byId('card').querySelector('button, summary')?.focus();
}
