import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsePathData } from '../../../src/artwork/path-data.ts';
import { type Box, type Path, applyToPath, flattenPath, makeSegmentIndex, multiply, pathBounds, rotation, scaling, translation } from '../../../src/geometry/index.ts';
import type { Wiring } from '../../../src/lighting/index.ts';
import { type Hole, type Pass, type SetUp, displaceMoves } from '../../../src/machining/index.ts';
import type { PortType } from '../../../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_CUTTER, EXAMPLE_LIGHTING, EXAMPLE_MACHINE, EXAMPLE_MATERIALS, EXAMPLE_PRICE, EXAMPLE_RATES, EXAMPLE_STOCK, EXAMPLE_STRIP, EXAMPLE_TUBE } from '../../../src/values/examples.ts';
import { type Carried, type Picture, atLeast, pictureOf, spotsOf, thumbnailOf } from '../../../src/values/index.ts';
import { LAYER_KINDS, LAYER_ORDER } from '../../../src/values/layer-kinds.ts';
import { tilingAt } from '../../machining/set-ups-fixture.ts';
import { circle, line } from '../../support/shapes.ts';

const of = (type: PortType, value: unknown, port: string = type): Carried => ({ port, type, value });
const layers = ({ layers: all }: Picture) => all.map(({ kind, name, items }) => `${kind} ${name} ${items.length}`);
const titles = ({ layers: all }: Picture) => all.flatMap(({ items }) => items.map(({ title }) => title));
const data = ({ layers: all }: Picture) => all.flatMap(({ items }) => items.map(({ d }) => d));

/** What the drawing reader makes of path data whose y axis points up. */
const readBack = (d: string): Path[] => parsePathData(d, { keepArcs: true, tolerance: 1e-6 }, 1e6).subpaths.map(({ path }) => path);
/** The greatest distance from a place on one path to the nearest on others, but for the chords' own deviation. */
function farthest(from: Path, to: readonly Path[], tolerance: number): number {
  const chords = to.flatMap((path) => {
    const points = flattenPath(path, tolerance);
    return points.flatMap((point, i) => (i > 0 ? [{ from: points[i - 1]!, to: point }] : []));
  });
  const index = makeSegmentIndex(chords);
  return Math.max(...flattenPath(from, tolerance).map((point) => index.nearest(point, 1e6)?.distance ?? Infinity));
}

/** A line, a clockwise arc of three quarters, and a cubic. */
const mixed: Path = {
  start: { x: 0, y: 0 }, closed: false,
  segments: [
    { kind: 'line', end: { x: 50, y: 0 } }, { kind: 'arc', end: { x: 30, y: 20 }, centre: { x: 30, y: 0 }, clockwise: true },
    { kind: 'cubic', control1: { x: 20, y: 40 }, control2: { x: -20, y: 40 }, end: { x: -10, y: 10 } },
  ],
};

const holes: Hole[] = [{ centre: { x: 5, y: 6 }, diameter: 8, purpose: 'cable' }, { centre: { x: 20, y: 6 }, diameter: 6, purpose: 'mounting' }];
const pass: Pass = {
  kind: 'groove', name: 'groove 1', cutter: EXAMPLE_CUTTER, start: { x: 10, y: 0, z: 2 },
  moves: [
    { kind: 'line', to: { x: 10, y: 0, z: -1 }, feed: 500 }, { kind: 'line', to: { x: 40, y: 0, z: -3 }, feed: 1800 },
    { kind: 'arc', to: { x: 40, y: 20, z: -3 }, centre: { x: 40, y: 10 }, clockwise: false, feed: 1800 },
  ],
};
const drilled: Pass = { ...pass, name: 'hole 1', start: { x: 80, y: 80, z: 2 }, moves: [{ kind: 'line', to: { x: 80, y: 80, z: -12 }, feed: 300 }] };
const program = {
  file: 'programs/set-up-1-cutter-1.ngc', cutter: EXAMPLE_CUTTER, kinds: [], text: '(one)\nG21\nM2\n', minutes: 2.04, cuttingMinutes: 1, blocks: 3, seconds: [], spindleStart: 0,
  reach: { min: { x: 0, y: 0, z: 0 }, max: { x: 0, y: 0, z: 0 } },
  moves: [
    { kind: 'rapid', to: { x: 0, y: 0, z: 10 } }, { kind: 'rapid', to: { x: 10, y: 0, z: 10 } }, { kind: 'rapid', to: { x: 10, y: 0, z: 2 } }, ...pass.moves,
    { kind: 'rapid', to: { x: 40, y: 20, z: 10 } },
  ],
} as const;
const setups: SetUp[] = [{ name: 'Set-up 1', shift: [100, 50], programs: [program] }];
const checks = [
  atLeast({ check: 'a', value: 2, limit: 1, unit: 'mm', subject: 'A', advice: 'No.' }), atLeast({ check: 'b', value: 0, limit: 1, unit: 'mm', subject: 'B', advice: 'Widen it.' }),
  atLeast({ check: 'c', value: 0, limit: 1, unit: 'mm', subject: 'C', advice: 'Look.' }, 'caution'),
];

