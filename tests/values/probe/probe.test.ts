import { describe, expect, it } from 'vitest';
import { type Path, applyToPath, multiply, offsetPaths, rotation, scaling, translation, unionRegions } from '../../../src/geometry/index.ts';
import type { Channel, Hole, Pass, SetUp, Tab } from '../../../src/machining/index.ts';
import { type Carried, probeValues } from '../../../src/values/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK, rectangle } from '../../../src/values/examples.ts';
import { tilingAt } from '../../machining/set-ups-fixture.ts';
import { circle, line } from '../../support/shapes.ts';

const of = (type: Carried['type'], value: unknown, port: string = type): Carried => ({ port, type, value });
const read = (carried: Carried | readonly Carried[], at: readonly [number, number], within = 1) =>
  Object.fromEntries(probeValues('port' in carried ? [carried] : carried, at, within).map(({ says, value }) => [says, value]));

/** A half circle of radius 30 about the origin, then a straight of 40 down from its end: 94.25 + 40 mm. */
const hook: Path = {
  start: { x: 30, y: 0 }, closed: false,
  segments: [{ kind: 'arc', end: { x: -30, y: 0 }, centre: { x: 0, y: 0 }, clockwise: false }, { kind: 'line', end: { x: -30, y: -40 } }],
};
const halfTurn = Math.PI * 30;

describe('a stroke', () => {
  it('tells radius, way and length where it bends', () => {
    const found = read(of('strokes', [line([0, 500], [9, 500]), { path: hook }].map((one) => ('path' in one ? one : { path: one }))), [0, 30.5]);
    expect(found['radius here']).toBeCloseTo(30, 2);
    expect(found['along stroke 2']).toBeCloseTo(halfTurn / 2, 1);
    expect(found['length of stroke 2']).toBeCloseTo(halfTurn + 40, 6);
  });

  it('tells no radius where it is straight', () => {
    const found = read(of('strokes', [{ path: hook }]), [-30.5, -20]);
    expect(Object.keys(found)).toEqual(['along stroke 1', 'length of stroke 1']);
    expect(found['along stroke 1']).toBeCloseTo(halfTurn + 20, 2);
  });

  it('tells the width the lettering has there and how sure it is, where it was traced', () => {
    const straight = { path: line([0, 0], [100, 0]), confidence: 0.42, widths: [{ along: 10, width: 4 }, { along: 50, width: 8 }, { along: 90, width: 8 }] };
    const at = (x: number) => read(of('strokes', [straight]), [x, 0.5]);
    expect(at(30)['width of the lettering here']).toBeCloseTo(6, 2);
    expect(at(2)['width of the lettering here']).toBe(4);
    expect(at(97)['width of the lettering here']).toBe(8);
    expect(at(30)['confidence of stroke 1']).toBe(0.42);
    expect(read(of('strokes', [{ ...straight, widths: [] }]), [30, 0])).not.toHaveProperty('width of the lettering here');
  });

  it('tells nothing from farther off', () => expect(read(of('strokes', [{ path: hook }]), [0, 32], 1)).toEqual({}));

  it.each([[0, 1], [37, 1], [90, 25], [180, 0.1]])('tells the same turned by %s degrees and scaled by %s, but for size', (degrees, factor) => {
    const move = multiply(translation(500, -200), multiply(rotation(degrees), scaling(factor)));
    const [a, b, c, d, e, f] = move;
    const found = read(of('strokes', [{ path: applyToPath(move, hook) }]), [c * 30 + e, d * 30 + f]);
    void a; void b;
    expect(found['radius here']! / factor).toBeCloseTo(30, 1);
    expect(found['along stroke 1']! / factor).toBeCloseTo(halfTurn / 2, 0);
  });
});

