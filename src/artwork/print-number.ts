/**
 * A number for a drawing: at most `decimals` digits after the point, no exponent, no trailing zeros, no minus before zero,
 * the same in every locale. A number that is not finite is the caller's mistake.
 */
export function printNumber(value: number, decimals = 4): string {
  // Above 1e21 even a fixed print turns to exponents.
  if (!(Math.abs(value) < 1e21)) throw new RangeError(`a number within 1e21 was expected, not ${value}`);
  const printed = value.toFixed(decimals);
  const short = printed.includes('.') ? printed.replace(/\.?0+$/, '') : printed;
  return short === '-0' ? '0' : short;
}
