// What a page starts with comes in few files, all named in its head: each file more costs a slow processor several
// milliseconds, and a file that is only found when another has come costs a way to the server and back.
import { fileURLToPath } from 'node:url';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const BEGIN = at('../web/main.ts'); // the entry of the workbench, which loads its two parts
const SESSION = at('../web/open-session.ts');
const SHELL = at('../src/components/app-shell.ts');
const CARDS = [at('../web/beach.ts'), at('../web/rider.ts')];

/** The module and everything that it cannot start without. */
function closureOf(start, context) {
  const found = new Set();
  const walk = (id) => {
    if (found.has(id)) return;
    found.add(id);
    for (const next of context.getModuleInfo(id)?.importedIds ?? []) walk(next);
  };
  walk(start);
  return found;
}

/**
 * Groups for the builder's code splitting, the first ones first. A group takes along what its modules cannot start without,
 * unless an earlier one has it.
 */
export function firstFiles() {
  let known = null;
  const look = (context) => {
    const [begin, session, shell, ...cards] = [BEGIN, SESSION, SHELL, ...CARDS].map((id) =>
      closureOf(id, context),
    );
    known = { begin, session, shell, cards };
    return known;
  };
  const fileOf = (id, context) => {
    const { begin, session, shell, cards } = known ?? look(context);
    if (id === BEGIN) return null; // the entry itself: others share its parts, and must not run it
    if (begin.has(id)) return 'begin';
    if (!session.has(id) && !shell.has(id)) return null;
    if (cards.some((card) => card.has(id))) return 'shared';
    return session.has(id) ? 'session' : 'shell';
  };
  const group = (name, k, { length }) => ({
    name: (id, context) => (fileOf(id, context) === name ? name : null),
    priority: length - k,
  });
  // Two parts of the page take different things from one large library: each gets what it uses.
  const library = { name: 'math', test: /node_modules[\\/]mathjs/, entriesAware: true, priority: 9 };
  return [library, ...['begin', 'shared', 'session', 'shell'].map(group)];
}

/** A plugin for the builder: names in the page's head what its entry is going to load at once. */
export function namedAhead() {
  return {
    name: 'named-ahead',
    transformIndexHtml: {
      order: 'post',
      handler(_html, { bundle, chunk }) {
        if (!bundle || chunk?.facadeModuleId === undefined || !chunk.moduleIds.includes(BEGIN)) return [];
        const named = new Set([chunk.fileName, ...chunk.imports]);
        const walk = (name) => {
          if (named.has(name)) return [];
          named.add(name);
          return [...bundle[name].imports.flatMap(walk), name];
        };
        return chunk.dynamicImports.flatMap(walk).map((name) => ({
          tag: 'link',
          attrs: { rel: 'modulepreload', crossorigin: true, href: `./${name}` },
          injectTo: 'head',
        }));
      },
    },
  };
}
