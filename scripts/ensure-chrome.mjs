// Finds a browser for the tests or fetches one: Debian's package as root, else the test driver's own.
import { spawnSync } from 'node:child_process';
import { findChrome } from './find-chrome.mjs';

const stop = (text) => {
  console.error(text);
  process.exit(1);
};
const run = (command, args) =>
  spawnSync(command, args, {
    stdio: ['ignore', 2, 2],
    timeout: 600_000,
    shell: process.platform === 'win32',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).status === 0;

let chrome = await findChrome().catch((error) => stop(error.message));
if (!chrome && process.getuid?.() === 0 && run('apt-get', ['update', '-qq'])) {
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium']);
  chrome = await findChrome();
}
if (!chrome) {
  run('npx', ['--no-install', 'playwright', 'install', 'chromium']);
  chrome = await findChrome();
}
if (!chrome)
  stop(
    'The browser tests need Chrome or Chromium and none was found or could be fetched.\n' +
      'Install one, or set CHROME_PATH to its program file. "npm run test:solver" needs no browser.',
  );
