import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scaleOf, stepped } from '../../../src/editor/form/scale.ts';

const LIMITS = {
  width: { min: 0.5, max: 100, step: 0.1 }, turn: { min: -180, max: 180, step: 1 }, shift: { min: -10_000, max: 10_000, step: 1 },
  sheet: { min: 1, max: 20_000, step: 1 }, tolerance: { min: 0.001, max: 0.5, step: 0.001 }, flutes: { min: 1, max: 8, step: 1 }, deviation: { min: 0.001, max: 1, step: 0.005 },
};
const anyLimits = fc.constantFrom(...Object.values(LIMITS));
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('a slider\'s scale', () => {
  it('begins and ends at the limits, exactly', () => {
    for (const limits of Object.values(LIMITS)) {
      const { low, high, valueAt } = scaleOf(limits);
      expect([valueAt(low), valueAt(high)]).toEqual([limits.min, limits.max]);
    }
  });

  it('goes up with the position but for the rounding, within the limits', () => {
    fc.assert(fc.property(anyLimits, share, share, (limits, a, b) => {
      const { low, high, valueAt } = scaleOf(limits);
      const [first, second] = [Math.min(a, b), Math.max(a, b)].map((part) => valueAt(low + part * (high - low)));
      expect(second).toBeGreaterThanOrEqual(first! - 1e-9 * limits.max - gridAt(limits, first!));
      expect(first).toBeGreaterThanOrEqual(limits.min);
      expect(second).toBeLessThanOrEqual(limits.max);
    }));
  });

  it('gives multiples of the step, without noise in their last digits', () => {
    fc.assert(fc.property(anyLimits, share, (limits, part) => {
      const { low, high, valueAt } = scaleOf(limits);
      const value = valueAt(low + part * (high - low));
      if (value === limits.min || value === limits.max) return;
      expect(Math.abs(value / limits.step - Math.round(value / limits.step))).toBeLessThan(1e-6);
      expect(String(value).length).toBeLessThan(8);
    }));
  });

  it('places a value where it would be read from, but for the rounding', () => {
    fc.assert(fc.property(anyLimits, share, (limits, part) => {
      const { low, high, positionOf, valueAt } = scaleOf(limits);
      const position = low + part * (high - low);
      expect(Math.abs(positionOf(valueAt(position)) - position) / (high - low)).toBeLessThan(0.06);
    }));
  });

  it('makes small and large values of wide limits usable: each decade gets a good part of the way', () => {
    const { low, high, positionOf } = scaleOf(LIMITS.sheet);
    const at = (value: number) => (positionOf(value) - low) / (high - low);
    for (const value of [10, 100, 1000]) expect(at(value * 10) - at(value)).toBeGreaterThan(0.15);
  });

  it('lies the same to both sides of 0', () => {
    const { positionOf } = scaleOf(LIMITS.shift);
    expect(positionOf(-250)).toBe(-positionOf(250));
    expect(scaleOf(LIMITS.shift).valueAt(0)).toBe(0);
  });

  it('is even where there are few steps, so that each of them can be hit', () => {
    const { valueAt } = scaleOf(LIMITS.turn);
    for (let angle = -180; angle <= 180; angle += 1) expect(valueAt(angle)).toBe(angle);
  });

  it('places values beyond the limits at the ends', () => {
    const { low, high, positionOf } = scaleOf(LIMITS.width);
    expect([positionOf(-5), positionOf(1e9)]).toEqual([low, high]);
  });
});

describe('a step by key', () => {
  it('adds the step and leaves what was typed between steps between them', () => {
    expect(stepped(10.03, 1, LIMITS.width)).toBe(10.13);
    expect(stepped(0.7, -1, LIMITS.width)).toBe(0.6);
    expect(stepped(10, 10, LIMITS.width)).toBe(11);
  });

  it('stops at the limits, which are reached at once by an endless step', () => {
    expect(stepped(99.95, 1, LIMITS.width)).toBe(100);
    expect(stepped(10, -Infinity, LIMITS.width)).toBe(0.5);
    expect(stepped(10, Infinity, LIMITS.width)).toBe(100);
  });

  it('comes back to where it was, step for step', () => {
    let value = 10;
    for (let i = 0; i < 500; i += 1) value = stepped(value, 1, LIMITS.width);
    for (let i = 0; i < 500; i += 1) value = stepped(value, -1, LIMITS.width);
    expect(value).toBe(10);
  });
});

/** Neighbouring hits may be rounded to grids of different fineness: so much one may overshoot the other. */
function gridAt({ step }: { readonly step: number }, value: number): number {
  return Math.max(step, Math.abs(value) / 20);
}
