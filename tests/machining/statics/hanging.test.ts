import { describe, expect, it } from 'vitest';
import { applyToPoint, flattenPath, makeRegionIndex, multiply, pointInRegion, type Region, regionCentroid, regionFromLoops, rotation, scaling, translation } from '../../../src/geometry/index.ts';
import { boardMass, holePath, levelPair, loadShares, outsideFixings } from '../../../src/machining/index.ts';
import { channelOf, rectangle, stock } from '../../support/shapes.ts';

const at = (...xs: number[]) => xs.map((x, i) => ({ x, y: i }));

// Text-book values of the centre of area: a triangle's is the mean of its corners, a half disc's lies 4 r / 3 pi above its base.
describe('the centre of area', () => {
  it('of a triangle is the mean of its corners, far from the origin too', () => {
    const far = regionFromLoops([[{ x: 60000, y: 20000 }, { x: 60300, y: 20030 }, { x: 60090, y: 20240 }]], 'nonzero');
    expect(regionCentroid(far)).toEqual({ x: expect.closeTo(60130, 6) as number, y: expect.closeTo(20090, 6) as number });
  });

  it('of a half disc lies 4 r / 3 pi above its base', () => {
    const arc = Array.from({ length: 2001 }, (_, i) => ({ x: 90 * Math.cos((i * Math.PI) / 2000), y: 90 * Math.sin((i * Math.PI) / 2000) }));
    expect(regionCentroid(regionFromLoops([arc], 'nonzero'))!.y).toBeCloseTo((4 * 90) / (3 * Math.PI), 3);
  });

  it('is that of nothing where there is no area', () => expect(regionCentroid({ loops: [] })).toBeUndefined());
});

/** Weight and its centre by counting cells of 1 mm: no formula in common with the code. */
function counted(board: Region, groove: Region, depth: number, holes: readonly Region[]) {
  const [inBoard, inGroove, inHoles] = [makeRegionIndex(board), makeRegionIndex(groove), holes.map(makeRegionIndex)];
  let sum = 0, x = 0, y = 0;
  for (let cx = 0.5; cx < 700; cx++)
    for (let cy = 0.5; cy < 700; cy++) {
      const cell = { x: cx, y: cy };
      if (!inBoard.contains(cell) || inHoles.some(({ contains }) => contains(cell))) continue;
      const kg = (stock.thickness - (inGroove.contains(cell) ? depth : 0)) * 1e-9 * stock.density;
      sum += kg;
      x += kg * cx;
      y += kg * cy;
    }
  return { kg: sum, x: x / sum, y: y / sum };
}

it.each([[0, 1], [27, 1], [-140, 1], [33, 0.7]])('weighs a board with groove and holes as counting cells does, turned by %d degrees, scaled by %d', (turn, scale) => {
  const matrix = multiply(translation(350, 350), multiply(rotation(turn), scaling(scale)));
  const placed = (...loops: (readonly (readonly [number, number])[])[]) => regionFromLoops(loops.map((loop) => loop.map(([x, y]) => applyToPoint(matrix, { x, y }))), 'evenodd');
  const board = placed([[-200, -100], [220, -100], [200, 40], [60, 150], [-200, 60]], [[100, -60], [160, -60], [160, -10], [100, -10]]);
  const groove = placed([[-150, -60], [60, -60], [60, -20], [-150, -20]]);
  const holes = ([[-120, -40, 60], [150, 40, 30]] as const).map(([x, y, diameter]) => ({ centre: applyToPoint(matrix, { x, y }), diameter: diameter * scale, slot: { length: 20 * scale, angle: turn + 20 } }));
  const mass = boardMass({ board, channel: { ...channelOf(groove), depth: 9 }, holes, stock });
  const cells = counted(board, groove, 9, holes.map((hole) => ({ loops: [flattenPath(holePath(hole), 0.01)] })));
  expect(mass.kg / cells.kg).toBeCloseTo(1, 2);
  expect(Math.abs(mass.centre!.x - cells.x)).toBeLessThan(0.15);
  expect(Math.abs(mass.centre!.y - cells.y)).toBeLessThan(0.15);
});

