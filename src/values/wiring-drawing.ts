import { type DrawingGroup, type DrawingItem, writeDrawing } from '../artwork/index.ts';
import { type Box, type Path, type Point, applyToPath, boxOfPoints, growBox, loopsBounds, multiply, pathBounds, pathEnd, polylinePath, scaling, translation, unionBoxes } from '../geometry/index.ts';
import type { Region } from '../geometry/region.ts';
import type { LightRun, Lighting, Supply, WirePair, Wiring } from '../lighting/types.ts';
import type { Hole } from '../machining/job/hole.ts';
import { amount } from './check.ts';

/** What lies round the wiring. */
interface Around {
  readonly board: Region | undefined;
  readonly holes: readonly Hole[];
}

/** Lengths on the page, mm. */
const [MARGIN, TEXT, LEADING, SUPPLY] = [20, 6, 9, 10];
/** A line of text is about so wide as its letters are high, letter by letter. */
const LETTER = 0.55;

/** Runs are told apart by number and by dashes, never by colour alone. */
const DASHES: readonly (readonly number[])[] = [[], [14, 4], [6, 3], [14, 3, 3, 3], [3, 2]];
const dashOf = (run: number): readonly number[] => DASHES[run % DASHES.length]!;

const CAUTIONS = [
  'Estimates. The mains side only by a licensed person; local code decides.',
  'Fuse each supply at its output as stated: it protects the thinnest wire behind it. Mark polarity, relieve strain.',
  'Signs: EN 50107-3:2018 (LED signs up to 1000 V), IEC 60598-1; in the USA NFPA 70 article 600, article 725 for Class 2.',
] as const;

/**
 * The wiring as an SVG drawing seen from behind, in mm: the board and its holes mirrored, strip with its run's number and direction from + and -,
 * jumpers, feeds, supplies, and a table of supplies and wires below.
 */
export function wiringDrawing(lighting: Lighting & { readonly wiring: Wiring }, { board, holes }: Around): string {
  const notes = notesOf(lighting);
  const box = growBox(drawnBox(lighting, board, holes), MARGIN);
  const below = (notes.length + 1) * LEADING;
  const width = Math.max(box.maxX - box.minX, ...notes.map((note) => note.length * TEXT * LETTER + 2 * MARGIN));
  const mirror = multiply(translation(box.maxX, below - box.minY), scaling(-1, 1));
  const place = ({ x, y }: Point): Point => ({ x: box.maxX - x, y: y + below - box.minY });
  const turned = { path: (path: Path) => applyToPath(mirror, path), place };
  const groups: DrawingGroup[] = [
    { id: 'board', items: board ? [{ kind: 'region', region: { loops: board.loops.map((loop) => loop.map(place).reverse()) }, style: OUTLINE }] : [] },
    { id: 'holes', items: holes.map(({ centre, diameter }) => ({ kind: 'circle', centre: place(centre), radius: diameter / 2, title: 'cable hole' })) },
    { id: 'strip', items: lighting.runs.flatMap((run, k) => stripItems(run, k, turned)) },
    { id: 'wires', items: lighting.wiring.wires.flatMap((wire) => wireItems(wire, turned)) },
    { id: 'supplies', items: lighting.wiring.supplies.flatMap((supply, k) => supplyItems(supply, k, place)) },
    { id: 'notes', items: notes.map((text, i) => ({ kind: 'text', at: { x: MARGIN, y: below - (i + 1) * LEADING }, size: TEXT, text })) },
  ];
  return writeDrawing({ size: { width, height: box.maxY - box.minY + below }, groups });
}

const OUTLINE = { fill: 'none', stroke: '#26343a', strokeWidth: 0.5 };

interface Turned {
  readonly path: (path: Path) => Path;
  readonly place: (point: Point) => Point;
}

function drawnBox({ runs, leads, wiring: { wires } }: Lighting & { readonly wiring: Wiring }, board: Region | undefined, holes: readonly Hole[]): Box {
  const lines = runs.flatMap(({ pieces }) => pieces.map(({ path }) => pathBounds(path)));
  const points = [...leads, ...wires.flatMap(({ from, to }) => [from, to]), ...holes.map(({ centre }) => centre)];
  return unionBoxes([...lines, boxOfPoints(points), board && loopsBounds(board.loops)]) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
}

/** Strip, its number, and + and - where the current enters a piece: the rails keep their order along a run. */
function stripItems({ pieces }: LightRun, run: number, { path, place }: Turned): DrawingItem[] {
  return pieces.flatMap(({ lit, modules, cutLength }, i): DrawingItem[] => [
    { kind: 'stroke', stroke: { path: path(lit), width: 2 }, style: { stroke: '#b07000', dash: dashOf(run) }, title: `run ${run + 1}, piece ${i + 1}: ${modules} modules, ${tenths(cutLength)} mm` },
    label(place(lit.start), `${run + 1}.${i + 1} + -`),
    { kind: 'circle', centre: place(pathEnd(lit)), radius: 1 },
  ]);
}

function wireItems({ kind, run, place: number, from, to, length, size, amps }: WirePair, { place }: Turned): DrawingItem[] {
  const name = `${kind} ${run + 1}.${number + 1}`;
  return [
    { kind: 'stroke', stroke: { path: polylinePath([place(from), place(to)], false) }, style: { strokeWidth: kind === 'feed' ? 0.8 : 0.5, dash: dashOf(run) }, title: `${name}: pair of ${size.name}, ${tenths(length)} mm, ${hundredths(amps)} A` },
    ...(kind === 'feed' ? [label(place(to), `feed ${run + 1}`, -TEXT)] : []),
  ];
}

function supplyItems({ at }: Supply, k: number, place: (point: Point) => Point): DrawingItem[] {
  const { x, y } = place(at);
  const loop = [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([i, j]) => ({ x: x + (i! * SUPPLY) / 2, y: y + (j! * SUPPLY) / 2 }));
  return [{ kind: 'region', region: { loops: [loop] }, style: OUTLINE, title: `lead of supply ${k + 1}` }, label({ x: x + SUPPLY, y: y + k * TEXT }, `supply ${k + 1}`)];
}

const label = ({ x, y }: Point, text: string, down = 0): DrawingItem => ({ kind: 'text', at: { x: x + 2, y: y + 2 + down }, size: TEXT, text });

const tenths = (value: number): number => Math.round(value * 10) / 10;
const hundredths = (value: number): number => Math.round(value * 100) / 100;

function notesOf({ strip, runs, wiring: { supplies, wires, drops } }: Lighting & { readonly wiring: Wiring }): string[] {
  const runNote = (k: number) => {
    const own = wires.filter(({ run }) => run === k);
    const feeds = own.filter(({ kind }) => kind === 'feed').map(({ size, length, amps }) => `pair of ${size.name}, ${tenths(length)} mm, ${hundredths(amps)} A`);
    return `Run ${k + 1}: ${runs[k]!.pieces.length} pieces, ${hundredths(runs[k]!.amps)} A, drop ${hundredths(drops[k]!)} V; fed by ${feeds.join(' and ')}.`;
  };
  return [
    `Seen from behind: left and right are exchanged. ${amount(strip.volts, 'V')} direct current; + to + and - to - everywhere. Lengths in mm.`,
    ...supplies.map(({ ratedWatts, watts, fuse, runs: fed }, k) => `Supply ${k + 1}: ${tenths(ratedWatts)} W, takes ${tenths(watts)} W, fuse ${hundredths(fuse)} A, runs ${fed.map((run) => run + 1).join(', ')}.`),
    ...runs.map((_, k) => runNote(k)),
    ...CAUTIONS,
  ];
}
