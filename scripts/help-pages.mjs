// The documents in docs/ as pages of the program: help/NAME.html, equations as MathML, with the page's own style and no
// script. A plugin for the builder: served while developing, emitted with the built page.
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Marked } from 'marked';
import temml from 'temml';
import { HELP_POLICY } from './policy.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const docs = join(root, 'docs');
const read = (...path) => readFileSync(join(root, ...path), 'utf8');

const NARROW = 36; // characters of an equation that a phone has room for; a longer one can be scrolled by the keyboard too

/** $$display$$ and $inline$ equations in TeX. */
const equations = [
  { level: 'block', start: '$$', pattern: /^\$\$([\s\S]+?)\$\$/, displayMode: true },
  { level: 'inline', start: '$', pattern: /^\$([^$\n]+?)\$/, displayMode: false },
].map(({ level, start, pattern, displayMode }) => ({
  name: `equation-${level}`,
  level,
  start: (text) => text.indexOf(start),
  tokenizer(text) {
    const match = pattern.exec(text);
    return match ? { type: `equation-${level}`, raw: match[0], tex: match[1].trim() } : undefined;
  },
  renderer: ({ tex }) => {
    const mathml = withoutStyles(temml.renderToString(tex, { displayMode, throwOnError: true }));
    return displayMode && tex.length > NARROW ? mathml.replace('<math ', '<math tabindex="0" ') : mathml;
  },
}));

/** The two styles that equations carry are in help.css: a style in an attribute would be refused. */
const withoutStyles = (mathml) =>
  mathml
    .replaceAll(' style="display:block math;"', '')
    .replaceAll(' style="math-depth:0;"', ' data-depth="0"');

const MANY = 6; // a table of more columns is set wider than the text

const slug = (text) =>
  text
    .toLowerCase()
    .replaceAll(/<[^>]+>|&[a-z]+;/g, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '');

const plain = (text) => text.replaceAll(/<[^>]+>|"/g, '');
let place = { heading: '', tables: 0 }; // where the page being written has come to: names its tables apart

const marked = new Marked({
  extensions: equations,
  renderer: {
    heading({ tokens, depth }) {
      const text = this.parser.parseInline(tokens);
      place.heading = plain(text);
      return `<h${depth} id="${slug(text)}">${text}</h${depth}>\n`;
    },
    table(token) {
      const cell = ({ tokens, align }, tag) =>
        `<${tag}${tag === 'th' ? ' scope="col"' : ''}${align ? ` class="${align}"` : ''}>${this.parser.parseInline(tokens)}</${tag}>`;
      const head = token.header.map((one) => cell(one, 'th')).join('');
      const body = token.rows
        .map((row) => `<tr>${row.map((one) => cell(one, 'td')).join('')}</tr>`)
        .join('\n');
      const size = token.header.length > MANY ? 'scroll wide' : 'scroll';
      return `<div class="${size}" tabindex="0" role="region" aria-label="table ${++place.tables}: ${place.heading}"><table><thead><tr>${head}</tr></thead><tbody>${body}</tbody></table></div>\n`;
    },
  },
});

/** Names of the pages, without ending. */
export const helpNames = () =>
  readdirSync(docs)
    .filter((file) => file.endsWith('.md'))
    .map((file) => basename(file, '.md'));

/** The whole page of one document. */
export function helpPage(name) {
  const text = read('docs', `${name}.md`).replaceAll(
    /\]\((?:\.\/)?([\w-]+)\.md(#[\w-]+)?\)/g,
    ']($1.html$2)',
  );
  const title = /^# (.+)$/m.exec(text)?.[1] ?? name;
  place = { heading: title, tables: 0 };
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${HELP_POLICY}">
<meta name="color-scheme" content="light dark">
<title>${title} - Downcurve</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="help.css">
</head>
<body>
<nav aria-label="Help"><a href="../">Downcurve</a> ${links(name)}</nav>
<main>
${marked.parse(text).replaceAll('<pre>', '<pre tabindex="0">')}
</main>
</body>
</html>
`;
}

/** The style sheet of the pages. */
export const helpStyle = () => `${read('web', 'tokens.css')}\n${read('web', 'help.css')}`;

function links(here) {
  return helpNames()
    .map((name) => {
      const title = /^# (.+)$/m.exec(read('docs', `${name}.md`))?.[1] ?? name;
      return name === here
        ? `<a href="${name}.html" aria-current="page">${title}</a>`
        : `<a href="${name}.html">${title}</a>`;
    })
    .join(' ');
}

export function helpPages() {
  return {
    name: 'help-pages',
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        if (request.url === '/help/help.css') {
          response.setHeader('Content-Type', 'text/css; charset=utf-8');
          return response.end(helpStyle());
        }
        const name = /^\/help\/([\w-]+)\.html(?:$|\?)/.exec(request.url ?? '')?.[1];
        if (!name || !helpNames().includes(name)) return next();
        response.setHeader('Content-Type', 'text/html; charset=utf-8');
        response.end(helpPage(name));
      });
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: 'help/help.css', source: helpStyle() });
      for (const name of helpNames())
        this.emitFile({ type: 'asset', fileName: `help/${name}.html`, source: helpPage(name) });
    },
  };
}
