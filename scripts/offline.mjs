// A plugin for the builder: makes web/offline.ts the page's service worker, offline.js, and tells it every file of the
// built page with the fingerprint of them all.
import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';

const WORKER = 'offline.js';
const PLACE = 'self.__BUILT_FILES__';

export function offline() {
  return {
    name: 'offline',
    apply: 'build',
    enforce: 'post',
    buildStart() {
      const id = fileURLToPath(new URL('../web/offline.ts', import.meta.url));
      this.emitFile({ type: 'chunk', id, fileName: WORKER });
    },
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const worker = bundle[WORKER];
        if (worker.imports.length > 0 || !worker.code.includes(PLACE))
          this.error(`${WORKER}: a service worker has to be one file that asks for its list of files`);
        const files = Object.keys(bundle)
          .filter((name) => name !== WORKER && !name.endsWith('.map'))
          .sort();
        const sum = createHash('sha256');
        for (const name of files) sum.update(name).update(bundle[name].code ?? bundle[name].source);
        const built = { version: sum.digest('hex').slice(0, 16), files };
        worker.code = worker.code.replace(PLACE, JSON.stringify(built));
      },
    },
  };
}
