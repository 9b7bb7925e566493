import { fileURLToPath } from 'node:url';
import { playwright } from '@vitest/browser-playwright';
import { defineConfig } from 'vitest/config';
import { CHROME_FLAGS, findChrome } from './scripts/find-chrome.mjs';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const executablePath = await findChrome().catch(() => undefined); // the solver's tests need no browser

const PATIENCE = 60_000; // ms; a busy machine is no failure

export default defineConfig({
  test: {
    reporters: ['default', './scripts/closing-line.ts'],
    onConsoleLog: (log) => !log.includes('Lit is in dev mode'),
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'solver',
          environment: 'node',
          include: ['test/solver/**/*.test.ts'],
          testTimeout: PATIENCE,
        },
      },
      {
        test: {
          name: 'session',
          environment: 'node',
          include: ['test/{session,batch,workshop}/**/*.test.ts'],
          testTimeout: PATIENCE,
        },
      },
      {
        test: {
          name: 'e2e',
          environment: 'node',
          include: ['test/e2e/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          expect: { poll: { timeout: PATIENCE } },
          globalSetup: ['test/e2e/build-once.ts'],
          sequence: { groupOrder: 1 }, // after the others, which leave no processor free
        },
      },
      {
        resolve: { alias: { '@web/test-runner-commands': here('./test/support/wtr-commands.ts') } },
        optimizeDeps: {
          include: [
            '@open-wc/testing',
            'axe-core',
            'd3-contour',
            'fflate',
            'lit',
            'lit/decorators.js',
            'uplot',
            'mathjs',
            'mathjs/number',
            'quadprog',
            'three',
            'three/addons/utils/BufferGeometryUtils.js',
            'valibot',
            'idb',
          ],
        },
        test: {
          name: 'components',
          include: ['test/components/**/*.test.ts'],
          testTimeout: PATIENCE,
          setupFiles: ['test/support/setup-components.ts'],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            provider: playwright({
              launchOptions: { ...(executablePath && { executablePath }), args: CHROME_FLAGS },
            }),
            instances: [{ browser: 'chromium' }],
          },
        },
      },
    ],
  },
});
