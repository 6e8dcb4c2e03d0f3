import { describe, expect, it } from 'vitest';
import wiring from '../../nodes/wiring.ts';
import type { Path } from '../../src/geometry/index.ts';
import type { Lighting } from '../../src/lighting/index.ts';
import { EXAMPLE_STRIP } from '../../src/values/examples.ts';
import { layoutOf } from '../lighting/fixture.ts';
import { outputsOf } from '../support/run-node.ts';
import { seeded } from '../support/random.ts';
import { line, rectangle } from '../support/shapes.ts';

const lightingOf = (paths: readonly Path[], more: Parameters<typeof layoutOf>[1] = {}): Lighting => layoutOf(paths, more).lighting;
const wire = (lighting: Lighting, params: Parameters<typeof outputsOf<never, never, typeof wiring.params>>[2] = {}) => outputsOf(wiring, { lighting, board: undefined, holes: [] }, params);
const checksOf = ({ checks }: ReturnType<typeof wire>) => Object.fromEntries(checks.map((check) => [check.check, check]));

// By hand: five metres of 10 W/m at 24 V are 50 W and 2.0833 A. 80 % of the supply: 62.5 W, so one of 75. Fuse 1.25 x 2.0833 = 2.604: 3.15 A, so 0.75 mm2.
const long = lightingOf([line([0, 0], [5010, 0])], { leads: [{ x: 0, y: 0 }] });

describe('one run of five metres', () => {
  it('gets supply, fuse and wire by the rules', () => {
    const found = wire(long, { leadLength: 3000, spareWire: 0, copperRise: 0 });
    expect(found.lighting.wiring).toMatchObject({
      supplies: [{ ratedWatts: 75, watts: 50, amps: expect.closeTo(2.0833, 4) as number, fuse: 3.15, runs: [0] }],
      wires: [{ kind: 'feed', length: 3000, size: { name: '0.75 mm²' }, drop: expect.closeTo(0.325, 3) as number }],
    });
    // 0.32500 V in the wire and 0.26042 V in the strip, of 0.72 V: 3 % of 24 V (IEC 60364-5-52, annex G, as guidance).
    expect(found.lighting.wiring!.drops[0]).toBeCloseTo(0.325 + 0.26042, 4);
    expect(checksOf(found)['voltage-drop']).toMatchObject({ status: 'pass', limit: expect.closeTo(0.72, 9) as number });
    expect(found.lighting.runs[0]!.feeds).toHaveLength(1);
  });

  it('is fed at both ends where one is not enough', () => {
    const found = wire(long, { leadLength: 1000, copperRise: 0, greatestDrop: 0.01 });
    expect(found.lighting.runs[0]!.feeds.map(({ joint, at }) => [joint, Math.round(at.x)])).toEqual([[0, 0], [1, 5010]]);
    expect(found.lighting.wiring!.drops[0]).toBeLessThanOrEqual(0.24);
    expect(found.lighting.wiring!.wires.reduce((sum, { amps }) => sum + amps, 0)).toBeCloseTo(50 / 24, 9);
  });

  it('says so where no wire keeps to the drop', () => {
    expect(checksOf(wire(long, { leadLength: 60000 }))['voltage-drop']).toMatchObject({ status: 'caution', limit: expect.closeTo(0.72, 9) as number });
  });

  it('counts American gauges as well', () => {
    const found = wire(long, { wires: 'AWG', leadLength: 1000 });
    expect(found.lighting.wiring!.wires[0]!.size.name).toBe('AWG 20');
    expect(Object.keys(found.quantities)).toEqual(['supplies', 'supplyPower', 'wirePairAWG20']);
  });
});

it('feeds a run of several pieces in its middle rather than with two feeds', () => {
  const rows = lightingOf([line([0, 0], [3010, 0]), line([0, 30], [3010, 30])], { leads: [{ x: 0, y: 15 }], stripDrop: 0.2, strip: { ...EXAMPLE_STRIP, greatestCurrent: 9 } });
  expect(rows.runs).toHaveLength(1);
  const found = wire(rows, { leadLength: 100, greatestDrop: 0.008 });
  expect(found.lighting.runs[0]!.feeds.map(({ joint }) => joint)).toEqual([1]);
  expect(found.lighting.wiring!.drops[0]).toBeLessThanOrEqual(0.008 * 24);
});

