import { describe, expect, it } from 'vitest';
import { distance, leastRadius, pathEnd, pathLength, polylinePath } from '../../../src/geometry/index.ts';
import type { Stroke } from '../../../src/artwork/index.ts';
import { frameOf, repairStrokes } from '../../../src/lettering/index.ts';
import { at, curve, departure, difference, line, repaired, scaled, sharpestKink } from './strokes.ts';

const wave = curve(0, 0, 30, 60, 70, -60, 100, 0);
const cross = [line([0, 50], [100, 50]), line([50, 0], [50, 100])];
const tee = [line([0, 50], [100, 50]), line([50, 50], [50, 0])];
const ring: Stroke = { path: { start: at(50, 0), segments: [{ kind: 'arc', end: at(-50, 0), centre: at(0, 0), clockwise: false }, { kind: 'arc', end: at(50, 0), centre: at(0, 0), clockwise: false }], closed: true }, width: 10 };

describe('split', () => {
  it('cuts the nearest stroke where it is nearest to the place, and leaves the others', () => {
    const { strokes, done } = repaired([wave, line([0, 40], [100, 40])], ['split', [50, 3]]);
    expect(done).toBe(1);
    expect(strokes).toHaveLength(3);
    expect(distance(pathEnd(strokes[0]!.path), strokes[1]!.path.start)).toBe(0);
    expect(strokes[2]!).toEqual(line([0, 40], [100, 40]));
  });

  it.each([0.1, 1, 10])('reaches two widths far, at %f times the size', (factor) => {
    const strokes = scaled([wave], factor);
    const cut = (y: number) => repairStrokes(strokes, [{ act: 'split', places: [{ x: 0.5, y }] }]).done;
    const middle = frameOf([wave]);
    expect([0.18, 0.26].map((off) => cut((0 - middle.origin.y) / middle.size + off))).toEqual([1, 0]);
  });

  it('opens a closed stroke', () => {
    const { strokes } = repaired([ring], ['split', [0, 50]]);
    expect(strokes).toHaveLength(1);
    expect(strokes[0]!.path.closed).toBe(false);
    expect(pathLength(strokes[0]!.path)).toBeCloseTo(100 * Math.PI, 6);
    expect(distance(strokes[0]!.path.start, at(0, 50))).toBeLessThan(0.02);
  });

  it('cuts nothing off at an end', () => {
    expect(repaired([wave], ['split', [0, 0]])).toMatchObject({ done: 0, missed: [{ edit: 0, act: 'split' }] });
  });
});

describe('join', () => {
  it('gives back the stroke that was cut, segment by segment', () => {
    const { strokes } = repaired([wave], ['split', [30, 8]], ['join', [30, 8], [30, 8]]);
    expect(strokes).toHaveLength(1);
    expect(strokes[0]!.path.segments).toHaveLength(1);
    const [segment] = strokes[0]!.path.segments;
    expect(segment).toMatchObject({ control1: { x: expect.closeTo(30, 9), y: expect.closeTo(60, 9) }, control2: { x: expect.closeTo(70, 9), y: expect.closeTo(-60, 9) }, end: at(100, 0) });
    expect(repaired([line([0, 0], [90, 0])], ['split', [30, 0]], ['join', [30, 0], [30, 0]]).strokes).toEqual([line([0, 0], [90, 0])]);
  });

  it('leads over a gap without a kink', () => {
    const { strokes } = repaired([line([0, 0], [40, 0]), curve(60, 10, 70, 15, 80, 30, 80, 60)], ['join', [40, 0], [60, 10]]);
    expect(strokes).toHaveLength(1);
    expect(sharpestKink(strokes[0]!.path)).toBeLessThan(1e-6);
  });

  it('rounds a corner with about the radius of the pen', () => {
    const { strokes } = repaired([line([0, 0], [60, 0]), line([60, 0], [60, 60])], ['join', [60, 0], [60, 0]]);
    expect(strokes).toHaveLength(1);
    expect(sharpestKink(strokes[0]!.path)).toBeLessThan(1e-6);
    expect(leastRadius(strokes[0]!.path).radius).toBeGreaterThan(9);
  });

  it('closes a stroke whose two ends it takes', () => {
    const open = line([0, 0], [60, 0], [60, 60], [0, 60], [0, 10]);
    const { strokes } = repaired([open], ['join', [0, 0], [0, 10]]);
    expect(strokes[0]!.path.closed).toBe(true);
    expect(distance(strokes[0]!.path.start, pathEnd(strokes[0]!.path))).toBeLessThan(1e-9);
  });

  it('takes ends along that lay where it rounds a corner', () => {
    const { strokes, junctions } = repaired([line([0, 0], [60, 0]), line([60, 0], [60, 60]), line([60, 0], [100, -40])], ['join', [57, 0], [60, 3]]);
    expect(strokes).toHaveLength(2);
    expect(departure(polylinePath([strokes[1]!.path.start], false), strokes[0]!.path)).toBeLessThan(0.02);
    expect(junctions.junctions).toHaveLength(1);
  });
});

