import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

export const CHROME_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

function candidates() {
  const { env, platform } = process;
  const list = ['/usr/bin/chromium'];
  const names = ['chromium', 'google-chrome', 'google-chrome-stable', 'chromium-browser', 'microsoft-edge'];
  for (const dir of (env.PATH ?? '').split(delimiter))
    for (const name of names) if (dir) list.push(join(dir, name));
  if (platform === 'darwin') {
    for (const base of ['/Applications', join(env.HOME ?? '', 'Applications')])
      for (const app of ['Google Chrome', 'Chromium', 'Microsoft Edge'])
        list.push(join(base, `${app}.app`, 'Contents', 'MacOS', app));
  }
  if (platform === 'win32') {
    for (const base of [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter(Boolean)) {
      list.push(join(base, 'Google', 'Chrome', 'Application', 'chrome.exe'));
      list.push(join(base, 'Microsoft', 'Edge', 'Application', 'msedge.exe'));
    }
  }
  return list;
}

/** Path of a Chrome or Chromium on this machine, or undefined. Throws when CHROME_PATH names no file. */
export async function findChrome() {
  const wanted = process.env.CHROME_PATH;
  if (wanted) {
    if (existsSync(wanted)) return wanted;
    throw new Error(`CHROME_PATH names "${wanted}", which does not exist.`);
  }
  const found = candidates().find((path) => existsSync(path));
  if (found) return found;
  const { chromium } = await import('playwright');
  const own = chromium.executablePath();
  return own && existsSync(own) ? own : undefined;
}