describe('a groove', () => {
  it('tells the width between its walls, whatever width it claims', () => {
    const found = read(of('channel', { ...EXAMPLE_CHANNEL, width: 11 }), [150, 103]);
    expect(found['width here']).toBeCloseTo(10, 6);
    expect(found).toMatchObject({ 'depth of the groove': 6, 'along centre line 1': 50, 'length of centre line 1': 200 });
  });

  it('tells both sides even when the line is not in the middle', () => {
    const askew: Channel = { ...EXAMPLE_CHANNEL, region: rectangle(95, 93, 210, 11) };
    expect(read(of('channel', askew), [150, 100])['width here']).toBeCloseTo(11, 6);
  });

  it('tells the width of a bent groove', () => {
    const bent: Channel = { centreLines: [hook], region: offsetPaths([hook], 5, { join: 'round', cap: 'round', tolerance: 0.002 }), width: 10, depth: 6, tolerance: 0.002 };
    for (const at of [[0, 32], [21.2, 21.2], [-28, 8]] as const) {
      const found = read(of('channel', bent), at);
      expect(found['width here']).toBeCloseTo(10, 1);
      expect(found['radius here']).toBeCloseTo(30, 1);
    }
  });

  it('tells no width where grooves cross, for the walls there are those of both', () => {
    const crossing: Channel = {
      ...EXAMPLE_CHANNEL, centreLines: [...EXAMPLE_CHANNEL.centreLines, line([200, 50], [200, 150])],
      region: unionRegions([EXAMPLE_CHANNEL.region, rectangle(195, 45, 10, 110)]),
    };
    expect(read(of('channel', crossing), [200, 101])['width here']).toBeUndefined();
    expect(read(of('channel', crossing), [150, 101])['width here']).toBeCloseTo(10, 6);
  });

  it('tells nothing outside of it', () => expect(read(of('channel', EXAMPLE_CHANNEL), [150, 120])).toEqual({}));
});

describe('other values', () => {
  it('a region tells how far its edge is, from inside and close by, by the name it goes under', () => {
    expect(read(of('region', EXAMPLE_BOARD, 'board'), [60, 100])).toEqual({ 'to the edge of the board': 10 });
    expect(read(of('region', EXAMPLE_BOARD, 'board'), [49.5, 100])).toEqual({ 'to the edge of the board': 0.5 });
    expect(read(of('region', EXAMPLE_BOARD, 'board'), [40, 100])).toEqual({});
  });

  it('a hole tells its diameter, the nearest of several', () => {
    const holes: Hole[] = [{ centre: { x: 0, y: 0 }, diameter: 6, purpose: 'cable' }, { centre: { x: 5, y: 0 }, diameter: 8, purpose: 'mounting' }];
    expect(read(of('holes', holes), [2, 0])).toEqual({ 'diameter of cable hole 1': 6 });
    expect(read(of('holes', holes), [9.5, 0])).toEqual({ 'diameter of mounting hole 2': 8 });
    expect(read(of('holes', holes), [20, 0])).toEqual({});
  });

  it('the sheet tells how far its edge is', () => {
    expect(read(of('stock', EXAMPLE_STOCK), [390, 100])).toEqual({ 'to the edge of the sheet': 10 });
    expect(read(of('stock', EXAMPLE_STOCK), [200, 30])).toEqual({ 'to the edge of the sheet': 30 });
    expect(read(of('stock', EXAMPLE_STOCK), [403, 204], 5)).toEqual({ 'to the edge of the sheet': 5 });
    expect(read(of('stock', EXAMPLE_STOCK), [500, 100])).toEqual({});
    expect(read(of('machine', EXAMPLE_MACHINE), [100, 590])).toEqual({ 'to the end of the travel': 10 });
  });

  it('a tab tells its size', () => {
    const tabs: Tab[] = [{ centre: { x: 0, y: 0 }, width: 8, height: 2.5 }];
    expect(read(of('tabs', tabs), [4.5, 0])).toEqual({ 'width of tab 1': 8, 'height of tab 1': 2.5 });
  });

  const pass: Pass = {
    kind: 'groove', name: 'groove 1', cutter: EXAMPLE_CUTTER, start: { x: 0, y: 0, z: 2 },
    moves: [
      { kind: 'line', to: { x: 0, y: 0, z: -1 }, feed: 500 }, { kind: 'line', to: { x: 100, y: 0, z: -3 }, feed: 1800 },
      { kind: 'line', to: { x: 0, y: 0, z: -6 }, feed: 1700 },
    ],
  };

  it('passes tell the deepest cut at a place, its feed and its number', () => {
    const found = read(of('passes', [{ ...pass, start: { x: 0, y: 50, z: 2 }, moves: [] }, pass]), [50, 0.5]);
    expect(found).toEqual({ 'depth here': 4.5, 'feed here': 1700, 'number of the pass here': 2 });
  });

  it('set-ups tell it in sheet coordinates', () => {
    const setups = [{ name: 'Set-up 1', shift: [1000, 0], programs: [{ moves: pass.moves }] }] as unknown as readonly SetUp[];
    expect(read(of('set-ups', setups), [1050, 0.5])).toEqual({ 'depth here': 4.5, 'feed here': 1700 });
    expect(read(of('set-ups', setups), [50, 0.5])).toEqual({});
  });

  it.each<[Carried['type'], unknown]>([
    ['number', 3], ['text', 'a'], ['strokes', []], ['outlines', []], ['region', { loops: [] }], ['channel', { ...EXAMPLE_CHANNEL, centreLines: [], region: { loops: [] } }],
    ['holes', []], ['tabs', []], ['passes', []], ['set-ups', []], ['checks', []], ['quantities', {}], ['files', []], ['cutter', EXAMPLE_CUTTER],
    ['strokes', [{ path: { start: { x: 9, y: 9 }, segments: [], closed: false } }]],
  ])('with nothing to measure tell nothing: %s', (type, value) => expect(read(of(type, value), [0, 0], 5)).toEqual({}));

  it('say nothing twice, and every reading has a finite value and a place', () => {
    const all = probeValues([of('stock', EXAMPLE_STOCK), of('stock', EXAMPLE_STOCK), of('channel', EXAMPLE_CHANNEL), of('outlines', [{ paths: [circle(150, 100, 8)], fillRule: 'nonzero' }])], [150, 100], 10);
    expect(new Set(all.map(({ says }) => says)).size).toBe(all.length);
    for (const { value, at } of all) expect([value, ...at].every(Number.isFinite)).toBe(true);
  });
});

