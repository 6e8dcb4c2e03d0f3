import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalsAt, labelledStep, roundStep, ticks } from '../../../src/editor/sheet/ticks.ts';
import { SCALES } from '../../../src/editor/sheet/view.ts';

const scales = fc.double({ min: Math.log(SCALES.least), max: Math.log(SCALES.most), noNaN: true }).map(Math.exp);

describe('a ruler', () => {
  it('steps by 1, 2 or 5 times a power of ten, never closer than its labels need and never far wider', () => {
    fc.assert(fc.property(scales, (scale) => {
      const { mantissa, exponent } = roundStep(scale, 64);
      expect([1, 2, 5]).toContain(mantissa);
      const pixels = mantissa * 10 ** exponent * scale;
      expect(pixels).toBeGreaterThan(63.9);
      expect(pixels).toBeLessThan(64 * 2.51);
    }));
  });

  it('has a labelled step of a hundredth of a millimetre at the nearest zoom', () => {
    expect(labelledStep(SCALES.most)).toBe(0.01);
  });

  it('has small steps of 1, 2 or 5 too, at least 5 pixels apart, that meet every label', () => {
    fc.assert(fc.property(scales, fc.double({ min: -3000, max: 3000, noNaN: true }), (scale, from) => {
      const list = ticks(from, from + 800 / scale, scale);
      const gaps = list.slice(1).map((tick, i) => tick.value - list[i]!.value);
      const least = Math.min(...gaps);
      expect(least * scale).toBeGreaterThan(4.9);
      expect(['1', '2', '5']).toContain(least.toExponential(3).replace('.000', '')[0]);
      expect(Math.max(...gaps)).toBeLessThan(least * 1.001);
      const labelled = list.filter(({ label }) => label !== undefined);
      expect(labelled.length).toBeGreaterThan(3);
      for (const { value, label } of labelled) expect(Number(label)).toBeCloseTo(value, 9);
    }));
  });

  it('writes labels without noise, alike in decimals, and zero as 0', () => {
    const labels = (from: number, to: number, scale: number) => ticks(from, to, scale).flatMap(({ label }) => label ?? []);
    expect(labels(-0.25, 0.35, 800)).toEqual(['-0.2', '-0.1', '0', '0.1', '0.2', '0.3']);
    expect(labels(2399.97, 2400.03, 8000)).toEqual(['2399.97', '2399.98', '2399.99', '2400.00', '2400.01', '2400.02', '2400.03']);
    expect(labels(0, 1000, 0.33)).toEqual(['0', '200', '400', '600', '800', '1000']);
  });

  it('tells places with as many decimals as the zoom can show', () => {
    expect(decimalsAt(0.4)).toBe(1);
    expect(decimalsAt(SCALES.most)).toBe(3);
  });
});
