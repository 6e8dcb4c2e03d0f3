import { describe, expect, it } from 'vitest';
import { CLASS_5, GAUGES, SELV_VOLTS, classTwo, touchVolts } from '../../src/lighting/index.ts';
import { at20, gaugeDiameter, gaugeResistance, warmer } from '../../src/lighting/wiring/copper.ts';
import { type Element, dropFromBoth, dropFromStart, pairDrop } from '../../src/lighting/wiring/drop.ts';
import { fuseFor, parcels, ratingFor } from '../../src/lighting/wiring/supplies.ts';
import { seeded } from '../support/random.ts';

describe('copper', () => {
  // IEC 60028:1925; NBS Handbook 100 (1966).
  it('30 K warmer resists 1.1179 times as much', () => expect(warmer(1, 30)).toBeCloseTo(1.1179, 4));
  // NEC chapter 9 table 8: AWG 18 solid, 25.5 ohm/km at 75 C; worked 25.476.
  it('of AWG 18 at 75 C', () => {
    expect(warmer(gaugeResistance(18), 55)).toBeCloseTo(25.476, 2);
    expect(Math.abs(warmer(gaugeResistance(18), 55) / 25.5 - 1)).toBeLessThan(0.005);
  });
  // IEC 60228, annex: the factor for 30 C is printed as 0.962.
  it('measured at 30 C is brought to 20 C', () => expect(at20(1, 30)).toBeCloseTo(0.96219, 5));
});

// ASTM B258 and NBS Handbook 100: diameter, cross-section and resistance at 20 C; printed tables agree within 0.5 %.
it.each([[18, 1.0237, 0.82305, 20.948, 20.9], [20, 0.81182, 0.51762, 33.308, 33.3], [22, 0.6438, 0.32553, 52.962, 53], [24, 0.51056, 0.20473, 84.213, 84.2]])('AWG %d', (gauge, diameter, area, ohms, printed) => {
  const size = GAUGES.find(({ name }) => name === `AWG ${gauge}`)!;
  expect(gaugeDiameter(gauge) / diameter).toBeCloseTo(1, 4);
  expect(size.area / area).toBeCloseTo(1, 4);
  expect(size.ohmsPerKm / ohms).toBeCloseTo(1, 4);
  expect(Math.abs(size.ohmsPerKm / printed - 1)).toBeLessThan(0.005);
});

// IEC 60228:2004 table 3, class 5, plain copper, greatest resistance at 20 C.
it('class 5 wires are those of the table, thinnest first', () => {
  expect(CLASS_5.map(({ area, ohmsPerKm }) => [area, ohmsPerKm])).toEqual([[0.5, 39], [0.75, 26], [1, 19.5], [1.5, 13.3], [2.5, 7.98]]);
  for (const sizes of [CLASS_5, GAUGES]) expect([...sizes].sort((a, b) => a.area - b.area || a.ampacity - b.ampacity)).toEqual(sizes);
});