describe('set-ups', () => {
  const tiling = tilingAt({ width: 300, height: 100 }, [100], []);

  it('tell to which a place belongs and how far the nearest seam is; nothing beside the sheet or where there is one only', () => {
    expect(read(of('tiling', tiling), [130, 20])).toEqual({ 'cut in set-up': 2, 'to seam 1': 30 });
    expect(read(of('tiling', tiling), [30, 20])).toEqual({ 'cut in set-up': 1, 'to seam 1': 70 });
    expect(read(of('tiling', tiling), [500, 20])).toEqual({});
    expect(read(of('tiling', tilingAt({ width: 300, height: 100 }, [], [])), [130, 20])).toEqual({});
  });

  it('tell pins, dowel holes and hold-downs where they are pointed at', () => {
    const hole: Hole = { centre: { x: 110, y: 20 }, diameter: 6.02, purpose: 'dowel' };
    const registration = { pins: [{ at: { x: 10, y: 20 }, diameter: 6 }], dowels: [{ hole, pin: 0, drilledIn: 0, usedIn: 1, lies: 'waste' }] };
    expect(read(of('registration', registration), [12, 20])).toEqual({ 'diameter of pin 1': 6 });
    expect(read(of('registration', registration), [112, 20])).toEqual({ 'diameter of dowel hole 1': 6.02 });
    const holding = { holdDowns: [{ kind: 'clamp', at: { x: 0, y: 50 }, keepOut: 40, height: 15 }], areas: [], supports: [] };
    expect(read(of('holding', holding), [15, 50])).toEqual({ 'keep-out diameter of clamp 1': 40, 'height of clamp 1': 15 });
    expect(read(of('holding', holding), [25, 50])).toEqual({});
  });
});
