import type { Problem, Unit } from '../../runtime/index.ts';
import { type Token, tokenize } from './tokens.ts';
import { ONE, type Rational, ZERO, add, fromDecimal, negate, over, times, toNumber } from './rational.ts';
import { type Dimension, PURE, dimensionName, examplesOf, sameDimension, shownUnit, unitWorth, worthOf } from './units.ts';

/** Why a text is no value, and what may have been meant, ready to be taken. */
export interface Refusal extends Problem {
  readonly instead?: readonly string[];
}

export type Reading =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly refusal: Refusal };

/** Longest text that is read, and deepest nesting of parentheses and signs: both bound the time a text can cost. */
export const MOST = { characters: 200, depth: 20 } as const;

/** An exact amount. Without dimension it is a bare number, which takes the unit of the field when nothing else does. */
interface Quantity {
  readonly size: Rational;
  readonly dimension?: Dimension;
  /** The number and its unit's factor, where the unit stands right behind it. */
  readonly written?: { readonly number: Rational; readonly factor: Rational };
}

interface Reader {
  readonly tokens: readonly Token[];
  readonly unit: Unit;
  next: number;
  depth: number;
  refusal: Refusal | undefined;
}

/**
 * Reads what a person types for a number of this unit: decimals with a point, + - * / and parentheses, mixed numbers as
 * `1 1/2 in`, and units that are converted exactly. A unit belongs to the number or fraction before it. The value is the double nearest
 * to the exact result, in the field's unit.
 */
export function readExpression(text: string, unit: Unit): Reading {
  if (text.length > MOST.characters) return refused({ expected: `at most ${MOST.characters} characters`, found: `${text.length}`, advice: 'Write it shorter.' });
  const tokens = tokenize(text.trim());
  if (!tokens.ok) return tokens;
  if (tokens.tokens.length === 0) return refused({ expected: 'a number', found: 'nothing', advice: `Write a value such as ${examplesOf(unit)}.` });
  const reader: Reader = { tokens: tokens.tokens, unit, next: 0, depth: 0, refusal: undefined };
  const quantity = sum(reader);
  const rest = reader.tokens[reader.next];
  if (rest !== undefined) unexpected(reader, rest);
  return reader.refusal === undefined ? inUnit(quantity, unit) : refused(reader.refusal);
}

const refused = (refusal: Refusal): Reading => ({ ok: false, refusal });

function inUnit({ size, dimension }: Quantity, unit: Unit): Reading {
  const worth = unitWorth(unit);
  if (dimension !== undefined && !sameDimension(dimension, worth.dimension))
    return refused({ expected: named(worth.dimension, unit), found: dimensionName(dimension), advice: `Write a value such as ${examplesOf(unit)}.` });
  const value = toNumber(dimension === undefined ? size : over(size, worth.factor));
  if (Number.isFinite(value)) return { ok: true, value: value === 0 ? 0 : value };
  return refused({ expected: 'a number a machine can hold', found: 'one beyond all bounds', advice: 'Write a smaller number.' });
}

function named(dimension: Dimension, unit: Unit): string {
  const shown = shownUnit(unit);
  return shown === '' ? dimensionName(dimension) : `${dimensionName(dimension)} in ${shown}`;
}

/** Keeps the first thing that is wrong: what follows from it would only confuse. */
function refuse(reader: Reader, refusal: Refusal): Quantity {
  reader.refusal ??= refusal;
  reader.next = reader.tokens.length;
  return { size: ZERO };
}

function unexpected(reader: Reader, token: Token): Quantity {
  const before = reader.tokens[reader.next - 1];
  if (token.kind === 'sign' && token.text === ')') return refuse(reader, { expected: 'as many ( as )', found: 'a ) without its (', advice: 'Take it out, or open it before.' });
  const between = before !== undefined && token.kind !== 'sign' ? ` after “${before.text}”` : '';
  return refuse(reader, { expected: 'one of + - * /', found: `“${token.text}”${between}`, advice: 'Put the sign between them.' });
}

function take(reader: Reader, ...signs: readonly string[]): string | undefined {
  const token = reader.tokens[reader.next];
  if (token?.kind !== 'sign' || !signs.includes(token.text)) return undefined;
  reader.next += 1;
  return token.text;
}

function sum(reader: Reader): Quantity {
  let total = product(reader);
  for (let sign = take(reader, '+', '-'); sign !== undefined; sign = take(reader, '+', '-')) {
    const term = product(reader);
    total = plus(reader, total, sign === '-' ? { ...term, size: negate(term.size) } : term);
  }
  return total;
}

