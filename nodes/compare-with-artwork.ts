import '../src/values/types.ts';
import type { Stroke } from '../src/artwork/index.ts';
import { polylinePath } from '../src/geometry/index.ts';
import { type Comparison, compareWithArtwork } from '../src/lettering/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, type Quantities, atLeast, atMost } from '../src/values/check.ts';
import { straightStroke } from '../src/values/examples.ts';

const BAR = polylinePath([{ x: 0, y: 0 }, { x: 60, y: 0 }, { x: 60, y: 10 }, { x: 0, y: 10 }], true);

export default defineNode({
  name: 'compare-with-artwork',
  title: 'Compare with artwork',
  doc: 'Lays strokes over the artwork they stand for and tells what differs, both ways: artwork that no stroke covers, and strokes beside the artwork. Each stroke is drawn with its own width along it, one that states none as wide as the artwork is on average.',
  inputs: {
    strokes: { type: 'strokes', optional: true, doc: 'Strokes to compare; without them the groove\'s centre lines are.' },
    channel: { type: 'channel', optional: true, doc: 'The groove, to tell what one constant width covers.' },
    outlines: { type: 'outlines', doc: 'The artwork they were made from.' },
  },
  outputs: {
    checks: { type: 'checks', doc: 'Coverage both ways, the artwork\'s centre that is missed, and the largest departures with their places.' },
    quantities: { type: 'quantities', doc: 'The same as figures; with a groove, what that covers too.' },
    uncovered: { type: 'region', doc: 'Artwork that no stroke covers.' },
    outside: { type: 'region', doc: 'Parts of the drawn strokes that lie beside the artwork.' },
  },
  params: {
    leastCovered: { kind: 'number', unit: 'ratio', default: 0.9, min: 0, max: 1, step: 0.01, label: 'Least covered', doc: 'Less of the artwork\'s area covered than this is worth a caution.' },
    mostOutside: { kind: 'number', unit: 'ratio', default: 0.05, min: 0, max: 1, step: 0.01, label: 'Most outside', doc: 'More of the strokes\' area beside the artwork than this is worth a caution.' },
    far: { kind: 'number', unit: 'ratio', default: 0.3, min: 0.01, max: 10, step: 0.05, label: 'Far', doc: 'The artwork\'s centre is missed where it is farther from every stroke than this share of its width there.' },
    mostMissed: { kind: 'number', unit: 'ratio', default: 0.02, min: 0, max: 1, step: 0.01, label: 'Most missed', doc: 'More of the artwork\'s centre missed than this is worth a caution.' },
    departure: { kind: 'number', unit: 'mm', default: 3, min: 0, max: 1000, step: 0.5, label: 'Departure', doc: 'Largest distances beyond this are worth a caution: of artwork from the strokes, of strokes from the artwork, of its centre from the nearest stroke.' },
  },
  examples: [{ title: 'the centre line of a bar', inputs: { strokes: [{ ...straightStroke(5, 5, 55, 5), width: 10 }], channel: undefined, outlines: [{ paths: [BAR], fillRule: 'nonzero' }] } }],
  compute({ strokes, channel, outlines }, { leastCovered, mostOutside, far, mostMissed, departure }, { checkpoint }) {
    const lines = strokes ?? channel?.centreLines.map((path): Stroke => ({ path, width: channel.width }));
    if (lines === undefined) return { ok: false, problems: [{ expected: 'strokes or a groove', found: 'neither', advice: 'Wire the strokes to this node that should be compared.' }] };
    const found = compareWithArtwork(lines, outlines, { far, ...(channel && { channel: channel.region }) }, checkpoint);
    if (found === undefined) return { ok: false, problems: [{ place: 'outlines', expected: 'artwork with some area', found: `${outlines.length} outlines without`, advice: 'Wire the filled artwork to this node.' }] };
    return {
      ok: true,
      outputs: {
        checks: checksOf(found, { leastCovered, mostOutside, mostMissed, departure }), quantities: quantitiesOf(found),
        uncovered: found.strokes.uncoveredRegion, outside: found.strokes.outsideRegion,
      },
      cautions: found.widthless === 0 ? [] : [{ place: 'strokes', expected: 'strokes with a width', found: `${found.widthless} without`, advice: 'They were drawn as wide as the artwork is on average; trace them to know better.' }],
    };
  },
});

/** In percent to two decimals, as people read them. */
const percent = (share: number) => Math.round(share * 10_000) / 100;

type Limits = Readonly<Record<'leastCovered' | 'mostOutside' | 'mostMissed' | 'departure', number>>;

function checksOf({ strokes, centre }: Comparison, limits: Limits): Check[] {
  const look = 'Look at this place: a stroke may be missing or led astray.';
  const shares = { unit: '%', advice: look };
  const lengths = { unit: 'mm', limit: limits.departure, advice: look };
  return [
    atLeast({ ...shares, check: 'artwork-covered', subject: 'Artwork covered by strokes', value: percent(strokes.covered), limit: percent(limits.leastCovered), at: strokes.beyondStrokes.at }, 'caution'),
    atMost({ ...shares, check: 'strokes-outside', subject: 'Strokes beside the artwork', value: percent(strokes.outside), limit: percent(limits.mostOutside), at: strokes.beyondArtwork.at }, 'caution'),
    atMost({ ...shares, check: 'centre-missed', subject: 'Artwork\'s centre far from every stroke', value: percent(centre.missed), limit: percent(limits.mostMissed), at: centre.farthest.at }, 'caution'),
    atMost({ ...lengths, check: 'centre-departure', subject: 'Largest distance from the artwork\'s centre to the nearest stroke', value: centre.farthest.distance, at: centre.farthest.at }, 'caution'),
    atMost({ ...lengths, check: 'artwork-departure', subject: 'Largest distance of artwork beyond the strokes', value: strokes.beyondStrokes.distance, at: strokes.beyondStrokes.at }, 'caution'),
    atMost({ ...lengths, check: 'stroke-departure', subject: 'Largest distance of a stroke beyond the artwork', value: strokes.beyondArtwork.distance, at: strokes.beyondArtwork.at }, 'caution'),
  ];
}

function quantitiesOf({ strokes, channel, centre }: Comparison): Quantities {
  const shares = {
    artworkCovered: strokes.covered, strokesOutside: strokes.outside, centreMissed: centre.missed,
    ...(channel && { artworkInGroove: channel.covered, grooveOutside: channel.outside }),
  };
  const lengths = {
    artworkDeparture: strokes.beyondStrokes.distance, strokeDeparture: strokes.beyondArtwork.distance, centreDeparture: centre.farthest.distance,
    ...(channel && { artworkBeyondGroove: channel.beyondStrokes.distance, grooveBeyondArtwork: channel.beyondArtwork.distance }),
  };
  return Object.fromEntries([
    ...Object.entries(shares).map(([name, share]) => [name, { value: percent(share), unit: '%' }] as const),
    ...Object.entries(lengths).map(([name, value]) => [name, { value, unit: 'mm' }] as const),
  ]);
}
