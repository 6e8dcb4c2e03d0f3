import type {} from '../types.ts';
import { type Box, type Point, makeRegionIndex } from '../../geometry/index.ts';
import type { Hole, Tab } from '../../machining/index.ts';
import type { PortType, PortTypes } from '../../runtime/node.ts';
import type { Carried, Reading } from '../picture.ts';
import { rememberedByValue } from '../pictures/remember.ts';
import { measurePasses, measureSetUps, readCuts } from './cuts.ts';
import { measureGroove, readGroove } from './groove.ts';
import { footOn, measureLines, readLine } from './lines.ts';
import { readHoldDown, readPin, tilingProbe } from './set-ups.ts';
import { strokesProbe } from './strokes.ts';
import { apart, nearestOf } from './nearest.ts';
import { reading } from './reading.ts';

/** Measures at a place, looking no farther than `within` mm. */
type Probe = (at: Point, within: number) => readonly Reading[];

/** Prepares a value for being measured at many places. */
type Prepare<T extends PortType> = (value: PortTypes[T], port: string) => Probe;

const NOTHING: Prepare<PortType> = () => () => [];

const PROBES: { readonly [T in PortType]: Prepare<T> } = {
  number: NOTHING, text: NOTHING, cutter: NOTHING, strip: NOTHING, tube: NOTHING, materials: NOTHING, rates: NOTHING, price: NOTHING, checks: NOTHING, quantities: NOTHING, files: NOTHING,
  strokes: strokesProbe,
  outlines: (outlines) => linesProbe(outlines.flatMap(({ paths }) => paths), 'edge'),
  junctions: NOTHING,
  image: NOTHING,
  tiling: tilingProbe,
  registration: ({ pins, dowels }) => (at, within) => [...readHole(dowels.map(({ hole }) => hole), at, within), ...readPin(pins, at, within)],
  holding: ({ holdDowns }) => (at, within) => readHoldDown(holdDowns, at, within),
  region: (region, port) => {
    const index = makeRegionIndex(region);
    return (at, within) => {
      const edge = index.nearestBoundaryPoint(at);
      return edge && (index.contains(at) || apart(at, edge) <= within) ? [reading(`to the edge of the ${port}`, apart(at, edge), 'mm', edge)] : [];
    };
  },
  channel: (channel) => {
    const groove = measureGroove(channel);
    return (at, within) => readGroove(groove, at, within);
  },
  holes: (holes) => (at, within) => readHole(holes, at, within),
  stock: ({ width, height }) => (at, within) => readRectangle({ minX: 0, minY: 0, maxX: width, maxY: height }, 'to the edge of the sheet', at, within),
  machine: ({ travelX, travelY }) => (at, within) => readRectangle({ minX: 0, minY: 0, maxX: travelX, maxY: travelY }, 'to the end of the travel', at, within),
  lighting: ({ runs }) => linesProbe(runs.flatMap(({ pieces }) => pieces.map(({ lit }) => lit)), 'strip'),
  tabs: (tabs) => (at, within) => readTab(tabs, at, within),
  passes: (passes) => {
    const cuts = measurePasses(passes);
    return (at, within) => readCuts(cuts, at, within);
  },
  'set-ups': (setups) => {
    const cuts = measureSetUps(setups);
    return (at, within) => readCuts(cuts, at, within);
  },
};

const prepared = rememberedByValue(({ port, type, value }) => (PROBES[type] as Prepare<PortType>)(value as never, port));

/** What can be measured of values at a place, mm: of every value what lies there, or no farther off than `within` mm. Nothing is said twice. */
export function probeValues(carried: readonly Carried[], [x, y]: readonly [number, number], within: number): readonly Reading[] {
  const all = carried.flatMap((one) => prepared(one)({ x, y }, within));
  return all.filter(({ says }, i) => all.findIndex((other) => other.says === says) === i);
}

function linesProbe(paths: Parameters<typeof measureLines>[0], name: string): Probe {
  const lines = measureLines(paths, name);
  return (at, within) => {
    const foot = footOn(lines, at, within);
    return foot === undefined ? [] : readLine(lines, foot);
  };
}

function readHole(holes: readonly Hole[], at: Point, within: number): Reading[] {
  const i = nearestOf(holes, at, ({ diameter }) => diameter / 2 + within);
  const hole = holes[i];
  return hole === undefined ? [] : [reading(`diameter of ${hole.purpose} hole ${i + 1}`, hole.diameter, 'mm', hole.centre)];
}

function readTab(tabs: readonly Tab[], at: Point, within: number): Reading[] {
  const i = nearestOf(tabs, at, ({ width }) => width / 2 + within);
  const tab = tabs[i];
  return tab === undefined ? [] : [reading(`width of tab ${i + 1}`, tab.width, 'mm', tab.centre), reading(`height of tab ${i + 1}`, tab.height, 'mm', tab.centre)];
}

function readRectangle({ minX, minY, maxX, maxY }: Box, says: string, at: Point, within: number): Reading[] {
  const edges = [{ x: minX, y: at.y }, { x: maxX, y: at.y }, { x: at.x, y: minY }, { x: at.x, y: maxY }]
    .map(({ x, y }) => ({ x: Math.min(maxX, Math.max(minX, x)), y: Math.min(maxY, Math.max(minY, y)) }));
  const edge = edges.reduce((a, b) => (apart(b, at) < apart(a, at) ? b : a));
  const inside = at.x >= minX && at.x <= maxX && at.y >= minY && at.y <= maxY;
  return inside || apart(edge, at) <= within ? [reading(says, apart(edge, at), 'mm', edge)] : [];
}
