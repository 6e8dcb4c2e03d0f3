import { describe, expect, it } from 'vitest';
import { offsetRegion, type Region } from '../../src/geometry/index.ts';
import { type Hole, movesReach, planSetUps, proveSetUps, type Stock, type Tiling } from '../../src/machining/index.ts';
import { EXAMPLE_MACHINE } from '../../src/values/examples.ts';
import { circlePath, expectSoundPasses, loopedCubic, placed, plungesIntoMaterial, polyline } from './passes-fixture.ts';
import { CUTTER, type Job, jobOf, passesOf, tilingAt, TOLERANCE } from './set-ups-fixture.ts';

const stock: Stock = { width: 400, height: 260, thickness: 10, thicknessTolerance: 0.2, density: 1190, breakthrough: 0.3 };
const box = (minX: number, minY: number, maxX: number, maxY: number): Region =>
  offsetRegion({ loops: [[{ x: minX + 20, y: minY + 20 }, { x: maxX - 20, y: minY + 20 }, { x: maxX - 20, y: maxY - 20 }, { x: minX + 20, y: maxY - 20 }]] }, 20, { join: 'round', tolerance: 0.002 });
const hole = (x: number, y: number, changes: Partial<Hole> = {}): Hole => ({ centre: { x, y }, diameter: 8, purpose: 'mounting', ...changes });
const word = [
  polyline([[60, 70], [180, 130], [340, 90]]), circlePath(200, 170, 30), polyline([[80, 190], [120, 60]]),
  ...placed([loopedCubic], [1, 0, 0, 1, 240, 150]), polyline([[270, 60], [350, 60]]),
];
const job = jobOf(stock, word, box(30, 30, 370, 230), [hole(50, 50), hole(350, 210), hole(55, 205, { slot: { length: 5, angle: 30 } })]);
const TILINGS: readonly (readonly [string, Tiling])[] = [
  ['one seam across', tilingAt(stock, [201.3], [])], ['two seams across', tilingAt(stock, [140, 262.5], [])],
  ['one seam along', tilingAt(stock, [], [131])], ['four set-ups', tilingAt(stock, [196], [122.2])],
];

const proven = (work: Job, tiling?: Tiling, allowance?: number) => {
  const { passes, tabs } = passesOf(work, tiling, allowance);
  const setups = planSetUps({ passes, machine: EXAMPLE_MACHINE, name: 'word', tolerance: 0.002, tiling });
  const channel = { centreLines: work.centreLines, region: work.region, width: 10, depth: 6, tolerance: TOLERANCE };
  const found = proveSetUps(setups, { channel, board: work.board, holes: work.holes, tabs, stock, leadRoom: 10 }, { cell: 0.4, tolerance: 0.02, depthTolerance: 0.02 });
  if (!found.ok) throw new Error(JSON.stringify(found));
  return { proof: found.proof, setups, tabs, passes };
};

describe.each(TILINGS)('a sign cut with %s', (_name, tiling) => {
  const { proof, setups, tabs, passes } = proven(job, tiling);

  it('is cut as drawn, no worse than in one set-up', () => {
    const whole = proven(job).proof;
    expect(proof.wrongCut.mm).toBeLessThan(whole.wrongCut.mm + 0.005);
    expect(proof.remainder.mm).toBeLessThan(whole.remainder.mm + 0.005);
    expect([proof.unreachable.mm2, proof.strayCut.mm2, proof.spoilboardCut.mm2, proof.rapidsThroughMaterial.count]).toEqual([0, 0, 0, 0]);
    expect([proof.depthError.mm < 0.01, proof.outline.uncut.mm < 0.02, proof.outline.tabError.mm < 0.02]).toEqual([true, true, true]);
  });

  it('stays within the window of each set-up, the cutter\'s edge included', () => {
    const beyond = passes.flatMap(({ setUp, start, moves }) => {
      const { window } = tiling.tiles[setUp!]!;
      const { min, max } = movesReach(start, moves);
      return [
        window.minX > 0 ? window.minX - min.x : -Infinity, window.maxX < stock.width ? max.x - window.maxX : -Infinity,
        window.minY > 0 ? window.minY - min.y : -Infinity, window.maxY < stock.height ? max.y - window.maxY : -Infinity,
      ];
    });
    expect(Math.max(...beyond) + CUTTER.diameter / 2).toBeLessThan(TOLERANCE);
  });

  it('comes down in free space only, and on ramps', () => {
    for (const setUp of tiling.tiles.keys()) expectSoundPasses(passes.filter((pass) => pass.setUp === setUp), 10.5);
    expect(plungesIntoMaterial(passes.filter(({ kind }) => kind !== 'hole'))).toEqual([]);
  });

  it('makes every hole in one set-up', () => {
    const makers = new Map(['hole 1', 'hole 2', 'hole 3'].map((name) => [name, new Set(passes.filter((pass) => pass.name === name).map(({ setUp }) => setUp))]));
    expect([...makers.values()].map(({ size }) => size)).toEqual([1, 1, 1]);
  });

  it('leaves no tab where two set-ups cut', () => {
    expect(tabs.length).toBeGreaterThan(2);
    for (const { centre } of tabs) for (const { axis, at } of tiling.seams) expect(Math.abs(centre[axis] - at)).toBeGreaterThan(tiling.lap + 4);
  });

  it('has a program for each set-up, zero staying where it is', () => {
    expect(setups.map(({ shift }) => shift)).toEqual(tiling.tiles.map(({ shift }) => shift));
    expect(setups.map(({ programs }) => programs[0]!.file)).toEqual(tiling.tiles.map((_, i) => `programs/set-up-${i + 1}-cutter-1.ngc`));
  });
});

it('cuts a letter that one window holds whole in that set-up, though the seam crosses it', () => {
  const dot = jobOf(stock, [polyline([[196, 100], [204, 100]])], box(30, 30, 370, 230));
  const grooves = passesOf(dot, tilingAt(stock, [200], [], 12)).passes.filter(({ kind }) => kind === 'groove');
  expect(new Set(grooves.map(({ setUp }) => setUp))).toEqual(new Set([0]));
});

it('cuts the same with one set-up in a tiling as without a tiling', () => {
  const plain = passesOf(job).passes;
  expect(passesOf(job, tilingAt(stock, [], [])).passes).toEqual(plain.map((pass) => ({ ...pass, setUp: 0 })));
});

it('needs no finishing allowance, and does with grooves no wider than the cutter', () => {
  expect(proven(job, TILINGS[0]![1], 0).proof.wrongCut.mm).toBeLessThan(0.02);
  const tight = jobOf(stock, word, job.board, [], 6);
  const { passes } = passesOf(tight, TILINGS[1]![1], 0.2, 6);
  expect(new Set(passes.filter(({ kind }) => kind === 'groove').map(({ setUp }) => setUp))).toEqual(new Set([0, 1, 2]));
});
