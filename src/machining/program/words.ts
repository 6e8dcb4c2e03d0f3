import { type Point3 } from '../../geometry/point.ts';
import { type Controller } from '../job/machine.ts';
import { type ArcMove } from '../job/moves.ts';
import { type Move } from '../job/pass.ts';
import { feedDecimals, roundLength, unitLength } from './resolution.ts';

/** Characters a line number and its blank take. */
const NUMBER_ROOM = 7;

/** A number in plain decimals, always with a point and at least one decimal, without further trailing zeros; never "-0.0". */
export function numberText(value: number, decimals: number): string {
  const text = value.toFixed(Math.max(1, decimals)).replace(/(\.\d+?)0+$/, '$1');
  return /^-0\.0$/.test(text) ? '0.0' : text;
}

/** Turns moves into blocks, leaving out what the block before has said. */
export interface WordPrinter {
  /** A rapid in Z alone; where X and Y stand stays unknown. */
  readonly lift: (z: number) => string;
  readonly move: (move: Move) => string[];
  /** Motion, feed and places in the plane will be said anew. */
  readonly forget: () => void;
}

/** What earlier blocks have said, as printed. */
interface Said {
  x?: string | undefined;
  y?: string | undefined;
  z?: string | undefined;
  motion?: string | undefined;
  feed?: string | undefined;
  /** Where the last move ended, mm: arcs give their centre from there. */
  place: Point3;
}

/** A printer for one program. It throws a RangeError when a block is longer than the controller's longest line. */
export function makeWordPrinter(controller: Controller): WordPrinter {
  const said: Said = { place: { x: 0, y: 0, z: 0 } };
  const print = (length: number): string => numberText(length / unitLength(controller), controller.decimals);
  const room = controller.longestLine - (controller.lineNumbers ? NUMBER_ROOM : 0);
  return {
    lift(z) {
      said.z = print(z);
      said.motion = 'G0';
      return fit(['G0', `Z${said.z}`], room)[0]!;
    },
    move(move) {
      const axes = axisWords(move, said, print);
      if (axes.length === 0) return [];
      const motion = motionWord(move, said);
      const centre = move.kind === 'arc' ? centreWords(move, said.place, (value) => print(roundLength(value, controller))) : [];
      const feed = move.kind === 'rapid' ? [] : feedWord(move.feed, said, controller);
      said.place = move.to;
      return fit([...motion, ...axes, ...centre, ...feed], room);
    },
    forget() {
      said.x = said.y = said.motion = said.feed = undefined;
    },
  };
}

/** Straight feeds say what changes; a rapid or an arc that moves in the plane says both X and Y. */
function axisWords(move: Move, said: Said, print: (length: number) => string): string[] {
  const [x, y, z] = [print(move.to.x), print(move.to.y), print(move.to.z)];
  const both = move.kind === 'arc' || (move.kind === 'rapid' && (x !== said.x || y !== said.y));
  const words = [
    ...(both || x !== said.x ? [`X${x}`] : []),
    ...(both || y !== said.y ? [`Y${y}`] : []),
    ...(z !== said.z ? [`Z${z}`] : []),
  ];
  Object.assign(said, { x, y, z });
  return words;
}

/** Only a run of straight feeds leaves its word out: rapids and arcs are few or must stand alone. */
function motionWord(move: Move, said: Said): string[] {
  const word = move.kind === 'rapid' ? 'G0' : move.kind === 'line' ? 'G1' : move.clockwise ? 'G2' : 'G3';
  const known = word === said.motion && move.kind === 'line';
  said.motion = word;
  return known ? [] : [word];
}

const centreWords = (arc: ArcMove, from: Point3, print: (length: number) => string): string[] =>
  [`I${print(arc.centre.x - from.x)}`, `J${print(arc.centre.y - from.y)}`];

function feedWord(feed: number, said: Said, controller: Controller): string[] {
  const text = numberText(feed / unitLength(controller), feedDecimals(controller));
  if (text === said.feed) return [];
  said.feed = text;
  return [`F${text}`];
}

/** The words as one block if the line has room; else the feed goes ahead on a line of its own, then blanks are left out. */
function fit(words: readonly string[], room: number): string[] {
  const whole = words.join(' ');
  if (whole.length <= room) return [whole];
  const feed = words.filter((word) => word.startsWith('F'));
  const rest = words.filter((word) => !word.startsWith('F'));
  const blocks = [...feed, rest.join(rest.join(' ').length <= room ? ' ' : '')];
  const long = blocks.find((block) => block.length > room);
  if (long !== undefined) throw new RangeError(`a line of ${room} characters cannot hold "${long}"`);
  return blocks;
}
