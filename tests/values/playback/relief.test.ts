import { describe, expect, it } from 'vitest';
import { makeGrid, sweepMoves } from '../../../src/machining/proof/removal.ts';
import { makeCourse } from '../../../src/values/playback/removal-course.ts';
import { type Relief, makeRelief } from '../../../src/values/playback/relief.ts';
import { shadeCells } from '../../../src/values/playback/shade.ts';
import { stepProgram } from '../../../src/values/playback/steps.ts';
import { seeded } from '../../support/random.ts';
import { groove, ring, setUp, through } from './fixture.ts';

const stepped = (...setups: ReturnType<typeof setUp>[]) => setups.map((setup) => stepProgram(setup, setup.programs[0]!));
const stock = { width: 160, height: 120, thickness: 12 };
const sheet = { minX: 0, minY: 0, maxX: 160, maxY: 120 };
const two = stepped(setUp([groove, ring]), setUp([through], [12, 7]));
const end = (program: number) => two[program]!.steps.at(-1)!.ends;

/** Compared as a whole: telling which of millions of numbers differ takes minutes. */
const sameBytes = (a: { readonly buffer: ArrayBufferLike }, b: { readonly buffer: ArrayBufferLike }) =>
  Buffer.compare(Buffer.from(a.buffer), Buffer.from(b.buffer)) === 0;

/** Grey of the cell over a place. */
function grey({ width, height, pixels, box }: Relief, x: number, y: number): number {
  const column = Math.floor(((x - box.minX) / (box.maxX - box.minX)) * width);
  const row = Math.floor(((box.maxY - y) / (box.maxY - box.minY)) * height);
  const at = 4 * (row * width + column);
  expect(pixels[at + 3]).toBe(255);
  return (pixels[at]! + pixels[at + 1]! + pixels[at + 2]!) / 3;
}

describe('what is left', () => {
  const fresh = (program: number, seconds: number) => {
    const grid = makeGrid(sheet, 0.5);
    makeCourse(two, grid).go(program, seconds);
    return grid.depth;
  };

  it('at the end is what the programs remove', () => {
    const grid = makeGrid(sheet, 0.5);
    for (const { steps, cutterDiameter } of two) sweepMoves(grid, steps[0]!.from, steps.map(({ move }) => move), cutterDiameter);
    expect(sameBytes(fresh(1, Infinity), grid.depth)).toBe(true);
    expect(sameBytes(fresh(9, 0), grid.depth)).toBe(true);
  });

  it('at the beginning is the whole sheet', () => expect(fresh(0, 0).every((z) => z === 0)).toBe(true));

  it('is the same however one comes to a moment, forward, back or by leaps', () => {
    const random = seeded(5);
    const grid = makeGrid(sheet, 0.5);
    const course = makeCourse(two, grid);
    for (let k = 0; k < 60; k++) {
      const program = random() < 0.7 ? 0 : 1;
      const seconds = random() * end(program);
      course.go(program, seconds);
      const expected = fresh(program, seconds);
      // A half-done slope that was cut before rounds differently in the last bit.
      expect(grid.depth.every((z, i) => Math.abs(z - expected[i]!) < 1e-5)).toBe(true);
    }
  });

  it('tells a box around all that changed, and none when nothing did', () => {
    const grid = makeGrid(sheet, 0.5);
    const course = makeCourse(two, grid);
    const random = seeded(8);
    for (let k = 0; k < 40; k++) {
      const before = grid.depth.slice();
      const program = random() < 0.5 ? 0 : 1;
      const box = course.go(program, random() * end(program));
      const changed = [...grid.depth.keys()].filter((i) => grid.depth[i] !== before[i]);
      const inside = (i: number) => {
        const [x, y] = [(i % grid.columns + 0.5) * 0.5, (Math.floor(i / grid.columns) + 0.5) * 0.5];
        return box !== undefined && x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
      };
      expect(changed.every(inside)).toBe(true);
    }
    expect(course.go(0, 0)).toBeDefined();
    expect(course.go(0, 0)).toBeUndefined();
  });

  it('of a move under way is cut up to the cutter and no further', () => {
    const cutting = two[0]!.steps.find(({ move }) => move.kind === 'line' && move.to.x === 100)!;
    const grid = makeGrid(sheet, 0.5);
    makeCourse(two, grid).go(0, (cutting.begins + cutting.ends) / 2);
    const depthAt = (x: number) => grid.depth[Math.floor(30 / 0.5) * grid.columns + Math.floor(x / 0.5)];
    expect([depthAt(60), depthAt(72.4), depthAt(73.6), depthAt(90)]).toEqual([-3, -3, 0, 0]);
  });
});

