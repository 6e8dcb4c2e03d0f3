import { beforeAll, describe, expect, it } from 'vitest';
import type { Outline, Stroke } from '../../../src/artwork/index.ts';
import { applyToPath, pathLength, polylinePath } from '../../../src/geometry/index.ts';
import { frameOf, type JunctionMap, type Repair, repairStrokes, toFrame, traceOutlines } from '../../../src/lettering/index.ts';
import { openFace } from '../faces/face.ts';
import { departure, difference, isWhole, scaled, sharpestKink } from './strokes.ts';

const WORD = 'ster';

/** A word in a script whose letters run into one another, of a size in mm relative to the face's own. */
function outlines(factor: number): Outline[] {
  return openFace('pacifico').set(WORD).map(({ outline }) => ({ ...outline, paths: outline.paths.map((path) => applyToPath([factor, 0, 0, factor, 0, 0], path)) }));
}

const traced = (factor: number): readonly Stroke[] => traceOutlines(outlines(factor), { tolerance: 0.02 * factor }, () => undefined).strokes;

/** Edits of all kinds, at junctions and strokes as they lie in the word. */
function editsFor(strokes: readonly Stroke[]): Repair[] {
  const { frame, junctions, ends } = repairStrokes(strokes, []).junctions;
  const place = (at: { x: number; y: number }) => toFrame(frame, at);
  const near = (x: number, y: number) => ({ x: frame.origin.x + x * frame.size, y: frame.origin.y + y * frame.size });
  const crossing = junctions.find(({ arms }) => arms.length === 4)!;
  const tee = junctions.findLast(({ arms, pairs }) => arms.length === 3 && pairs.length === 1)!;
  const lone = tee.arms.findIndex((_, i) => !tee.pairs.flat().includes(i));
  return [
    { act: 'pair', places: [crossing.at, crossing.arms[0]!.at, crossing.arms[1]!.at].map(place) },
    { act: 'pair', places: [tee.at, tee.arms[lone]!.at, tee.arms[tee.pairs[0]![0]]!.at].map(place) },
    { act: 'move', places: [ends[0]!.at, { x: ends[0]!.at.x - 0.01 * frame.size, y: ends[0]!.at.y + 0.01 * frame.size }].map(place) },
    { act: 'split', places: [place(junctions[2]!.arms[0]!.at)] },
    { act: 'delete', places: [place(ends.at(-1)!.at)] },
    { act: 'add', places: [ends[1]!.at, near(0.4, 0.5), near(0.5, 0.45)].map(place) },
    { act: 'join', places: [ends[2]!.at, ends[3]!.at].map(place) },
  ];
}

describe('edits on a traced word', () => {
  let strokes: readonly Stroke[];
  let edits: Repair[];
  let repaired: readonly Stroke[];
  let map: JunctionMap;
  let pen: number;
  beforeAll(() => {
    strokes = traced(1);
    edits = editsFor(strokes);
    const result = repairStrokes(strokes, edits);
    expect(result.missed).toEqual([]);
    repaired = result.strokes;
    map = result.junctions;
    pen = repaired[0]!.widths![0]!.width;
  }, 60_000);

  it('all find what they are done to, and change it', () => {
    expect(difference(strokes, repaired)).toBeGreaterThan(pen / 4);
  });

  it('leave strokes that are whole, without a kink, with widths along all of them', () => {
    for (const stroke of repaired) {
      expect(isWhole(stroke)).toBe(true);
      expect(sharpestKink(stroke.path)).toBeLessThan(1);
      const alongs = stroke.widths!.map(({ along }) => along);
      expect(alongs).toEqual([...alongs].sort((a, b) => a - b));
      expect(alongs[0]).toBeCloseTo(0, 6);
      expect(alongs.at(-1)! / pathLength(stroke.path)).toBeCloseTo(1, 1);
    }
  });

  it.each([[0.1, 0, 0], [10, -300, 70], [1, 5000, -2000]])('give the same strokes when what comes in is %f times as large and shifted', (factor, dx, dy) => {
    const other = repairStrokes(scaled(strokes, factor, [dx, dy]), edits).strokes;
    expect(difference(scaled(other, 1 / factor, [-dx / factor, -dy / factor]), repaired)).toBeLessThan(0.005 * pen);
  });

  it('give the same strokes when the word is set in another size and traced anew', () => {
    const larger = traced(1.7);
    expect(larger).toHaveLength(strokes.length);
    const result = repairStrokes(larger, edits);
    expect(result.missed).toEqual([]);
    expect(difference(scaled(result.strokes, 1 / 1.7), repaired)).toBeLessThan(0.05 * pen);
  });

  it('do not care in which order or direction strokes come', () => {
    const turned = [...strokes].reverse();
    expect(difference(repairStrokes(turned, edits).strokes, repaired)).toBeLessThan(0.005 * pen);
  });

  it('keep strokes they do not touch, as they are', () => {
    expect(strokes.filter((stroke) => repaired.includes(stroke)).length).toBeGreaterThan(0);
  });

  it('and tell junctions of which every arm lies on its stroke', () => {
    const { frame, junctions, ends } = map;
    expect(junctions.length).toBeGreaterThan(3);
    for (const { arms, pairs } of junctions) {
      expect(arms.length).toBeGreaterThan(1);
      for (const arm of arms) expect(departure(polylinePath([arm.at], false), repaired[arm.stroke]!.path)).toBeLessThan(0.005 * pen);
      for (const [a, b] of pairs) expect(arms[a]!.stroke).toBe(arms[b]!.stroke);
    }
    expect(ends.length).toBeGreaterThan(0);
    expect(frame).toEqual(frameOf(strokes));
  });
});
