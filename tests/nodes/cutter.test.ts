import { expect, it } from 'vitest';
import cutter from '../../nodes/cutter.ts';
import { outputsOf } from '../support/run-node.ts';

// v_f = n z f_z and v_c = pi D n / 1000: Machinery's Handbook, Speeds and Feeds (formulas; figures by arithmetic).
it.each([
  { spindleSpeed: 18000, flutes: 1, chipLoad: 0.1, diameter: 6, feed: 1800, speed: 339.29 },
  { spindleSpeed: 16000, flutes: 1, chipLoad: 0.1, diameter: 4, feed: 1600, speed: 201.06 },
  { spindleSpeed: 18000, flutes: 2, chipLoad: 0.05, diameter: 3, feed: 1800, speed: 169.65 },
])('computes feed $feed mm/min from $spindleSpeed turns', ({ feed, speed, ...params }) => {
  const { quantities, cutter: made } = outputsOf(cutter, {}, params);
  expect(quantities.feedRate).toEqual({ value: feed, unit: 'mm/min' });
  expect(quantities.cuttingSpeed!.value).toBeCloseTo(speed, 1);
  expect(made.feedRate).toBe(feed);
});

it('plunges at its share of the feed', () => {
  expect(outputsOf(cutter, {}, { plungeShare: 0.25 }).cutter.plungeFeed).toBeCloseTo(450, 9);
});