function plus(reader: Reader, a: Quantity, b: Quantity): Quantity {
  const size = add(a.size, b.size);
  if (a.dimension === undefined && b.dimension === undefined) return { size };
  if (a.dimension === undefined || b.dimension === undefined)
    return refuse(reader, { expected: 'a unit on each part of a sum, or on none', found: 'a part without one', advice: 'Write it like 3 in + 2 mm, or (1 + 1/2) in.' });
  if (sameDimension(a.dimension, b.dimension)) return { size, dimension: a.dimension };
  return refuse(reader, { expected: 'parts of one kind', found: `${dimensionName(a.dimension)} and ${dimensionName(b.dimension)}`, advice: 'Add lengths to lengths, times to times.' });
}

function product(reader: Reader): Quantity {
  let result = signed(reader);
  for (let sign = take(reader, '*', '/'); sign !== undefined; sign = take(reader, '*', '/')) {
    const factor = signed(reader);
    result = sign === '*' ? multiplied(result, factor) : divided(reader, result, factor);
  }
  return result;
}

function divided(reader: Reader, a: Quantity, b: Quantity): Quantity {
  if (reader.refusal !== undefined) return a;
  if (b.size.n === 0n) return refuse(reader, { expected: 'a divisor other than 0', found: '0', advice: 'Divide by another number.' });
  // In 1/2 in, the unit is that of the fraction: one half, in inches.
  if (a.dimension === undefined && b.written !== undefined)
    return { size: times(over(a.size, b.written.number), b.written.factor), ...(b.dimension && { dimension: b.dimension }) };
  const dimension = b.dimension?.map((power) => -power) as Dimension | undefined;
  return multiplied(a, { size: over(ONE, b.size), ...(dimension && { dimension }) });
}

function multiplied(a: Quantity, b: Quantity): Quantity {
  const size = times(a.size, b.size);
  if (a.dimension === undefined && b.dimension === undefined) return { size };
  const other = b.dimension ?? PURE;
  return { size, dimension: (a.dimension ?? PURE).map((power, i) => power + other[i]!) as unknown as Dimension };
}

function signed(reader: Reader): Quantity {
  const sign = take(reader, '+', '-');
  if (sign === undefined) return withUnit(reader);
  return deeper(reader, () => {
    const quantity = signed(reader);
    return sign === '-' ? negated(quantity) : quantity;
  });
}

function negated({ size, written, ...rest }: Quantity): Quantity {
  return { ...rest, size: negate(size), ...(written && { written: { ...written, number: negate(written.number) } }) };
}

function deeper(reader: Reader, read: () => Quantity): Quantity {
  if (reader.depth >= MOST.depth) return refuse(reader, { expected: `at most ${MOST.depth} parentheses or signs inside one another`, found: 'more', advice: 'Write it with fewer.' });
  reader.depth += 1;
  const quantity = read();
  reader.depth -= 1;
  return quantity;
}

function withUnit(reader: Reader): Quantity {
  const quantity = primary(reader);
  const token = reader.tokens[reader.next];
  if (token?.kind !== 'unit' || reader.refusal !== undefined) return quantity;
  if (quantity.dimension !== undefined) return unexpected(reader, token);
  reader.next += 1;
  const { factor, dimension } = worthOf(token.text)!;
  return { size: times(quantity.size, factor), dimension, written: { number: quantity.size, factor } };
}

function primary(reader: Reader): Quantity {
  if (take(reader, '(') !== undefined) return deeper(reader, () => grouped(reader));
  const token = reader.tokens[reader.next];
  if (token === undefined) return refuse(reader, { expected: 'a number at the end', found: 'nothing more', advice: 'Write the number that is missing.' });
  if (token.kind !== 'number') return refuse(reader, { expected: 'a number', found: `“${token.text}”`, advice: `Write a value such as ${examplesOf(reader.unit)}.` });
  reader.next += 1;
  return { size: mixed(reader, token.text) };
}

function grouped(reader: Reader): Quantity {
  const { size, dimension } = sum(reader);
  if (take(reader, ')') === undefined) return refuse(reader, { expected: 'as many ) as (', found: 'a ( without its )', advice: 'Close it.' });
  return { size, ...(dimension && { dimension }) };
}

const isWhole = (token: Token | undefined): token is Token => token?.kind === 'number' && /^\d+$/.test(token.text);

/** A number, together with the fraction that follows it in a mixed number such as `1 1/2`. */
function mixed(reader: Reader, text: string): Rational {
  const [above, slash, under] = reader.tokens.slice(reader.next, reader.next + 3);
  const fraction = /^\d+$/.test(text) && isWhole(above) && slash?.text === '/' && isWhole(under);
  if (!fraction || fromDecimal(under.text).n === 0n) return fromDecimal(text);
  reader.next += 3;
  return add(fromDecimal(text), over(fromDecimal(above.text), fromDecimal(under.text)));
}
