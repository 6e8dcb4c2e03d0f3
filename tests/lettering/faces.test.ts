import { describe, expect, it } from 'vitest';
import { flattenPath, regionArea, regionBounds, regionFromLoops } from '../../src/geometry/index.ts';
import { CHARACTERS, CORPUS, PHRASES } from './faces/corpus.ts';
import { EM, openFace } from './faces/face.ts';
import { penStrokes } from './faces/pen-strokes.ts';

describe.each(CORPUS)('$name', ({ name, weight, hand }) => {
  const face = openFace(name, weight);

  it('has an outline for every letter and digit, of a letter\'s size', () => {
    for (const character of CHARACTERS) {
      const loops = face.set(character).flatMap(({ outline }) => outline.paths.map((path) => flattenPath(path, 0.05)));
      const region = regionFromLoops(loops, 'nonzero');
      const { minY, maxY } = regionBounds(region)!;
      expect(regionArea(region), character).toBeGreaterThan(100);
      expect(maxY - minY, character).toBeGreaterThan(EM / 8);
      expect(maxY - minY, character).toBeLessThan(2 * EM);
      expect(penStrokes(hand, character).length, character).toBeGreaterThan(0);
    }
  });

  it('sets the phrases from left to right', () => {
    for (const phrase of PHRASES) {
      const places = face.set(phrase).map(({ outline }) => outline.paths[0]!.start.x);
      expect(places.length).toBeGreaterThan(0.6 * phrase.length);
      expect(places.at(-1)! - places[0]!).toBeGreaterThan(3 * EM);
    }
  });
});

it('shaping changes glyphs by their neighbours where a script asks for it', () => {
  const face = openFace('caveat');
  const alone = (character: string) => face.set(character)[0]!.glyph;
  const together = face.set('letter tattoo').map(({ glyph }) => glyph);
  expect(new Set(together).size).toBeGreaterThan(new Set([...'letrao'].map(alone)).size);
});
