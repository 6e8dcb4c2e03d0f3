import { type Edit, type EditsParam, type ParsedParam, editsText, parseParam } from '../../runtime/index.ts';

/** Edits as text, a line for each: the act, then its places as fractions of the frame. */
export const editsLines = (edits: readonly Edit[]): string => editsText(edits).replaceAll('; ', '\n');

/** Reads edits from lines, or parted by semicolons. */
export const readEdits = (param: EditsParam, text: string): ParsedParam => parseParam(param, text.replace(/[\r\n]+/g, ';'));

/** Places told of an edit that has many. */
const MOST_TOLD = 3;

/** Where an edit was made: "at 41.2, 11.3 %", "from … to …". */
export function placesWords(places: Edit['places']): string {
  const [first, second] = places;
  if (first === undefined) return '';
  if (second === undefined) return `at ${percent(first)} %`;
  if (places.length === 2) return `from ${percent(first)} to ${percent(second)} %`;
  const more = places.length - MOST_TOLD;
  return `at ${places.slice(0, MOST_TOLD).map(percent).join('; ')} %${more > 0 ? ` and ${more} more` : ''}`;
}

const percent = ({ x, y }: Edit['places'][number]): string => `${tenths(100 * x)}, ${tenths(100 * y)}`;
const tenths = (value: number): string => String(Math.round(value * 10) / 10 || 0);

/** The number of the entry, counted from 0, that a problem's place names: `edits 3` names the third of the parameter `edits`. */
export function entryNamed(param: string, place: string | undefined): number | undefined {
  const number = place?.startsWith(`${param} `) ? Number(place.slice(param.length + 1)) : NaN;
  return Number.isInteger(number) && number > 0 ? number - 1 : undefined;
}