const size = { name: '0.5 mm²', area: 0.5, ohmsPerKm: 39, ampacity: 3 };
const wiring: Wiring = {
  supplies: [{ at: { x: 50, y: 20 }, ratedWatts: 15, watts: 2, amps: 0.1, fuse: 1, runs: [0] }], drops: [0.1],
  wires: [{ kind: 'feed', run: 0, place: 0, from: { x: 50, y: 20 }, to: { x: 100, y: 100 }, length: 500, size, amps: 0.1, drop: 0.1 }],
};

/** One value of each type with something in it. */
const VALUES: { readonly [T in PortType]: unknown } = {
  number: 12.5, text: 'open\nlate', strokes: [{ path: mixed, confidence: 0.4, doubts: [{ at: { x: 1, y: 1 }, says: 'could turn' }] }, { path: line([0, 0], [0, 412]) }], outlines: [{ paths: [circle(0, 0, 9)], fillRule: 'nonzero' }],
  junctions: { frame: { origin: { x: 0, y: 0 }, size: 100 }, junctions: [{ at: { x: 9, y: 9 }, radius: 4, arms: [{ stroke: 0, at: { x: 5, y: 9 } }], pairs: [] }], ends: [] },
  tiling: {
    tiles: [
      { name: 'set-up 1', column: 0, row: 0, core: { minX: 0, minY: 0, maxX: 60, maxY: 90 }, window: { minX: 0, minY: 0, maxX: 66, maxY: 90 }, shift: [0, 0] },
      { name: 'set-up 2', column: 1, row: 0, core: { minX: 60, minY: 0, maxX: 120, maxY: 90 }, window: { minX: 54, minY: 0, maxX: 120, maxY: 90 }, shift: [54, 0] },
    ],
    seams: [{ axis: 'x', at: 60, crossings: [{ at: { x: 60, y: 30 }, angle: 90 }], cost: 1 }], lap: 6, travel: [70, 100],
  },
  registration: {
    pins: [{ at: { x: 8, y: 5 }, diameter: 6 }], clearance: 0.02, pitchError: 0.05, steps: [],
    dowels: [{ hole: { centre: { x: 62, y: 5 }, diameter: 6, purpose: 'dowel', slot: { length: 2, angle: 90 } }, pin: 0, drilledIn: 0, usedIn: 1, lies: 'waste' }],
  },
  holding: { holdDowns: [{ kind: 'screw', at: { x: 10, y: 10 }, keepOut: 20, height: 5 }], areas: [{ kind: 'tape', region: EXAMPLE_BOARD }], supports: [{ setUp: 1, axis: 'x', at: 300, length: 200 }] },
  region: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, holes, stock: EXAMPLE_STOCK, cutter: EXAMPLE_CUTTER, machine: EXAMPLE_MACHINE, passes: [pass, drilled],
  tabs: [{ centre: { x: 1, y: 2 }, width: 8, height: 2.5 }], 'set-ups': setups, checks, quantities: { strip: { value: 2.84, unit: 'm' } },
  materials: EXAMPLE_MATERIALS, rates: EXAMPLE_RATES, price: EXAMPLE_PRICE, files: [{ path: 'note.txt', text: 'abc' }], strip: EXAMPLE_STRIP, tube: EXAMPLE_TUBE,
  lighting: { ...EXAMPLE_LIGHTING, dark: [{ stroke: 0, at: { x: 9, y: 9 }, length: 5, why: 'meets' }], wiring },
  image: { png: 'iVBORw==', small: 'iVBO', columns: 2, rows: 1, box: { minX: 0, minY: 0, maxX: 20, maxY: 10 }, says: 'a sign' },
};
const EMPTY: Partial<Record<PortType, unknown>> = {
  strokes: [], outlines: [], junctions: { frame: { origin: { x: 0, y: 0 }, size: 1 }, junctions: [], ends: [] }, region: { loops: [] }, channel: { ...EXAMPLE_CHANNEL, centreLines: [], region: { loops: [] } },
  tiling: { tiles: [], seams: [], lap: 6, travel: [70, 100] }, registration: { pins: [], dowels: [], clearance: 0, pitchError: 0, steps: [] },
  holding: { holdDowns: [], areas: [], supports: [] }, holes: [], passes: [], tabs: [], 'set-ups': [],
  lighting: { ...EXAMPLE_LIGHTING, runs: [] }, checks: [], quantities: {}, files: [], text: '',
};
const TYPES = Object.keys(VALUES) as PortType[];

