import type { Unit } from '../../runtime/index.ts';
import { raised } from '../../values/check.ts';
import { ONE, type Rational, fromDecimal, over, times } from './rational.ts';

/** Powers of length, time, angle, mass, temperature, current and luminous flux. Turns and teeth are counted and have none. */
export type Dimension = readonly [length: number, time: number, angle: number, mass: number, temperature: number, current: number, flux: number];

/** What a unit is worth in mm, s, deg, kg, K, A and lm. */
export interface UnitWorth {
  readonly factor: Rational;
  readonly dimension: Dimension;
}

const exactly = (decimal: string): Rational => fromDecimal(decimal);
export const PURE: Dimension = [0, 0, 0, 0, 0, 0, 0];
const CURRENT: Dimension = [0, 0, 0, 0, 0, 1, 0];

/** An inch is 25.4 mm exactly, a foot twelve of them (international yard and pound agreement of 1959; NIST SP 811, appendix B). */
const LENGTHS: readonly (readonly [string, string])[] = [
  ['mm', '1'], ['cm', '10'], ['m', '1000'], ['in', '25.4'], ['inch', '25.4'], ['inches', '25.4'], ['"', '25.4'], ['″', '25.4'], ['”', '25.4'], ['ft', '304.8'],
];
const TIMES: readonly (readonly [string, string])[] = [['s', '1'], ['min', '60']];

const UNITS: ReadonlyMap<string, UnitWorth> = new Map([
  ...LENGTHS.flatMap(([name, size]) => withLength(name, exactly(size))),
  ...TIMES.map(([name, size]) => [name, { factor: exactly(size), dimension: [0, 1, 0, 0, 0, 0, 0] }] as const),
  ...['deg', '°'].map((name) => [name, { factor: ONE, dimension: [0, 0, 1, 0, 0, 0, 0] }] as const),
  ...['1/min', '/min', 'rpm'].map((name) => [name, { factor: over(ONE, exactly('60')), dimension: [0, -1, 0, 0, 0, 0, 0] }] as const),
  ...['kg/m3', 'kg/m³'].map((name) => [name, { factor: exactly('1e-9'), dimension: [-3, 0, 0, 1, 0, 0, 0] }] as const),
  ...['g/cm3', 'g/cm³'].map((name) => [name, { factor: exactly('1e-6'), dimension: [-3, 0, 0, 1, 0, 0, 0] }] as const),
  // A newton is 1 kg m/s2, a pascal 1 kg/(m s2).
  ['N', { factor: exactly('1000'), dimension: [1, -2, 0, 1, 0, 0, 0] }],
  ['MPa', { factor: exactly('1000'), dimension: [-1, -2, 0, 1, 0, 0, 0] }], ['GPa', { factor: exactly('1000000'), dimension: [-1, -2, 0, 1, 0, 0, 0] }],
  ['K', { factor: ONE, dimension: [0, 0, 0, 0, 1, 0, 0] }],
  ['A', { factor: ONE, dimension: CURRENT }], ['mA', { factor: exactly('0.001'), dimension: CURRENT }],
  // A watt is 1 kg m2/s3, a volt a watt per ampere, an ohm a volt per ampere.
  ['W', { factor: exactly('1000000'), dimension: [2, -3, 0, 1, 0, 0, 0] }], ['V', { factor: exactly('1000000'), dimension: [2, -3, 0, 1, 0, -1, 0] }],
  ...perLength('W', exactly('1000000'), [1, -3, 0, 1, 0, 0, 0]), ...perLength('ohm', exactly('1000000'), [1, -3, 0, 1, 0, -2, 0]), ...perLength('lm', ONE, [-1, 0, 0, 0, 0, 0, 1]),
  ...perLength('kg', ONE, [-1, 0, 0, 1, 0, 0, 0]), ...perLength('g', exactly('0.001'), [-1, 0, 0, 1, 0, 0, 0]),
  ['%', { factor: exactly('0.01'), dimension: PURE }],
]);

/** What is spread along a length, by the metre and by the foot. */
function perLength(name: string, factor: Rational, dimension: Dimension): (readonly [string, UnitWorth])[] {
  return (['m', 'ft'] as const).map((length) => [`${name}/${length}`, { factor: over(factor, exactly(length === 'm' ? '1000' : '304.8')), dimension }]);
}

/** A length and what is made of it: areas, speeds, accelerations, advance per tooth. */
function withLength(name: string, factor: Rational): (readonly [string, UnitWorth])[] {
  const unit = (suffix: string, worth: Rational, dimension: Dimension) => [name + suffix, { factor: worth, dimension }] as const;
  return [
    unit('', factor, [1, 0, 0, 0, 0, 0, 0]), unit('/tooth', factor, [1, 0, 0, 0, 0, 0, 0]),
    ...['2', '²'].map((power) => unit(power, times(factor, factor), [2, 0, 0, 0, 0, 0, 0])),
    ...TIMES.map(([time, size]) => unit(`/${time}`, over(factor, exactly(size)), [1, -1, 0, 0, 0, 0, 0])),
    ...['/s2', '/s²'].map((suffix) => unit(suffix, factor, [1, -2, 0, 0, 0, 0, 0])),
  ];
}

