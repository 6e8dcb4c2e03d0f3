import { describe, expect, it } from 'vitest';
import { makeGrid, sweepMoves, type DepthGrid } from '../../src/machining/proof/removal.ts';
import { type Move } from '../../src/machining/job/pass.ts';

const cutArea = ({ depth, cell }: DepthGrid) => {
  let count = 0;
  for (let i = 0; i < depth.length; i++) if (depth[i]! < 0) count++;
  return count * cell * cell;
};
const cutVolume = ({ depth, cell }: DepthGrid) => {
  let sum = 0;
  for (let i = 0; i < depth.length; i++) sum -= depth[i]!;
  return sum * cell * cell;
};
const heightAt = (grid: DepthGrid, x: number, y: number) => {
  const column = Math.floor((x - grid.origin.x) / grid.cell);
  return grid.depth[Math.floor((y - grid.origin.y) / grid.cell) * grid.columns + column]!;
};
const line = (x: number, y: number, z: number): Move => ({ kind: 'line', to: { x, y, z }, feed: 1 });
const arc = (x: number, y: number, z: number, cx: number, cy: number, clockwise = false): Move =>
  ({ kind: 'arc', to: { x, y, z }, centre: { x: cx, y: cy }, clockwise, feed: 1 });
const swept = (cell: number, diameter: number, x: number, y: number, z: number, ...moves: Move[]) => {
  // An odd corner, so that no edge of a fixture lies on a row.
  const grid = makeGrid({ minX: -106.0137, minY: -106.0071, maxX: 106, maxY: 106 }, cell);
  sweepMoves(grid, { x, y, z }, moves, diameter);
  return grid;
};

/** Tube of a curve: A = w L + pi w^2 / 4 with round ends (H. Weyl, On the volume of tubes, 1939; H. Hotelling, 1939). */
describe('The area a sweep clears is that of the tube formula and converges with the cell', () => {
  const turned = (degrees: number) => [100 * Math.cos((degrees * Math.PI) / 180), 100 * Math.sin((degrees * Math.PI) / 180)] as const;
  // Edges along a row or diagonal of cells may lie anywhere between two of its rows: half a cell on both edges at worst.
  it.each([[0, 200], [45, 200], [90, 200], [17, 20], [20.9, 20], [133, 20]])('along a line of 200 mm, 10 mm wide, at %d degrees', (degrees, bound) => {
    const [x, y] = turned(degrees);
    for (const cell of [0.4, 0.2, 0.1]) {
      expect(Math.abs(cutArea(swept(cell, 10, -x, -y, -1, line(x, y, -1))) - 2078.54)).toBeLessThan(bound * cell);
    }
  });
  it.each([true, false])('along a half circle of radius 40 (clockwise %s): 1335.2 mm2', (clockwise) => {
    expect(cutArea(swept(0.1, 10, 40, 0, -1, arc(-40, 0, -1, 0, 0, clockwise)))).toBeCloseTo(1335.18, 0);
  });
  it('along a full circle of radius 40, which has no ends: 2513.3 mm2', () => {
    expect(Math.abs(cutArea(swept(0.1, 10, 40, 0, -1, arc(40, 0, -1, 0, 0))) - 2513.27)).toBeLessThan(1);
  });
  // A corner of turning angle phi takes (w/2)^2 (tan(phi/2) - phi/2) off the two legs' tubes: elementary.
  it('along two legs of 100 mm at 90 degrees: 2073.2 mm2', () => {
    expect(Math.abs(cutArea(swept(0.1, 10, -100, 0, -1, line(0, 0, -1), line(0, 100, -1))) - 2073.17)).toBeLessThan(1);
  });
  it('along an arc of 300 degrees whose radius is less than the cutter: a disc and its round edge', () => {
    // Radius 3 about the origin, cutter radius 5: the ring has no hole. Sector of radius 8, and two half discs of radius 5
    // beyond the ends, as far as they leave the sector (their overlap counted on a fine grid of the test's own).
    const end = { x: 3 * Math.cos(-Math.PI / 3), y: 3 * Math.sin(-Math.PI / 3) };
    let inside = 0;
    for (let x = -8; x < 8; x += 0.05) for (let y = -8; y < 8; y += 0.05) {
      const angle = (Math.atan2(y, x) + 2 * Math.PI) % (2 * Math.PI);
      const near = angle <= (5 * Math.PI) / 3 ? Math.abs(Math.hypot(x, y) - 3) : Math.min(Math.hypot(x - 3, y), Math.hypot(x - end.x, y - end.y));
      if (near <= 5) inside += 0.0025;
    }
    expect(Math.abs(cutArea(swept(0.1, 10, 3, 0, -1, arc(end.x, end.y, -1, 0, 0))) - inside)).toBeLessThan(0.5);
  });
  it('straight down: a disc', () => {
    expect(Math.abs(cutArea(swept(0.1, 10, 0, 0, 5, line(0, 0, -3))) - 78.54)).toBeLessThan(0.3);
  });
});

describe('Volumes', () => {
  it('a slot of 200 x 10 mm, 5 deep, is 10393 mm3', () => {
    expect(Math.abs(cutVolume(swept(0.1, 10, -100, 0, -5, line(100, 0, -5))) - 10392.7)).toBeLessThan(5);
  });
  it('a helical bore of 12 mm, 8 deep, by a 6 mm cutter in turns of 1 mm and one flat turn, is a cylinder', () => {
    const turns = Array.from({ length: 8 }, (_, k) => arc(3, 0, -(k + 1), 0, 0));
    const grid = swept(0.05, 6, 3, 0, 0, ...turns, arc(3, 0, -8, 0, 0));
    expect(Math.abs(cutVolume(grid) - Math.PI * 36 * 8)).toBeLessThan(2);
    expect(heightAt(grid, 5.9, 0.1)).toBe(-8);
  });
});

