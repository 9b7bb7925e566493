import { describe, expect, it } from 'vitest';
import { fileNameOf, openDesignFile } from '../../src/session/files.ts';
import { demo, readTextLoosely } from './designs.ts';

describe('design files', () => {
  it('names the file after the design', () => {
    expect(fileNameOf('Harbour sprint 74, curved')).toBe('harbour-sprint-74-curved.json');
    expect(fileNameOf('Flügel Nr. 3')).toBe('flügel-nr-3.json');
    expect(fileNameOf('../ ?')).toBe('design.json');
  });

  it('opens a file, and refuses broken and huge ones by name', async () => {
    const good = await openDesignFile(new File([JSON.stringify(demo())], 'good.json'), readTextLoosely);
    expect(good.ok).toBe(true);
    const broken = await openDesignFile(new File(['{'], 'broken.json'), readTextLoosely);
    expect(broken).toEqual({ ok: false, message: 'broken.json: not JSON' });
    const huge = await openDesignFile(new File(['x'.repeat(2_100_000)], 'huge.json'), readTextLoosely);
    expect(huge.ok ? '' : huge.message).toContain('2.1 MB');
  });
});