describe('voltage drop', () => {
  // Ohm's law: 3 m of 0.75 mm2 class 5, 50 W at 24 V: 0.15600 ohm, 0.32500 V, 1.3542 %; AWG 20 by its printed 33.3 ohm/km 0.41625 V.
  it('along a pair of wires', () => {
    expect(pairDrop(3000, 26, 1)).toBeCloseTo(0.156, 9);
    expect(pairDrop(3000, 26, 50 / 24)).toBeCloseTo(0.325, 9);
    expect(pairDrop(3000, 26, 50 / 24) / 24).toBeCloseTo(0.013542, 6);
    expect(pairDrop(3000, 33.3, 50 / 24)).toBeCloseTo(0.41625, 9);
  });

  // Integral of the current over a strip evenly loaded: I R / 2 from one end, I R / 8 from both or from the middle. 5 m of 0.05 ohm/m, 50 W at 24 V.
  const strip: Element = { resistance: 0.25, amps: 50 / 24 };
  it('along an evenly loaded strip from one end, from both, from its middle', () => {
    expect(dropFromStart([strip])).toBeCloseTo(0.26042, 5);
    expect(dropFromBoth([strip], 0, 0)).toEqual({ first: expect.closeTo(25 / 24, 9), second: expect.closeTo(25 / 24, 9), drop: expect.closeTo(0.065104, 6) });
    expect(dropFromStart([{ resistance: 0.125, amps: 25 / 24 }])).toBeCloseTo(0.065104, 6);
  });

  /** Drops at the far end of many small steps, each of which passes on what the ones beyond it take. */
  function inSteps(elements: readonly Element[], first: number, steps = 2000): { end: number; most: number } {
    let [left, drop, most] = [first, 0, 0];
    for (const { resistance, amps } of elements) {
      for (let k = 0; k < steps; k++) {
        drop += (resistance / steps) * (left - amps / steps / 2);
        left -= amps / steps;
        most = Math.max(most, drop);
      }
    }
    return { end: drop, most };
  }

  it('agrees with the sum over small steps, whatever strips and jumpers follow one another', () => {
    const random = seeded(7);
    for (let round = 0; round < 20; round++) {
      const chain = Array.from({ length: 1 + Math.floor(5 * random()) }, (): Element => ({ resistance: 0.3 * random(), amps: random() < 0.3 ? 0 : 1.5 * random() }));
      const total = chain.reduce((sum, { amps }) => sum + amps, 0);
      expect(dropFromStart(chain)).toBeCloseTo(inSteps(chain, total).end, 6);
      const [one, other] = [0.2 * random(), 0.2 * random()];
      const both = dropFromBoth(chain, one, other);
      const stepped = inSteps(chain, both.first);
      // Around the loop all drops add up to nothing.
      expect(one * both.first + stepped.end).toBeCloseTo(other * both.second, 6);
      expect(both.first + both.second).toBeCloseTo(total, 9);
      if (both.first > 0 && both.second > 0) expect(both.drop).toBeCloseTo(one * both.first + stepped.most, 4);
    }
  });
});

describe('supplies', () => {
  // Common practice: load at most 80 %. 50 W ask for 62.5 W: the next larger sold is 75.
  it('leave a fifth of their power', () => {
    expect(ratingFor(50, 0.8)).toBe(75);
    expect(ratingFor(48, 0.8)).toBe(60);
    expect(ratingFor(1000, 0.8)).toBe(1250);
  });
  // NEC 210.20(A), as quoted: a continuous load counts 1.25 times, 4 A as 5.
  it('have a fuse for what flows for hours', () => {
    expect(fuseFor(4)).toBe(5);
    expect(fuseFor(4.01)).toBe(6.3);
  });
  it('share runs without overload, in hardly more parcels than the bound', () => {
    const random = seeded(3);
    for (let round = 0; round < 50; round++) {
      const loads = Array.from({ length: 1 + Math.floor(20 * random()) }, () => 80 * random());
      const found = parcels(loads, 80);
      expect(found.flat().sort((a, b) => a - b)).toEqual(loads.map((_, k) => k));
      const sums = found.map((places) => places.reduce((sum, k) => sum + loads[k]!, 0));
      expect(Math.max(...sums)).toBeLessThanOrEqual(80 * (1 + 1e-9));
      expect(found.length).toBeLessThanOrEqual((11 / 9) * Math.ceil(loads.reduce((a, b) => a + b, 0) / 80) * 1.5 + 1);
    }
    expect(parcels([100, 10], 80)).toEqual([[0], [1]]);
  });
});

describe('limits of voltage', () => {
  // IEC 61558-1:2005 3.7.16: 24 and 48 V of direct current are inside, 125 V outside.
  it('of separated extra-low voltage', () => expect([24, 48, 125].map((volts) => volts <= SELV_VOLTS)).toEqual([true, true, false]));
  // IEC 60364-4-41 414.4.5 (from memory): 60 V dry, 30 V wet.
  it('of parts that may be touched', () => expect([touchVolts(false), touchVolts(true)]).toEqual([60, 30]));
  // NEC chapter 9 table 11(B) (from memory): 24 V 4.1667 A and 100 VA; 12 V 5 A and only 60 VA.
  it('of Class 2', () => {
    expect(classTwo(24)).toEqual({ amps: expect.closeTo(4.1667, 4), voltAmps: 100 });
    expect(classTwo(12)).toEqual({ amps: 5, voltAmps: 60 });
    expect(classTwo(48).voltAmps).toBe(100);
    expect(classTwo(125).voltAmps).toBe(0);
  });
});
