import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blockEnds, nextStop, passStarts, previousStop, timeOfLine } from '../../../src/editor/playback/jumps.ts';
import { durationOf, lastAtMost, moveAt, momentAt, programAt, startOf, totalSeconds } from '../../../src/editor/playback/moments.ts';
import { markedAt } from '../../../src/editor/playback/trail.ts';
import { first, program, programs, second } from './fixture.ts';

const rising = fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 60 }).map((steps) => steps.map((sum => (step: number) => (sum += step))(0)));
const anyProgram = fc.array(fc.tuple(fc.integer({ min: 0, max: 5 }), fc.boolean()), { minLength: 1, maxLength: 40 })
  .map((moves) => program(moves.map(([took, up], k) => [k, 2 * k, up ? 10 : -1, took, up ? 0 : 600, k >> 1])));

describe('looking a time up', () => {
  it('finds what looking through all would', () => {
    fc.assert(fc.property(rising, fc.integer({ min: -2, max: 300 }), (numbers, value) => {
      expect(lastAtMost(numbers, value)).toBe(numbers.findLastIndex((number) => number <= value));
    }));
  });

  it('never goes back as time goes on', () => {
    fc.assert(fc.property(anyProgram, fc.array(fc.double({ min: -5, max: 250, noNaN: true }), { minLength: 2, maxLength: 20 }), (one, times) => {
      const found = times.sort((a, b) => a - b).map((time) => moveAt(one, time));
      expect(found.every((move, k) => move >= 0 && move < one.feeds.length && (k === 0 || move >= found[k - 1]!))).toBe(true);
    }));
  });

  it('finds the move whose time it is', () => {
    fc.assert(fc.property(anyProgram, fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }), (one, share) => {
      const time = share * durationOf(one);
      const move = moveAt(one, time);
      expect(one.seconds[move]!).toBeLessThanOrEqual(time);
      if (durationOf(one) > 0) expect(one.seconds[move + 1]!).toBeGreaterThan(time);
    }));
  });

  it('gives a joint of programs to the one that begins, the end to the last', () => {
    expect(programAt(programs, totalSeconds([first]))).toEqual({ program: 1, seconds: 0 });
    expect(programAt(programs, 1e9)).toEqual({ program: 1, seconds: durationOf(second) });
    expect(programAt(programs, -5)).toEqual({ program: 0, seconds: 0 });
    expect(programAt([], 5)).toEqual({ program: 0, seconds: 0 });
  });
});

describe('a moment', () => {
  it('is on the way from place to place', () => {
    expect(momentAt(programs, 10)).toMatchObject({ program: 0, move: 5, x: 25, y: 0, z: -3, feed: 1800, way: 'feed', line: 9, done: 0.5 });
    expect(momentAt(programs, 0.5)).toMatchObject({ x: 0, z: 5, way: 'rapid' });
    expect(momentAt(programs, 2)).toMatchObject({ z: 10, way: 'wait', line: 4 });
    expect(momentAt(programs, totalSeconds(programs))).toMatchObject({ program: 1, x: 5, z: 8, done: 1, line: 4 });
  });

  it('is none where nothing moves', () => {
    expect(momentAt([], 3)).toBeUndefined();
    expect(momentAt([program([])], 3)).toBeUndefined();
  });

  it('moves without leaps', () => {
    for (let t = 0; t < totalSeconds([first]) - 0.01; t += 0.01) {
      const [a, b] = [momentAt([first], t)!, momentAt([first], t + 0.01)!];
      expect(Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z)).toBeLessThan(0.2);
    }
  });
});

describe('jumps', () => {
  const times = (stops: typeof blockEnds) => stops(first).map((k) => first.seconds[k]!);

  it('go by blocks: an arc is one', () => expect(times(blockEnds)).toEqual([0, 1, 4, 5, 6, 8, 12, 13, 14, 16, 19, 20]));

  it('go by passes: from clearance to clearance', () => expect(times(passStarts)).toEqual([0, 1, 13]));

  it('go on through all programs to the end and back to the beginning', () => {
    for (const stops of [blockEnds, passStarts]) {
      const forth = [0];
      while (forth.at(-1)! < totalSeconds(programs)) forth.push(nextStop(programs, forth.at(-1)!, stops));
      const back = [totalSeconds(programs)];
      while (back.at(-1)! > 0) back.push(previousStop(programs, back.at(-1)!, stops));
      expect(back.reverse()).toEqual(forth);
      expect(forth).toContain(durationOf(first));
    }
    expect(nextStop([], 4, blockEnds)).toBe(0);
    expect(previousStop([], 4, blockEnds)).toBe(0);
  });

  it('go to the beginning of what they are in the middle of', () => {
    expect(previousStop(programs, 9, passStarts)).toBe(1);
    expect(previousStop(programs, 10, blockEnds)).toBe(8);
    expect(nextStop(programs, 10, blockEnds)).toBe(12);
  });

  it('go to where a line begins to act, or the next one that does', () => {
    expect(timeOfLine(programs, 0, 9)).toBe(8);
    expect(timeOfLine(programs, 0, 11)).toBe(13);
    expect(timeOfLine(programs, 0, 0)).toBe(0);
    expect(timeOfLine(programs, 0, 17)).toBe(durationOf(first));
    expect(timeOfLine(programs, 1, 3)).toBe(startOf(programs, 1) + 4);
    expect(timeOfLine(programs, 7, 3)).toBe(0);
  });

  it('by line lead to a moment on that line', () => {
    for (const line of new Set(first.lines)) expect(momentAt(programs, timeOfLine(programs, 0, line))?.line).toBe(line);
  });
});

describe('what is drawn over the sheet', () => {
  const at = (seconds: number) => markedAt(first, momentAt([first], seconds)!);

  it('is the cutter where it is', () => expect(at(10).cutter).toEqual({ x: 25, y: 0, z: -3, diameter: 6 }));

  it('is the way of the pass under way up to the cutter, feeds and rapids apart', () => {
    expect([...at(10).trail!.cut]).toEqual([10, 0, 25, 0]);
    expect([...at(10).trail!.rapid]).toEqual([0, 0, 10, 0]);
    expect([...at(17.5).trail!.cut]).toEqual([50, 10, 51.5, 11, 51.5, 11, 51.5, 12]);
    expect([...at(17.5).trail!.rapid]).toEqual([40, 0, 50, 10]);
  });
});
