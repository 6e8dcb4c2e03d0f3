import { describe, expect, it } from 'vitest';
import { flattenPath, makeRegionIndex, regionFromLoops, samplePath } from '../../src/geometry/index.ts';
import { type Tracing, traceOutlines } from '../../src/lettering/index.ts';
import { openFace } from './faces/face.ts';
import { judge } from './faces/judge.ts';

const traced = (face: string, text: string): Tracing => traceOutlines(openFace(face).set(text).map(({ outline }) => outline), {}, () => undefined);

/** Whether every place of every stroke lies inside the lettering. */
function staysInside({ strokes, outlines }: Tracing): boolean {
  const index = makeRegionIndex(regionFromLoops(outlines.flatMap(({ paths }) => paths.map((path) => flattenPath(path, 0.02))), 'nonzero'));
  return strokes.every(({ path }) => samplePath(path, 0.5).every(({ point }) => index.contains(point)));
}

describe('letters of typefaces, as a pen would write them', () => {
  it.each([
    ['two strokes that run together into one tip', 'sacramento', 'W'],
    ['a stroke whose course was lost before it met its partner', 'pacifico', 'z'],
    ['a hairline that runs up into the pointed top of a stem', 'great-vibes', 'n'],
  ])('%s: no kink, and nothing outside (%s %s)', (_, face, character) => {
    const tracing = traced(face, character);
    expect([judge(tracing).kinks, staysInside(tracing)]).toEqual([0, true]);
  });

  it('a bar that is broad at the stem it crosses and thinner towards both ends is one stroke', () => {
    expect(traced('dancing-script', 'F').strokes).toHaveLength(3);
  });

  it('so is a hairline that swells into the thick of another stroke and comes out of it on the other side', () => {
    expect(traced('great-vibes', 's').strokes).toHaveLength(3);
  });

  it('a bowl that comes round to the stroke it began as ends on it: six is one stroke', () => {
    expect(traced('patrick-hand', '6').strokes).toHaveLength(1);
  });
});
