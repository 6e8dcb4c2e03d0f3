import { describe, expect, it } from 'vitest';
import { chipThinningFactor, cuttingSpeed, depthPasses, feedRate, helixDropPerTurn, lateralPasses, rampLength, removalRate } from '../../src/machining/job/feeds.ts';

/** Relative to the printed figure, which has five digits. */
const near = (found: number, printed: number) => expect(Math.abs(found / printed - 1)).toBeLessThan(1e-4);

describe("Machinery's Handbook, speeds and feeds, milling (formulas from memory, worked figures by arithmetic)", () => {
  it('feed is spindle speed times flutes times chip load', () => {
    near(feedRate(18000, 1, 0.1), 1800);
    near(feedRate(16000, 1, 0.1), 1600);
  });

  it('cutting speed is the speed of the edge', () => {
    near(cuttingSpeed(3, 18000), 169.65);
    near(cuttingSpeed(4, 18000), 226.19);
    near(cuttingSpeed(6, 18000), 339.29);
    near(cuttingSpeed(6, 13263), 250);
  });

  it('removal is depth times engagement times feed', () => near(removalRate(2.5, 6, 1800), 27));
});

describe('chip thinning (chord geometry)', () => {
  it('a narrow cut has a thinner chip', () => {
    near(chipThinningFactor(1, 6), 0.74536);
    near(0.1 / chipThinningFactor(1, 6), 0.13416);
    near(feedRate(18000, 1, 0.1 / chipThinningFactor(1, 6)), 2415);
  });

  it('from half the diameter on the chip is the chip load', () => {
    expect([3, 4, 6, 9].map((engagement) => chipThinningFactor(engagement, 6))).toEqual([1, 1, 1, 1]);
  });

  it('no engagement cuts no chip', () => expect(chipThinningFactor(0, 6)).toBe(0));
});

describe('passes and ramps (arithmetic, common practice)', () => {
  it('counts layers and passes side by side', () => {
    expect(lateralPasses(10, 6, 3)).toBe(3);
    expect(depthPasses(5, 2.5)).toBe(2);
    expect(depthPasses(5.001, 2.5)).toBe(3);
    expect(6000 * lateralPasses(10, 6, 3) * depthPasses(5, 2.5) / 1800).toBe(20);
  });

  it('is not fooled by the rounding of decimal fractions', () => expect(depthPasses(0.9, 0.3)).toBe(3));

  it('needs one pass where the cutter fills the groove', () => expect(lateralPasses(6, 6, 3)).toBe(1));

  it('a ramp of 3 degrees', () => {
    near(rampLength(2.5, 3), 47.703);
    near(helixDropPerTurn(2, 3), 0.65858);
    near(5 / helixDropPerTurn(2, 3), 7.5921);
  });

  it('a level ramp never arrives, and no depth needs no ramp', () => {
    expect(rampLength(1, 0)).toBe(Infinity);
    expect(rampLength(0, 0)).toBe(0);
  });
});