const LONGEST = Math.max(...[...UNITS.keys()].map((name) => name.length));

/** The longest unit written at a place of a text; letters and digits that follow it would make it another word. */
export function unitAt(text: string, from: number): string | undefined {
  for (let end = Math.min(text.length, from + LONGEST); end > from; end -= 1) {
    const name = text.slice(from, end);
    if (UNITS.has(name) && !/^[\p{L}\p{N}]/u.test(/[\p{L}\p{N}]$/u.test(name) ? text.slice(end) : '')) return name;
  }
  return undefined;
}

export const worthOf = (name: string): UnitWorth | undefined => UNITS.get(name);

/** What 1 is worth in a parameter of this unit. */
export function unitWorth(unit: Unit): UnitWorth {
  return UNITS.get(unit) ?? { factor: ONE, dimension: PURE };
}

const SHOWN: Readonly<Partial<Record<Unit, string>>> = { deg: '°', count: '', ratio: '' };

/** The unit as a person reads it; empty for counts and ratios. */
export const shownUnit = (unit: Unit): string => SHOWN[unit] ?? raised(unit);

/** The shortest text that reads as exactly this number. */
export const exactText = (value: number): string => String(value);

/** Digits that a field at rest shows: a ten-thousandth of a millimetre in a length of a metre, and what fits a narrow card. */
const SHOWN_DIGITS = 8;

/** A number as it is shown at rest, without the noise of its last digits. */
export const shownText = (value: number): string => String(Number(value.toPrecision(SHOWN_DIGITS)));

/** A number with its unit, such as `50.8 mm`. */
export function amount(value: number, unit: Unit): string {
  const shown = shownUnit(unit);
  return shown === '' ? shownText(value) : `${shownText(value)}${shown === '°' ? '' : ' '}${shown}`;
}

const EXAMPLES: Readonly<Record<Unit, string>> = {
  mm: '10, 2400/3 or 0.5 in', mm2: '20, 4*5 or 1 in2', 'mm/min': '900, 15 mm/s or 40 in/min', 'mm/s2': '400 or 0.4 m/s2', 'mm/tooth': '0.1 or 0.004 in',
  '1/min': '18000 or 6000*3', deg: '45 or 360/8', s: '5 or 0.5 min', 'kg/m3': '1190 or 1.19 g/cm3', 'kg/m': '0.1 or 100 g/m', N: '100 or 4*25', MPa: '3200 or 3000+200', K: '10 or 25-15', W: '60 or 2*30', V: '24 or 2*12', A: '3 or 500 mA', 'W/m': '10 or 3 W/ft', 'lm/m': '800 or 250 lm/ft', 'ohm/m': '0.05 or 0.25/5', count: '4 or 2*3', ratio: '0.4, 2/5 or 40%',
};

/** Ways to write a value of this unit, for sentences that say what to do. */
export const examplesOf = (unit: Unit): string => EXAMPLES[unit];

const DIMENSIONS: readonly (readonly [Dimension, string])[] = [
  [PURE, 'a plain number'], [[1, 0, 0, 0, 0, 0, 0], 'a length'], [[2, 0, 0, 0, 0, 0, 0], 'an area'], [[0, 1, 0, 0, 0, 0, 0], 'a time'], [[0, 0, 1, 0, 0, 0, 0], 'an angle'],
  [[1, -1, 0, 0, 0, 0, 0], 'a speed'], [[1, -2, 0, 0, 0, 0, 0], 'an acceleration'], [[0, -1, 0, 0, 0, 0, 0], 'turns per time'], [[-3, 0, 0, 1, 0, 0, 0], 'a density'],
  [[-1, 0, 0, 1, 0, 0, 0], 'a mass per length'], [[1, -2, 0, 1, 0, 0, 0], 'a force'], [[-1, -2, 0, 1, 0, 0, 0], 'a pressure'], [[0, 0, 0, 0, 1, 0, 0], 'a difference of temperature'],
  [CURRENT, 'a current'], [[2, -3, 0, 1, 0, 0, 0], 'a power'], [[2, -3, 0, 1, 0, -1, 0], 'a voltage'], [[1, -3, 0, 1, 0, 0, 0], 'a power per length'],
  [[-1, 0, 0, 0, 0, 0, 1], 'light per length'], [[1, -3, 0, 1, 0, -2, 0], 'a resistance per length'],
];

export const sameDimension = (a: Dimension, b: Dimension): boolean => a.every((power, i) => power === b[i]);

/** What a quantity of this dimension is called. */
export function dimensionName(dimension: Dimension): string {
  return DIMENSIONS.find(([known]) => sameDimension(known, dimension))?.[1] ?? 'a product of units';
}
