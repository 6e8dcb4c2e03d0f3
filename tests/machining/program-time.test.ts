import { describe, expect, it } from 'vitest';
import { arcSpeed, cornerSpeed, reachableSpeed, stretchTime } from '../../src/machining/program/motion-law.ts';
import { type Move } from '../../src/machining/job/pass.ts';
import { programTime } from '../../src/machining/program/time.ts';
import { machine as base } from '../support/machines.ts';

const cosine = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
const at = (x: number, y = 0, z = -1) => ({ x, y, z });
const line = (x: number, y = 0, z = -1, feed = 3000): Move => ({ kind: 'line', to: at(x, y, z), feed });
const machine = { ...base, acceleration: 500, rapidRate: 3000, greatestFeed: 6000, cornerDeviation: 0.02 };
const time = (moves: readonly Move[], changes = {}) => programTime(at(0), moves, { ...machine, ...changes });

describe('one stretch at constant acceleration (Biagiotti and Melchiorri 2008, ch. 3)', () => {
  it('a trapezoid: s 100, v 50, a 500', () => expect(stretchTime({ length: 100, speed: 50, entry: 0, exit: 0 }, 500)).toBeCloseTo(2.1, 9));

  it('a triangle: s 2, whose peak is 31.623 mm/s', () => {
    expect(stretchTime({ length: 2, speed: 50, entry: 0, exit: 0 }, 500)).toBeCloseTo(0.12649, 5);
    expect(reachableSpeed(0, 1, 500)).toBeCloseTo(31.623, 3);
  });

  it('entry 20 and exit 10 (kinematics): s 10, v 50', () => {
    expect(stretchTime({ length: 10, speed: 50, entry: 20, exit: 10 }, 500)).toBeCloseTo(0.25, 9);
  });

  it('trapezoid and triangle agree where one becomes the other', () => {
    const just = (length: number) => stretchTime({ length, speed: 50, entry: 0, exit: 0 }, 500);
    expect(just(5 + 1e-9)).toBeCloseTo(just(5 - 1e-9), 8);
  });
});

describe('speed on curves (kinematics; the corner model is common practice)', () => {
  it('on arcs sqrt(a r)', () => {
    expect(arcSpeed(5, 500) * 60).toBeCloseTo(3000, 6);
    expect(arcSpeed(1, 500)).toBeCloseTo(22.361, 3);
    expect(arcSpeed(1, 500) * 60).toBeCloseTo(1341.6, 1);
  });

  it('at corners that of the arc within the deviation: interior angles of 90 and 160 degrees', () => {
    expect(cornerSpeed(cosine(90), 0.02, 500)).toBeCloseTo(4.9135, 4);
    expect(cornerSpeed(cosine(90), 0.02, 500) * 60).toBeCloseTo(294.81, 2);
    expect(cornerSpeed(cosine(20), 0.02, 500)).toBeCloseTo(25.460, 3);
  });

  it('a straight joint costs nothing, a reversal stops', () => {
    expect(cornerSpeed(1, 0.02, 500)).toBe(Infinity);
    expect(cornerSpeed(-1, 0.02, 500)).toBe(0);
  });
});

describe('time of a program', () => {
  it('one move is a trapezoid', () => expect(time([line(100)]).seconds).toBeCloseTo(2.1, 9));

  it('cutting a line into a thousand does not change it', () => {
    const pieces = Array.from({ length: 1000 }, (_, k) => line((k + 1) / 10));
    expect(time(pieces).seconds).toBeCloseTo(2.1, 6);
  });

  it('a reversal costs a full stop', () => expect(time([line(100), line(0)]).seconds).toBeCloseTo(4.2, 9));

  it('a right angle is passed at its corner speed', () => {
    const v = 4.913509;
    const half = stretchTime({ length: 100, speed: 50, entry: 0, exit: v }, 500);
    expect(time([line(100), line(100, 100)]).seconds).toBeCloseTo(2 * half, 6);
  });

  it('without deviation a corner stops', () => {
    expect(time([line(100), line(100, 100)], { cornerDeviation: 0 }).seconds).toBeCloseTo(4.2, 9);
  });

  it('braking reaches back over many short moves', () => {
    // 100 pieces of 0.02 mm hold 2 mm: from rest to rest a triangle, though each piece alone would allow any speed.
    const pieces = Array.from({ length: 100 }, (_, k) => line((k + 1) / 50));
    expect(time(pieces).seconds).toBeCloseTo(0.12649, 4);
  });

  it('a small half circle is limited by its radius, tangent entry keeps the speed either way round', () => {
    const v = arcSpeed(1, 500);
    const legs = stretchTime({ length: 100, speed: 50, entry: 0, exit: v }, 500);
    for (const side of [1, -1]) {
      const half: Move = { kind: 'arc', to: at(100, 2 * side), centre: { x: 100, y: side }, clockwise: side < 0, feed: 3000 };
      expect(time([line(100), half, line(0, 2 * side)]).seconds).toBeCloseTo(2 * legs + Math.PI / v, 6);
    }
  });

  it('never beats the feed, and slows down with less acceleration', () => {
    const moves = [line(30), line(30, 20), line(55, 45), line(0, 0)];
    const length = 30 + 20 + Math.hypot(25, 25) + Math.hypot(55, 45);
    const fast = time(moves, { acceleration: 1e9, cornerDeviation: 1e3 }).seconds;
    expect(fast).toBeGreaterThanOrEqual(length / 50);
    expect(fast).toBeCloseTo(length / 50, 2);
    expect(time(moves, { acceleration: 50 }).seconds).toBeGreaterThan(time(moves).seconds);
  });

  it('feeds above what the machine can do count as what it can do', () => {
    expect(time([line(100, 0, -1, 90000)], { greatestFeed: 3000 }).seconds).toBeCloseTo(2.1, 9);
  });

  it('tells cutting from feeding in the air and from rapids', () => {
    const moves: Move[] = [{ kind: 'rapid', to: at(50, 0, 10) }, line(50, 0, 5), line(50, 0, -2), line(90, 0, -2), line(90, 0, 10), { kind: 'rapid', to: at(90, 0, 20) }];
    const { seconds, cuttingSeconds, rapidSeconds } = programTime(at(0, 0, 10), moves, machine);
    expect(cuttingSeconds).toBeGreaterThan(40 / 50);
    expect(seconds - cuttingSeconds - rapidSeconds).toBeGreaterThan(5 / 50);
    expect(rapidSeconds).toBeGreaterThan(60 / 50);
  });

  it('is nothing for no moves and for moves of no length', () => {
    expect(time([]).seconds).toBe(0);
    expect(time([line(0), line(0)])).toEqual({ seconds: 0, cuttingSeconds: 0, rapidSeconds: 0, ends: [0, 0] });
  });

  it('tells when each move ends, a move of no length when the one before it does', () => {
    const moves = [line(100), line(100), line(100, 100), line(0, 0)];
    const { seconds, ends } = time(moves);
    expect(ends).toHaveLength(4);
    expect(ends[1]).toBe(ends[0]);
    expect(ends[2]).toBeGreaterThan(ends[1]!);
    expect(ends[3]).toBe(seconds);
  });

  it('refuses a machine that cannot move', () => expect(() => time([line(1)], { acceleration: 0 })).toThrow(RangeError));
});