describe('pair', () => {
  const left = [40, 50] as const, right = [60, 50] as const, up = [50, 60] as const, down = [50, 40] as const, middle = [50, 50] as const;

  it('leads the arms of a crossing past each other, and back', () => {
    const there = repaired(cross, ['pair', middle, left, up]);
    expect(there.strokes).toHaveLength(2);
    expect(there.strokes.map(({ path }) => Math.max(sharpestKink(path)))).toEqual([expect.closeTo(0, 6), expect.closeTo(0, 6)]);
    expect(difference(there.strokes, cross)).toBeGreaterThan(5);
    const back = repaired(cross, ['pair', middle, left, up], ['pair', middle, left, right]);
    expect(difference(back.strokes, cross)).toBeLessThan(0.02);
    const other = repaired(cross, ['pair', middle, left, down], ['pair', middle, up, left]);
    expect(difference(other.strokes, there.strokes)).toBeLessThan(0.1);
  });

  it('leaves a junction to take hold of where strokes were led past each other', () => {
    const { at: place, arms, pairs } = repaired(cross, ['pair', middle, left, up]).junctions.junctions[0]!;
    expect(place).toEqual(at(50, 50));
    expect(arms).toHaveLength(4);
    expect(pairs.map(([a, b]) => arms[a]!.stroke === arms[b]!.stroke)).toEqual([true, true]);
  });

  it('does nothing to arms that are one stroke already', () => {
    expect(repaired(cross, ['pair', middle, left, right]).strokes).toEqual(cross);
  });

  it('ends the stem\'s other half on the new stroke where an arm of a T leads on into it', () => {
    const { strokes, junctions } = repaired(tee, ['pair', middle, down, left]);
    expect(strokes).toHaveLength(2);
    expect(Math.max(...strokes.map(({ path }) => sharpestKink(path)))).toBeLessThan(1e-6);
    expect(junctions.junctions).toHaveLength(1);
    expect(junctions.ends).toHaveLength(3);
  });

  it('closes the loop of a stroke that crosses itself when its ends lead on', () => {
    const loop = curve(0, 0, 120, 100, -20, 100, 100, 0);
    const map = repaired([loop]).junctions.junctions;
    expect(map).toHaveLength(1);
    const { at: place, arms } = map[0]!;
    expect(arms).toHaveLength(4);
    const lower = arms.filter((arm) => arm.at.y < place.y).map((arm) => [arm.at.x, arm.at.y] as const);
    const { strokes } = repaired([loop], ['pair', [place.x, place.y], lower[0]!, lower[1]!]);
    expect(strokes.map(({ path }) => path.closed).sort()).toEqual([false, true]);
  });
});

