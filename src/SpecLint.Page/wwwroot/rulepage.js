// The page of a rule, from the pages that come with the bench: read from Markdown to elements, as text.
import { button, el } from './dom.js';
import { words } from './strings.js';

let pages;
let lexer;

/** Fetches the pages and what reads Markdown once they are first asked for. */
async function load() {
  pages ??= (async () => {
    const [text, markdown] = await Promise.all([fetch('rules.md').then((r) => { if (!r.ok) throw new Error(words.noRulePage); return r.text(); }), import('./vendor/marked.js')]);
    lexer = markdown.lexer;
    return new Map(text.split(/^(?=# [A-Z]{2}\d{4} )/m).map((page) => [page.slice(2, 8), page]));
  })();
  try {
    return await pages;
  } catch (e) {
    pages = undefined;
    throw e;
  }
}

/** Shows the page of a rule over the bench. Escape, or its button, closes it. */
export async function showRule(id) {
  const box = el('dialog', { class: 'rule', 'aria-labelledby': 'rule-head', on: { close: () => box.remove() } });
  const close = () => button(words.closeRule, () => box.close());
  let content;
  try {
    const page = (await load()).get(id);
    content = page ? lexer(page).map((t) => block(t)) : el('p', null, words.noRulePage);
  } catch {
    content = el('p', null, words.noRulePage);
  }
  box.append(el('div', { class: 'bar' }, close()), el('article', { tabindex: 0 }, content));
  box.querySelector('h2')?.setAttribute('id', 'rule-head');
  document.body.append(box);
  box.showModal();
}

/** Headings of a page stand one level lower here: the page has its own. */
function block(token) {
  switch (token.type) {
    case 'heading': return el(`h${Math.min(6, token.depth + 1)}`, null, inlines(token.tokens));
    case 'paragraph': return el('p', null, inlines(token.tokens));
    case 'code': return el('pre', null, el('code', null, token.text));
    case 'list': return el(token.ordered ? 'ol' : 'ul', null, token.items.map((i) => el('li', null, i.tokens.map((t) => t.tokens && t.type === 'text' ? inlines(t.tokens) : block(t)))));
    case 'blockquote': return el('blockquote', null, token.tokens.map((t) => block(t)));
    case 'table': return el('div', { class: 'wide' }, el('table', null,
      el('thead', null, el('tr', null, token.header.map((c) => el('th', { scope: 'col' }, inlines(c.tokens))))),
      el('tbody', null, token.rows.map((r) => el('tr', null, r.map((c) => el('td', null, inlines(c.tokens))))))));
    case 'space': case 'def': return null;
    default: return el('p', null, token.raw);
  }
}

function inlines(tokens) {
  return tokens.map((token) => {
    switch (token.type) {
      case 'strong': return el('strong', null, inlines(token.tokens));
      case 'em': return el('em', null, inlines(token.tokens));
      case 'codespan': return el('code', null, token.text);
      case 'br': return el('br');
      case 'link': return link(token);
      case 'text': case 'escape': return token.tokens ? inlines(token.tokens) : token.text;
      default: return token.raw;
    }
  });
}

/** A link to another rule opens its page; other links stand as their text, with the address beside it where it is one. */
function link(token) {
  const id = /^(SL\d{4})\.md$/.exec(token.href)?.[1];
  if (!id) return [inlines(token.tokens), /^https?:/.test(token.href) && token.text !== token.href ? ` (${token.href})` : null];
  return button(inlines(token.tokens), (e) => { e.target.closest('dialog').close(); showRule(id); }, { class: 'plain' });
}