describe.each(TYPES)('a picture of %s', (type) => {
  const carried = of(type, VALUES[type]);

  it('has the layers its type is known for, in drawing order, and a box if it has any', () => {
    const small = thumbnailOf([carried], 400);
    for (const picture of [pictureOf([carried]), small]) {
      const kinds = picture.layers.map(({ kind }) => kind);
      expect(kinds).toEqual(LAYER_ORDER.filter((kind) => LAYER_KINDS[type].includes(kind) && !(picture === small && kind === 'doubts')));
      expect(picture.box !== undefined).toBe(kinds.length > 0);
      if (kinds.length === 0) expect(picture.lines.join('')).not.toBe('');
    }
  });

  it('is plain data without a number that is none', () => {
    const picture = pictureOf([carried]);
    expect(structuredClone(picture)).toEqual(picture);
    expect(JSON.stringify(picture)).not.toMatch(/NaN|Infinity|undefined|null/);
  });

  it('has titles when exact, none when small', () => {
    for (const title of titles(pictureOf([carried]))) expect(title).toMatch(/\w/);
    expect(titles(thumbnailOf([carried], 400)).filter((title) => title !== undefined)).toEqual([]);
  });
});

it.each(Object.entries(EMPTY))('an empty value draws nothing and says so in words: %s', (type, value) => {
  for (const picture of [pictureOf([of(type as PortType, value)]), thumbnailOf([of(type as PortType, value)], 400)]) {
    expect(picture).toMatchObject({ layers: [] });
    expect(picture.box).toBeUndefined();
    expect(picture.lines.length).toBeGreaterThan(0);
  }
});

it('of nothing is empty', () => expect([pictureOf([]), thumbnailOf([], 400)]).toEqual([{ layers: [], lines: [] }, { layers: [], lines: [] }]));

