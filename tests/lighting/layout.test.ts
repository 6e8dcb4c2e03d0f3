import { describe, expect, it } from 'vitest';
import { type Path, applyToPath, distance, intersectRegions, multiply, offsetPaths, pathEnd, pathLength, regionArea, reversePath, rotation, scaling, translation } from '../../src/geometry/index.ts';
import { fitModules } from '../../src/lighting/layout/modules.ts';
import { EXAMPLE_STRIP, EXAMPLE_TUBE } from '../../src/values/examples.ts';
import { circle, line } from '../support/shapes.ts';
import { layoutOf, piecesOf } from './fixture.ts';

const stem = line([0, 0], [0, 400]);
const arm = line([0, 200], [300, 200]);

// By hand: 400 mm of tube, 5 mm kept at both ends leave 390; seven modules of 50 are 350; 50 are left, 25 at each end.
describe('whole modules', () => {
  it.each([
    [400, 5, 50, { modules: 7, cutLength: 350, unlit: 25 }],
    [410, 5, 50, { modules: 8, cutLength: 400, unlit: 5 }],
    [409.9, 5, 50, { modules: 7, cutLength: 350, unlit: 29.95 }],
    [59, 5, 50, { modules: 0, cutLength: 0, unlit: 29.5 }],
    [60, 5, 50, { modules: 1, cutLength: 50, unlit: 5 }],
    [100, 0, 33.3, { modules: 3, cutLength: 99.9, unlit: 0.05 }],
    [8, 5, 50, { modules: 0, cutLength: 0, unlit: 4 }],
  ])('of %d mm with %d at the ends and modules of %d', (length, end, module, expected) => {
    const { modules, cutLength, unlit } = fitModules(length, end, module);
    expect(modules).toBe(expected.modules);
    expect([cutLength, unlit]).toEqual([expect.closeTo(expected.cutLength, 9), expect.closeTo(expected.unlit, 9)]);
  });
});

describe('one stroke', () => {
  it('is lit in the middle, its remainders stated and alike', () => {
    const [piece] = piecesOf(layoutOf([stem]));
    expect(piece).toMatchObject({ stroke: 0, modules: 7, cutLength: 350, unlitStart: 25, unlitEnd: 25 });
    expect(pathLength(piece!.lit)).toBeCloseTo(350, 9);
    expect(piece!.lit.start.y).toBeCloseTo(25, 9);
  });

  it('that is closed is lit all round but for one gap at its start', () => {
    const [piece] = piecesOf(layoutOf([circle(0, 0, 100)]));
    expect(piece).toMatchObject({ modules: 12, cutLength: 600 });
    expect(piece!.unlitStart).toBeCloseTo((200 * Math.PI - 600) / 2, 6);
    expect(layoutOf([circle(0, 0, 100)]).holes).toEqual([{ x: 100, y: 0 }]);
  });

  it('too short for a module stays dark and is named', () => {
    const { lighting } = layoutOf([stem, line([100, 0], [155, 0])]);
    expect(lighting.dark).toEqual([{ stroke: 1, at: { x: 127.5, y: 0 }, length: 55, why: 'too short' }]);
    expect(lighting.runs.flatMap(({ pieces }) => pieces.map(({ stroke }) => stroke))).toEqual([0]);
  });
});

