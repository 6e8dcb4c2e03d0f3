import { money } from '../costing/money.ts';
import { pathLength, regionArea } from '../geometry/index.ts';
import { stripLength } from '../lighting/strip-length.ts';
import type { PortType, PortTypes } from '../runtime/node.ts';
import { amount, worstStatus } from './check.ts';

/** One line that tells a person what came out, for every kind of value that travels on wires. */
const SUMMARIES: { readonly [T in PortType]: (value: PortTypes[T]) => string } = {
  number: String,
  text: (text) => `“${text}”`,
  strokes: (strokes) => `${counted(strokes.length, 'stroke')}, ${metres(strokes.reduce((sum, { path }) => sum + pathLength(path), 0))}`,
  outlines: (outlines) => counted(outlines.length, 'outline'),
  junctions: ({ junctions, ends }) => `${counted(junctions.length, 'junction')}, ${counted(ends.length, 'free end')}`,
  region: (region) => `${counted(region.loops.length, 'loop')}, ${amount(regionArea(region) / 100, 'cm2')}`,
  channel: ({ width, depth, centreLines }) => `${counted(centreLines.length, 'groove')} ${amount(width, 'mm')} wide, ${amount(depth, 'mm')} deep`,
  holes: (holes) => counted(holes.length, 'hole'),
  tiling: ({ tiles, seams }) => `${counted(tiles.length, 'set-up')}, ${counted(seams.length, 'seam')}`,
  registration: ({ pins, dowels }) => `${counted(pins.length, 'pin')}, ${counted(dowels.length, 'dowel hole')}`,
  holding: ({ holdDowns, areas, supports }) => `${counted(holdDowns.length, 'hold-down')}, ${counted(areas.length, 'held area')}, ${counted(supports.length, 'support')}`,
  stock: ({ width, height, thickness }) => `${width} x ${height} x ${amount(thickness, 'mm')}`,
  cutter: ({ name, feedRate }) => `${name}, ${amount(feedRate, 'mm/min')}`,
  machine: ({ travelX, travelY }) => `${travelX} x ${amount(travelY, 'mm')} of travel`,
  passes: (passes) => counted(passes.length, 'pass', 'passes'),
  tabs: (tabs) => counted(tabs.length, 'tab'),
  'set-ups': (setups) => {
    const programs = setups.flatMap((setup) => setup.programs);
    return `${counted(setups.length, 'set-up')}, ${counted(programs.length, 'program')}, ${amount(Math.round(programs.reduce((sum, { minutes }) => sum + minutes, 0)), 'min')}`;
  },
  strip: ({ wattsPerMetre, volts, moduleLength, colourTemperature }) => `strip ${amount(wattsPerMetre, 'W/m')} at ${amount(volts, 'V')}, modules of ${amount(moduleLength, 'mm')}, ${amount(colourTemperature, 'K')}`,
  tube: ({ width, height, leastBend }) => `tube ${width} x ${amount(height, 'mm')}, bends to ${amount(leastBend, 'mm')}`,
  lighting: ({ runs, wiring }) => {
    const strip = metres(stripLength(runs.flatMap(({ pieces }) => pieces)));
    const power = amount(Math.round(runs.reduce((sum, { watts }) => sum + watts, 0) * 10) / 10, 'W');
    return `${counted(runs.length, 'run')}, ${strip} of strip, ${power}${wiring ? `, ${counted(wiring.supplies.length, 'supply', 'supplies')}` : ''}`;
  },
  image: ({ says }) => says,
  materials: ({ rows }) => `${counted(rows.filter(({ counts }) => counts).length, 'item')} to buy or spend`,
  rates: ({ own, currency }) => `${own ? 'our own rates' : 'placeholder rates'}${currency === '' ? '' : ` in ${currency}`}`,
  price: ({ total, rates }) => `${money(total, rates.currency)}${rates.own ? '' : ' at placeholder rates'}`,
  checks: (checks) => `${counted(checks.length, 'check')}, worst: ${worstStatus(checks)}`,
  quantities: (quantities) => counted(Object.keys(quantities).length, 'quantity', 'quantities'),
  files: (files) => files.map(({ path }) => path).join(', ') || 'no file',
};

/** One line that tells a person what a value is. */
export function describeValue<T extends PortType>(type: T, value: PortTypes[T]): string {
  return SUMMARIES[type](value);
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

function metres(millimetres: number): string {
  return amount(millimetres / 1000, 'm');
}