describe('exact pictures', () => {
  it('keep lines, arcs and cubics, with short numbers', () => {
    expect(data(pictureOf([of('strokes', [{ path: mixed }])]))).toEqual(
      ['M0 0L50 0A20 20 0 0 0 30 -20A20 20 0 0 0 10 0A20 20 0 0 0 30 20C20 40 -20 40 -10 10'],
    );
    expect(data(pictureOf([of('region', { loops: [[{ x: 0.00001, y: -0.00001 }, { x: 1 / 3, y: 0 }, { x: 1e-7, y: 2 }]] })]))).toEqual(['M0 0L0.3333 0L0 2Z']);
  });

  it('draw a full circle as arcs that none of them could be told from nothing', () => {
    const [d] = data(pictureOf([of('holes', holes)]));
    expect(d).toBe('M9 6A4 4 0 0 1 5 10A4 4 0 0 1 1 6A4 4 0 0 1 5 2A4 4 0 0 1 9 6Z');
  });

  it.each([[0, 1], [33, 1], [90, 12], [201, 0.03]])('are read as the same curves by a reader of drawings, turned by %s degrees and scaled by %s', (degrees, factor) => {
    const path = applyToPath(multiply(translation(70, -300), multiply(rotation(degrees), scaling(factor))), mixed);
    const [d] = data(pictureOf([of('strokes', [{ path }])]));
    const tolerance = 1e-3 * factor;
    expect(farthest(path, readBack(d!), tolerance)).toBeLessThan(2 * tolerance + 1e-3);
    expect(farthest(readBack(d!)[0]!, [path], tolerance)).toBeLessThan(2 * tolerance + 1e-3);
  });

  it('draw a single point as a line of no length', () => {
    const point: Path = { start: { x: 3, y: 4 }, segments: [], closed: false };
    expect(pictureOf([of('strokes', [{ path: point }])])).toMatchObject({ layers: [{ items: [{ d: 'M3 4L3 4', title: 'stroke 1, 0 mm' }] }], box: { minX: 3, maxY: 4 } });
    expect(data(thumbnailOf([of('strokes', [{ path: point }])], 400))).toEqual(['M3 4L3 4']);
  });

  it('tell where a stroke begins and which way it sets off, past a piece of no length', () => {
    const late: Path = { start: { x: 1, y: 2 }, segments: [{ kind: 'line', end: { x: 1, y: 2 } }, { kind: 'line', end: { x: 1, y: -8 } }], closed: false };
    const items = pictureOf([of('strokes', [{ path: late }, { path: mixed }])]).layers[0]!.items;
    expect(items.map(({ start }) => start)).toEqual([{ at: [1, 2], along: [0, -1] }, { at: [0, 0], along: [1, 0] }]);
    expect(items[1]!.title).toMatch(/^stroke 2, \d+\.?\d? mm$/);
    expect(pictureOf([of('holes', holes)]).layers[0]!.items.some((item) => 'start' in item)).toBe(false);
  });

  it('name a region as the port it travels on, and holes by what they are for', () => {
    expect(layers(pictureOf([of('region', EXAMPLE_BOARD, 'board')]))).toEqual(['region board 1']);
    expect(titles(pictureOf([of('holes', holes)]))).toEqual(['cable hole 1, 8 mm', 'mounting hole 2, 6 mm']);
  });

  it('keep the fill rule of outlines that need one', () => {
    const outlines = (['nonzero', 'evenodd'] as const).map((fillRule) => ({ paths: [circle(0, 0, 9)], fillRule }));
    expect(pictureOf([of('outlines', outlines)]).layers[0]!.items.map(({ fillRule }) => fillRule)).toEqual(['nonzero', undefined]);
  });

  it('show passes apart from rapids, one item a pass, the ways between them straight', () => {
    const picture = pictureOf([of('passes', [pass, drilled])]);
    expect(layers(picture)).toEqual(['rapids rapids 1', 'passes passes 2']);
    expect(data(picture)).toEqual(['M40 20L80 80', 'M10 0L40 0A10 10 0 0 1 50 10A10 10 0 0 1 40 20', 'M80 80L80 80']);
    expect(titles(picture).slice(1)).toEqual(['pass 1, groove 1, 3 mm deep', 'pass 2, hole 1, 12 mm deep']);
  });

  it('show the ways between passes within each set-up alone, for in between the sheet is moved', () => {
    const picture = pictureOf([of('passes', [{ ...pass, setUp: 0 }, { ...drilled, setUp: 0 }, { ...pass, setUp: 1 }])]);
    expect(picture.layers.map(({ items }) => items.map(({ setUps }) => setUps))).toEqual([[[0]], [[0], [0], [1]]]);
    expect(data(picture)[0]).toBe('M40 20L80 80');
  });

  it('show corrected programs where they cut the sheet, not where the machine goes', () => {
    const plain = setups[0]!;
    const correction = { degrees: 90, shift: [7, -3] as const };
    const displaced = { ...plain, correction, programs: plain.programs.map((program) => ({ ...program, moves: displaceMoves(program.moves, correction) })) };
    expect(data(pictureOf([of('set-ups', [displaced])])).at(-1)).toBe(data(pictureOf([of('set-ups', [plain])])).at(-1));
  });

  it('show what each set-up cuts, and seams, only where there are several', () => {
    const tiling = tilingAt({ width: 300, height: 100 }, [100], []);
    const [tiles, seams] = pictureOf([of('tiling', tiling)]).layers;
    expect(tiles!.items.map(({ label, setUps, title }) => [label, setUps, title])).toEqual([
      ['set-up 1', [0], 'set-up 1 cuts x 0 to 106, y 0 to 100 mm'], ['set-up 2', [1], 'set-up 2 cuts x 94 to 300, y 0 to 100 mm'],
    ]);
    expect(seams!.items.map(({ d, label, setUps }) => [d, label, setUps])).toEqual([['M100 0L100 100', 'seam 1', undefined]]);
    expect(pictureOf([of('tiling', tilingAt({ width: 300, height: 100 }, [], []))]).layers).toEqual([]);
  });

  it('show pins where the machine has them, dowel holes in the set-up that drills them, and what holds the sheet', () => {
    const registration = {
      pins: [{ at: { x: 10, y: 20 }, diameter: 6 }], clearance: 0, pitchError: 0, steps: [], corrections: [],
      dowels: [{ hole: { centre: { x: 110, y: 20 }, diameter: 6, purpose: 'dowel', setUp: 0, slot: { length: 1, angle: 0 } }, pin: 0, drilledIn: 0, usedIn: 1, lies: 'waste' }],
    };
    const [dowels, pins] = pictureOf([of('registration', registration)]).layers;
    expect(dowels!.items.map(({ setUps, title }) => [setUps, title])).toEqual([[[0], 'dowel slot 1, 6 mm, in the waste: drilled in set-up 1, on pin 1 in set-up 2']]);
    expect(pins!.items.map(({ fixed, label }) => [fixed, label])).toEqual([[true, 'pin 1']]);
    const holding = {
      holdDowns: [{ kind: 'screw', at: { x: 5, y: 5 }, keepOut: 20, height: 6, setUps: [0, 1] }], areas: [],
      supports: [{ setUp: 1, axis: 'x', at: 250, length: 100 }, { setUp: 0, axis: 'y', at: 90, length: 300 }],
    };
    const [bars, discs] = pictureOf([of('holding', holding)]).layers;
    expect(bars!.items.map(({ d, setUps }) => [d, setUps])).toEqual([['M250 0L250 100', [1]], ['M0 90L300 90', [0]]]);
    expect(discs!.items.map(({ setUps, title }) => [setUps, title])).toEqual([[[0, 1], 'screw 1, keep out 20 mm, 6 mm high, in set-up 1 and 2']]);
  });

  it('show programs in sheet coordinates: the shift is added', () => {
    const picture = pictureOf([of('set-ups', setups)]);
    expect(data(picture)).toEqual(['M100 50L110 50', 'M110 50L140 50A10 10 0 0 1 150 60A10 10 0 0 1 140 70']);
    expect(picture.box).toEqual({ minX: 100, minY: 50, maxX: 150, maxY: 70 });
    const two = pictureOf([of('set-ups', [...setups, { ...setups[0]!, name: 'Set-up 2' }])]);
    expect(two.layers.map(({ name, items }) => [name, items.map(({ setUps }) => setUps)])).toEqual([['rapids', [[0], [1]]], ['passes', [[0], [1]]]]);
    expect(picture.layers.flatMap(({ items }) => items.map((item) => item.setUps))).toEqual([undefined, undefined]);
  });

  it('merge layers of one kind and name, and put a box around everything', () => {
    const picture = pictureOf([of('holes', holes), of('stock', EXAMPLE_STOCK), of('holes', [{ ...holes[0]!, centre: { x: -9, y: 0 } }])]);
    expect(layers(picture)).toEqual(['sheet sheet 1', 'holes holes 3']);
    expect(picture.box).toEqual({ minX: -13, minY: -4, maxX: 400, maxY: 200 });
  });

  it('are made once for each value: asked again they are the very same layers', () => {
    const carried = of('channel', { ...EXAMPLE_CHANNEL });
    expect(pictureOf([carried]).layers[0]!.items[0]).toBe(pictureOf([carried]).layers[0]!.items[0]);
    expect(pictureOf([of('region', EXAMPLE_BOARD, 'one')]).layers[0]!.name).toBe('one');
    expect(pictureOf([of('region', EXAMPLE_BOARD, 'other')]).layers[0]!.name).toBe('other');
  });
});

