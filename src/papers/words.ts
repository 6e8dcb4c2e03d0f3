import { millimetres, type Tile } from '../machining/index.ts';

/** A length to a tenth of a millimetre, without its unit. */
export const tenths = (value: number): string => millimetres(value, 1);
export const hundredths = (value: number): string => millimetres(value, 2);

/** A time in minutes, and in hours where it takes longer. */
export function duration(minutes: number): string {
  const whole = `${minutes.toFixed(1)} min`;
  return minutes < 60 ? whole : `${whole} (${Math.floor(minutes / 60)} h ${Math.round(minutes % 60)} min)`;
}

export const counted = (count: number, one: string, several = `${one}s`): string => `${count} ${count === 1 ? one : several}`;

/** “pin 1”, “pins 1 and 2”. */
export const numbered = (word: string, numbers: readonly number[]): string => `${word}${numbers.length === 1 ? '' : 's'} ${listed(numbers.map(String))}`;

export const listed = (words: readonly string[]): string => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`);

/** How the sheet moves on the machine from one shift to another, as the operator at the front sees it. */
export function movement(before: Tile['shift'], now: Tile['shift']): string {
  const ways = [...way(before[0] - now[0], 'to the right', 'to the left'), ...way(before[1] - now[1], 'away from you', 'towards you')];
  return ways.length > 0 ? listed(ways) : 'not at all';
}

const way = (by: number, ahead: string, back: string): string[] => (by === 0 ? [] : [`${hundredths(Math.abs(by))} mm ${by > 0 ? ahead : back}`]);

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
