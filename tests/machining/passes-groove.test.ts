import { describe, expect, it } from 'vitest';
import { makeRegionIndex, multiply, pathLength, rotation, scaling, translation, type Affine, type Path } from '../../src/geometry/index.ts';
import { cuttingFeeds } from '../../src/machining/passes/cutting-data.ts';
import { groovePasses, moveLength, type GrooveRequest } from '../../src/machining/index.ts';
import { circlePath, cutOf, expectSoundPasses, grooveRequest, loopedCubic, mill, placed, placedMovesOf, placesOn, plungesIntoMaterial, pointPath, polyline } from './passes-fixture.ts';

const FIXTURES: Record<string, readonly Path[]> = {
  'a straight stroke': [polyline([[0, 0], [60, 0]])],
  'a corner': [polyline([[0, 0], [40, 0], [40, 40]])],
  'a sharp corner': [polyline([[0, 0], [50, 8], [0, 16]])],
  'two crossing strokes': [polyline([[0, 0], [50, 30]]), polyline([[0, 30], [50, 0]])],
  'strokes meeting at a small angle': [polyline([[0, 0], [60, 0]]), polyline([[0, 0], [60, 9]])],
  'a curve that crosses itself': [loopedCubic],
  'a closed circle': [circlePath(0, 0, 25)],
  'a closed triangle': [polyline([[0, 0], [50, 0], [20, 40], [0, 0]], true)],
  'a point': [pointPath(5, 5)],
  'a tiny stroke': [polyline([[0, 0], [0.3, 0.1]])],
  'a short stroke': [polyline([[0, 0], [4, 0]])],
  'parts that do not touch': [polyline([[0, 0], [30, 0]]), circlePath(70, 0, 15), pointPath(0, 40)],
};

const PLACEMENTS: Record<string, Affine> = {
  'as drawn': [1, 0, 0, 1, 0, 0],
  'turned and moved': multiply(translation(300, -200), rotation(37)),
  'mirrored': scaling(-1, 1),
};

/** Width and diameter: equal, a hair wider, walls finished beside the centre line, one ring, two rings. */
const SIZES = [[6, 6], [6.01, 6], [6.6, 6], [10, 6], [12, 4]] as const;

const slackOf = ({ tolerance }: GrooveRequest) => tolerance * 2.5 + 0.004;

function planned(request: GrooveRequest) {
  const plan = groovePasses(request);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return plan;
}

/** Every fixture with every size, the placements taking turns. */
const CASES = Object.entries(FIXTURES).flatMap(([name, lines], f) => SIZES.map(([width, diameter], s) => {
  const [place, affine] = Object.entries(PLACEMENTS)[(f + s) % 3]!;
  return { name, lines, width, diameter, place, affine };
}));

describe('a groove is cut whole and nothing else', () => {
  it.each(CASES)('$name, $place, width $width by a cutter of $diameter', ({ lines, width, diameter, affine }) => {
    const request = grooveRequest(placed(lines, affine), width, diameter);
    const plan = planned(request);
    expect(plan.cautions).toEqual([]);
    expectSoundPasses(plan.passes, request.depth);
    const cut = cutOf(plan.passes, request.region, diameter, request.depth, slackOf(request), 0.3);
    expect(cut.outside).toBeLessThan(slackOf(request));
    expect(cut).toMatchObject({ left: 0, rapids: 0 });
  });
});