describe('lines of text', () => {
  const lines = (type: PortType, value: unknown = VALUES[type]) => pictureOf([of(type, value)]).lines;

  it('tell checks worst first, each with its state as a word', () => {
    expect(lines('checks')).toEqual(['fail: B: 0 mm, at least 1 mm. Widen it.', 'caution: C: 0 mm, at least 1 mm. Look.', 'pass: A: 2 mm, at least 1 mm.']);
  });

  it('tell numbers, texts, quantities and files', () => {
    expect([lines('number', 0.1 + 0.2), lines('text'), lines('quantities'), lines('files')]).toEqual([['0.3'], ['open', 'late'], ['strip: 2.84 m'], ['note.txt, 3 characters']]);
  });

  it('tell a cutter by name, size and feeds', () => expect(lines('cutter').join('\n')).toMatch(/6 mm cutter\ndiameter 6 mm, 1 flute.*\n[^]*feed 1800 mm\/min/));

  it('tell set-ups by their programs and the first lines of the first one', () => {
    expect(lines('set-ups')).toEqual(['Set-up 1: programs/set-up-1-cutter-1.ngc, 2 min', '(one)', 'G21', 'M2', '']);
  });

  it('are few and short in a thumbnail, however many there are', () => {
    const many = Array.from({ length: 900 }, () => 'x'.repeat(500)).join('\n');
    expect(lines('text', many).length).toBe(400);
    const small = thumbnailOf([of('text', many)], 400).lines;
    expect(small.length).toBe(12);
    expect(small.at(-1)).toBe('and 889 more');
    expect(Math.max(...small.map(({ length }) => length))).toBe(120);
  });
});

