import { expect, it } from 'vitest';
import lightLayout from '../../nodes/light-layout.ts';
import setWidth from '../../nodes/set-width.ts';
import { makeRegionIndex } from '../../src/geometry/index.ts';
import { EXAMPLE_STRIP as strip, EXAMPLE_TUBE as tube } from '../../src/values/examples.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { circle, line } from '../support/shapes.ts';

const grooveOf = (...paths: readonly ReturnType<typeof line>[]) => outputsOf(setWidth, { strokes: paths.map((path) => ({ path })) }, { width: 10 }).channel;
const channel = grooveOf(line([0, 0], [0, 400]), line([0, 200], [300, 200]), line([100, 40], [140, 40]));
const checksOf = (outputs: { checks: readonly { check: string; status: string }[] }) => Object.fromEntries(outputs.checks.map((check) => [check.check, check]));

// By hand: 400 mm hold seven modules of 50 mm; the arm of 300 starts 5 mm off, five modules; 600 of 740 mm are lit; 0.6 m of 10 W/m at 24 V.
it('states what is bought and what it comes to', () => {
  const { quantities, lighting } = outputsOf(lightLayout, { channel, strip, tube });
  expect(quantities).toMatchObject({
    lightRuns: { value: 1 }, stripPieces: { value: 2 }, stripModules: { value: 12 }, stripLength: { value: 600, unit: 'mm' }, litShare: { value: 600 / 740, unit: 'ratio' },
    lightPower: { value: 6, unit: 'W' }, lightCurrent: { value: 0.25, unit: 'A' }, lightOutput: { value: 480, unit: 'lm' },
  });
  expect(quantities.tubeLength!.value).toBeCloseTo(695, 1);
  expect(lighting.runs[0]).toMatchObject({ watts: 6, amps: 0.25 });
});

it('names strokes too short for a module, with their place', () => {
  expect(checksOf(outputsOf(lightLayout, { channel, strip, tube }))['strokes-too-short']).toMatchObject({
    status: 'caution', value: 1, at: [120, 40], says: 'Parts of strokes too short for one module: 1, at most 0. They stay dark: stroke 3 (40 mm). Lengthen them, join them to others, or take a strip of shorter modules.',
  });
});

it('puts cable holes inside the groove', () => {
  const groove = makeRegionIndex(channel.region);
  for (const holesClear of [false, true]) {
    const { holes } = outputsOf(lightLayout, { channel, strip, tube }, { holesClear, cableHoleDiameter: 6 });
    expect(holes.length).toBe(4);
    for (const { centre, diameter, purpose } of holes) {
      expect([groove.contains(centre), purpose]).toEqual([true, 'cable']);
      expect(groove.distanceToBoundary(centre)).toBeGreaterThanOrEqual(diameter / 2);
    }
  }
});

it('compares bends with what strip and tube allow, where they lie', () => {
  const ring = grooveOf(circle(0, 0, 20));
  const found = checksOf(outputsOf(lightLayout, { channel: ring, strip: { ...strip, leastBend: 25 }, tube }));
  expect(found['bend-radius-strip']).toMatchObject({ status: 'caution', limit: 25 });
  expect((found['bend-radius-strip'] as unknown as { value: number }).value).toBeCloseTo(20, 6);
  expect(found['bend-radius-tube']).toMatchObject({ status: 'pass', limit: 15 });
});

it('wants room for the tube in the groove and for the strip in the tube', () => {
  const found = checksOf(outputsOf(lightLayout, { channel, strip: { ...strip, width: 9 }, tube: { ...tube, width: 11 } }));
  expect(found['tube-in-groove']).toMatchObject({ status: 'fail', value: 11, limit: 10 });
  expect(found['strip-in-tube']).toMatchObject({ status: 'fail', value: 9, limit: 8 });
});

it('parts runs so that one feed can serve each, and says where a stroke alone is too much', () => {
  // 2.4 m of 10 W/m at 24 V are 1 A; strip of one ampere allows two of these strokes in a run, not three.
  const rows = grooveOf(...[0, 50, 100, 150].map((y) => line([0, y], [1210, y])));
  const { lighting, checks } = outputsOf(lightLayout, { channel: rows, strip: { ...strip, greatestCurrent: 1 }, tube });
  expect(lighting.runs.map(({ pieces, amps }) => [pieces.length, amps])).toEqual([[2, 1], [2, 1]]);
  expect(checksOf({ checks })['run-current']).toMatchObject({ status: 'pass' });
  const weak = outputsOf(lightLayout, { channel: rows, strip: { ...strip, greatestCurrent: 0.4 }, tube });
  expect(checksOf(weak)['run-current']).toMatchObject({ status: 'caution', value: 0.5 });
});

it('says so when nothing is long enough for a module', () => {
  expect(problemsOf(lightLayout, { channel: grooveOf(line([0, 0], [40, 0])), strip, tube })).toEqual([
    { place: 'channel', expected: 'a stroke long enough for one module of 50 mm and its ends', found: 'none', advice: 'Make the lettering larger, or take a strip of shorter modules.' },
  ]);
  expect(problemsOf(lightLayout, { channel: { ...channel, centreLines: [] }, strip, tube })).toHaveLength(1);
});