describe('how a groove is entered and followed', () => {
  it.each(CASES.filter(({ lines }) => pathLength(lines[0]!) > 2))('$name, width $width by $diameter: never straight down into material', ({ lines, width, diameter }) => {
    // A point is drilled; everything here is long enough for a ramp.
    const plan = planned(grooveRequest(lines.filter((line) => line.segments.length > 0), width, diameter));
    expect(plungesIntoMaterial(plan.passes)).toEqual([]);
  });

  it('keeps the axis half a diameter inside the walls, whatever the move', () => {
    const request = grooveRequest(FIXTURES['two crossing strokes']!, 10, 6);
    const index = makeRegionIndex(request.region);
    let least = Infinity;
    for (const { from, move } of placedMovesOf(planned(request).passes)) {
      for (const place of placesOn(from, move, 0.3)) {
        least = Math.min(least, (index.contains(place) ? 1 : -1) * index.distanceToBoundary(place));
      }
    }
    expect(least).toBeGreaterThan(3 - slackOf(request));
  });

  it('climbs with the wall on the right of the travel, and on the left when conventional', () => {
    for (const [direction, side] of [['climb', -1], ['conventional', 1]] as const) {
      const request = grooveRequest([circlePath(0, 0, 25)], 10, 6, { direction });
      const index = makeRegionIndex(request.region);
      for (const { from, move } of placedMovesOf(planned(request).passes)) {
        // Long arcs are the rings along the two round walls; the wall is where the boundary is nearest.
        if (move.kind !== 'arc' || move.to.z > -5.9 || Math.hypot(move.to.x - from.x, move.to.y - from.y) < 5) continue;
        const [a, b] = placesOn(from, move, 0.05);
        const wall = index.nearestBoundaryPoint(a!)!;
        expect(Math.sign((b!.x - a!.x) * (wall.y - a!.y) - (b!.y - a!.y) * (wall.x - a!.x))).toBe(side);
      }
    }
  });

  it('cuts equal layers, as many as the depth over the depth of cut, rounded up', () => {
    // Depth passes ceil(h / a_p): h 5, a_p 2.5 -> 2 (common practice, no source; arithmetic).
    const floors = (depth: number, depthOfCut: number) => {
      const request = grooveRequest([polyline([[0, 0], [50, 0]])], 6, 6, { depth, cutter: mill(6, { depthOfCut }) });
      const flat = [...placedMovesOf(planned(request).passes)].filter(({ from, move }) => from.z < 0 && from.z === move.to.z);
      return [...new Set(flat.map(({ move }) => move.to.z))];
    };
    expect(floors(5, 2.5)).toEqual([-2.5, -5]);
    expect(floors(6, 2.5)).toEqual([-2, -4, -6]);
  });

  it('ramps into an open stroke over the length its angle needs', () => {
    // L = a_p / tan(alpha): 2.5 mm at 3 degrees -> 47.703 mm (arithmetic), here from 0.2 mm above the face: 51.519 mm.
    const request = grooveRequest([polyline([[0, 0], [100, 0]])], 6, 6, { depth: 2.5 });
    const ramps = [...placedMovesOf(planned(request).passes)].filter(({ from, move }) => move.to.z < from.z && move.to.x !== from.x);
    const length = ramps.reduce((sum, { from, move }) => sum + Math.abs(move.to.x - from.x), 0);
    expect(length).toBeCloseTo(2.7 / Math.tan((3 * Math.PI) / 180), 6);
    expect(2.5 / Math.tan((3 * Math.PI) / 180)).toBeCloseTo(47.703, 3);
  });

  it('raises the feed of the finishing skin by chip thinning, held to half as much again and to the greatest feed', () => {
    // Chord geometry: D 6, a_e 1 has factor 0.74536, so 1800 becomes 2415.0 mm/min.
    expect(cuttingFeeds(mill(6), 1, 4000).finish).toBeCloseTo(2415, 0);
    expect(cuttingFeeds(mill(6), 1, 2000).finish).toBe(2000);
    expect(cuttingFeeds(mill(6), 0.2, 4000).finish).toBe(2700);
    expect(cuttingFeeds(mill(6), 3, 4000).finish).toBe(1800);
    const feeds = planned(grooveRequest([polyline([[0, 0], [60, 0]])], 10, 6)).passes.flatMap(({ moves }) => moves).map((move) => (move.kind === 'rapid' ? 0 : move.feed));
    expect(Math.max(...feeds)).toBe(2700);
  });

  it('finishes an ellipse on its parallel, whose length is shorter by 2 pi d', () => {
    // Closed convex curve: L - 2 pi d (do Carmo, Gray); ellipse 50, 20: 230.13 -> 198.72 at d 5, regular because d is under b^2/a = 8.
    const ellipse = Array.from({ length: 1440 }, (_, i) => ({ x: 50 * Math.cos((i * Math.PI) / 720), y: 20 * Math.sin((i * Math.PI) / 720) }));
    const request = grooveRequest([], 40, 10, { region: { loops: [ellipse] }, finishingAllowance: 0, cutter: mill(10), stepover: 0.4 });
    const plan = planned(request);
    const outermost = [...placedMovesOf(plan.passes)].filter(({ from, move }) => from.z === -6 && move.to.z === -6 && move.kind !== 'rapid');
    const index = makeRegionIndex(request.region);
    const wall = outermost.filter(({ from, move }) => placesOn(from, move, 1).every((place) => Math.abs(index.distanceToBoundary(place) - 5) < 0.02));
    expect(wall.reduce((sum, { from, move }) => sum + moveLength(from, move), 0)).toBeCloseTo(198.72, 1);
  });
});

