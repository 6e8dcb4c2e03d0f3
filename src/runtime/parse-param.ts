import { checkValue } from './param-values.ts';
import type { Edit, EditsParam, NumberParam, Param, ParamValue, PointsParam } from './params.ts';
import type { Problem } from './problem.ts';
import { show } from './show.ts';

export type ParsedParam =
  | { readonly ok: true; readonly value: ParamValue }
  | { readonly ok: false; readonly problem: Problem };

/** Plain decimals with a point; neither exponent nor hexadecimal nor thousands separator, whatever the locale. */
const NUMBER = /^([+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+))(.*)$/s;

/** Lengths in mm. An inch is 25.4 mm exactly (international yard and pound agreement of 1959; NIST SP 811, appendix B). */
const LENGTHS: ReadonlyMap<string, number> = new Map([['mm', 1], ['cm', 10], ['m', 1000], ['in', 25.4]]);

const SWITCH_WORDS: ReadonlyMap<string, boolean> = new Map([
  ['on', true], ['true', true], ['yes', true], ['off', false], ['false', false], ['no', false],
]);

/**
 * Reads a parameter's value from text as typed on a command line or in a table: `10`, `10mm`, `0.5 in` for numbers (other
 * units of length for mm only, else the parameter's own unit or none), `on`, `no` … for switches, `x,y x,y` in mm for
 * points, `act x,y x,y; act x,y` for edits. Choices and texts are taken as they stand. A file cannot be typed: empty text means no file.
 */
export function parseParam(param: Param, text: string): ParsedParam {
  switch (param.kind) {
    case 'number': return checked(param, parseNumber(param, text), text, 'a plain decimal number');
    case 'switch': return checked(param, SWITCH_WORDS.get(text.trim().toLowerCase()), text, 'on, off, yes, no, true or false');
    case 'points': return checked(param, parsePoints(text), text, 'points in mm as x,y x,y');
    case 'edits': return checked(param, parseEdits(text), text, 'edits as act x,y x,y; act x,y');
    case 'file': return checked(param, text === '' ? null : undefined, text, 'the content of a file');
    case 'choice':
    case 'text': return checked(param, text, text, 'text');
  }
}

function checked(param: Param, value: ParamValue | undefined, text: string, expected: string): ParsedParam {
  if (value === undefined) {
    const unit = param.kind === 'number' ? unitAdvice(param) : 'Write it in that form.';
    return { ok: false, problem: { expected, found: show(text), advice: unit } };
  }
  const fault = checkValue(param, value);
  if (fault === undefined) return { ok: true, value };
  const { expected: wanted, found, advice } = fault;
  return { ok: false, problem: { expected: wanted, found, advice } };
}

function unitAdvice({ unit }: NumberParam): string {
  if (unit === 'mm') return 'Write it like 10, 10.5mm or 0.5in.';
  return unit === 'count' || unit === 'ratio' ? 'Write it without a unit.' : `Write it like 10 or 10 ${unit}.`;
}

function parseNumber({ unit }: NumberParam, text: string): number | undefined {
  const [, digits, rest] = NUMBER.exec(text.trim()) ?? [];
  if (digits === undefined || rest === undefined) return undefined;
  const factor = factorOf(unit, rest);
  if (factor === undefined) return undefined;
  // Fifteen digits are what a double holds for sure: 0.3 in is 7.62 mm, not 7.619999999999999.
  return factor === 1 ? Number(digits) : Number((Number(digits) * factor).toPrecision(15));
}

/** What a suffix multiplies the number by. All leading digits were the number's: `18000 1/min` needs its space. */
function factorOf(unit: NumberParam['unit'], suffix: string): number | undefined {
  const written = suffix.trim();
  if (written === '') return 1;
  if (unit === 'mm') return LENGTHS.get(written);
  return written === unit && unit !== 'count' && unit !== 'ratio' ? 1 : undefined;
}

function parsePoints(text: string): PointsParam['default'] | undefined {
  const points = text.trim().split(/\s+/).filter((part) => part !== '').map(parsePoint);
  return points.every((point) => point !== undefined) ? points : undefined;
}

/** Edits one after the other, parted by semicolons: what is done, and its places as fractions of the frame. */
function parseEdits(text: string): EditsParam['default'] | undefined {
  const edits = text.split(';').filter((part) => part.trim() !== '').map((part) => {
    const [act = '', ...places] = part.trim().split(/\s+/);
    return { act, places: parsePoints(places.join(' ')) };
  });
  return edits.every((edit): edit is Edit => edit.places !== undefined) ? edits : undefined;
}

/** Edits as `parseParam` reads them. */
export function editsText(edits: EditsParam['default']): string {
  return edits.map(({ act, places }) => [act, ...places.map(({ x, y }) => `${x},${y}`)].join(' ')).join('; ');
}

function parsePoint(text: string): { x: number; y: number } | undefined {
  const numbers = text.split(',').map((part) => (NUMBER.exec(part)?.[2] === '' ? Number(part) : NaN));
  const [x, y] = numbers;
  return numbers.length === 2 && Number.isFinite(x) && Number.isFinite(y) ? { x: x!, y: y! } : undefined;
}
