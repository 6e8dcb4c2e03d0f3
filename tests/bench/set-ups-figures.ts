import { it } from 'vitest';
import type { Results } from '../../src/values/index.ts';
import { makeRunner, shippedGraph, withInputs } from '../support/shipped-run.ts';

/** Prints what it costs to cut the shipped signs, 2 m wide, on machines shorter than they are. Asserts nothing: tests/machining does. */
const SIGNS = ['drawn-strokes.json', 'lettering-artwork.json', 'scanned-lettering.json'];
const SHEET = { finishedWidth: 2000, sheetWidth: 2400, sheetHeight: 1300 };
const MACHINES = [[2500, 1400], [900, 1400], [900, 700]] as const;

const say = (line: string) => console.log(line);
const minutes = ({ setups }: Results): number => setups.reduce((sum, { programs }) => sum + programs.reduce((own, program) => own + program.minutes, 0), 0);

it.each(SIGNS)('set-ups of %s', async (name) => {
  let unlimited: number | undefined;
  for (const [travelX, travelY] of MACHINES) {
    const { results } = await makeRunner()(withInputs(shippedGraph(name), { ...SHEET, travelX, travelY }));
    const figure = (quantity: string, decimals = 3) => results.quantities[quantity]?.value.toFixed(decimals) ?? 'none';
    unlimited ??= minutes(results);
    say(`${name}, travel ${travelX} x ${travelY}: ${results.status}; ${figure('setUps', 0)} set-ups, least ${figure('setUpsLeast', 0)}; difference to the unlimited cut ${figure('differenceToUnlimited')} mm; `
      + `step at worst ${figure('largestStep')}, likely ${figure('likelyStep')}, simulated ${figure('simulatedStep')} mm; crossings ${figure('seamCrossings', 0)}, evenly spaced ${figure('seamCrossingsEvenly', 0)}; `
      + `${minutes(results).toFixed(1)} min of program, ${((minutes(results) / unlimited - 1) * 100).toFixed(1)} % more than in one set-up; dowel holes in view ${figure('dowelHolesInView', 0)}`);
    for (const { check, status, says } of results.checks) if (status !== 'pass') say(`    ${status} ${check}: ${says}`);
  }
}, 900_000);
