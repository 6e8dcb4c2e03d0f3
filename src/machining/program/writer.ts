import { type Cutter } from '../job/cutter.ts';
import { commentLines } from './comment.ts';
import { type Machine } from '../job/machine.ts';
import { type Move } from '../job/pass.ts';
import { makeWordPrinter, numberText } from './words.ts';

/** A comment written before a move. */
export interface Heading {
  /** Number of the move, counted from 0; the lift, move 0, has none. */
  readonly before: number;
  readonly text: string;
}

export interface ProgramRequest {
  readonly name: string;
  readonly cutter: Cutter;
  /** As `adaptMoves` gives them: the first and the last are rapids, the first straight up from where the cutter stands. */
  readonly moves: readonly Move[];
  readonly machine: Machine;
  /** Further comments at the head. */
  /** On what the tip is set to Z0; the sheet when absent. */
  readonly on?: 'sheet' | 'spoilboard';
  readonly notes: readonly string[];
  readonly headings?: readonly Heading[];
}

/** One word group to a line, so that a controller that refuses one names it. Inch or millimetre goes first. */
const PREAMBLE = ['G17', 'G40', 'G49', 'G80', 'G90', 'G94', 'G54'];
const DRAFT_NOTICE = '(DRAFT: a check failed. Do not cut with this program.)';

/**
 * The program in RS274/NGC (NISTIR 6556), in words nearly every controller reads: no cycles, no tool change, no offsets.
 * The lift comes first, by Z alone, as nobody knows where the cutter stands; then the spindle and its dwell; X and Y
 * are both given the first time. After the last move the spindle stops and the program ends.
 * Throws a RangeError on moves that do not begin and end lifted, or words that no line of the controller can hold.
 */
export function writeProgram(request: ProgramRequest): string {
  const { machine: { controller } } = request;
  const blocks = [
    ...headComments(request),
    controller.units === 'inch' ? 'G20' : 'G21', ...PREAMBLE,
    ...moveBlocks(request),
    'M5',
    controller.programEnd,
  ];
  const lines = controller.lineNumbers ? numbered(blocks) : blocks;
  return (controller.percentLines ? ['%', ...lines, '%'] : lines).map((line) => `${line}\n`).join('');
}

/** The program with a notice that it must not be cut as its first comment. */
export function withDraftNotice(text: string): string {
  const percent = /^\s*%[ \t]*\r?\n/.exec(text)?.[0] ?? '';
  return `${percent}${DRAFT_NOTICE}\n${text.slice(percent.length)}`;
}

/** How many lines a program has, and how many of them are blocks: lines with words, not only comments or a percent sign. */
export function programStats(text: string): { readonly lines: number; readonly blocks: number } {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const blocks = lines.filter((line) => line.replace(/\([^)]*\)/g, '').replace(/^\s*%\s*$/, '').trim() !== '');
  return { lines: lines.length, blocks: blocks.length };
}

function headComments({ name, cutter, machine: { controller }, notes, on = 'sheet' }: ProgramRequest): string[] {
  if (controller.comments === 'none') return [];
  const size = `${numberText(cutter.diameter, 4)} mm${controller.units === 'inch' ? ` = ${numberText(cutter.diameter / 25.4, 4)} inch` : ''}`;
  return [
    name,
    `Cutter: ${cutter.name}, diameter ${size}`,
    `Units: ${controller.units}. Z0 is the top face of the ${on}.`,
    `CAUTION: dry-run above the ${on} first, spindle off.`,
    'Check clamps, zero and the emergency stop.',
    ...notes,
  ].flatMap((text) => commentLines(text, controller.longestLine));
}

function moveBlocks(request: ProgramRequest): string[] {
  const { moves, machine: { controller } } = request;
  const first = moves[0];
  if (first?.kind !== 'rapid' || moves[moves.length - 1]?.kind !== 'rapid') {
    throw new RangeError('a program begins and ends with a rapid that lifts the cutter');
  }
  const printer = makeWordPrinter(controller);
  const headings = new Map((request.headings ?? []).map(({ before, text }) => [before, text]));
  const blocks = [printer.lift(first.to.z), ...spindleBlocks(request)];
  moves.slice(1).forEach((move, index) => {
    const comments = heading(headings.get(index + 1), request);
    // After a heading everything modal is said again: programs are restarted there.
    if (comments.length > 0) printer.forget();
    blocks.push(...comments, ...printer.move(move));
  });
  return blocks;
}

function heading(text: string | undefined, { machine: { controller } }: ProgramRequest): string[] {
  return text === undefined || controller.comments === 'none' ? [] : commentLines(text, controller.longestLine);
}

function spindleBlocks({ cutter, machine: { spindleStart, controller } }: ProgramRequest): string[] {
  const dwell = controller.dwellUnit === 'seconds'
    ? numberText(spindleStart, 2)
    : String(Math.ceil(spindleStart * 1000));
  return [`S${Math.round(cutter.spindleSpeed)} M3`, ...(spindleStart > 0 ? [`G4 P${dwell}`] : [])];
}

/** Numbers of at most five digits (the standard's limit); after the last one they begin again, as their order is free. */
function numbered(blocks: readonly string[]): string[] {
  const step = blocks.length < 10000 ? 10 : 1;
  return blocks.map((block, index) => `N${((index + 1) * step) % 100000} ${block}`);
}
