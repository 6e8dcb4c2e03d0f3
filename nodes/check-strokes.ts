import '../src/values/types.ts';
import { crumbs, grooveStrands, overlaps, thinWalls } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, atMost } from '../src/values/check.ts';
import { EXAMPLE_CHANNEL } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-strokes',
  title: 'Check strokes',
  doc: 'Looks for slips of the pen: strokes that nearly touch, strokes that lie on top of each other, and crumbs too small to be meant or to stand.',
  inputs: { channel: { type: 'channel', doc: 'The groove.' } },
  outputs: { checks: { type: 'checks', doc: 'Near touches, overlaps and crumbs, each with a place.' } },
  params: {
    nearly: { kind: 'number', unit: 'mm', default: 2, min: 0, max: 100, step: 0.5, label: 'Nearly touching', doc: 'Grooves nearer than this probably should meet.' },
    longestOverlap: { kind: 'number', unit: 'mm', default: 40, min: 0, max: 1000, step: 1, label: 'Longest overlap', doc: 'Strokes may run on top of each other this far, as where an arch leaves its stem.' },
    crumbArea: { kind: 'number', unit: 'mm2', default: 20, min: 0, max: 10000, step: 1, label: 'Crumb area', doc: 'Smaller islands of material inside the groove, and smaller pieces of groove, are crumbs.' },
  },
  examples: [{
    title: 'one stroke has nothing to touch',
    inputs: { channel: EXAMPLE_CHANNEL },
  }],
  compute({ channel }, { nearly, longestOverlap, crumbArea }) {
    const strands = grooveStrands(channel.centreLines, channel.width);
    const near = thinWalls(strands, channel.width, nearly);
    const [overlap] = overlaps(strands, channel.width);
    const small = crumbs(channel.region, crumbArea);
    const count = (check: string, found: readonly { readonly at: Finding }[], subject: string, advice: string): Check =>
      atMost({ check, value: found.length, limit: 0, unit: 'count', ...(found[0] && { at: found[0].at }), subject, advice }, 'caution');
    return {
      ok: true,
      outputs: {
        checks: [
          count('strokes-nearly-touch', near, `Places where grooves come nearer than ${nearly} mm`, 'Look at each place: if the strokes should meet, join them with “Join ends” in “Repair strokes”; if not, move them apart with “Move”.'),
          atMost({ check: 'strokes-overlap', value: overlap?.length ?? 0, limit: longestOverlap, unit: 'mm', ...(overlap && { at: overlap.at }), subject: 'Longest stretch of one stroke on top of another', advice: 'If the line was drawn or traced twice, take one away with “Delete” in “Repair strokes”. Where one stroke is meant to run out along another, allow a longer overlap.' }, 'caution'),
          count('crumbs', small, `Pieces smaller than ${crumbArea} mm2`, 'Look at each place: a small island of material breaks out when it is cut, so move the strokes beside it with “Move” in “Repair strokes”; a small groove is a stray mark, so take it away with “Delete”.'),
        ],
      },
    };
  },
});

type Finding = NonNullable<Parameters<typeof atMost>[0]['at']>;