describe('Depth under moves that change height', () => {
  it('a ramp is as deep at a point as where the disc leaves it: half a chord further down the slope', () => {
    const grid = swept(0.1, 6, 0, 0, 0, line(60, 0, -6));
    for (const [x, y] of [[10, 0], [20, 1.5], [30, -2.5], [40, 2.9]] as const) {
      const column = Math.floor((x - grid.origin.x) / 0.1), row = Math.floor((y - grid.origin.y) / 0.1);
      const [px, py] = [grid.origin.x + (column + 0.5) * 0.1, grid.origin.y + (row + 0.5) * 0.1];
      expect(heightAt(grid, x, y)).toBeCloseTo(-(px + Math.sqrt(9 - py * py)) / 10, 5);
    }
    expect(heightAt(grid, 61, 0)).toBe(-6);
  });
  it('a ramp run uphill leaves the same as run downhill', () => {
    const down = swept(0.1, 6, 3, 4, 1, line(40, 20, -6), arc(40, 30, -3, 40, 25));
    const up = swept(0.1, 6, 40, 30, -3, arc(40, 20, -6, 40, 25, true), line(3, 4, 1));
    expect(cutArea(down)).toBeGreaterThan(300);
    expect(down.depth.reduce((worst, z, i) => Math.max(worst, Math.abs(z - up.depth[i]!)), 0)).toBeLessThan(1e-6);
  });
  it('the part of a ramp above the top face removes nothing', () => {
    const grid = swept(0.1, 6, 0, 0, 5, line(100, 0, -5));
    expect(heightAt(grid, 46, 0)).toBe(0);
    expect(heightAt(grid, 48, 0)).toBeLessThan(0);
  });
  it('one helical turn is deepest where it ends and, half a turn back, half as deep by the angle the disc still covers', () => {
    const grid = swept(0.1, 4, 20, 0, 0, arc(20, 0, -4, 0, 0));
    // On the arc itself the disc stays over a point for 2 asin(R / 2 r) on either side: R 2, r 20.
    const ahead = (2 * Math.asin(0.05)) / (2 * Math.PI);
    expect(heightAt(grid, -20, 0)).toBeCloseTo(-4 * (0.5 + ahead), 2);
    expect(heightAt(grid, 20, 0.02)).toBe(-4);
    expect(heightAt(grid, 20, -1.95)).toBe(-4);
  });
  it('a ramp that passes a point twice, at the beginning and end of a full turn, counts the deeper passage', () => {
    const grid = swept(0.1, 4, 20, 0, -1, arc(20, 0, -2, 0, 0));
    expect(heightAt(grid, 20, 1.5)).toBe(-2);
    expect(heightAt(grid, 19.5, 3)).toBeGreaterThan(-1.1);
  });
  it('a move at or above the top face removes nothing', () => {
    expect(cutArea(swept(0.4, 6, 0, 0, 0, line(50, 0, 0), arc(50, 0, 2, 40, 0), line(0, 0, 0)))).toBe(0);
  });
});

describe('Rapids', () => {
  const grid = () => makeGrid({ minX: -20.013, minY: -20.007, maxX: 20, maxY: 20 }, 0.1);
  it('are reported with place and thickness when they meet material', () => {
    const found = sweepMoves(grid(), { x: -10, y: 0, z: 5 }, [line(-10, 0, -4), { kind: 'rapid', to: { x: 10, y: 0, z: -4 } }], 6);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ move: 1, thickness: 4 });
    expect(Math.abs(found[0]!.at.y)).toBeLessThanOrEqual(3);
  });
  it('plunging into material are reported', () => {
    expect(sweepMoves(grid(), { x: 0, y: 0, z: 5 }, [{ kind: 'rapid', to: { x: 0, y: 0, z: -0.5 } }], 6)).toMatchObject([{ move: 0, thickness: 0.5 }]);
  });
  it('up out of a cut, above the sheet, or back along a floor already cut are not', () => {
    const moves: Move[] = [line(-10, 0, -3.3), line(10, 0, -3.3), { kind: 'rapid', to: { x: -10, y: 0, z: -3.3 } },
      { kind: 'rapid', to: { x: -10, y: 0, z: 5 } }, { kind: 'rapid', to: { x: 10, y: 10, z: 5 } }];
    expect(sweepMoves(grid(), { x: -10, y: 0, z: 0 }, moves, 6)).toEqual([]);
  });
});

describe('A grid', () => {
  it.each([0, -1, NaN, 1e-5])('of cell %d is refused', (cell) => {
    expect(() => makeGrid({ minX: 0, minY: 0, maxX: 100, maxY: 100 }, cell)).toThrow(RangeError);
  });
  it('takes no move with a coordinate that is not finite', () => {
    expect(() => sweepMoves(makeGrid({ minX: 0, minY: 0, maxX: 9, maxY: 9 }, 1), { x: 0, y: 0, z: NaN }, [line(1, 1, -1)], 6)).toThrow(RangeError);
  });
  it('is left alone by moves beside it', () => {
    const grid = makeGrid({ minX: 0, minY: 0, maxX: 9, maxY: 9 }, 1);
    sweepMoves(grid, { x: -50, y: -50, z: -1 }, [line(50, -50, -1), arc(-50, 60, -1, 0, 500)], 6);
    expect(cutArea(grid)).toBe(0);
  });
});