describe('thumbnails', () => {
  const size = (picture: Picture) => JSON.stringify(picture).length;
  const wavy = (count: number): Path => line(...Array.from({ length: count }, (_, i) => [i * 0.02, 40 * Math.sin(i / 300)] as const));

  it('stay within a few dots of the value, at any size, place and turn', () => {
    fc.assert(fc.property(fc.integer({ min: -180, max: 180 }), fc.constantFrom(1e-3, 0.1, 1, 40), (degrees, factor) => {
      const path = applyToPath(multiply(translation(300 * factor, 0), multiply(rotation(degrees), scaling(factor))), mixed);
      const { minX, minY, maxX, maxY } = pathBounds(path) as Box;
      const dot = Math.max(maxX - minX, maxY - minY) / 400;
      const [d] = data(thumbnailOf([of('strokes', [{ path }])], 400));
      expect(d).not.toMatch(/[AC]/);
      expect(farthest(path, readBack(d!), dot / 20)).toBeLessThan(1.5 * dot);
    }), { numRuns: 20 });
  });

  it('need few characters for many points', () => {
    const loop = Array.from({ length: 20_000 }, (_, i) => ({ x: (400 + Math.sin(i / 50)) * Math.cos((i * Math.PI) / 1e4), y: (200 + Math.sin(i / 50)) * Math.sin((i * Math.PI) / 1e4) }));
    expect(size(pictureOf([of('region', { loops: [loop] })]))).toBeGreaterThan(300_000);
    expect(size(thumbnailOf([of('region', { loops: [loop] })], 400))).toBeLessThan(10_000);
    expect(size(thumbnailOf([of('strokes', [{ path: wavy(50_000) }])], 400))).toBeLessThan(10_000);
  });

  it('stay small for thousands of strokes', () => {
    const strokes = Array.from({ length: 5000 }, (_, i) => ({ path: line([(i * 37) % 1000, (i * 91) % 600], [(i * 37) % 1000 + 30, (i * 91) % 600 + 20]) }));
    expect(size(thumbnailOf([of('strokes', strokes)], 400))).toBeLessThan(40_000);
  });

  it('draw what lies on the same place once, however often it is cut', () => {
    const levels = Array.from({ length: 50 }, (): Pass => pass);
    expect(data(thumbnailOf([of('passes', levels)], 400)).at(-1)).toBe(data(thumbnailOf([of('passes', [pass])], 400)).at(-1));
  });

  it('leave marks upon strokes away, but not where they are all there is', () => {
    const junctions = of('junctions', VALUES.junctions);
    expect(layers(thumbnailOf([of('strokes', VALUES.strokes), junctions], 400))).toEqual(['strokes strokes 1']);
    expect(layers(thumbnailOf([junctions], 400))).toEqual(['junctions junctions 1']);
    expect(layers(pictureOf([of('strokes', VALUES.strokes)]))).toEqual(['strokes strokes 2', 'doubts doubts 1']);
    expect(layers(pictureOf([of('strokes', [{ path: mixed, doubts: [] }])]))).toEqual(['strokes strokes 1']);
  });

  it('put the lines of a layer into one item, and leave outlines apart, which overlap', () => {
    expect(layers(thumbnailOf([of('strokes', VALUES.strokes)], 400))).toEqual(['strokes strokes 1']);
    const outlines = [circle(0, 0, 9), circle(5, 0, 9)].map((path) => ({ paths: [path], fillRule: 'nonzero' }));
    expect(layers(thumbnailOf([of('outlines', outlines)], 400))).toEqual(['outlines outlines 2']);
  });
});

