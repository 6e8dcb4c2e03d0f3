import { expect, it } from 'vitest';
import compareWithArtwork from '../../nodes/compare-with-artwork.ts';
import setWidth from '../../nodes/set-width.ts';
import type { Outline } from '../../src/artwork/index.ts';
import { polylinePath, regionArea } from '../../src/geometry/index.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';
import { line } from '../support/shapes.ts';

const { region, channel } = outputsOf(setWidth, { strokes: [{ path: line([0, 0], [100, 0]) }] }, { width: 40 });
const outlines: Outline[] = [{ paths: region.loops.map((loop) => polylinePath(loop, true)), fillRule: 'nonzero' }];
const strokes = [{ path: line([0, 0], [100, 0]), width: 40 }];

it('passes strokes that cover their artwork', () => {
  const { checks, quantities } = outputsOf(compareWithArtwork, { strokes, channel: undefined, outlines });
  expect(checks.map(({ status }) => status)).toEqual(['pass', 'pass', 'pass', 'pass', 'pass', 'pass']);
  expect(quantities.artworkCovered).toMatchObject({ unit: '%' });
  expect(quantities.artworkCovered!.value).toBeGreaterThan(99.9);
  expect(quantities).not.toHaveProperty('artworkInGroove');
});

it('cautions what is uncovered, outside or far off, each with its place, and shows it', () => {
  const { checks, uncovered, outside } = outputsOf(compareWithArtwork, { strokes: [{ path: line([0, 30], [50, 30]), width: 40 }], channel: undefined, outlines });
  expect(checks.map(({ check, status }) => [check, status])).toEqual([
    ['artwork-covered', 'caution'], ['strokes-outside', 'caution'], ['centre-missed', 'caution'], ['centre-departure', 'caution'], ['artwork-departure', 'caution'], ['stroke-departure', 'caution'],
  ]);
  expect(checks.every(({ at }) => at !== undefined)).toBe(true);
  expect(checks[0]!.says).toMatch(/^Artwork covered by strokes: [\d.]+ %, at least 90 %\. Look/);
  expect(checks[5]!.value).toBeCloseTo(30, 0);
  expect(regionArea(uncovered)).toBeGreaterThan(2000);
  expect(regionArea(outside)).toBeGreaterThan(1000);
});

it('tells what a groove of one width covers, of which the stadium\'s area is known', () => {
  const narrow = outputsOf(setWidth, { strokes }, { width: 20 }).channel;
  const share = (r: number) => 200 * r + Math.PI * r * r;
  const both = outputsOf(compareWithArtwork, { strokes, channel: narrow, outlines });
  expect(both.quantities.artworkInGroove!.value).toBeCloseTo((100 * share(10)) / share(20), 1);
  expect(both.quantities.artworkCovered!.value).toBeGreaterThan(99.9);
  const alone = outputsOf(compareWithArtwork, { strokes: undefined, channel: narrow, outlines });
  expect(alone.quantities.artworkCovered!.value).toBeCloseTo(both.quantities.artworkInGroove!.value, 1);
});

it('says where strokes have no width of their own, and what is missing to compare at all', () => {
  expect(outcomeOf(compareWithArtwork, { strokes: [{ path: line([0, 0], [100, 0]) }], channel: undefined, outlines })).toMatchObject({ ok: true, cautions: [{ found: '1 without' }] });
  expect(problemsOf(compareWithArtwork, { strokes: undefined, channel: undefined, outlines })[0]).toMatchObject({ found: 'neither' });
  expect(problemsOf(compareWithArtwork, { strokes, channel, outlines: [] })[0]).toMatchObject({ place: 'outlines' });
});
