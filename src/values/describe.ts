import type { DrawingItem } from '../artwork/index.ts';
import { pathLength, regionArea } from '../geometry/index.ts';
import type { PortType, PortTypes } from '../runtime/node.ts';
import { amount, worstStatus } from './check.ts';
import { drawHole, drawOutline, drawRegion, drawStroke } from './draw.ts';

/** What is known of one kind of value. */
interface ValueKind<T> {
  /** One line that tells a person what came out. */
  readonly summarise: (value: T) => string;
  /** The value to scale, in mm, where it has a shape. */
  readonly draw?: (value: T) => readonly DrawingItem[];
}

/** Every kind of value that travels on wires. */
const VALUES: { readonly [T in PortType]: ValueKind<PortTypes[T]> } = {
  number: { summarise: String },
  text: { summarise: (text) => `“${text}”` },
  strokes: {
   
    summarise: (strokes) => `${counted(strokes.length, 'stroke')}, ${metres(strokes.reduce((sum, { path }) => sum + pathLength(path), 0))}`,
    draw: (strokes) => strokes.map(drawStroke),
  },
  outlines: { summarise: (outlines) => counted(outlines.length, 'outline'), draw: (outlines) => outlines.map(drawOutline) },
  region: {
   
    summarise: (region) => `${counted(region.loops.length, 'loop')}, ${amount(regionArea(region) / 100, 'cm2')}`,
    draw: (region) => [drawRegion(region)],
  },
  channel: {
   
    summarise: ({ width, depth, centreLines }) => `${counted(centreLines.length, 'groove')} ${amount(width, 'mm')} wide, ${amount(depth, 'mm')} deep`,
    draw: ({ region }) => [drawRegion(region)],
  },
  holes: { summarise: (holes) => counted(holes.length, 'hole'), draw: (holes) => holes.map(drawHole) },
  stock: { summarise: ({ width, height, thickness }) => `${width} x ${height} x ${amount(thickness, 'mm')}` },
  cutter: { summarise: ({ name, feedRate }) => `${name}, ${amount(feedRate, 'mm/min')}` },
  machine: { summarise: ({ travelX, travelY }) => `${travelX} x ${amount(travelY, 'mm')} of travel` },
  passes: { summarise: (passes) => counted(passes.length, 'pass', 'passes') },
  tabs: { summarise: (tabs) => counted(tabs.length, 'tab') },
  'set-ups': {
   
    summarise: (setups) => {
      const programs = setups.flatMap((setup) => setup.programs);
      return `${counted(setups.length, 'set-up')}, ${counted(programs.length, 'program')}, ${amount(Math.round(programs.reduce((sum, { minutes }) => sum + minutes, 0)), 'min')}`;
    },
  },
  checks: { summarise: (checks) => `${counted(checks.length, 'check')}, worst: ${worstStatus(checks)}` },
  quantities: { summarise: (quantities) => counted(Object.keys(quantities).length, 'quantity', 'quantities') },
  files: { summarise: (files) => files.map(({ path }) => path).join(', ') || 'no file' },
};

/** One line that tells a person what a value is. */
export function describeValue<T extends PortType>(type: T, value: PortTypes[T]): string {
  return VALUES[type].summarise(value);
}

/** A value's shape, to scale in mm; empty where it has none. */
export function drawValue<T extends PortType>(type: T, value: PortTypes[T]): readonly DrawingItem[] {
  return VALUES[type].draw?.(value) ?? [];
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function metres(millimetres: number): string {
  return amount(millimetres / 1000, 'm');
}
