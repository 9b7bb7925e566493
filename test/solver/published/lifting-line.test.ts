/** The published lifting lines against a series that shares nothing with the program. */
import { describe, it } from 'vitest';
import { glauertSeries } from '../../published/glauert-series.ts';
import { LIFTING_LINES } from '../../published/lifting-lines.ts';
import { expectClose } from '../../support/close.ts';

describe("published: Glauert's series, independent of the program", () => {
  for (const [aspectRatio, taper, slope, efficiency] of LIFTING_LINES)
    it(`gives the published lifting line of AR ${aspectRatio}, taper ${taper}`, () => {
      const series = glauertSeries(aspectRatio, taper);
      expectClose('lift slope', series.liftSlope, slope, { share: 0.001 });
      expectClose('span efficiency', series.spanEfficiency, efficiency, { within: 0.001 });
    });
});
