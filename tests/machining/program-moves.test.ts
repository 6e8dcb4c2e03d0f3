import { describe, expect, it } from 'vitest';
import { linkEach, linkPasses } from '../../src/machining/program/link.ts';
import { arcRadius, arcSweep, moveLength, movesReach, pointOnArc, shiftMoves, shiftPass, type ArcMove } from '../../src/machining/job/moves.ts';
import { type Move, type Pass } from '../../src/machining/job/pass.ts';

const at = (x: number, y: number, z = 0) => ({ x, y, z });
const arc = (to: ReturnType<typeof at>, cx: number, cy: number, clockwise: boolean): ArcMove =>
  ({ kind: 'arc', to, centre: { x: cx, y: cy }, clockwise, feed: 1000 });

describe('arcs', () => {
  it('NISTIR 6556, 3.5.3.2: centre, sweep and length of the centre-format example', () => {
    const example = arc(at(10, 16), 10, 11, true);
    expect(arcRadius(at(7, 7), example)).toBe(5);
    expect(arcRadius(example.to, example)).toBe(5);
    expect(arcSweep(at(7, 7), example)).toBeCloseTo(143.13, 2);
    expect(moveLength(at(7, 7), example)).toBeCloseTo(12.490, 3);
    expect(moveLength(at(7, 7, 5), arc(at(10, 16, 9), 10, 11, true))).toBeCloseTo(13.115, 3);
  });

  it('length of arc and helix (any geometry text): r phi, and sqrt((r phi)^2 + dz^2)', () => {
    const end = (135 * Math.PI) / 180;
    expect(moveLength(at(40, 0), arc(at(40 * Math.cos(end), 40 * Math.sin(end)), 0, 0, false))).toBeCloseTo(94.248, 3);
    expect(10 * moveLength(at(2, 0, 0), arc(at(2, 0, -0.5), 0, 0, true))).toBeCloseTo(125.76, 2);
  });

  it('the way round the other side makes up the full turn', () => {
    const [from, to] = [at(3, 1), at(-1, 3)];
    expect(arcSweep(from, arc(to, 0, 0, true)) + arcSweep(from, arc(to, 0, 0, false))).toBeCloseTo(360, 12);
  });

  it('ending where it starts is one full turn', () => expect(arcSweep(at(5, 0), arc(at(5, 0), 0, 0, true))).toBe(360));

  it('points lie on it, in its direction, at evenly changing height', () => {
    const middle = pointOnArc(at(5, 0, 0), arc(at(0, 5, -2), 0, 0, true), 0.5);
    expect(middle.x).toBeCloseTo(-Math.SQRT1_2 * 5, 12);
    expect(middle.y).toBeCloseTo(-Math.SQRT1_2 * 5, 12);
    expect(middle.z).toBe(-1);
  });

  it('a reach holds the bulge, and is no larger', () => {
    const { min, max } = movesReach(at(5, 0, 1), [arc(at(0, 5, -2), 0, 0, true)]);
    expect([min.x, min.y, min.z]).toEqual([-5, -5, -2]);
    expect([max.x, max.y, max.z]).toEqual([5, 5, 1]);
    expect(movesReach(at(5, 0), [arc(at(0, 5), 0, 0, false)]).min).toEqual(at(0, 0));
  });

  it('a reach of sampled points never leaves the reach of the moves, turned by any angle', () => {
    for (let degrees = 0; degrees < 360; degrees += 7) {
      const a = (degrees * Math.PI) / 180;
      const move = arc(at(9 * Math.cos(a + 2.5), 9 * Math.sin(a + 2.5)), 0, 0, degrees % 2 === 0);
      const from = at(9 * Math.cos(a), 9 * Math.sin(a));
      const { min, max } = movesReach(from, [move]);
      const points = Array.from({ length: 721 }, (_, k) => pointOnArc(from, move, k / 720));
      expect(Math.min(...points.map((p) => p.x)) - min.x).toBeCloseTo(0, 3);
      expect(max.y - Math.max(...points.map((p) => p.y))).toBeCloseTo(0, 3);
    }
  });
});

const cutter = { name: 'flat 6', diameter: 6, flutes: 1, chipLoad: 0.1, spindleSpeed: 18000, feedRate: 1800, plungeFeed: 500, depthOfCut: 3, cuttingLength: 20, rampAngle: 3 };
const pass = (x: number, y: number, moves: readonly Move[]): Pass => ({ kind: 'groove', name: `at ${x}`, cutter, start: at(x, y, 2), moves });
const line = (x: number, y: number, z: number): Move => ({ kind: 'line', to: at(x, y, z), feed: 1800 });

describe('linking passes', () => {
  const heights = { clearance: 15, retract: 2 };
  const two = [pass(10, 20, [line(30, 20, -1)]), pass(0, 0, [line(5, 0, -1)])];

  it('lifts first, goes across at clearance, and lifts last', () => {
    expect(linkPasses(two, heights).map(({ kind, to }) => [kind, to.x, to.y, to.z])).toEqual([
      ['rapid', 0, 0, 15], ['rapid', 10, 20, 15], ['rapid', 10, 20, 2], ['line', 30, 20, -1],
      ['rapid', 30, 20, 15], ['rapid', 0, 0, 15], ['rapid', 0, 0, 2], ['line', 5, 0, -1], ['rapid', 5, 0, 15],
    ]);
  });

  it('parks at clearance where asked', () => {
    const moves = linkPasses(two, heights, { x: 0, y: 300 });
    expect(moves.at(-1)).toEqual({ kind: 'rapid', to: at(0, 300, 15) });
    expect(moves.slice(0, -1)).toEqual(linkPasses(two, heights));
  });

  it('stays low only when the next pass starts straight above the end of the last', () => {
    const moves = linkPasses([two[0]!, pass(30, 20, [line(10, 20, -2)])], heights);
    expect(moves.slice(4, 6).map(({ to }) => to)).toEqual([at(30, 20, 2), at(10, 20, -2)]);
  });

  it('never moves sideways by a rapid below clearance', () => {
    let from = at(0, 0, 0);
    for (const move of linkPasses([...two, ...two, pass(5, 0, [])], heights)) {
      if (move.kind === 'rapid' && (move.to.x !== from.x || move.to.y !== from.y)) expect([from.z, move.to.z]).toEqual([15, 15]);
      from = move.to;
    }
  });

  it('keeps each pass apart for its heading', () => {
    expect(linkEach(two, heights).map(({ name }) => name)).toEqual(['at 10', 'at 0']);
    expect(linkEach(two, heights).flatMap(({ moves }) => moves)).toEqual(linkPasses(two, heights));
  });

  it('makes nothing of nothing', () => expect(linkPasses([], heights)).toEqual([]));
});

describe('shifting', () => {
  it('moves ends, centres and starts, not heights', () => {
    const moved = shiftPass(pass(1, 2, [arc(at(5, 0, -1), 0, 0, true)]), 10, -4);
    expect(moved.start).toEqual(at(11, -2, 2));
    expect(moved.moves).toEqual([arc(at(15, -4, -1), 10, -4, true)]);
    expect(shiftMoves(moved.moves, -10, 4)).toEqual([arc(at(5, 0, -1), 0, 0, true)]);
  });
});