describe('where strokes meet', () => {
  // By hand: a tube of 10 mm cut square at a right angle starts half a width, 5 mm, from the other's centre line: 295 mm, five modules, 22.5 at each end.
  it('the one that ends there starts clear of the other, which is lit through', () => {
    const layout = layoutOf([stem, arm]);
    const pieces = piecesOf(layout);
    expect(pieces.find(({ stroke }) => stroke === 0)).toMatchObject({ cutLength: 350, unlitStart: 25 });
    const ending = pieces.find(({ stroke }) => stroke === 1)!;
    expect(pathLength(ending.path)).toBeCloseTo(295, 1);
    expect(ending).toMatchObject({ modules: 5, cutLength: 250 });
    expect(layout.lighting.dark).toEqual([{ stroke: 1, at: { x: 0, y: 200 }, length: expect.closeTo(0, 1) as number, why: 'meets', by: 0 }]);
  });

  // A square end at angle a between the lines is clear at s = (w / 2) (1 + cos a) / sin a; the band of the other ends at (w / 2) / sin a. Elementary.
  it.each([90, 60, 45, 30])('under %d degrees it draws back as far as its corner asks', (degrees) => {
    const a = (degrees * Math.PI) / 180;
    const layout = layoutOf([stem, line([0, 200], [300 * Math.sin(a), 200 + 300 * Math.cos(a)])]);
    const back = 300 - pathLength(piecesOf(layout).find(({ stroke }) => stroke === 1)!.path);
    expect(back).toBeCloseTo((5 * (1 + Math.cos(a))) / Math.sin(a), 1);
    expect(layout.lighting.dark[0]!.length).toBeCloseTo((5 * Math.cos(a)) / Math.sin(a), 0);
  });

  it('end to end, the shorter gives way; in one line neither does', () => {
    const corner = layoutOf([line([0, 0], [0, 300]), line([0, 0], [200, 0])]);
    expect(corner.lighting.dark).toMatchObject([{ stroke: 1, by: 0, why: 'meets' }]);
    const straight = layoutOf([line([0, 0], [0, 300]), line([0, 300], [0, 500])]);
    expect(straight.lighting.dark).toEqual([]);
  });

  it('ends beyond reach of the other tube stay as they are', () => {
    expect(layoutOf([stem, line([10.1, 200], [300, 200])]).lighting.dark).toEqual([]);
  });
});

describe('where strokes cross', () => {
  it('the shorter is cut into two lit pieces with a jumper', () => {
    const layout = layoutOf([stem, line([-150, 200], [150, 200])]);
    expect(piecesOf(layout).map(({ stroke, modules }) => [stroke, modules]).sort()).toEqual([[0, 7], [1, 2], [1, 2]]);
    expect(layout.lighting.dark).toMatchObject([{ stroke: 1, why: 'crosses', by: 0, at: { x: 0, y: 200 } }]);
    expect(layout.lighting.runs.flatMap(({ jumpers }) => jumpers)).toHaveLength(2);
  });

  it('a stroke that crosses itself is cut at the passage farther from its ends', () => {
    const loop = line([0, 0], [300, 0], [300, 200], [150, 200], [150, -300]);
    const layout = layoutOf([loop]);
    expect(layout.lighting.dark).toMatchObject([{ stroke: 0, by: 0, why: 'crosses', at: { x: 150, y: 0 } }]);
    // Passages at 150 and at 300 + 200 + 150 + 200 = 850 of 1150 mm: 150 and 300 from an end.
    expect(piecesOf(layout).map(({ path }) => Math.round(pathLength(path))).sort((a, b) => a - b)).toEqual([295, 845]);
  });

  it('a closed stroke that is cut opens there', () => {
    const layout = layoutOf([circle(0, 0, 100), line([60, 0], [700, 0])]);
    const ring = piecesOf(layout).filter(({ stroke }) => stroke === 0);
    expect(ring).toHaveLength(1);
    expect(pathLength(ring[0]!.path)).toBeCloseTo(200 * Math.PI - 10, 0);
    expect(distance(ring[0]!.path.start, pathEnd(ring[0]!.path))).toBeCloseTo(10, 0);
  });
});

const busy: readonly Path[] = [
  stem, arm, line([-150, 90], [170, 60]), circle(420, 150, 90), line([420, 240], [420, 500], [560, 420], [300, 380]), line([0, 400], [180, 470]), line([700, 0], [760, 0]), line([640, 60], [760, 300]),
];

