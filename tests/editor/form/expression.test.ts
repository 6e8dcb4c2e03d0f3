import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST, readExpression } from '../../../src/editor/form/expression.ts';
import { amount, exactText, shownText } from '../../../src/editor/form/units.ts';
import type { Unit } from '../../../src/runtime/index.ts';

const value = (text: string, unit: Unit = 'mm') => {
  const reading = readExpression(text, unit);
  return reading.ok ? reading.value : reading.refusal;
};
const refusal = (text: string, unit: Unit = 'mm') => {
  const reading = readExpression(text, unit);
  if (reading.ok) throw new Error(`${text} was read as ${reading.value}`);
  return reading.refusal;
};

const UNITS: readonly Unit[] = ['mm', 'mm2', 'mm/min', 'mm/s2', 'mm/tooth', '1/min', 'deg', 's', 'kg/m3', 'MPa', 'K', 'W', 'V', 'A', 'W/m', 'lm/m', 'ohm/m', 'count', 'ratio'];

describe('reading an expression', () => {
  it.each([
    ['10', 10], ['+10', 10], ['-2.5', -2.5], ['.5', 0.5], ['5.', 5], ['2400/3', 800], ['25.4*2', 50.8], ['2 × 3', 6], ['7 ÷ 2', 3.5], ['−4', -4],
    ['1+2*3', 7], ['(1+2)*3', 9], ['10-2-3', 5], ['100/5/2', 10], ['2--3', 5], ['0.1+0.2', 0.3], ['0.3-0.1*3', 0], ['1/3', 1 / 3], ['1e3', 1000], ['1.5e-3', 0.0015],
  ])('calculates %s exactly', (text, expected) => expect(value(text)).toBe(expected));

  // NIST SP 811, appendix B.8: an inch is 25.4 mm exactly, a foot 304.8 mm exactly.
  it.each([
    ['1 in', 25.4], ['1/2 in', 12.7], ['0.5"', 12.7], ['0.3 in', 7.62], ['3in + 2 mm', 78.2], ['1 1/2 in', 38.1], ['2 3/16"', 55.5625], ['(1 + 1/2) in', 38.1],
    ['1/64 in', 0.396875], ['0.001in', 0.0254], ['1 ft', 304.8], ['2 m', 2000], ['3.5cm', 35], ['10mm', 10], ['2400 mm/3', 800], ['6 in * 1/2', 76.2], ['-1/2 in', -12.7], ['1/-2 in', -12.7],
  ])('reads the length %s', (text, expected) => expect(value(text)).toBe(expected));

  it.each([
    ['1 in2', 'mm2', 645.16], ['3 in * 2 mm', 'mm2', 152.4], ['40 in/min', 'mm/min', 1016], ['15 mm/s', 'mm/min', 900], ['1.2 m/min', 'mm/min', 1200], ['300 mm / 0.5 min', 'mm/min', 600],
    ['0.4 m/s²', 'mm/s2', 400], ['0.004 in/tooth', 'mm/tooth', 0.1016], ['0.1 mm', 'mm/tooth', 0.1], ['18000 1/min', '1/min', 18000], ['6000*3 rpm', '1/min', 18000],
    ['45°', 'deg', 45], ['360 deg/8', 'deg', 45], ['0.5 min', 's', 30], ['1.19 g/cm3', 'kg/m3', 1190], ['3.2 GPa', 'MPa', 3200], ['25 K - 15 K', 'K', 10], ['500 mA', 'A', 0.5], ['12 V * 2 A', 'W', 24], ['60 W / 5 A', 'V', 12], ['3.048 W/ft', 'W/m', 10], ['50 W / 5 m', 'W/m', 10], ['0.5 V/2 A/5 m', 'ohm/m', 0.05], ['2*3', 'count', 6], ['40%', 'ratio', 0.4], ['2/5', 'ratio', 0.4], ['600 mm / 200 mm', 'ratio', 3],
  ] as const)('reads %s for %s', (text, unit, expected) => expect(value(text, unit)).toBe(expected));

  it.each([
    ['', 'nothing'], ['   ', 'nothing'], ['1/0', '0'], ['1/(2-2)', '0'], ['5*', 'nothing more'], ['(2', 'a ( without its )'], ['2)', 'a ) without its ('],
    ['2 3', '“3” after “2”'], ['5 kg', '“kg”'], ['abc', '“abc”'], ['in', '“in”'], ['1.2.3', '“1.2.3”'], ['10 s', 'a time'], ['3 in * 2 mm', 'an area'], ['600mm/2in', 'a plain number'],
    ['3 in + 2', 'a part without one'], ['1 + 1/2 in', 'a part without one'], ['1 mm + 1 s', 'a length and a time'], ['1e400', 'one beyond all bounds'], ['2^3', '“^”'], ['0x10', '“x”'],
  ])('refuses %j and says what it found', (text, found) => expect(refusal(text).found).toBe(found));

  it('takes a comma neither for a decimal nor for thousands, and offers what may have been meant', () => {
    expect(refusal('12,5').instead).toEqual(['12.5']);
    expect(refusal('1,200').instead).toEqual(['1.200', '1200']);
    expect(refusal('1,200,000').instead).toEqual(['1200000']);
    expect(refusal('12,5 in + 1 mm').instead).toEqual(['12.5 in + 1 mm']);
    expect(refusal(',').instead).toBeUndefined();
  });

  it('offers nothing that it would then refuse for its comma', () => {
    fc.assert(fc.property(fc.stringMatching(/^[0-9,. ]{1,12}$/), (text) => {
      const reading = readExpression(text, 'mm');
      for (const offer of reading.ok ? [] : reading.refusal.instead ?? []) expect(offer).not.toContain(',');
    }));
  });

  it('reads an expression as deep as it allows, and refuses a deeper or longer one', () => {
    const nested = (depth: number) => `${'('.repeat(depth)}1${')'.repeat(depth)}`;
    expect(value(nested(MOST.depth))).toBe(1);
    expect(refusal(nested(MOST.depth + 1)).expected).toContain('inside one another');
    expect(refusal('-'.repeat(150) + '1').expected).toContain('inside one another');
    expect(refusal('1+'.repeat(200)).expected).toContain('characters');
    expect(refusal('1e308*'.repeat(30) + '1').found).toBe('one beyond all bounds');
  });
});

