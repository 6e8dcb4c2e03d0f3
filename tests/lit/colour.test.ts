import { expect, it } from 'vitest';
import { blackBody, lightColour } from '../../src/lit/colour.ts';
import { decoded, encoded, thresholdAt } from '../../src/lit/transfer.ts';

/** ANSI C78.377, centres by nominal colour temperature and the temperature each is of: on or near the locus. From memory. */
const NOMINAL = [[2725, 0.4578, 0.4101], [3985, 0.3818, 0.3797], [5029, 0.3446, 0.3551], [6532, 0.3123, 0.3283]] as const;

it('finds the black body of CIE standard illuminant A (2856 K, CIE 15: x 0.44757, y 0.40745)', () => {
  const { x, y } = blackBody(2856);
  expect(Math.abs(x - 0.44757)).toBeLessThan(0.0008);
  expect(Math.abs(y - 0.40745)).toBeLessThan(0.0008);
});

it.each(NOMINAL)('lies near the centre that lamps of %i K are made to', (kelvin, x, y) => {
  const found = blackBody(kelvin);
  expect(Math.hypot(found.x - x, found.y - y)).toBeLessThan(0.007);
});

it('agrees with the other published formula of the locus (B. Kim et al., 2002), 2222 to 4000 K', () => {
  for (const kelvin of [2300, 2700, 3000, 3500, 4000]) {
    const t = 1000 / kelvin;
    const x = -0.2661239 * t ** 3 - 0.2343589 * t ** 2 + 0.8776956 * t + 0.17991;
    const y = -0.9549476 * x ** 3 - 1.37418593 * x ** 2 + 2.09137015 * x - 0.16748867;
    const found = blackBody(kelvin);
    expect(Math.hypot(found.x - x, found.y - y)).toBeLessThan(0.0015);
  }
});

it('shows light of the colour that looks white as white, warmer light redder, colder light bluer, and none of them brighter', () => {
  for (const kelvin of [2700, 4000, 6500]) for (const part of lightColour(kelvin, kelvin)) expect(part).toBeCloseTo(1, 3);
  const [warm, cold] = [lightColour(2700, 5000), lightColour(9000, 5000)];
  expect(warm[0]).toBeGreaterThan(warm[1]);
  expect(warm[1]).toBeGreaterThan(warm[2]);
  expect(cold[2]).toBeGreaterThan(cold[0]);
  // Luminance of linear red, green and blue: IEC 61966-2-1.
  for (const [r, g, b] of [warm, cold]) expect(0.2126 * r + 0.7152 * g + 0.0722 * b).toBeCloseTo(1, 3);
});

it('writes codes as IEC 61966-2-1 says: linear below 0.0031308, then a power', () => {
  expect([0, 10, 128, 188, 255].map(decoded)).toEqual([0, expect.closeTo(10 / 255 / 12.92, 12), expect.closeTo(0.21586, 5), expect.closeTo(0.50289, 5), 1]);
  for (let code = 0; code < 255; code++) expect(encoded(decoded(code) + 1e-9, 0.5), String(code)).toBe(code);
  // The mean of black and white light, as scanned greys are: code 187.5.
  expect([0.49, 0.51].map((threshold) => encoded(0.5, threshold))).toEqual([188, 188]);
  expect([-1, NaN, 0, 1, 7].map((light) => encoded(light, 0.5))).toEqual([0, 0, 0, 255, 255]);
});

it('keeps the mean of a dark grey that lies between two codes, so that gradients have no bands', () => {
  const light = (0.7 * decoded(12) + 0.3 * decoded(13));
  let sum = 0;
  for (let y = 0; y < 64; y++) for (let x = 0; x < 64; x++) sum += decoded(encoded(light, thresholdAt(x, y)));
  expect(sum / 4096 / light).toBeCloseTo(1, 2);
  const run = Array.from({ length: 16 }, (_, x) => encoded(light, thresholdAt(x, 3)));
  expect(new Set(run)).toEqual(new Set([12, 13]));
});
