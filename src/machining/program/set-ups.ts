import type { Cutter } from '../job/cutter.ts';
import type { Router } from '../job/machine.ts';
import type { Pass } from '../job/pass.ts';
import { millimetres } from '../job/problem.ts';
import type { Correction } from '../job/registration.ts';
import type { Program, SetUp } from '../job/setup.ts';
import type { Tile, Tiling } from '../job/tiling.ts';
import { buildProgram } from './program.ts';

export interface SetUpsPlan {
  /** Passes in drawing coordinates and running order. */
  readonly passes: readonly Pass[];
  readonly machine: Router;
  /** What the work is called, for the first comment. */
  readonly name: string;
  /** Greatest chord deviation where arcs must become lines, mm. */
  readonly tolerance: number;
  /** The set-ups; a single one of the whole sheet without. */
  readonly tiling?: Tiling | undefined;
  readonly corrections?: readonly Correction[] | undefined;
}

/** One clamping of the whole sheet, its zero at the sheet's lower left corner. */
const WHOLE: Pick<Tile, 'name' | 'shift'> = { name: 'set-up 1', shift: [0, 0] };

/**
 * The set-ups that have something to cut, each with one program for every run of passes with the same cutter. After a
 * change of cutter the operator sets Z again, which each program after the first says.
 */
export function planSetUps(plan: SetUpsPlan): SetUp[] {
  const tiles = plan.tiling && plan.tiling.tiles.length > 0 ? plan.tiling.tiles : [WHOLE];
  return tiles.flatMap((tile, place) => {
    const passes = plan.passes.filter(({ setUp = 0 }) => setUp === place);
    return passes.length > 0 ? [setUpOf(plan, tile, { place, passes, before: tiles[place - 1], of: tiles.length })] : [];
  });
}

interface Turn {
  readonly place: number;
  readonly passes: readonly Pass[];
  readonly before: Pick<Tile, 'shift'> | undefined;
  readonly of: number;
}

function setUpOf({ machine, name, tolerance, corrections = [] }: SetUpsPlan, { name: tileName, shift }: Pick<Tile, 'name' | 'shift'>, turn: Turn): SetUp {
  const runs = cutterRuns(turn.passes);
  const correction = corrections.find(({ setUp }) => setUp === turn.place);
  const programs = runs.map((run, i): Program => buildProgram({
    file: `programs/set-up-${turn.place + 1}-cutter-${i + 1}.ngc`,
    name: [name, ...(turn.of > 1 ? [`${tileName} of ${turn.of}`] : []), ...(runs.length > 1 ? [`program ${i + 1} of ${runs.length}`] : [])].join(', '),
    cutter: run[0]!.cutter, passes: run, heights: machine.heights, machine, tolerance, shift, ...(correction && { correction }),
    notes: [...placing(shift, turn, correction), ...(i > 0 ? ['Change the cutter and set Z again first'] : [])],
  }));
  return { name: tileName, ...(turn.of > 1 && { place: turn.place }), shift, ...(correction && { correction }), programs };
}

/** What the operator does with the sheet before. */
function placing(shift: Tile['shift'], { place, before }: Turn, correction: Correction | undefined): string[] {
  if (place === 0 || !before) return ['X0 Y0 is the lower left corner of the sheet'];
  const [right, up] = [before.shift[0] - shift[0], before.shift[1] - shift[1]];
  const ways = [...way(right, 'right', 'left'), ...way(up, 'away from you', 'towards you')];
  return [
    `The sheet moves ${ways.join(' and ')} onto its pins; X0 Y0 stays`,
    ...(correction ? [`Corrected by ${millimetres(correction.degrees, 4)} deg, X ${millimetres(correction.shift[0])}, Y ${millimetres(correction.shift[1])}`] : []),
  ];
}

const way = (by: number, ahead: string, back: string): string[] => (by === 0 ? [] : [`${millimetres(Math.abs(by))} mm ${by > 0 ? ahead : back}`]);

/** Neighbouring passes with one cutter belong to one program. */
function cutterRuns(passes: readonly Pass[]): Pass[][] {
  const runs: Pass[][] = [];
  for (const pass of passes) {
    const last = runs.at(-1);
    if (last && sameCutter(last[0]!.cutter, pass.cutter)) last.push(pass);
    else runs.push([pass]);
  }
  return runs;
}

function sameCutter(a: Cutter, b: Cutter): boolean {
  return a.name === b.name && a.diameter === b.diameter && a.spindleSpeed === b.spindleSpeed;
}
