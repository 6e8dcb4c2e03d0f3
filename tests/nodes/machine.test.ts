import { expect, it } from 'vitest';
import machine from '../../nodes/machine.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';

it('keeps what the machine can apart from what its controller understands', () => {
  const { machine: made } = outputsOf(machine, {}, { travelX: 700, arcs: 'lines', decimals: 3 });
  expect(made).toMatchObject({ travelX: 700, controller: { arcs: 'lines', decimals: 3, units: 'mm' } });
  expect('arcs' in made).toBe(false);
});

// NISTIR 6556 checks that both radii of an arc agree within 0.002 mm; 3 decimals can break that, 4 cannot.
it('writes arcs with four decimals unless told otherwise', () => {
  expect(outputsOf(machine, {}).machine.controller).toMatchObject({ arcs: 'centre', decimals: 4 });
});

it('refuses a line too short for an arc, and heights that cross', () => {
  expect(problemsOf(machine, {}, { longestLine: 60 })[0]).toMatchObject({ place: 'longestLine', found: '60' });
  expect(problemsOf(machine, {}, { longestLine: 70, decimals: 5, lineNumbers: true })[0]).toMatchObject({ place: 'longestLine' });
  expect(outputsOf(machine, {}, { longestLine: 70, lineNumbers: true }).machine.controller.longestLine).toBe(70);
  expect(problemsOf(machine, {}, { retract: 11, clearance: 10 })[0]).toMatchObject({ place: 'retract' });
});
