import { expect, it } from 'vitest';
import type { LightRun, Lighting } from '../../../src/lighting/index.ts';
import { EXAMPLE_LIGHTING } from '../../../src/values/examples.ts';
import { pictureOf } from '../../../src/values/index.ts';
import { line } from '../../support/shapes.ts';

const [run] = EXAMPLE_LIGHTING.runs as readonly [LightRun];
const piece = { stroke: 1, path: line([0, 0], [100, 0]), lit: line([10, 0], [60, 0]), modules: 1, cutLength: 50, unlitStart: 10, unlitEnd: 40 };
const lighting: Lighting = {
  ...EXAMPLE_LIGHTING,
  runs: [run, { ...run, pieces: [piece, { ...piece, stroke: 2 }], jumpers: [{ from: { x: 60, y: 0 }, to: { x: 10, y: 0 }, length: 90 }] }],
  dark: [{ stroke: 1, at: { x: 3, y: 0 }, length: 6.25, why: 'meets', by: 0 }],
};
const layer = (value: Lighting, kind: string) => pictureOf([{ port: 'lighting', type: 'lighting', value }]).layers.find((one) => one.kind === kind)!.items;

it('shows each run by its number, piece for piece, in the direction of its current', () => {
  expect(layer(lighting, 'lit').map(({ run: of, label, title, start }) => [of, label, title, start?.along])).toEqual([
    [0, '1.1', 'run 1, piece 1: 4 modules, 200 mm', [1, 0]], [1, '2.1', 'run 2, piece 1: 1 module, 50 mm', [1, 0]], [1, '2.2', 'run 2, piece 2: 1 module, 50 mm', [1, 0]],
  ]);
});

it('shows what stays dark: ends of the tube that the strip does not reach, and where strokes meet', () => {
  expect(layer(lighting, 'unlit').map(({ d }) => d)).toEqual(['M0 0L10 0', 'M60 0L100 0', 'M0 0L10 0', 'M60 0L100 0', 'M3 0L3 0']);
  expect(layer(lighting, 'unlit').at(-1)!.title).toBe('centre line 2 ends on another, 6.3 mm without light');
});

it('shows jumpers until there are wires, then those and the supplies', () => {
  expect(layer(lighting, 'wires').map(({ title }) => title)).toEqual(['jumper of run 2, 90 mm']);
  const size = { name: '0.5 mm²', area: 0.5, ohmsPerKm: 39, ampacity: 3 };
  const wiring = {
    supplies: [{ at: { x: 50, y: 20 }, ratedWatts: 15, watts: 2, amps: 0.1, fuse: 1, runs: [0, 1] }], drops: [0.1, 0.1],
    wires: [{ kind: 'feed', run: 1, place: 0, from: { x: 50, y: 20 }, to: { x: 100, y: 100 }, length: 500, size, amps: 0.125, drop: 0.1 }],
  } as const;
  expect(layer({ ...lighting, wiring }, 'wires').map(({ title, run: of }) => [of, title])).toEqual([[1, 'feed of run 2, 0.5 mm², 500 mm, 0.13 A'], [undefined, 'supply 1, 15 W, fuse 1 A']]);
});
