import { type Path, type Point, polylinePath } from '../../geometry/index.ts';
import type { LightRun, Lighting, LitPiece, WirePair, Wiring } from '../../lighting/types.ts';
import { amount } from '../check.ts';
import { type ShapedItem, type ShapedLayer, boxLoop } from './shapes.ts';

/** Half the side of the square that marks a supply, mm. */
const SUPPLY = 8;

/** Strip by its runs, what of the tube has none, and the wires behind it. */
export function shapeLighting({ runs, dark, wiring }: Lighting): readonly ShapedLayer[] {
  return [
    { kind: 'unlit', name: 'without light', items: [...runs.flatMap(({ pieces }) => pieces.flatMap(unlitItems)), ...dark.map(({ at, length, why, stroke }): ShapedItem => ({ shape: { paths: [pointPath(at)] }, title: () => `centre line ${stroke + 1} ${DARK[why]}, ${tenths(length)} without light` }))] },
    { kind: 'lit', name: 'strip', items: runs.flatMap(litItems) },
    { kind: 'wires', name: 'wires', items: wiring ? wiringItems(wiring) : runs.flatMap(jumperItems) },
  ];
}

const DARK = { meets: 'ends on another', crosses: 'is crossed', 'too short': 'is too short for a module' } as const;

const tenths = (value: number, unit = 'mm'): string => amount(Math.round(value * 10) / 10, unit);

const pointPath = (at: Point): Path => ({ start: at, segments: [], closed: false });

function litItems({ pieces }: LightRun, run: number): ShapedItem[] {
  return pieces.map(({ lit, modules, cutLength }, i) => ({
    shape: { paths: [lit] }, directed: true, run, label: `${run + 1}.${i + 1}`, title: () => `run ${run + 1}, piece ${i + 1}: ${modules} ${modules === 1 ? 'module' : 'modules'}, ${tenths(cutLength)}`,
  }));
}

/** The tube's ends beyond the strip, drawn straight: they are shorter than a module. */
function unlitItems({ path, lit, unlitStart, unlitEnd }: LitPiece): ShapedItem[] {
  const end = ({ start, segments }: Path) => segments.at(-1)?.end ?? start;
  const ends = [[path.start, lit.start, unlitStart], [end(lit), end(path), unlitEnd]] as const;
  return ends.filter(([, , length]) => length > 0).map(([from, to, length]) => ({ shape: { paths: [polylinePath([from, to], false)] }, title: () => `without light, ${tenths(length)}` }));
}

function jumperItems({ jumpers }: LightRun, run: number): ShapedItem[] {
  return jumpers.map(({ from, to, length }) => ({ shape: { paths: [polylinePath([from, to], false)] }, directed: true, run, title: () => `jumper of run ${run + 1}, ${tenths(length)}` }));
}

function wiringItems({ supplies, wires }: Wiring): ShapedItem[] {
  return [...wires.map(wireItem), ...supplies.map(({ at: { x, y }, ratedWatts, fuse }, i): ShapedItem => ({
    shape: { loops: [boxLoop({ minX: x - SUPPLY, minY: y - SUPPLY, maxX: x + SUPPLY, maxY: y + SUPPLY })] }, title: () => `supply ${i + 1}, ${amount(ratedWatts, 'W')}, fuse ${amount(fuse, 'A')}`,
  }))];
}

function wireItem({ kind, run, from, to, length, size, amps }: WirePair): ShapedItem {
  return { shape: { paths: [polylinePath([from, to], false)] }, directed: true, run, title: () => `${kind} of run ${run + 1}, ${size.name}, ${tenths(length)}, ${amount(Math.round(amps * 100) / 100, 'A')}` };
}
