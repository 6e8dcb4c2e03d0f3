import { expect, it } from 'vitest';
import groovePasses from '../../nodes/groove-passes.ts';
import { EXAMPLE_CHANNEL as channel } from '../../src/values/examples.ts';
import { outputsOf, problemsOf } from '../support/run-node.ts';
import { cutter, machine, stock } from '../support/shapes.ts';

const inputs = { channel, cutter, machine, stock, tiling: undefined };
const lowest = (passes: readonly { moves: readonly { to: { z: number } }[] }[]) => Math.min(...passes.flatMap(({ moves }) => moves.map(({ to }) => to.z)));

it('reaches exactly the channel\'s depth', () => {
  expect(lowest(outputsOf(groovePasses, inputs).passes)).toBe(-6);
});

it('begins every pass at the machine\'s retract height', () => {
  const { passes } = outputsOf(groovePasses, { ...inputs, machine: { ...machine, heights: { clearance: 20, retract: 4 } } });
  expect(new Set(passes.map(({ start }) => start.z))).toEqual(new Set([4]));
});

it('never feeds faster than the machine can', () => {
  const { passes } = outputsOf(groovePasses, { ...inputs, machine: { ...machine, greatestFeed: 700 } });
  expect(Math.max(...passes.flatMap(({ moves }) => moves.map((move) => ('feed' in move ? move.feed : 0))))).toBe(700);
});

it('refuses a cutter wider than the groove', () => {
  expect(problemsOf(groovePasses, { ...inputs, cutter: { ...cutter, diameter: 12 } })[0]).toMatchObject({ place: 'cutter', found: '12 mm' });
});

it('refuses a groove as deep as the thinnest sheet', () => {
  expect(problemsOf(groovePasses, { ...inputs, channel: { ...channel, depth: 11.8 } })[0]).toMatchObject({ place: 'channel', found: '11.8 mm deep' });
});
