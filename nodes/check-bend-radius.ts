import '../src/values/types.ts';
import { leastRadius } from '../src/geometry/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { atLeast } from '../src/values/check.ts';

/** Straighter than a kilometre's radius counts as straight, so that the value stays a number. */
const STRAIGHT = 1e6;

export default defineNode({
  name: 'check-bend-radius',
  title: 'Check bend radius',
  doc: 'Finds the tightest bend of all centre lines and compares it with what the diffuser tube allows. A bend tighter than half the groove\'s width also makes the groove overlap itself.',
  inputs: { channel: { type: 'channel', doc: 'The groove.' } },
  outputs: { checks: { type: 'checks', doc: 'The tightest bend against the tube, and against the groove.' } },
  params: {
    leastBend: { kind: 'number', unit: 'mm', default: 15, min: 0, max: 1000, step: 1, label: 'Least bend radius', doc: 'Tightest bend the diffuser tube allows, measured at its centre.' },
  },
  examples: [{
    title: 'a quarter circle of 20 mm',
    inputs: {
      channel: {
        centreLines: [{ start: { x: 20, y: 0 }, segments: [{ kind: 'arc', end: { x: 0, y: 20 }, centre: { x: 0, y: 0 }, clockwise: false }], closed: false }],
        region: { loops: [] }, width: 10, depth: 6, tolerance: 0.01,
      },
    },
  }],
  compute({ channel }, { leastBend }) {
    const [tightest] = channel.centreLines.map(leastRadius).filter(({ radius }) => radius < STRAIGHT).sort((a, b) => a.radius - b.radius);
    const found = { value: tightest?.radius ?? STRAIGHT, unit: 'mm', ...(tightest && { at: tightest.at }) };
    const checks = [
      atLeast({ ...found, check: 'bend-radius-tube', subject: 'Tightest bend, for the tube', limit: leastBend, advice: 'Round this place, make the lettering wider, or cut the tube there.' }, 'caution'),
      atLeast({ ...found, check: 'bend-radius-groove', subject: 'Tightest bend, for the groove', limit: channel.width / 2, advice: 'The groove overlaps itself on the inside of this bend and is wider than the tube there.' }, 'caution'),
    ];
    return { ok: true, outputs: { checks: tightest ? checks : checks.map((check) => ({ ...check, says: 'Tightest bend: none, all centre lines are straight.' })) } };
  },
});
