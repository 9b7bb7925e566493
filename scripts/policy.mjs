// What the pages of the program may load and run, in one place: only their own files, no code out of text, no style out
// of attributes, nothing from anywhere else. A plugin for the builder puts it at the head of every page.
const PAGE = {
  'default-src': "'none'",
  'script-src': "'self'",
  'worker-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'connect-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
};
const HELP = {
  'default-src': "'none'",
  'style-src': "'self'",
  'img-src': 'data:',
  'base-uri': "'none'",
  'form-action': "'none'",
};

const written = (rules) =>
  Object.entries(rules)
    .map(([name, sources]) => `${name} ${sources}`)
    .join('; ');

/** For pages of text, which run nothing. */
export const HELP_POLICY = written(HELP);
export const PAGE_POLICY = written(PAGE);
/** The developing server shows errors in styles of its own. */
const DEVELOPING = written({ ...PAGE, 'style-src': "'self' 'unsafe-inline'" });

export function contentPolicy() {
  let policy = PAGE_POLICY;
  return {
    name: 'content-policy',
    configResolved({ command }) {
      if (command === 'serve') policy = DEVELOPING;
    },
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: policy },
        injectTo: 'head-prepend',
      },
    ],
  };
}
