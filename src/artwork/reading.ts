import { type Affine } from '../geometry/index.ts';
import { type Outline, type Stroke } from './artwork.ts';
import { type Cascade, type Inherited } from './cascade.ts';
import { type Cautions, placeOf } from './cautions.ts';
import { isFontRelative, lengthInPx, parseLength } from './length.ts';
import { type Limits } from './limits.ts';
import { type ArtworkProblem } from './problem.ts';
import { type XmlElement, shorten } from './xml.ts';

/** One run over a drawing: what it may use, and what it has gathered. */
export interface Reading {
  readonly limits: Limits;
  /** Greatest deviation, in mm, of cubics that replace elliptical arcs. */
  readonly tolerance: number;
  readonly cautions: Cautions;
  readonly cascade: Cascade;
  readonly ids: ReadonlyMap<string, XmlElement>;
  readonly strokes: Stroke[];
  readonly outlines: Outline[];
  readonly used: { elements: number; points: number; uses: number };
  /** The first fault that makes the drawing useless; everything stops then. */
  problem?: ArtworkProblem;
}

/** Elements that are open above the one in work, through every `use` that was followed. */
export interface Chain {
  readonly element: XmlElement;
  readonly up: Chain | undefined;
  readonly depth: number;
}

/** What an element gets from the ones around it. */
export interface Surroundings {
  /** From the element's surrounding user units to mm, y up. */
  readonly affine: Affine;
  readonly style: Inherited;
  /** Size of the nearest viewport in its user units, for per cents. */
  readonly width: number;
  readonly height: number;
  readonly chain: Chain | undefined;
}

export function refuse(reading: Reading, element: XmlElement, expected: string, found: string, advice: string): void {
  reading.problem ??= { place: placeOf(element), expected, found: shorten(found), advice };
}

export function refuseCoordinates(reading: Reading, element: XmlElement, found: string): void {
  refuse(reading, element, `finite coordinates within ${reading.limits.reach / 1000} m`, found,
    'Correct or delete this element in the drawing program.');
}

/** Counts against a limit; says whether the drawing is still within it. */
export function spend(reading: Reading, element: XmlElement, what: 'elements' | 'points' | 'uses', amount: number): boolean {
  reading.used[what] += amount;
  if (reading.used[what] <= reading.limits[what]) return true;
  const name = { elements: 'elements drawn', points: 'points', uses: 'copies made by use elements' }[what];
  refuse(reading, element, `at most ${reading.limits[what]} ${name}`, 'more than that',
    'Simplify the drawing, or split it and read the parts.');
  return false;
}

const NO_NUMBER = /^[+-]?(?:nan|inf)/i;

/** Text where broken programs print a number that is none. */
export const looksLikeNoNumber = (text: string): boolean => NO_NUMBER.test(text.trim());

/** What 100 % of a length means (SVG 2, section 8.9): by its direction, or the diagonal by the square root of 2. */
function wholeOf(name: string, { width, height }: Surroundings): number {
  if (/^(?:x|x1|x2|cx|rx|width)$/.test(name)) return width;
  if (/^(?:y|y1|y2|cy|ry|height)$/.test(name)) return height;
  return Math.hypot(width, height) / Math.SQRT2;
}

/** A length in user units from its text; absent when it is not stated or cannot be read (a caution says so then). */
export function readLength(
  reading: Reading, element: XmlElement, name: string, text: string | undefined, around: Surroundings,
): number | undefined {
  if (text === undefined || text.trim() === 'auto') return undefined;
  const length = parseLength(text);
  const quoted = `${name}="${text}"`;
  const value = length && lengthInPx(length, wholeOf(name, around));
  if (looksLikeNoNumber(text) || (value !== undefined && !Number.isFinite(value))) refuseCoordinates(reading, element, quoted);
  else if (!length) reading.cautions.add('value', element, quoted);
  else if (isFontRelative(length)) reading.cautions.add('fontUnit', element, quoted);
  return value;
}