describe('what is refused or cautioned', () => {
  it.each([
    ['a cutter wider than the groove', { cutter: mill(8) }, 'cutter'],
    ['a groove deeper than the cutting edge', { depth: 30 }, 'cutter'],
    ['no depth', { depth: 0 }, 'depth'],
    ['a depth that is no number', { depth: NaN }, 'depth'],
    ['a level ramp', { cutter: mill(6, { rampAngle: 0 }) }, 'cutter rampAngle'],
    ['an upright ramp', { cutter: mill(6, { rampAngle: 90 }) }, 'cutter rampAngle'],
    ['a stepover of nothing', { stepover: 0 }, 'stepover'],
    ['a thick finishing allowance', { finishingAllowance: 3 }, 'finishing allowance'],
  ] as const)('%s', (_, changes, place) => {
    const plan = groovePasses({ ...grooveRequest([polyline([[0, 0], [60, 0]])], 6, 6), ...changes });
    expect(plan).toMatchObject({ ok: false, problems: [{ place }] });
  });

  it('nothing to cut gives no passes', () => {
    expect(groovePasses(grooveRequest([], 6, 6))).toEqual({ ok: true, passes: [], cautions: [] });
  });

  it('names the neck that a cutter cannot pass, and cuts both sides of it', () => {
    const loop = [[0, 0], [30, 0], [30, 8], [50, 8], [50, 0], [80, 0], [80, 20], [50, 20], [50, 12], [30, 12], [30, 20], [0, 20]].map(([x, y]) => ({ x: x!, y: y! }));
    const request = grooveRequest([polyline([[10, 10], [70, 10]])], 10, 6, { region: { loops: [loop] } });
    const plan = planned(request);
    // Once along the centre line, by the neck's own width of 4 mm, and once where the place for the axis falls apart.
    expect(plan.cautions.map(({ found }) => found)).toEqual(['4 mm', 'a neck too narrow to pass']);
    for (const { at } of plan.cautions) expect(Math.hypot(at.x - 40, at.y - 10)).toBeLessThan(15);
    expect(cutOf(plan.passes, request.region, 6, 6, slackOf(request))).toMatchObject({ left: 0 });
    expect(cutOf(plan.passes, request.region, 6, 6, slackOf(request)).outside).toBeLessThan(slackOf(request));
  });

  it('names an arm that is too narrow to enter, without a centre line to tell', () => {
    const loop = [[0, 0], [30, 0], [30, 8], [60, 8], [60, 12], [30, 12], [30, 20], [0, 20]].map(([x, y]) => ({ x: x!, y: y! }));
    const plan = planned(grooveRequest([], 10, 6, { region: { loops: [loop] } }));
    expect(plan.cautions).toHaveLength(1);
    expect(plan.cautions[0]!.at.x).toBeCloseTo(60, 0);
  });

  it('refuses a region that the cutter fits into nowhere', () => {
    const loop = [[0, 0], [60, 0], [60, 4], [0, 4]].map(([x, y]) => ({ x: x!, y: y! }));
    expect(groovePasses(grooveRequest([], 10, 6, { region: { loops: [loop] } }))).toMatchObject({ ok: false });
  });
});