it('no two tubes lie in one place', () => {
  const tubes = piecesOf(layoutOf(busy)).map(({ path }) => offsetPaths([path], 5, { cap: 'butt', join: 'round', miterLimit: 2, tolerance: 0.01 }));
  const shared = tubes.flatMap((a, i) => tubes.slice(i + 1).map((b) => regionArea(intersectRegions(a, b))));
  // A hair of 0.01 mm along an end of 10 mm: what chords and rounding may hide.
  expect(Math.max(...shared)).toBeLessThan(0.11);
});

describe('the layout is the same', () => {
  const told = (paths: readonly Path[], scale = 1) => {
    const layout = layoutOf(paths, {
      strip: { ...EXAMPLE_STRIP, moduleLength: 50 * scale, wattsPerMetre: 40 / scale, railResistance: 0.05 / scale }, tube: { ...EXAMPLE_TUBE, width: 10 * scale }, holeDiameter: 6 * scale, leastEnd: 5 * scale, spareWire: 60 * scale,
    });
    const runs = layout.lighting.runs.map(({ pieces, jumpers }) => ({
      pieces: pieces.map(({ stroke, modules, unlitStart }) => `${stroke}: ${modules}, ${(unlitStart / scale).toFixed(1)}`).sort(),
      wire: Math.round(jumpers.reduce((sum, { length }) => sum + length, 0) / scale),
    }));
    return { runs, dark: layout.lighting.dark.map(({ stroke, length, why }) => [stroke, Math.round(length / scale), why]), holes: layout.holes.length };
  };
  const upright = told(busy);

  it('has several runs, with jumpers', () => {
    expect(upright.runs.length).toBeGreaterThan(1);
    expect(Math.max(...upright.runs.map(({ wire }) => wire))).toBeGreaterThan(100);
  });
  it.each([30, 90, 217])('turned by %d degrees', (degrees) => {
    expect(told(busy.map((path) => applyToPath(multiply(translation(1000, -300), rotation(degrees)), path)))).toEqual(upright);
  });
  it.each([0.1, 3])('%d times as large', (factor) => {
    expect(told(busy.map((path) => applyToPath(scaling(factor), path)), factor)).toEqual(upright);
  });
  it('with its strokes drawn the other way', () => expect(told(busy.map(reversePath))).toEqual(upright));
});

describe('cable holes', () => {
  it('lie at the ends of pieces, beneath the tube or clear of it', () => {
    const beneath = layoutOf([stem, arm]);
    expect(beneath.holes).toHaveLength(4);
    const clear = layoutOf([stem, arm], { holesClear: true });
    for (const hole of clear.holes) for (const { path } of piecesOf(clear)) expect(Math.min(distance(hole, path.start), distance(hole, pathEnd(path)), Infinity)).toBeGreaterThanOrEqual(3 - 0.05);
    expect(pathLength(piecesOf(clear).find(({ stroke }) => stroke === 0)!.path)).toBeCloseTo(394, 6);
  });

  it('or only where a run starts and ends', () => {
    const layout = layoutOf([stem, arm], { holesAt: 'runs' });
    expect(layout.lighting.runs).toHaveLength(1);
    expect(layout.holes).toHaveLength(2);
  });

  it('ends near one another share one, and jumpers lead from hole to hole', () => {
    const layout = layoutOf([line([0, 0], [0, 300]), line([0, 302], [0, 600])]);
    expect(layout.holes).toHaveLength(3);
    expect(layout.lighting.runs[0]!.jumpers).toMatchObject([{ length: 120 }]);
  });
});

it('begins each run at its end nearest to a lead', () => {
  for (const lead of [{ x: 0, y: 500 }, { x: 0, y: -500 }]) {
    const { lighting } = layoutOf([stem], { leads: [lead] });
    expect(lighting.runs[0]!.feeds[0]!.at).toEqual({ x: 0, y: lead.y > 0 ? 400 : 0 });
    expect(lighting.runs[0]!.pieces[0]!.path.start).toEqual({ x: 0, y: lead.y > 0 ? 400 : 0 });
  }
});
