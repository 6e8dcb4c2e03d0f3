/** An exact fraction; `d` is positive. Not reduced: what a person can type stays small enough without. */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

export const ZERO: Rational = { n: 0n, d: 1n };
export const ONE: Rational = { n: 1n, d: 1n };

export const add = (a: Rational, b: Rational): Rational => ({ n: a.n * b.d + b.n * a.d, d: a.d * b.d });
export const negate = ({ n, d }: Rational): Rational => ({ n: -n, d });
export const times = (a: Rational, b: Rational): Rational => ({ n: a.n * b.n, d: a.d * b.d });

/** The quotient; the divisor must not be 0. */
export function over(a: Rational, b: Rational): Rational {
  const quotient = { n: a.n * b.d, d: a.d * b.n };
  return quotient.d < 0n ? { n: -quotient.n, d: -quotient.d } : quotient;
}

/** Reads digits with at most one point and an exponent, such as `25.4`, `.5` or `1e-7`. */
export function fromDecimal(text: string): Rational {
  const [digits = '', exponent = '0'] = text.toLowerCase().split('e');
  const [whole = '', part = ''] = digits.split('.');
  const power = Number(exponent) - part.length;
  const n = BigInt(whole + part);
  return power < 0 ? { n, d: 10n ** BigInt(-power) } : { n: n * 10n ** BigInt(power), d: 1n };
}

/** More digits than decide which double is nearest; what is cut off behind them is told by one digit more. */
const DIGITS = 25;

/** The nearest double; infinite when there is none. */
export function toNumber({ n, d }: Rational): number {
  const size = n < 0n ? -n : n;
  const power = DIGITS - (String(size).length - String(d).length);
  const dividend = power >= 0 ? size * 10n ** BigInt(power) : size;
  const divisor = power >= 0 ? d : d * 10n ** BigInt(-power);
  const rest = dividend % divisor === 0n ? '' : '1';
  const value = Number(`${dividend / divisor}${rest}e${-power - rest.length}`);
  return n < 0n ? -value : value;
}