describe('move', () => {
  it('moves the place to where it should be, bends its neighbourhood smoothly and leaves the rest as it is', () => {
    const long = curve(0, 0, 20, 0, 30, 0, 50, 0, 100, 0, 150, 0, 200, 0, 220, 0, 230, 0, 250, 0);
    const { strokes } = repaired([long], ['move', [120, 0], [122, 9]]);
    const { path } = strokes[0]!;
    expect(departure(polylinePath([at(122, 9)], false), path)).toBeLessThan(0.02);
    expect(sharpestKink(path)).toBeLessThan(1e-6);
    expect(path.segments[0]).toEqual(long.path.segments[0]);
    expect(path.segments.at(-1)).toEqual(long.path.segments.at(-1));
  });

  it('by nothing is nothing', () => {
    expect(repaired([wave], ['move', [30, 8], [30, 8]]).strokes).toEqual([wave]);
  });

  it('takes an end along, and all of a short stroke', () => {
    expect(repaired([wave], ['move', [100, 0], [105, 10]]).strokes[0]!.path.start).toEqual(at(0, 0));
    expect(distance(pathEnd(repaired([wave], ['move', [100, 0], [105, 10]]).strokes[0]!.path), at(105, 10))).toBeLessThan(1e-9);
    const short = repaired([line([0, 0], [20, 0]), wave], ['move', [20, 0], [10, 30]]).strokes[0]!;
    expect(departure(short.path, line([0, 0], [10, 30]).path)).toBeLessThan(1e-6);
  });

  it('keeps an end on the stroke it lies on', () => {
    const { strokes, junctions } = repaired(tee, ['move', [46, 50], [46, 62]]);
    expect(junctions.junctions).toHaveLength(1);
    expect(departure(polylinePath([strokes[1]!.path.start], false), strokes[0]!.path)).toBeLessThan(0.05);
    const held = repaired(tee, ['move', [20, 50], [20, 58]]);
    expect(held.strokes[1]).toEqual(tee[1]);
  });

  it('takes an end along that lies where the stroke bends', () => {
    const { strokes, junctions } = repaired(tee, ['move', [40, 50], [40, 68]]);
    expect(strokes[1]!.path.start.y).toBeGreaterThan(60);
    expect(departure(polylinePath([strokes[1]!.path.start], false), strokes[0]!.path)).toBeLessThan(0.1);
    expect(pathEnd(strokes[1]!.path)).toEqual(at(50, 0));
    expect(junctions.junctions).toHaveLength(1);
  });

  it('moves a junction with all its strokes', () => {
    const { strokes } = repaired(cross, ['move', [50, 50], [55, 58]]);
    for (const { path } of strokes) expect(departure(polylinePath([at(55, 58)], false), path)).toBeLessThan(0.02);
    expect(strokes.map(({ path }) => path.start)).toEqual(cross.map(({ path }) => path.start));
  });
});

describe('delete', () => {
  it('takes the piece between junctions and leaves the rest byte for byte', () => {
    const bar = curve(0, 50, 20, 50, 30, 50, 50, 50, 60, 50, 80, 50, 100, 50);
    const { strokes } = repaired([bar, cross[1]!], ['delete', [80, 50]]);
    expect(strokes).toHaveLength(2);
    expect(strokes[0]!.path.segments).toEqual(bar.path.segments.slice(0, 1));
    expect(strokes[1]).toBe(cross[1]);
  });

  it('takes a whole piece also when the place is where strokes meet', () => {
    for (const place of [[50, 50], [50, 0]] as const) expect(repaired([line([0, 50], [100, 50]), line([50, 50], [50, 0])], ['delete', place]).strokes.map(({ path }) => pathLength(path)).reduce((a, b) => a + b)).toBe(100);
  });

  it('takes a stroke without junctions whole', () => {
    expect(repaired([wave, line([0, 80], [100, 80])], ['delete', [50, 0]]).strokes).toEqual([line([0, 80], [100, 80])]);
    expect(repaired([ring], ['delete', [50, 0]]).strokes).toEqual([]);
  });

  it('takes the middle between two junctions, and a part of a closed stroke', () => {
    const ladder = [line([0, 0], [100, 0]), line([30, -20], [30, 20]), line([70, -20], [70, 20])];
    expect(repaired(ladder, ['delete', [50, 0]]).strokes.map(({ path }) => pathLength(path))).toEqual([30, 30, 40, 40]);
    const { strokes } = repaired([ring, line([-70, 0], [70, 0])], ['delete', [0, 50]]);
    expect(strokes[0]!.path.closed).toBe(false);
    expect(pathLength(strokes[0]!.path)).toBeCloseTo(50 * Math.PI, 2);
    expect(strokes[0]!.path.segments[0]!.end.y).toBeLessThan(1);
  });
});

