import '../src/values/types.ts';
import { EDGE_DIAMETERS, type Hole, type HoleDistances, holeDistances } from '../src/machining/index.ts';
import { backTemplate, MOST_PAGES } from '../src/papers/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atLeast, atLeastGraded } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_STOCK } from '../src/values/examples.ts';

const mounting = (x: number): Hole => ({ centre: { x, y: 130 }, diameter: 6, purpose: 'mounting' });

export default defineNode({
  name: 'hidden-stand-offs',
  title: 'Hidden stand-offs',
  doc: 'Plans fixings that are not seen from the front: sockets in the back that do not go through the face, for stand-offs that are glued or screwed in. They are in no program: they are drilled by hand with a depth stop, through a template of the back in full size, mirrored, that this node writes as a PDF. Do not wire their places to passes, which would go through the face.',
  inputs: {
    places: { type: 'holes', many: true, doc: 'Where stand-offs go, from drill patterns for mounting; of these only the places count.' },
    cables: { type: 'holes', many: true, optional: true, doc: 'Holes that go through the board, such as those for cables: sockets keep clear of them, and the template shows them.' },
    board: { type: 'region', doc: 'The board.' },
    channel: { type: 'channel', optional: true, doc: 'The groove in the face.' },
    stock: { type: 'stock', doc: 'The sheet, for its thickness.' },
  },
  outputs: {
    checks: { type: 'checks', doc: 'What sockets leave in front of them, and to grooves, holes and the edge.' },
    quantities: { type: 'quantities', doc: 'How many sockets, and how deep.' },
    files: { type: 'files', doc: 'The template of the back.' },
  },
  params: {
    diameter: { kind: 'number', unit: 'mm', default: 8, min: 1, max: 100, step: 0.1, label: 'Socket diameter', doc: 'Diameter of each socket, for the stand-off\'s pin with glue or thread.' },
    depth: { kind: 'number', unit: 'mm', default: 6, min: 0.5, max: 100, step: 0.5, label: 'Socket depth', doc: 'How deep sockets go from the back.' },
    leastFloor: { kind: 'number', unit: 'mm', default: 3, min: 0.5, max: 100, step: 0.5, label: 'Least floor', doc: 'Least material left in front of a socket, and between socket and groove, at the thinnest sheet; 3 mm is common practice, no source.' },
    refuseWall: { kind: 'number', unit: 'mm', default: 3, min: 0, max: 100, step: 0.5, label: 'Refuse walls under', doc: 'Less material between a socket and another hole fails the check (common practice, no source).' },
    cautionWall: { kind: 'number', unit: 'mm', default: 5, min: 0, max: 100, step: 0.5, label: 'Caution under', doc: 'Less material between a socket and another hole is worth a caution (common practice, no source).' },
    paper: { kind: 'choice', options: ['A4', 'US Letter'], default: 'A4', label: 'Paper', doc: 'Size of the template\'s pages.' },
    name: { kind: 'text', default: 'sign', maxLength: 60, label: 'Name', doc: 'What the work is called; on every page.' },
    file: { kind: 'text', default: 'back-template.pdf', maxLength: 80, label: 'File name', doc: 'Name of the template\'s file.' },
  },
  examples: [{
    title: 'two sockets above a groove',
    inputs: { places: [[mounting(80), mounting(320)]], cables: [], board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, stock: EXAMPLE_STOCK },
  }],
  compute({ places, cables, board, channel, stock }, { diameter, depth, leastFloor, refuseWall, cautionWall, paper, name, file }) {
    const sockets = places.flat().map(({ centre }): Hole => ({ centre, diameter, purpose: 'mounting' }));
    const through = cables.flat();
    const template = backTemplate({ paper, name, board, holes: [...sockets, ...through.filter(({ purpose }) => purpose === 'cable')], depth, floor: leastFloor });
    if (!template.ok) return { ok: false, problems: [PROBLEMS[template.why]] };
    const thinnest = stock.thickness - stock.thicknessTolerance;
    const found = holeDistances([...sockets, ...through], board, channel?.region ?? { loops: [] }).slice(0, sockets.length);
    const between = ({ groove }: HoleDistances) => apart(groove, thinnest - depth - (channel?.depth ?? 0));
    return {
      ok: true,
      outputs: {
        checks: [
          atLeast({ check: 'socket-floor', subject: 'Material left in front of the sockets at the thinnest sheet', value: thinnest - depth, limit: leastFloor, unit: 'mm', advice: 'Make shallower sockets or take a thicker sheet.' }),
          ...worst(found, between, (value, at) => atLeast({ check: 'socket-to-groove', subject: 'Least material between a socket and the groove', value, limit: leastFloor, unit: 'mm', at, advice: 'Move this socket away from the groove, or make it shallower.' })),
          ...worst(found, ({ edge }) => edge / diameter, (value, at) => atLeastGraded({ check: 'socket-to-edge', subject: 'Least distance from a socket\'s centre to the edge, in its diameters', value, unit: '', at, advice: 'Move this socket inwards.' }, EDGE_DIAMETERS)),
          ...worst(found, ({ neighbour }) => neighbour, (value, at) => atLeastGraded({ check: 'socket-to-hole', subject: 'Least wall between a socket and another hole', value, unit: 'mm', at, advice: 'Move this socket.' }, { refuse: refuseWall, caution: cautionWall })),
        ],
        quantities: { sockets: { value: sockets.length, unit: 'count' }, socketDepth: { value: depth, unit: 'mm' } },
        files: [{ path: file, base64: template.base64 }],
      },
    };
  },
});

/** Material between a socket and the groove, mm: `beside` along the board (negative where they overlap), `above` through it; negative where one opens into the other. */
function apart(beside: number, above: number): number {
  if (above <= 0) return beside <= 0 ? Math.max(beside, above) : beside;
  return Math.hypot(Math.max(0, beside), above);
}

type Place = { readonly x: number; readonly y: number };

/** Judges the socket with the least of a distance; nothing to judge where none has one. */
function worst(all: readonly HoleDistances[], measure: (one: HoleDistances) => number, judge: (value: number, at: Place) => Check): Check[] {
  const finite = all.filter((one) => Number.isFinite(measure(one)));
  if (finite.length === 0) return [];
  const least = finite.reduce((a, b) => (measure(b) < measure(a) ? b : a));
  return [judge(measure(least), least.hole.centre)];
}

const PROBLEMS: Readonly<Record<'no holes' | 'no board' | 'too large', Problem>> = {
  'no holes': { place: 'places', expected: 'at least one place for a stand-off', found: 'none', advice: 'Wire a drill pattern for mounting to this node.' },
  'no board': { place: 'board', expected: 'a board', found: 'an empty region', advice: 'Wire the board\'s outline to this node.' },
  'too large': { place: 'board', expected: `a template of at most ${MOST_PAGES} pages`, found: 'more', advice: 'Mark out a board as large as this by its list of holes and a tape.' },
};
