import { describe, expect, it } from 'vitest';
import { type Region } from '../../src/geometry/index.ts';
import { compareCuts, type Hole, planRegistration, planSetUps, type Registration, runsOf, type SetUp, simulateSteps, type Stock, type Tiling } from '../../src/machining/index.ts';
import { EXAMPLE_MACHINE } from '../../src/values/examples.ts';
import { circlePath, polyline } from './passes-fixture.ts';
import { jobOf, passesOf, tilingAt, TOLERANCE } from './set-ups-fixture.ts';

const stock: Stock = { width: 420, height: 240, thickness: 10, thicknessTolerance: 0.2, density: 1190, breakthrough: 0.3 };
const board: Region = { loops: [[{ x: 40, y: 40 }, { x: 380, y: 40 }, { x: 380, y: 200 }, { x: 40, y: 200 }]] };
const holes: readonly Hole[] = [{ centre: { x: 60, y: 60 }, diameter: 8, purpose: 'mounting' }];
const job = jobOf(stock, [polyline([[80, 90], [340, 110]]), circlePath(190, 150, 24), polyline([[100, 170], [120, 60]])], board, holes);
const design = { channel: { centreLines: job.centreLines, region: job.region, width: 10, depth: 6, tolerance: TOLERANCE }, board, holes, stock };
const area = { minX: 0, minY: 0, maxX: stock.width, maxY: stock.height };
const tiling = tilingAt(stock, [212], [], 30);
const setupsOf = (tiles?: Tiling): SetUp[] => planSetUps({ passes: passesOf(job, tiles).passes, machine: EXAMPLE_MACHINE, name: 'word', tolerance: 0.002, tiling: tiles });
const runs = (setups: readonly SetUp[]) => setups.flatMap((setup) => runsOf(setup));
const [tiled, whole] = [setupsOf(tiling), setupsOf()];

describe('all set-ups together', () => {
  it('cut what a machine without limits cuts, to a few micrometres', () => {
    expect(compareCuts(runs(tiled), runs(whole), design, area, 0.25, 0.01).mm).toBeLessThan(0.012);
  });

  it('do not when one is left out, and the place is named', () => {
    const { mm, at } = compareCuts(runs(tiled.slice(1)), runs(whole), design, area, 0.5, 0.01);
    expect(mm).toBeGreaterThan(3);
    expect(at!.x).toBeLessThan(212);
  });

  it('do not when a set-up is off: by how much it is off', () => {
    const off = [tiled[0]!, { ...tiled[1]!, shift: [tiled[1]!.shift[0], 0.4] as const }];
    const { mm } = compareCuts(runs(off), runs(whole), design, area, 0.1, 0.01);
    expect(mm).toBeGreaterThan(0.3);
    expect(mm).toBeLessThan(0.45);
  });
});

describe('the worst registration', () => {
  const found = planRegistration({ tiling, stock, board, channel: job.region, centreLines: job.centreLines, holes, pinDiameter: 4, clearance: 0.1, pitchError: 0.1, wall: 3, cutRoom: 12, kelvin: 10, limit: 0.3, pins: [] });
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  const registration: Registration = found.registration;

  it('leaves a step at the seam as large as foretold, and no larger', () => {
    const [step] = simulateSteps(tiled, tiling, registration, design, 0.05, 0.01);
    const { worst } = registration.steps[0]!;
    expect(step!.mm).toBeLessThan(worst * 1.3 + 0.05);
    expect(step!.mm).toBeGreaterThan(worst * 0.4);
    expect(Math.abs(step!.at!.x - 212)).toBeLessThan(30.1);
  });

  it('leaves none where pins fit without play', () => {
    const [step] = simulateSteps(tiled, tiling, { ...registration, clearance: 0, pitchError: 0 }, design, 0.1, 0.01);
    expect(step!.mm).toBe(0);
  });

  it('leaves none where there is one set-up', () => {
    expect(simulateSteps(whole, tilingAt(stock, [], []), registration, design, 0.1, 0.01)).toEqual([]);
  });
});
