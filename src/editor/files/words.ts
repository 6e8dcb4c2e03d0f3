import { raised } from '../../values/check.ts';

/** "1 step", "25 steps". */
export const counted = (count: number, thing: string): string => `${String(count)} ${thing}${count === 1 ? '' : 's'}`;

/** Characters of plain text as a file's size: 1 kB is 1000 bytes. */
export function sized(bytes: number): string {
  if (bytes < 1000) return counted(bytes, 'byte');
  const [value, unit] = bytes < 1e6 ? [bytes / 1000, 'kB'] : [bytes / 1e6, 'MB'];
  return `${value < 10 ? value.toFixed(1) : value.toFixed(0)} ${unit}`;
}

/** "4.9 s", "320 ms". */
export const lasted = (milliseconds: number): string =>
  (milliseconds < 1000 ? `${milliseconds.toFixed(0)} ms` : `${(milliseconds / 1000).toFixed(1)} s`);

/** "14:02" today, else "3 May, 14:02". */
export function clock(at: Date, now = new Date()): string {
  const time = at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return at.toDateString() === now.toDateString() ? time : `${at.toLocaleDateString('en-GB', { day: 'numeric', month: 'long' })}, ${time}`;
}

/** A name as programs write it, in words: `grooveArea` is "groove area". */
export const spaced = (name: string): string => name.replace(/([a-z0-9])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`);

/** A figure with its unit, to six digits; what is counted or a ratio has none. */
export function measured(value: number, unit: string): string {
  const figure = String(Number(value.toPrecision(6)));
  return unit === 'count' || unit === 'ratio' ? figure : `${figure} ${raised(unit)}`;
}