describe('whatever is typed', () => {
  const pieces = fc.array(fc.constantFrom('1', '0', '2.5', '1e9', ' ', '+', '-', '*', '/', '(', ')', 'in', 'mm', '"', '%', 's', '/min', '1/min', ',', '.', 'x', '½', '\u0000'), { maxLength: 24 });

  it('comes to a finite number or a whole sentence, and throws never', () => {
    const text = fc.oneof(pieces.map((parts) => parts.join('')), fc.string({ maxLength: 60, unit: 'binary' }));
    fc.assert(fc.property(text, fc.constantFrom(...UNITS), (typed, unit) => {
      const reading = readExpression(typed, unit);
      if (reading.ok) return Number.isFinite(reading.value) && !Object.is(reading.value, -0);
      const { expected, found, advice } = reading.refusal;
      return expected !== '' && found !== '' && /[.]$/.test(advice);
    }), { numRuns: 3000 });
  });

  it('reads every number it writes as the same number', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom(...UNITS), (number, unit) => {
      expect(value(exactText(number), unit)).toBe(number === 0 ? 0 : number);
    }), { numRuns: 2000 });
  });

  it('reads a shown amount, unit and all, as the number shown', () => {
    fc.assert(fc.property(fc.double({ min: -1e7, max: 1e7, noNaN: true }), fc.constantFrom(...UNITS), (number, unit) => {
      expect(value(amount(number, unit), unit)).toBe(Number(shownText(number)) + 0);
    }));
  });

  it('gives the nearest double for quotients of whole numbers, as division does', () => {
    fc.assert(fc.property(fc.integer(), fc.integer().filter((n) => n !== 0), (a, b) => {
      expect(value(`${a}/(${b})`)).toBe(a / b + 0);
    }));
  });

  it('agrees with the double nearest to inches times 25.4', () => {
    fc.assert(fc.property(fc.integer({ min: -100_000, max: 100_000 }), (thousandths) => {
      expect(value(`${thousandths / 1000} in`)).toBe((thousandths * 254) / 10_000 + 0);
    }));
  });
});
