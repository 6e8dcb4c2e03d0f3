import { type Point } from '../geometry/index.ts';
import { type BuildOptions, PathBuilder, type Subpath } from './path-builder.ts';
import { type Scanner, atEnd, scan, skipCommaSpace, skipSpace, take, takeNumber } from './scanner.ts';

export interface PathData {
  readonly subpaths: readonly Subpath[];
  readonly points: number;
  /** Where reading had to stop; everything before it is drawn (SVG 2, section 9.5.4). */
  readonly error?: { readonly at: number; readonly found: string };
}

/** What commands need to know of the ones before them. */
interface Pen {
  readonly builder: PathBuilder;
  /** Last control point, for the commands that mirror it; absent after any other command. */
  cubicControl?: Point | undefined;
  quadraticControl?: Point | undefined;
}

/** Adds up a coordinate pair with the current point when the command is relative. */
type Resolve = (x: number, y: number) => Point;

interface Command {
  /** One character per argument: `n` a number, `f` an arc flag. */
  readonly takes: string;
  readonly draw: (pen: Pen, values: readonly number[], at: Resolve) => void;
}

const value = (values: readonly number[], i: number): number => values[i] ?? 0;

const mirror = (control: Point | undefined, about: Point): Point =>
  control ? { x: 2 * about.x - control.x, y: 2 * about.y - control.y } : about;

function drawCubic(pen: Pen, control1: Point, control2: Point, end: Point): void {
  pen.builder.cubicTo(control1, control2, end);
  pen.cubicControl = control2;
}

function drawQuadratic(pen: Pen, control: Point, end: Point): void {
  pen.builder.quadraticTo(control, end);
  pen.quadraticControl = control;
}

/** SVG 2, sections 9.3.3 to 9.3.8. */
const COMMANDS: Readonly<Record<string, Command>> = {
  m: { takes: 'nn', draw: (pen, v, at) => { pen.builder.moveTo(at(value(v, 0), value(v, 1))); } },
  l: { takes: 'nn', draw: (pen, v, at) => { pen.builder.lineTo(at(value(v, 0), value(v, 1))); } },
  h: { takes: 'n', draw: ({ builder }, v, at) => { builder.lineTo({ x: at(value(v, 0), 0).x, y: builder.current.y }); } },
  v: { takes: 'n', draw: ({ builder }, v, at) => { builder.lineTo({ x: builder.current.x, y: at(0, value(v, 0)).y }); } },
  c: {
    takes: 'nnnnnn',
    draw: (pen, v, at) => { drawCubic(pen, at(value(v, 0), value(v, 1)), at(value(v, 2), value(v, 3)), at(value(v, 4), value(v, 5))); },
  },
  s: {
    takes: 'nnnn',
    draw: (pen, v, at) => {
      drawCubic(pen, mirror(pen.cubicControl, pen.builder.current), at(value(v, 0), value(v, 1)), at(value(v, 2), value(v, 3)));
    },
  },
  q: { takes: 'nnnn', draw: (pen, v, at) => { drawQuadratic(pen, at(value(v, 0), value(v, 1)), at(value(v, 2), value(v, 3))); } },
  t: {
    takes: 'nn',
    draw: (pen, v, at) => { drawQuadratic(pen, mirror(pen.quadraticControl, pen.builder.current), at(value(v, 0), value(v, 1))); },
  },
  a: {
    takes: 'nnnffnn',
    draw: ({ builder }, v, at) => {
      builder.arcTo({
        radiusX: value(v, 0), radiusY: value(v, 1), rotation: value(v, 2), large: value(v, 3) === 1, sweep: value(v, 4) === 1,
        end: at(value(v, 5), value(v, 6)),
      });
    },
  },
};

const LETTER = /[a-zA-Z]/y;
const FLAG = /[01]/y;

const isCommand = (letter: string): boolean => letter.toLowerCase() === 'z' || Object.hasOwn(COMMANDS, letter.toLowerCase());

/** One set of arguments, or nothing when it is incomplete; the scanner then rests at the first thing not understood. */
function takeArguments(scanner: Scanner, takes: string): number[] | undefined {
  const values: number[] = [];
  for (const kind of takes) {
    if (values.length > 0) skipCommaSpace(scanner);
    const flag = kind === 'f' ? take(scanner, FLAG) : undefined;
    const found = kind === 'n' ? takeNumber(scanner) : flag === undefined ? undefined : Number(flag);
    if (found === undefined) return undefined;
    values.push(found);
  }
  return values;
}

/** Draws one set of arguments; says whether it was complete. */
function drawOne(scanner: Scanner, pen: Pen, letter: string): boolean {
  const command = COMMANDS[letter.toLowerCase()];
  const values = command && takeArguments(scanner, command.takes);
  if (!values) return false;
  const relative = letter === letter.toLowerCase();
  const { current } = pen.builder;
  const at: Resolve = relative ? (x, y) => ({ x: current.x + x, y: current.y + y }) : (x, y) => ({ x, y });
  command.draw(pen, values, at);
  // Only a curve of the same kind lets the next one mirror its control point.
  if (!/[cs]/i.test(letter)) pen.cubicControl = undefined;
  if (!/[qt]/i.test(letter)) pen.quadraticControl = undefined;
  return true;
}

/** Another set of arguments follows without a letter. */
const REPEATS = /[\t\n\f\r ]*(?:,[\t\n\f\r ]*)?(?=[+\-.\d])/y;
const FOLLOWING: Readonly<Record<string, string>> = { M: 'L', m: 'l' };

/** Draws a command with all its repetitions; says whether everything was understood. */
function drawCommand(scanner: Scanner, pen: Pen, letter: string, mostPoints: number): boolean {
  if (letter.toLowerCase() === 'z') {
    pen.builder.close();
    pen.cubicControl = pen.quadraticControl = undefined;
    return true;
  }
  for (let name = letter, first = true; first || take(scanner, REPEATS) !== undefined; first = false) {
    if (first) skipSpace(scanner);
    if (!drawOne(scanner, pen, name)) return false;
    if (pen.builder.points > mostPoints) return true;
    name = FOLLOWING[name] ?? name;
  }
  return true;
}

/**
 * Reads path data into subpaths in user units, y down. Quadratics become the same cubics; arcs stay arcs or become cubics
 * as the options say. Reading stops early when there are more than `mostPoints` points: the caller refuses the drawing then.
 */
export function parsePathData(text: string, options: BuildOptions, mostPoints: number): PathData {
  const scanner = scan(text);
  const pen: Pen = { builder: new PathBuilder(options) };
  let understood = true;
  let begun = false;
  skipSpace(scanner);
  while (understood && !atEnd(scanner) && pen.builder.points <= mostPoints) {
    const at = scanner.at;
    const letter = take(scanner, LETTER);
    understood = letter !== undefined && (begun ? isCommand(letter) : letter.toLowerCase() === 'm');
    if (!understood) scanner.at = at;
    else understood = drawCommand(scanner, pen, letter ?? '', mostPoints);
    begun = true;
    if (understood) skipSpace(scanner);
  }
  pen.builder.finish();
  const { subpaths, points } = pen.builder;
  return understood ? { subpaths, points } : { subpaths, points, error: { at: scanner.at, found: text.slice(scanner.at, scanner.at + 12) } };
}