describe.each([['light', false], ['dark', true]])('painted for a %s page', (_, dark) => {
  const relief = makeRelief(two, stock).at(1, Infinity, dark);

  it('an untouched face is even', () => {
    const flat = [grey(relief, 5, 60), grey(relief, 150, 110), grey(relief, 150, 5)];
    expect(new Set(flat).size).toBe(1);
  });

  it('a floor is even and deeper is further from the face', () => {
    expect(grey(relief, 50, 30)).toBe(grey(relief, 90, 30.5));
    const face = grey(relief, 5, 60);
    const [shallow, deep] = [grey(relief, 60, 30), grey(relief, 90, 90)];
    expect(Math.abs(deep - face)).toBeGreaterThan(Math.abs(shallow - face) + 3);
  });

  it('of a groove\'s two walls one is lit and one in shade', () => {
    const cell = stock.width / relief.width;
    const floor = grey(relief, 70, 30);
    // The light comes from the upper left, so it falls on the lower wall, which faces up.
    expect(grey(relief, 70, 27 + cell / 2)).toBeGreaterThan(floor + 15);
    expect(grey(relief, 70, 33 - cell / 2)).toBeLessThan(floor - 15);
  });

  it('a cut through the sheet is hatched, a floor never', () => {
    const along = (x: number, y: number) => new Set(Array.from({ length: 24 }, (_, k) => grey(relief, x + (k / 10), y)));
    expect(along(18.8, 20).size).toBe(2);
    expect(along(60, 30).size).toBe(1);
  });
});

it('paints what changed exactly as if all were painted anew', () => {
  const maker = makeRelief(two, stock);
  const random = seeded(3);
  for (let k = 0; k < 6; k++) {
    const [program, seconds, dark] = [random() < 0.8 ? 0 : 1, random() * end(0), random() < 0.2] as const;
    expect(sameBytes(maker.at(program, seconds, dark).pixels, makeRelief(two, stock).at(program, seconds, dark).pixels)).toBe(true);
  }
});

it('gives a picture of its own each time', () => {
  const maker = makeRelief(two, stock);
  const first = maker.at(0, 0, false);
  const before = first.pixels.slice();
  maker.at(1, Infinity, false);
  expect(sameBytes(first.pixels, before)).toBe(true);
});

it('shows the place that is worked at where the sheet is not known, and never a cut through it', () => {
  const { box, width, height, pixels } = makeRelief(two, undefined).at(1, Infinity, false);
  expect(box.minX).toBeCloseTo(20 - 3 - 10, 6);
  expect(box.maxY).toBeGreaterThan(113);
  expect(Math.max(width, height)).toBeLessThanOrEqual(1601);
  expect(pixels).toHaveLength(4 * width * height);
});

it('has something to show for no programs, for programs that cut nothing and for a sheet like a thread', () => {
  const air = stepped(setUp([{ ...groove, moves: [] }]));
  for (const relief of [makeRelief([], undefined), makeRelief(air, undefined), makeRelief([], { width: 5000, height: 0.001, thickness: 3 })])
    expect(relief.at(0, 1, false).pixels.length).toBeGreaterThan(0);
});

it('lights a slope by how it is turned, whatever the grid', () => {
  const grid = makeGrid({ minX: 0, minY: 0, maxX: 8, maxY: 8 }, 1);
  // Higher to the right: the face looks to the left, into the light.
  const toneOf = (rise: (column: number, row: number) => number) => {
    grid.depth.forEach((_, i) => { grid.depth[i] = rise(i % 8, Math.floor(i / 8)) - 10; });
    const pixels = new Uint8ClampedArray(4 * 64);
    shadeCells(grid, { deepest: 1, thickness: Infinity, dark: false }, pixels, { left: 0, right: 7, bottom: 0, top: 7 });
    return pixels[4 * (4 * 8 + 4)]!;
  };
  const level = toneOf(() => 0);
  expect(toneOf((column) => column)).toBeGreaterThan(level);
  expect(toneOf((column) => -column)).toBeLessThan(level);
  expect(toneOf((_, row) => -row)).toBeGreaterThan(level);
  expect(toneOf((_, row) => row)).toBeLessThan(level);
});
