import { expect, it } from 'vitest';
import strip from '../../nodes/strip.ts';
import { ampsPerMillimetre } from '../../src/lighting/index.ts';
import { checkValue } from '../../src/runtime/index.ts';
import { outputsOf } from '../support/run-node.ts';

it('hands on the strip as its data sheet states it', () => {
  expect(outputsOf(strip, {}, { wattsPerMetre: 14.4, volts: 12, lies: 'flat' }).strip).toMatchObject({ wattsPerMetre: 14.4, volts: 12, lies: 'flat', moduleLength: 50 });
});

// Ohm's law: 5 m of 10 W/m at 24 V take 50 W, 2.0833 A.
it('draws the current that its power asks for', () => {
  const bought = outputsOf(strip, {}, { wattsPerMetre: 10, volts: 24 }).strip;
  expect(5000 * ampsPerMillimetre(bought)).toBeCloseTo(2.0833, 4);
});

it.each([
  ['volts', 0, '1 to 250 V'], ['wattsPerMetre', -5, '0.1 to 100 W/m'], ['wattsPerMetre', 0, '0.1 to 100 W/m'], ['moduleLength', 0, '1 to 1000 mm'], ['greatestCurrent', 0, '0.01 to 100 A'],
] as const)('refuses %s of %d in one line', (name, value, limits) => {
  expect(checkValue(strip.params[name], value)).toMatchObject({ code: 'out-of-limits', expected: limits });
});