it('adds what lies in the groove by its length', () => {
  const weigh = (filling: number) => boardMass({ board: rectangle(0, 0, 600, 100), channel: channelOf(rectangle(100, 45, 500, 10)), holes: [], stock, filling });
  expect(weigh(0.2).kg - weigh(0).kg).toBeCloseTo(0.1, 9);
  expect(weigh(0.2).centre!.x).toBeGreaterThan(weigh(0).centre!.x);
});

describe('shares of the load', () => {
  // The law of the lever (Archimedes, On the Equilibrium of Planes): loads are inversely as the distances.
  it('are inversely as the distances for two', () => {
    expect(loadShares(at(0, 4), { x: 1, y: 0 })).toEqual([0.75, 0.25]);
    expect(loadShares(at(100, 900), { x: 500, y: 0 })).toEqual([0.5, 0.5]);
    expect(loadShares(at(0, 4), { x: 5, y: 0 })).toEqual([-0.25, 1.25]);
  });

  // Statics: forces and moments about any place add up to nothing.
  it.each([[at(0, 10, 30, 100)], [at(-7, 400)], [at(3, 3, 90)], [at(5)]])('balance the weight', (fixings) => {
    const centre = { x: fixings.length === 1 ? 5 : 37, y: 0 };
    const shares = loadShares(fixings, centre);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(shares.reduce((sum, share, i) => sum + share * (fixings[i]!.x - centre.x), 0)).toBeCloseTo(0, 9);
  });

  it('are even where fixings are alike or all above each other', () => {
    expect(loadShares(at(0, 100, 0, 100), { x: 50, y: 0 })).toEqual([0.25, 0.25, 0.25, 0.25]);
    expect(loadShares(at(7, 7), { x: 50, y: 0 })).toEqual([0.5, 0.5]);
  });

  it('say how far the weight lies beyond the fixings', () => {
    expect(outsideFixings(at(0, 100), { x: 130, y: 0 })).toBe(30);
    expect(outsideFixings(at(0, 100), { x: -3, y: 0 })).toBe(3);
    expect(outsideFixings(at(0, 100), { x: 40, y: 0 })).toBe(0);
  });
});

describe('two level hangers', () => {
  it('stand as high as they may, evenly about the centre of mass', () => {
    expect(levelPair(rectangle(10, 10, 380, 80), { x: 180, y: 45 }, 200)).toEqual([{ x: 80, y: 90 }, { x: 280, y: 90 }]);
  });

  it('come closer together, or go lower, where there is no clear place', () => {
    const narrow = levelPair(rectangle(100, 0, 100, 100), { x: 150, y: 40 }, 300)!;
    expect(narrow[1].x - narrow[0].x).toBeGreaterThanOrEqual(99);
    expect(narrow[1].x).toBeLessThanOrEqual(200);
    const steps = regionFromLoops([[{ x: 0, y: 0 }, { x: 400, y: 0 }, { x: 400, y: 60 }, { x: 200, y: 60 }, { x: 200, y: 100 }, { x: 0, y: 100 }]], 'nonzero');
    const [a, b] = levelPair(steps, { x: 190, y: 40 }, 200)!;
    expect([a, b]).toEqual([{ x: 90, y: 60 }, { x: 290, y: 60 }]);
    expect(pointInRegion(steps, a)).not.toBe('outside');
  });

  it('are not found below the centre of mass, nor where nothing is clear', () => {
    expect(levelPair(rectangle(0, 0, 400, 30), { x: 200, y: 40 }, 200)).toBeUndefined();
    expect(levelPair({ loops: [] }, { x: 0, y: 0 }, 200)).toBeUndefined();
  });
});
