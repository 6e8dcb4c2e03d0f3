import { describe, expect, it } from 'vitest';
import { type Move } from '../../src/machining/job/pass.ts';
import { proveCut, type Proof } from '../../src/machining/proof/prove.ts';
import { DEPTH, GROOVE, line, type Motion, MOTIONS, movedMoves, movedRegion, options, program, rapid, ring, STOCK } from './prove-fixture.ts';

const CELL = 0.1;
// A floor too deep by 0.1 mm in places, a wall cut wrong, an end left standing, a hole nobody drew, a rapid through it all.
const FAULTY: readonly Move[] = [
  rapid(30, 38, 5), line(30, 38, -DEPTH), line(60, 38, -DEPTH - 0.1), line(86, 38, -DEPTH), line(86, 42.2, -DEPTH), line(30, 42, -DEPTH),
  { kind: 'arc', to: { x: 30, y: 38, z: -DEPTH }, centre: { x: 30, y: 40 }, clockwise: false, feed: 1 },
  rapid(30, 38, 5), rapid(60, 55, 5), line(60, 55, -2), rapid(66, 58, -2), rapid(66, 58, 5)];

function proofOf(moves: readonly Move[], motion: Motion): Proof {
  const design = {
    stock: { ...STOCK, width: 200, height: 200 }, holes: [],
    channel: { region: movedRegion(GROOVE, motion), depth: DEPTH, cutterDiameter: 6 },
  };
  return proveCut(options({ design, cell: CELL, programs: [program(6, ...movedMoves(moves, motion))] }));
}

const here = proofOf(FAULTY, MOTIONS[0]!);

describe.each(MOTIONS)('A job $name', (motion) => {
  it('has the same faults: sizes within a tenth of a cell, areas within the samples along their edges', () => {
    const there = proofOf(FAULTY, motion);
    const row = motion.alongRows ? 60 * CELL / 2 : 1;
    for (const kind of ['wrongCut', 'remainder', 'depthError'] as const) {
      expect(there[kind].mm, kind).toBeGreaterThan(0.02);
      expect(Math.abs(there[kind].mm - here[kind].mm), kind).toBeLessThan(kind === 'remainder' ? CELL : CELL / 10);
      const at = motion.point(here[kind].at!);
      if (kind === 'wrongCut') expect(Math.hypot(at.x - there[kind].at!.x, at.y - there[kind].at!.y), kind).toBeLessThan(6.5);
    }
    expect(Math.abs(there.wrongCut.mm2 - here.wrongCut.mm2)).toBeLessThan(row);
    expect(Math.abs(there.remainder.mm2 - here.remainder.mm2)).toBeLessThan(row);
    expect(there.rapidsThroughMaterial.count).toBe(1);
  });
  it('has none when it has none', () => {
    const proof = proofOf(ring(-DEPTH), motion);
    expect([proof.wrongCut.mm2, proof.remainder.mm2, proof.unreachable.mm2, proof.depthError.mm]).toEqual([0, 0, 0, 0]);
    expect(Math.max(proof.wrongCut.mm, proof.remainder.mm)).toBeLessThan(0.003);
  });
});

it('A proof in bands of rows is the same as with coarser cells in one band, and states its cell', () => {
  // 600 x 400 mm at 0.1 mm takes several bands, at 0.4 mm one.
  const design = { ...options({}).design, stock: { ...STOCK, width: 600, height: 400 } };
  const [fine, coarse] = [0.1, 0.4].map((cell) => proveCut(options({ design, cell, programs: [program(6, ...ring(-DEPTH - 0.1, 1))] })));
  expect(Math.abs(fine!.samples * 0.01 - 240_000)).toBeLessThan(5);
  expect(Math.abs(fine!.wrongCut.mm2 - coarse!.wrongCut.mm2)).toBeLessThan(3);
  expect(Math.abs(fine!.wrongCut.mm - coarse!.wrongCut.mm)).toBeLessThan(0.02);
  expect(fine!.depthError.tooDeep).toBeCloseTo(coarse!.depthError.tooDeep, 6);
});

it('A sheet too large for the cell gets a larger one, which the proof states', () => {
  const design = { ...options({}).design, stock: { ...STOCK, width: 5000, height: 4000 } };
  const proof = proveCut(options({ design, cell: 0.001, programs: [] }));
  expect(proof.cell).toBeCloseTo(Math.sqrt(2e7 / 3e8), 9);
  expect(proof.samples).toBeLessThan(3.001e8);
});

it.each([{ cell: 0 }, { cell: NaN }, { tolerance: 0 }, { tolerance: -1 }, { depthTolerance: Infinity }])('%j is refused', (wrong) => {
  expect(() => proveCut(options(wrong))).toThrow(RangeError);
});
