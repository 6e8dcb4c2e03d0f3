import { describe, expect, it } from 'vitest';
import { applyToPath, distance, type Affine, pathEnd, regionFromLoops, rotation, scaling } from '../../src/geometry/index.ts';
import { type Tracing, traceOutlines } from '../../src/lettering/index.ts';
import { type Track } from '../../src/lettering/track.ts';
import { uncoveredParts } from '../../src/lettering/uncovered.ts';
import { openFace } from './faces/face.ts';
import * as truth from './truth/index.ts';

const traced = (outlines: Tracing['outlines']): Tracing => traceOutlines(outlines, {}, () => undefined);
const lettered = (face: string, text: string): Tracing => traced(openFace(face).set(text).map(({ outline }) => outline));

/** A straight stroke of width 10 and 100 long, and an axis that leaves it at x = 50 for so many mm, its discs of one radius. */
const stem = traced(truth.stadium().outlines).strokes;
function branch(long: number, radius: number): Track {
  const y = Array.from({ length: long + 1 }, (_, i) => i);
  return { x: y.map(() => 50), y, radius: y.map(() => radius), left: y, right: y, along: y };
}

describe('parts that no stroke covers', () => {
  it('are those whose middle lies outside of the strokes, the farther the thinner they are', () => {
    const count = (long: number, radius: number) => uncoveredParts([branch(long, radius)], stem, 10).length;
    // Half-width 5: as broad a part may lie 0.3 of it outside, one half as broad twice as far, a mere corner anywhere.
    expect([count(6, 5), count(7, 5), count(7, 2.5), count(9, 2.5), count(40, 0.5)]).toEqual([0, 1, 0, 1, 0]);
  });

  it('are told by a place in their middle and by the stroke they lie beside; near ones are one', () => {
    const [part] = uncoveredParts([branch(27, 5), branch(25, 5)], stem, 10);
    expect(part).toEqual({ at: { x: 50, y: 17 }, stroke: 0 });
    expect(uncoveredParts([branch(27, 5), branch(25, 5)], stem, 10)).toHaveLength(1);
    expect(uncoveredParts([branch(27, 5)], [], 10)).toEqual([]);
  });

  it.each([truth.rectangle(), truth.slantedEnd(60), truth.flaredEnd(), truth.wedge(60), truth.crossing(10), truth.crossing(90), truth.tee(30), truth.letterM(), truth.letterK(), truth.word()])('$name has none', ({ outlines }) => {
    expect(traced(outlines).uncovered).toEqual([]);
  });

  it('make the stroke beside them doubt', () => {
    const { strokes, uncovered } = lettered('patrick-hand', 'G');
    expect(uncovered).toHaveLength(1);
    expect(strokes.flatMap(({ doubts }) => doubts.map(({ at }) => at))).toContainEqual(uncovered[0]);
  });

  it('are the same however the lettering is turned and scaled', () => {
    const outlines = openFace('patrick-hand').set('G').map(({ outline }) => outline);
    const moved = (by: Affine) => traced(outlines.map((outline) => ({ ...outline, paths: outline.paths.map((path) => applyToPath(by, path)) }))).uncovered.length;
    expect([moved(rotation(0.7)), moved(scaling(0.01)), moved(scaling(-1, 1))]).toEqual([1, 1, 1]);
  });
});

describe('feet of letters', () => {
  it.each([['pacifico', 'l'], ['pacifico', 'a'], ['caveat', 's'], ['great-vibes', 'W'], ['great-vibes', '2']])('%s %s: a stroke runs on into every foot', (face, character) => {
    expect(lettered(face, character).uncovered).toEqual([]);
  });

  it('a hook is followed to its end, whichever way the stem is drawn', () => {
    const shape = truth.hookedFoot(120);
    const tip = pathEnd(shape.strokes[0]!.path);
    for (const { outlines } of [shape, { outlines: shape.outlines.map(({ paths }) => truth.asOutline(regionFromLoops(paths.map((path) => [...path.segments.map(({ end }) => end)].reverse()), 'nonzero'))) }]) {
      const [stroke] = traced(outlines).strokes;
      expect(Math.min(distance(stroke!.path.start, tip), distance(pathEnd(stroke!.path), tip))).toBeLessThan(0.05);
    }
  });
});
