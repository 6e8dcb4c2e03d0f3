import type { SetUp } from '../../machining/job/setup.ts';
import type { Stock } from '../../machining/job/stock.ts';
import { type Relief, type ReliefMaker, makeRelief } from './relief.ts';
import { stepProgram } from './steps.ts';
import { type PlayedProgram, playedProgram } from './timeline.ts';

/** What is asked of programs while they are played back. */
export interface Player {
  /** The programs of all set-ups in the order to run them. Every call makes arrays of its own, which may be given away. */
  readonly programs: () => PlayedProgram[];
  /** See `ReliefMaker`. The sheet is followed on from where the last call left it. */
  readonly relief: (program: number, seconds: number, dark: boolean) => Relief;
}

/** Reads the programs back at once and grows a relief only when it is asked for. Throws a RangeError as `stepProgram` does. */
export function makePlayer(setups: readonly SetUp[], stock: Stock | undefined): Player {
  const stepped = setups.flatMap((setup) => setup.programs.map((program) => stepProgram(setup, program)));
  const setUps = setups.flatMap(({ name, place: given, programs }, i) => programs.map(() => ({ name, place: given ?? i })));
  let maker: ReliefMaker | undefined;
  return {
    programs: () => stepped.map((program, i) => (setups.length > 1 ? { ...playedProgram(program), setUp: setUps[i]! } : playedProgram(program))),
    relief(program, seconds, dark) {
      maker ??= makeRelief(stepped, stock);
      return maker.at(program, seconds, dark);
    },
  };
}
