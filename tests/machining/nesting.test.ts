import { describe, expect, it } from 'vitest';
import { makeRegionIndex, type Region, regionArea, regionBounds } from '../../src/geometry/index.ts';
import { movedRegion, movedSign, type Nest, nestBoards, type NestRequest, together } from '../../src/machining/index.ts';
import { EXAMPLE_CHANNEL, rectangle } from '../../src/values/examples.ts';
import { seeded } from '../support/random.ts';

const sheet = { width: 1200, height: 800 };
const request = (boards: readonly Region[], more: Partial<NestRequest> = {}): NestRequest => ({ sheet, boards, spacing: 10, edge: 15, turn: true, ...more });
const nest = (boards: readonly Region[], more: Partial<NestRequest> = {}): Nest => nestBoards(request(boards, more), () => undefined);
const laid = (boards: readonly Region[], { moves }: Nest): Region[] => boards.flatMap((board, i) => (moves[i] ? [movedRegion(board, moves[i])] : []));

/** Least distance between two polygons: one of their corners is nearest; 0 where one lies in the other. */
function apart(a: Region, b: Region): number {
  const from = (one: Region, other: Region): number => {
    const index = makeRegionIndex(other);
    return Math.min(...one.loops.flat().map((point) => (index.contains(point) ? 0 : index.distanceToBoundary(point))));
  };
  return Math.min(from(a, b), from(b, a));
}

/** A star-shaped board with dents, never less than a few millimetres thick. */
function anyBoard(random: () => number, size: number): Region {
  const corners = 5 + Math.floor(9 * random());
  return { loops: [Array.from({ length: corners }, (_, k) => {
    const [angle, radius] = [(2 * Math.PI * k) / corners, size * (0.4 + 0.6 * random())];
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  })] };
}

describe('boards nested on a sheet', () => {
  it.each([1, 2, 3, 4])('never overlap, keep their distance and stay on the sheet (seed %i)', (seed) => {
    const random = seeded(seed);
    const boards = Array.from({ length: 12 }, () => anyBoard(random, 60 + 110 * random()));
    const found = nest(boards, { spacing: 4 + 10 * random() });
    const placed = laid(boards, found);
    expect(placed.length).toBeGreaterThan(5);
    placed.forEach((a, i) => placed.slice(0, i).forEach((b) => { expect(apart(a, b)).toBeGreaterThan(4 - 1e-6); }));
    for (const board of placed) {
      const { minX, minY, maxX, maxY } = regionBounds(board)!;
      expect(Math.min(minX, minY, sheet.width - maxX, sheet.height - maxY)).toBeGreaterThan(15 - 1e-6);
    }
    expect(found.bound).toBeCloseTo(placed.reduce((sum, board) => sum + regionArea(board), 0) / sheet.width, 6);
    expect(found.height).toBeCloseTo(Math.max(...placed.map((board) => regionBounds(board)!.maxY)), 6);
    expect(found.height).toBeGreaterThan(found.bound);
  });

  it('lie alike every time, the largest first, at the lower left', () => {
    const boards = [rectangle(5, 5, 100, 50), rectangle(0, 0, 300, 200)];
    expect(nest(boards)).toEqual(nest(boards));
    expect(regionBounds(laid(boards, nest(boards))[1]!)).toMatchObject({ minX: expect.closeTo(15, 6) as number, minY: expect.closeTo(15, 6) as number });
  });

  it('are turned where they fit no other way, unless they may not be', () => {
    const high = [rectangle(0, 0, 200, 1000)];
    expect(nest(high).moves[0]).toBeDefined();
    expect(nest(high, { turn: false }).moves).toEqual([undefined]);
  });

  it('lie in each other’s dents, and in cut-outs', () => {
    const angle: Region = { loops: [[{ x: 0, y: 0 }, { x: 1000, y: 0 }, { x: 1000, y: 100 }, { x: 100, y: 100 }, { x: 100, y: 700 }, { x: 0, y: 700 }]] };
    const frame: Region = { loops: [rectangle(0, 0, 900, 700).loops[0]!, [...rectangle(100, 100, 700, 500).loops[0]!].reverse()] };
    for (const outer of [angle, frame]) {
      const found = nest([outer, rectangle(0, 0, 500, 400)]);
      expect(found.moves.every((move) => move !== undefined)).toBe(true);
      expect(found.height).toBeLessThan(15 + 700 + 1e-6);
    }
  });

  it('fill a sheet with squares but for their distance', () => {
    // 1170 mm inside the edges: 11 squares of 100 mm with 10 mm between them take 1200 mm, 10 take 1090.
    const found = nest(Array.from({ length: 10 }, () => rectangle(0, 0, 100, 100)));
    expect(found.height).toBeLessThan(115 + 1e-6);
  });

  it('leave out what finds no room, and lay the rest', () => {
    const found = nest([rectangle(0, 0, 2000, 100), rectangle(0, 0, 50, 50)]);
    expect(found.moves.map((move) => move !== undefined)).toEqual([false, true]);
  });
});

describe('signs', () => {
  const sign = { board: rectangle(0, 0, 400, 200), channel: EXAMPLE_CHANNEL, holes: [{ centre: { x: 20, y: 20 }, diameter: 6, purpose: 'mounting' as const, slot: { length: 4, angle: 10 } }] };

  it('take their grooves and holes along when they are turned', () => {
    const turned = movedSign(sign, [0, 1, -1, 0, 500, 0]);
    expect(turned.holes[0]).toMatchObject({ centre: { x: 480, y: 20 }, slot: { length: 4, angle: 100 } });
    expect(turned.channel!.centreLines[0]!.start).toEqual({ x: 400, y: 100 });
    expect(regionArea(turned.channel!.region)).toBeCloseTo(regionArea(sign.channel.region), 6);
  });

  it('become one work', () => {
    const both = together([sign, movedSign(sign, [1, 0, 0, 1, 500, 0])]);
    expect([both.board.loops.length, both.channel!.centreLines.length, both.holes.length]).toEqual([2, 2, 2]);
    expect(together([{ board: sign.board, channel: undefined, holes: [] }]).channel).toBeUndefined();
  });
});
