import { pathLength, type Region, regionArea } from '../geometry/index.ts';
import type { LightRun, Lighting, WirePair } from '../lighting/index.ts';
import { boardMass, type Channel, type Hole, type SetUp, type Stock } from '../machining/index.ts';
import { type MaterialRow, type MaterialUnit, type Materials, type Part, rounded } from './materials.ts';

/** What is known of a sign. */
export interface SignToBuild {
  readonly stock: Stock;
  readonly board: Region;
  readonly channel: Channel | undefined;
  readonly holes: readonly Hole[];
  readonly lighting: Lighting | undefined;
  readonly setups: readonly SetUp[];
  /** Of what lies in the groove, kg for each metre. */
  readonly filling: number;
}

/** Every part of a sign, as far as it is known: what is not wired in is left out, not guessed. */
export function billOf(sign: SignToBuild): Materials {
  return { rows: [...sheetRows(sign), ...lightRows(sign.lighting), ...fixingRows(sign.holes), ...machineRows(sign.setups), signRow(sign)], setUps: sign.setups.length };
}

const row = (part: Part, item: string, quantity: number, unit: MaterialUnit, counts = true): MaterialRow => ({ part, item, quantity: rounded(quantity, unit), unit, counts });

/** Square millimetres to square metres, millimetres to metres. */
const [SQUARE, LONG] = [1e-6, 1e-3];

function sheetRows({ stock, board }: SignToBuild): MaterialRow[] {
  const { width, height, thickness, density } = stock;
  const [sheet, used] = [width * height, regionArea(board)];
  return [
    row('sheet', `Sheet ${width} x ${height} x ${thickness} mm`, sheet * SQUARE, 'm2'),
    row('sheet', 'of it the board', used * SQUARE, 'm2', false),
    row('sheet', 'of it waste', (sheet - used) * SQUARE, 'm2', false),
    row('sheet', 'share that becomes the board', used / sheet, 'ratio', false),
    row('sheet', 'weight of the sheet', sheet * thickness * 1e-9 * density, 'kg', false),
  ];
}

function lightRows(lighting: Lighting | undefined): MaterialRow[] {
  if (lighting === undefined) return [];
  const { runs, wiring } = lighting;
  return [...stripRows(lighting), ...tubeRows(lighting, runs), ...wireRows(wiring?.wires ?? []), ...supplyRows(lighting)];
}

const inRun = (run: LightRun, of: (piece: LightRun['pieces'][number]) => number): number => run.pieces.reduce((sum, piece) => sum + of(piece), 0);

function stripRows({ strip: { wattsPerMetre, volts, moduleLength }, runs }: Lighting): MaterialRow[] {
  return runs.map((run, i) => row(
    'strip', `LED strip ${wattsPerMetre} W/m, ${volts} V, run ${i + 1}: ${inRun(run, ({ modules }) => modules)} modules of ${moduleLength} mm in ${pieces(run.pieces.length)}`,
    inRun(run, ({ cutLength }) => cutLength) * LONG, 'm',
  ));
}

const pieces = (count: number): string => (count === 1 ? '1 piece' : `${count} pieces`);

function tubeRows({ tube: { width, height } }: Lighting, runs: readonly LightRun[]): MaterialRow[] {
  const length = runs.reduce((sum, run) => sum + inRun(run, ({ path }) => pathLength(path)), 0);
  const count = runs.reduce((sum, run) => sum + run.pieces.length, 0);
  return count === 0 ? [] : [row('tube', `Diffuser tube ${width} x ${height} mm in ${pieces(count)}`, length * LONG, 'm')];
}

/** Pairs of wire by what they are for and their size; both wires of a pair are as long. */
function wireRows(wires: readonly WirePair[]): MaterialRow[] {
  const kinds = new Map<string, number>();
  for (const { kind, size, length } of wires) {
    const item = `${kind === 'feed' ? 'Feed' : 'Jumper'} pair ${size.name}: plus and minus in two colours`;
    kinds.set(item, (kinds.get(item) ?? 0) + length);
  }
  return [...kinds].map(([item, length]) => row('wire', item, length * LONG, 'm'));
}

function supplyRows({ strip: { volts }, wiring }: Lighting): MaterialRow[] {
  const supplies = wiring?.supplies ?? [];
  const count = (part: Part, name: (supply: (typeof supplies)[number]) => string) => counted(supplies.map(name)).map(([item, number]) => row(part, item, number, 'count'));
  return [...count('supply', ({ ratedWatts }) => `Supply ${volts} V, ${ratedWatts} W`), ...count('fuse', ({ fuse }) => `Fuse ${fuse} A`)];
}

function fixingRows(holes: readonly Hole[]): MaterialRow[] {
  const mounting = holes.filter(({ purpose }) => purpose === 'mounting').map(({ diameter }) => `Fixing for a ${rounded(diameter, 'm')} mm hole`);
  return counted(mounting).map(([item, number]) => row('fixing', item, number, 'count'));
}

function machineRows(setups: readonly SetUp[]): MaterialRow[] {
  const programs = setups.flatMap((setup) => setup.programs);
  if (programs.length === 0) return [];
  const cutters = [...new Map(programs.map(({ cutter }) => [cutter.name, cutter]))].map(([, cutter]) => cutter);
  const minutes = (of: (program: (typeof programs)[number]) => boolean) => programs.filter(of).reduce((sum, program) => sum + program.minutes, 0);
  return [
    row('machine', `Machine: ${setups.length === 1 ? '1 set-up' : `${setups.length} set-ups`}, ${programs.length === 1 ? '1 program' : `${programs.length} programs`}`, minutes(() => true), 'min'),
    ...cutters.map((cutter) => row('cutter', `Cutter: ${cutter.name}, at work`, minutes((program) => program.cutter.name === cutter.name), 'min', false)),
  ];
}

const signRow = ({ board, channel, holes, stock, filling, lighting }: SignToBuild): MaterialRow =>
  row('sign', 'Weight of the finished sign, without fixings and supplies', boardMass({ board, channel, holes, stock, filling: lighting === undefined ? 0 : filling }).kg, 'kg', false);

/** How often each comes, in the order they come first. */
function counted(names: readonly string[]): [string, number][] {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts];
}