describe('limits', () => {
  const at = (volts: number, params = {}) => checksOf(wire({ ...long, strip: { ...EXAMPLE_STRIP, volts }, runs: long.runs.map((run) => ({ ...run, amps: run.watts / volts })) }, params));
  const limits = (found: ReturnType<typeof at>) => [found['extra-low-voltage']!.status, found['touch-voltage']!.status, found['class-2']!.status];
  it('of extra-low voltage, of touch and of Class 2 are cautions', () => {
    expect(limits(at(24))).toEqual(['pass', 'pass', 'pass']);
    expect(limits(at(48))).toEqual(['pass', 'pass', 'pass']);
    expect(at(48, { wet: true })['touch-voltage']!.status).toBe('caution');
    expect(limits(at(125))).toEqual(['caution', 'caution', 'caution']);
    // 12 V: 50 W need 62.5 VA, and Class 2 ends at 60.
    expect(at(12)['class-2']).toMatchObject({ status: 'caution', value: 75, limit: 60 });
  });
  it('of one supply', () => expect(checksOf(wire(long, { largestSupply: 60 }))['supply-size']).toMatchObject({ status: 'fail', value: 75, limit: 60 }));
});

it('keeps to every limit on lettering of any kind, or says which it does not', () => {
  const random = seeded(11);
  for (let round = 0; round < 8; round++) {
    const paths = Array.from({ length: 3 + Math.floor(9 * random()) }, (_, k) => line([2000 * random(), 100 * k], [2000 * random(), 100 * k + 40]));
    const lighting = lightingOf(paths, { strip: { ...EXAMPLE_STRIP, greatestCurrent: 0.5 + 2 * random() } });
    if (lighting.runs.length === 0) continue;
    const found = wire(lighting, { leadLength: 3000 * random() });
    const { supplies, wires } = found.lighting.wiring!;
    expect(supplies.flatMap(({ runs }) => runs).sort((a, b) => a - b)).toEqual(lighting.runs.map((_, k) => k));
    for (const { size, amps, run } of wires) {
      expect(amps).toBeLessThanOrEqual(size.ampacity);
      expect(size.ampacity).toBeGreaterThanOrEqual(supplies.find(({ runs }) => runs.includes(run))!.fuse);
    }
    for (const { watts, ratedWatts } of supplies) expect(watts).toBeLessThanOrEqual(0.8 * ratedWatts * (1 + 1e-9));
    for (const { check, status, value, limit } of found.checks) expect([check, status === 'pass']).toEqual([check, value <= limit]);
  }
});

it('draws what is behind the board, mirrored, and says so', () => {
  const lighting = lightingOf([line([0, 0], [0, 400]), line([300, 0], [300, 400])], { leads: [{ x: 40, y: 100 }] });
  const { files } = outputsOf(wiring, { lighting, board: rectangle(-50, -50, 500, 500), holes: [[{ centre: { x: 0, y: 0 }, diameter: 6, purpose: 'cable' }, { centre: { x: 9, y: 9 }, diameter: 6, purpose: 'mounting' }]] });
  const [file] = files as readonly [{ path: string; text: string }];
  expect(file.path).toBe('wiring.svg');
  for (const words of ['Seen from behind: left and right are exchanged.', 'licensed person', 'EN 50107-3:2018', 'Supply 1: 15 W, takes 7 W, fuse 0.5 A, runs 1.', '1.1 + -', '1.2 + -', 'feed 1', 'jumper 1.1']) expect(file.text).toContain(words);
  // The board reaches from -50 to 450 and 20 mm lie round it: x 0 is drawn at 470, from the right.
  expect(file.text).toMatch(/<circle cx="470" cy="[\d.]+" r="3"/);
  expect(file.text.match(/<circle [^>]* r="3"/g)).toHaveLength(1);
});