describe('spots', () => {
  it('are places of hold-downs and of supports by axis, each with the set-ups it is there in', () => {
    const holding = {
      holdDowns: [{ kind: 'screw', at: { x: 5, y: 5 }, keepOut: 20, height: 6, setUps: [0] }, { kind: 'screw', at: { x: 5.001, y: 5 }, keepOut: 20, height: 6, setUps: [1] }, { kind: 'clamp', at: { x: 9, y: 0 }, keepOut: 20, height: 6 }],
      areas: [], supports: [{ setUp: 0, axis: 'x', at: 250, length: 100 }, { setUp: 1, axis: 'x', at: 250, length: 100 }, { setUp: 1, axis: 'y', at: 90, length: 300 }],
    };
    expect(spotsOf([of('holding', holding)])).toEqual({ 'holding.down': [[5, 5, [0, 1]], [9, 0]], 'holding.x': [[250, 50, [0, 1]]], 'holding.y': [[150, 90, [1]]] });
  });


  it('are the middles of seams by port and axis', () => {
    const tile = { name: '', column: 0, row: 0, core: { minX: 0, minY: 0, maxX: 100, maxY: 60 }, window: { minX: 0, minY: 0, maxX: 106, maxY: 66 }, shift: [0, 0] };
    const tiles = [tile, { ...tile, core: { minX: 100, minY: -4, maxX: 200, maxY: 80 } }];
    const seams = [{ axis: 'x', at: 100 }, { axis: 'y', at: 60 }].map((seam) => ({ ...seam, crossings: [], cost: 0 }));
    expect(spotsOf([of('tiling', { tiles, seams, lap: 6, travel: [110, 70] })])).toEqual({ 'tiling.x': [[100, 38]], 'tiling.y': [[100, 60]] });
  });

  it('are the centres of holes by port', () => {
    expect(spotsOf([of('stock', EXAMPLE_STOCK), of('holes', holes, 'cable'), of('holes', [], 'none')])).toEqual({ cable: [[5, 6], [20, 6]], none: [] });
  });
});