describe('add', () => {
  it('draws a smooth stroke through all places', () => {
    const { strokes } = repaired([line([0, 0], [100, 0])], ['add', [10, 20], [30, 40], [60, 30], [90, 50]]);
    const { path } = strokes[1]!;
    for (const [x, y] of [[10, 20], [30, 40], [60, 30], [90, 50]] as const) expect(departure(polylinePath([at(x, y)], false), path)).toBeLessThan(0.001);
    expect(sharpestKink(path)).toBeLessThan(1e-6);
    expect(strokes[1]!.width).toBe(10);
  });

  it('draws ends near a stroke or an end to it', () => {
    const { strokes, junctions } = repaired([line([0, 0], [100, 0])], ['add', [50, 4], [50, 40], [104, 1]]);
    expect(strokes[1]!.path.start).toEqual(at(50, 0));
    expect(pathEnd(strokes[1]!.path)).toEqual(at(100, 0));
    expect(junctions.junctions).toHaveLength(2);
  });

  it('closes a stroke that comes back', () => {
    const { strokes } = repaired([line([0, 0], [100, 0])], ['add', [20, 20], [60, 20], [60, 60], [20, 60], [21, 22]]);
    expect(strokes[1]!.path.closed).toBe(true);
    expect(sharpestKink(strokes[1]!.path)).toBeLessThan(1e-6);
  });
});

describe('what goes along', () => {
  const doubtful: Stroke[] = [
    { ...cross[0]!, confidence: 0.1, doubts: [{ at: at(50, 50), says: 'here' }], widths: [{ along: 0, width: 8 }, { along: 100, width: 12 }] },
    { ...cross[1]!, confidence: 0.1, doubts: [{ at: at(50, 50), says: 'here' }, { at: at(50, 95), says: 'there' }], widths: [{ along: 0, width: 10 }, { along: 100, width: 10 }] },
  ];

  it('doubts where a person decided are settled, those elsewhere stay with their piece', () => {
    const { strokes } = repaired(doubtful, ['pair', [50, 50], [40, 50], [50, 60]]);
    const [up, down] = [strokes.find(({ path }) => Math.max(path.start.y, pathEnd(path).y) > 90)!, strokes.find(({ path }) => Math.min(path.start.y, pathEnd(path).y) < 10)!];
    expect(up.doubts).toEqual([{ at: at(50, 95), says: 'there' }]);
    expect(up.confidence).toBe(0.1);
    expect(down.doubts).toEqual([]);
    expect(down.confidence).toBe(0.5);
  });

  it('widths are those the pieces had, as far along as they now are', () => {
    const { strokes } = repaired(doubtful, ['split', [25, 50]]);
    expect(strokes[0]!.widths).toEqual([{ along: 0, width: 8 }, { along: expect.closeTo(25, 9), width: expect.closeTo(9, 9) }]);
    expect(strokes[1]!.widths).toEqual([{ along: 0, width: expect.closeTo(9, 9) }, { along: expect.closeTo(75, 9), width: 12 }]);
    const [{ path, widths }] = repaired(doubtful.slice(0, 1), ['move', [100, 50], [140, 50]]).strokes as [Stroke];
    expect(widths!.at(-1)).toEqual({ along: expect.closeTo(pathLength(path), 6), width: 12 });
  });

  it('on nothing, every act finds nothing', () => {
    const { strokes, missed } = repaired([], ['split', [0, 0]], ['join', [0, 0], [1, 1]], ['pair', [0, 0], [1, 1], [2, 2]], ['move', [0, 0], [1, 1]], ['delete', [0, 0]], ['add', [0, 0], [1, 1]]);
    expect(strokes).toEqual([]);
    expect(missed).toHaveLength(6);
  });
});
