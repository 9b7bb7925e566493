/** The help pages are made from docs/: every equation must be read, and nothing may be fetched from elsewhere. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { helpNames, helpPage, helpStyle } from '../../scripts/help-pages.mjs';

const foot = readFileSync(new URL('../../src/components/page-parts.ts', import.meta.url), 'utf8');

describe.each(helpNames())('the help page %s', (name) => {
  const page = helpPage(name); // throws at an equation that cannot be read

  it('has a title, and leads back to the program', () => {
    expect(page).toMatch(/<title>.+ - Downcurve<\/title>/);
    expect(page).toMatch(/<h1 id="[a-z-]+">/);
    expect(page).toContain('<a href="../">');
  });

  it('holds no script, no style of its own, and asks for nothing but its style sheet', () => {
    expect(page).not.toMatch(/<script|<style| style=|<link[^>]+href="(?!data:|help\.css")|<img/);
  });

  it('leaves no equation as it was typed', () => {
    expect(page.replaceAll(/<(pre|code)[^>]*>[\s\S]*?<\/\1>/g, '')).not.toMatch(/\$\S|\\frac/);
  });

  it('is linked from the page', () => {
    expect(foot).toContain(`help/${name}.html`);
  });
});

it('their style sheet asks for nothing from anywhere', () => {
  expect(helpStyle()).toContain('--paper');
  expect(helpStyle()).not.toMatch(/@import|url\(/);
});

it('equations become MathML', () => {
  expect(helpPage('theory')).toMatch(/<math[^>]*display="block"/);
});
