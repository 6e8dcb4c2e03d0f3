import { describe, expect, it } from 'vitest';
import { regionArea, type Region } from '../../src/geometry/index.ts';
import { boreRadii, holePasses, type Hole, type HoleRequest, type Pass } from '../../src/machining/index.ts';
import { cutOf, expectSoundPasses, GREATEST_FEED, mill, placedMovesOf, plungesIntoMaterial, RETRACT } from './passes-fixture.ts';

const hole = (diameter: number, x = 0, y = 0): Hole => ({ centre: { x, y }, diameter, purpose: 'mounting' });

const request = (holes: readonly Hole[], diameter: number, changes: Partial<HoleRequest> = {}): HoleRequest => ({
  holes, cutter: mill(diameter), throughDepth: 12.5, peckDepth: 3, direction: 'climb', retract: RETRACT, greatestFeed: GREATEST_FEED, ...changes,
});

function planned(holes: readonly Hole[], diameter: number, changes: Partial<HoleRequest> = {}): readonly Pass[] {
  const plan = holePasses(request(holes, diameter, changes));
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan.passes;
}

/** A polygon whose sides touch the circle from outside. */
const disc = (diameter: number): Region => ({
  loops: [Array.from({ length: 720 }, (_, i) => ({ x: (diameter / 2) * Math.cos((i * Math.PI) / 360), y: (diameter / 2) * Math.sin((i * Math.PI) / 360) }))],
});

describe('a hole of the cutter\'s own diameter', () => {
  const [pass] = planned([hole(6, 7, -3)], 6);

  it('is drilled in pecks written out as moves', () => {
    expect(pass!.start).toEqual({ x: 7, y: -3, z: RETRACT });
    expect(pass!.moves.map(({ kind, to }) => [kind, Number(to.z.toFixed(6))])).toEqual([
      ['line', 0.2], ['line', -3], ['rapid', 2], ['rapid', -2.8], ['line', -6], ['rapid', 2], ['rapid', -5.8], ['line', -9],
      ['rapid', 2], ['rapid', -8.8], ['line', -12], ['rapid', 2], ['rapid', -11.8], ['line', -12.5],
    ]);
    for (const move of pass!.moves) if (move.kind === 'line') expect(move.feed).toBe(500);
  });

  it.each([5.96, 6.04])('counts %d mm as its own', (diameter) => {
    expect(planned([hole(diameter)], 6)[0]!.moves.every(({ kind }) => kind !== 'arc')).toBe(true);
  });
});

describe('a hole wider than the cutter', () => {
  it.each([[6.5, 6], [8, 6], [10, 4], [12, 6], [12.1, 6], [25, 6], [40, 3]])('of %d mm is bored away whole by a cutter of %d', (diameter, cutter) => {
    const passes = planned([hole(diameter)], cutter);
    expectSoundPasses(passes, 12.5);
    const cut = cutOf(passes, disc(diameter), cutter, 12.5, 0.01, 0.1);
    expect(cut.outside).toBeLessThan(0.001);
    expect(cut).toMatchObject({ left: 0, rapids: 0 });
    if (diameter > 1.2 * cutter) expect(plungesIntoMaterial(passes, 0.1)).toEqual([]);
  });

  it('is bored by a helix that drops 2 pi r tan(alpha) per turn', () => {
    // r 2 at 3 degrees -> 0.65858 mm per turn, 5 mm in 7.5921 turns (arithmetic); whole turns make it 8, a little flatter.
    const moves = [...placedMovesOf(planned([hole(10)], 6, { throughDepth: 4.8 }))].filter(({ from, move }) => move.kind === 'arc' && move.to.z < from.z);
    expect(moves).toHaveLength(16);
    expect(moves[0]!.from.z - moves[1]!.move.to.z).toBeCloseTo(5 / 8, 9);
    expect(5 / (2 * Math.PI * 2 * Math.tan((3 * Math.PI) / 180))).toBeCloseTo(7.5921, 4);
  });

  it('is gone round counter-clockwise to climb and clockwise when conventional, never in one full circle', () => {
    for (const [direction, clockwise] of [['climb', false], ['conventional', true]] as const) {
      const arcs = planned([hole(20)], 6, { direction })[0]!.moves.filter((move) => move.kind === 'arc');
      expect(arcs.length).toBeGreaterThan(0);
      expect(arcs.every((move) => move.kind === 'arc' && move.clockwise === clockwise)).toBe(true);
    }
  });

  it('is cleared from the inside out in even steps of under half a cutter', () => {
    expect(boreRadii(2, 6)).toEqual([2]);
    expect(boreRadii(9, 6)).toEqual([2.25, 4.5, 6.75, 9]);
  });
});

describe('holes', () => {
  it('are named in the order given and each begins at the retract height', () => {
    const passes = planned([hole(6), hole(10, 50, 0), hole(6.5, 0, 50)], 6);
    expect(passes.map(({ name, kind }) => [kind, name])).toEqual([['hole', 'hole 1'], ['hole', 'hole 2'], ['hole', 'hole 3']]);
  });

  it('thinner than the cutter are refused, each by its place', () => {
    const plan = holePasses(request([hole(5, 12, 3.25), hole(6), hole(3, 40, 0)], 6));
    expect(plan).toMatchObject({ ok: false, problems: [{ place: 'hole at x 12, y 3.3' }, { place: 'hole at x 40, y 0' }] });
  });

  it.each([['deeper than the cutting edge', { throughDepth: 23 }, 'cutter'], ['with no peck depth', { peckDepth: 0 }, 'peck depth']] as const)('%s are refused', (_, changes, place) => {
    expect(holePasses(request([hole(6)], 6, changes))).toMatchObject({ ok: false, problems: [{ place }] });
  });

  it('are none when none are asked for', () => {
    expect(planned([], 6)).toEqual([]);
  });

  it('are measured against a disc of the right size', () => {
    expect(regionArea(disc(10))).toBeCloseTo(25 * Math.PI, 2);
  });
});
