import { expect, it } from 'vitest';
import { type Path, type Point, polylinePath, type Region } from '../../src/geometry/index.ts';
import { compareCuts, type Hole, planSetUps, planTiling, runsOf, type Stock, type Tiling } from '../../src/machining/index.ts';
import { EXAMPLE_MACHINE } from '../../src/values/examples.ts';
import { seeded } from '../support/random.ts';
import { CUTTER, type Job, jobOf, passesOf, TOLERANCE } from './set-ups-fixture.ts';

const CASES = 120;
const MARGIN = 26;

interface Case {
  readonly job: Job;
  readonly travel: readonly [number, number];
}

/** A thin sheet, so that layers are few, with scribbles, holes and a board, and a machine of any size. */
function caseOf(seed: number): Case {
  const random = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const [width, height] = [between(150, 330), between(130, 260)];
  const stock: Stock = { width, height, thickness: 3, thicknessTolerance: 0.1, density: 1190, breakthrough: 0.2 };
  const place = (): Point => ({ x: between(MARGIN + 12, width - MARGIN - 12), y: between(MARGIN + 12, height - MARGIN - 12) });
  const stroke = (): Path => (random() < 0.4
    ? polylinePath([place(), place(), place()], random() < 0.3)
    : { start: place(), segments: [{ kind: 'cubic', control1: place(), control2: place(), end: place() }], closed: false });
  const board: Region = { loops: [[{ x: MARGIN, y: MARGIN }, { x: width - MARGIN, y: MARGIN }, { x: width - MARGIN, y: height - MARGIN }, { x: MARGIN, y: height - MARGIN }]] };
  const holes = Array.from({ length: 3 }, (): Hole => ({ centre: place(), diameter: between(6, 9), purpose: 'mounting' }));
  return { job: jobOf(stock, Array.from({ length: 1 + Math.floor(random() * 3) }, stroke), board, holes), travel: [between(70, 340), between(70, 280)] };
}

const settings = { depth: 2, finishingAllowance: 0 };

function tilingOf({ job, travel }: Case): Tiling | undefined {
  const channel = { centreLines: job.centreLines, region: job.region, width: 10, depth: settings.depth, tolerance: TOLERANCE };
  const plan = planTiling({ sheet: job.stock, travel, board: job.board, channel, holes: job.holes, cutters: [CUTTER.diameter], lap: 0, byHand: {}, order: 'rows' });
  return plan.ok ? plan.tiling : undefined;
}

it(`cuts ${CASES} random signs on random machines as one without limits would, within travel, every hole once`, () => {
  let several = 0;
  for (let seed = 1; seed <= CASES; seed++) {
    const one = caseOf(seed);
    const tiling = tilingOf(one);
    expect(tiling, `case ${seed}`).toBeDefined();
    if (tiling!.tiles.length < 2) continue;
    several++;
    const { job, travel } = one;
    const { passes } = passesOf(job, tiling, 0, 10, settings.depth);
    const setups = planSetUps({ passes, machine: EXAMPLE_MACHINE, name: 'random', tolerance: 0.002, tiling });
    const whole = planSetUps({ passes: passesOf(job, undefined, 0, 10, settings.depth).passes, machine: EXAMPLE_MACHINE, name: 'random', tolerance: 0.002 });
    const design = { channel: { centreLines: job.centreLines, region: job.region, width: 10, depth: settings.depth, tolerance: TOLERANCE }, board: job.board, holes: job.holes, stock: job.stock };
    const area = { minX: 0, minY: 0, maxX: job.stock.width, maxY: job.stock.height };
    const difference = compareCuts(setups.flatMap((setup) => runsOf(setup)), whole.flatMap((setup) => runsOf(setup)), design, area, 0.6, 0.01);
    expect(difference.mm, `case ${seed} at ${JSON.stringify(difference.at)}`).toBeLessThan(0.02);
    const reach = setups.flatMap(({ programs }) => programs.map((program) => program.reach));
    const span = (axis: 'x' | 'y') => Math.max(...reach.map(({ max }) => max[axis])) - Math.min(...reach.map(({ min }) => min[axis]));
    expect([span('x') <= travel[0] + 1e-6, span('y') <= travel[1] + 1e-6], `case ${seed}: ${span('x')} of ${travel[0]}, ${span('y')} of ${travel[1]}`).toEqual([true, true]);
    for (const [i] of job.holes.entries()) expect(new Set(passes.filter(({ name }) => name === `hole ${i + 1}`).map(({ setUp }) => setUp)).size, `case ${seed}, hole ${i + 1}`).toBe(1);
  }
  expect(several).toBeGreaterThan(CASES / 2);
}, 240_000);
