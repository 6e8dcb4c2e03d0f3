import { isRefusal, readBlock, shown } from './block.ts';
import { sortCodes } from './codes.ts';
import { execute } from './execute.ts';
import { makeState, note, type State } from './state.ts';
import { refuse, type ProgramProblem, type ReadProgram, type Refusal } from './types.ts';

export { movesOf } from './to-moves.ts';
export type { FeedMode, Plane, ProgramProblem, ReadEvent, ReadMove, ReadProgram, Turning } from './types.ts';

/** Lines of a program without their ends, one at a time: a hostile text must not be copied whole. */
function* linesOf(text: string): Generator<string> {
  for (let from = 0; from < text.length;) {
    const newline = text.indexOf('\n', from);
    const end = newline < 0 ? text.length : newline;
    yield text.slice(from, text[end - 1] === '\r' && end > from ? end - 1 : end);
    from = end + 1;
  }
}

const isPercent = (line: string): boolean => /^[ \t]*%[ \t]*$/.test(line);
const isBlank = (line: string): boolean => /^[ \t]*$/.test(line);

/**
 * Reads a program in RS274/NGC as NISTIR 6556 defines it, strictly, and says what the machine would do: its moves and
 * the events between them. The cutter is taken to stand at 0, 0, 0 at first. The first fault ends the reading and is
 * returned with its line; nothing is guessed.
 */
export function readProgram(text: string): ReadProgram {
  const state = makeState();
  const refusal = readLines(text, state);
  if (refusal === undefined) return { ok: true, moves: state.moves, events: state.events };
  const problem: ProgramProblem = { place: `line ${state.line}`, ...refusal, line: state.line };
  return { ok: false, problems: [problem] };
}

function readLines(text: string, state: State): Refusal | undefined {
  let percent: boolean | undefined;
  for (const line of linesOf(text)) {
    state.line++;
    if (isBlank(line)) continue;
    if (percent === undefined) {
      percent = isPercent(line);
      if (percent) continue;
    }
    // What follows the second percent sign is ignored; so is what follows the end, but for that sign.
    if (percent && isPercent(line)) return closed(state);
    if (state.ended === undefined) {
      const refusal = readLine(line, state);
      if (refusal) return refusal;
    }
    if (state.ended !== undefined && !percent) return undefined;
  }
  return percent
    ? refuse('a second percent sign', 'the end of the text', 'Close the program with a line that holds only "%".')
    : refuse('M2 or M30 at the end', 'the end of the text', 'The program may be cut short: write it again.');
}

function closed(state: State): undefined {
  if (state.ended === undefined) note(state, { kind: 'end', word: '%' });
}

function readLine(line: string, state: State): Refusal | undefined {
  if (isPercent(line)) return refuse('a percent sign on the first line too', shown(line), 'Begin the program with "%", or take this line away.');
  const block = readBlock(line);
  if (isRefusal(block)) return block;
  const codes = sortCodes(block);
  return isRefusal(codes) ? codes : execute(codes, state);
}
