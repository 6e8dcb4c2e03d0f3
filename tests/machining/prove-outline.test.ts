import { describe, expect, it } from 'vitest';
import { type DesignedOutline } from '../../src/machining/proof/design.ts';
import { type Move } from '../../src/machining/job/pass.ts';
import { proveCut } from '../../src/machining/proof/prove.ts';
import { arc, DEPTH, design, follow, line, options, program, rapid, rectangle, ring, STOCK, THROUGH } from './prove-fixture.ts';

const TAB = { width: 6, height: 3 };
const TAB_TOP = TAB.height - STOCK.thickness;
const outline: DesignedOutline = { board: rectangle(15, 15, 105, 65), cutterDiameter: 6, allowance: 8, tabs: [] };
/** Distance between samples in `options`. */
const CELL = options({ design: design({}), programs: [] }).cell;
const tabs = [{ centre: { x: 60, y: 12 }, ...TAB }, { centre: { x: 60, y: 68 }, ...TAB }];

/** Along a level edge at height y, over a tab at x 60 with the radius of the cutter left free beside it. */
const overTab = (from: number, to: number, y: number, z: number, top: number): Move[] => {
  const ends = from < to ? [54, 66] : [66, 54];
  return [line(ends[0]!, y, z), line(ends[0]!, y, top), line(ends[1]!, y, top), line(ends[1]!, y, z), line(to, y, z)];
};

/** Once round the board, 3 mm outside it, as the cutter's axis goes; over tabs when `top` is above z. */
const round = (z: number, top = z): Move[] => [
  rapid(15, 12, 5), line(15, 12, z), ...overTab(15, 105, 12, z, top), arc(108, 15, z, { x: 105, y: 15 }), line(108, 65, z),
  arc(105, 68, z, { x: 105, y: 65 }), ...overTab(105, 15, 68, z, top), arc(12, 65, z, { x: 15, y: 65 }), line(12, 15, z),
  arc(15, 12, z, { x: 15, y: 15 }), rapid(15, 12, 5)];
const prove = (parts: Partial<DesignedOutline>, ...moves: Move[]) =>
  proveCut(options({ design: design({ outline: { ...outline, ...parts } }), programs: [program(6, ...ring(-DEPTH), ...moves)] }));

describe('A board cut out of the sheet', () => {
  it.each([['with tabs', tabs, round(TAB_TOP).concat(round(THROUGH, TAB_TOP))], ['without tabs', [], round(-5).concat(round(THROUGH))]])('%s is right', (_, wanted, moves) => {
    const proof = prove({ tabs: wanted }, ...moves);
    for (const fault of [proof.wrongCut, proof.remainder, proof.strayCut, proof.spoilboardCut]) expect(fault.mm2).toBe(0);
    expect(proof.wrongCut.mm).toBeLessThan(0.0026);
    expect(proof.outline).toEqual({ uncut: { mm: 0 }, tabError: { mm: 0 } });
    expect(proof.offSheet).toEqual({ mm: 0 });
    expect(proof.rapidsThroughMaterial).toEqual({ count: 0 });
  });
  it('that is not cut through is told with the length that holds, except tabs', () => {
    const { uncut } = prove({}, ...round(TAB_TOP), ...round(THROUGH, TAB_TOP)).outline;
    // Two tabs of 6 mm that nobody designed; the cutter's radius beside them is free on its axis.
    expect(Math.abs(uncut.mm - 12)).toBeLessThan(0.3);
    expect(Math.abs(uncut.at!.x - 60)).toBeLessThan(3.1);
  });
  it('whose outline is missing altogether is told with the whole way round', () => {
    const { uncut, tabError } = prove({ tabs }).outline;
    // 2 x (90 + 50) mm and the corners' circle of radius 3, less two tabs with their flanks and a sample at each of their ends.
    expect(Math.abs(uncut.mm - (280 + 6 * Math.PI - 2 * 12 - 4 * CELL))).toBeLessThan(0.6);
    expect(tabError.mm).toBeCloseTo(-TAB_TOP, 5);
  });
  it('whose tab lies beyond the sheet lacks all of it', () => {
    const beyond = prove({ board: rectangle(-40, 15, 105, 65), tabs: [{ centre: { x: -43, y: 40 }, ...TAB }] }).outline;
    expect(beyond.tabError.mm).toBeCloseTo(TAB_TOP - THROUGH, 5);
  });
  it('whose tabs were cut away is told by how much', () => {
    const { uncut, tabError } = prove({ tabs }, ...round(THROUGH)).outline;
    expect(uncut.mm).toBe(0);
    expect(tabError.mm).toBeCloseTo(TAB_TOP - THROUGH, 5);
    expect(Math.abs(tabError.at!.x - 60)).toBeLessThan(3);
  });
  it('cut 0.3 mm into its edge is a wrong cut there', () => {
    const shifted = round(THROUGH).map((move) => (move.to.y === 68 ? { ...move, to: { ...move.to, y: 67.7 } } : move));
    const { wrongCut } = prove({}, ...shifted);
    expect(wrongCut.mm).toBeGreaterThan(0.29);
    expect(wrongCut.mm).toBeLessThan(0.33);
    expect(wrongCut.at!.y).toBeCloseTo(64.7, 1);
  });
  it('has cut-outs of its own that must be parted as well', () => {
    const board = { loops: [...outline.board.loops, [{ x: 20, y: 60 }, { x: 30, y: 60 }, { x: 30, y: 50 }, { x: 20, y: 50 }]] };
    const inner = follow([[23, 53], [27, 53], [27, 57], [23, 57], [23, 53]], THROUGH);
    expect(prove({ board }, ...round(THROUGH), ...inner)).toMatchObject({ outline: { uncut: { mm: 0 } }, wrongCut: { mm2: 0 } });
    const { uncut } = prove({ board }, ...round(THROUGH)).outline;
    expect(Math.abs(uncut.mm - 16)).toBeLessThan(0.2);
    expect(Math.hypot(uncut.at!.x - 25, uncut.at!.y - 55)).toBeLessThan(3);
  });
});

describe('The waste', () => {
  it('may be cut near the board, as lead-ins do', () => {
    expect(prove({}, ...round(THROUGH), ...follow([[60, 70], [70, 70]], THROUGH)).strayCut.mm2).toBe(0);
  });
  it('cut farther away is a stray cut by the distance beyond the allowance', () => {
    // 73 mm is the end of the allowance; the cutter reaches 75.
    const { strayCut, wrongCut } = prove({}, ...round(THROUGH), ...follow([[60, 72], [70, 72]], THROUGH));
    expect(strayCut.mm).toBeGreaterThan(1.95);
    expect(strayCut.mm).toBeLessThan(2.0001);
    expect(strayCut.at!.y).toBeCloseTo(75, 1);
    expect(wrongCut.mm2).toBe(0);
  });
  it('beyond the sheet is no waste: cuts there are told by how far they reach', () => {
    const { offSheet } = prove({}, ...round(THROUGH), ...follow([[60, 70], [60, 79]], -1));
    expect(offSheet.mm).toBeCloseTo(2, 9);
    expect(offSheet.at!.y).toBeCloseTo(82, 9);
  });
  it('is also left by an arc that begins and ends on the sheet', () => {
    const bulge = [rapid(10, 20, 5), line(10, 20, -1), arc(10, 40, -1, { x: 10, y: 30 }, true), rapid(10, 40, 5)];
    expect(prove({}, ...round(THROUGH), ...bulge).offSheet).toMatchObject({ mm: 3, at: { x: -3 } });
  });
});

it('The set-up\'s shift is added to a program\'s places', () => {
  const shift = [-250.5, 40.25] as const;
  const back = (move: Move): Move => {
    const to = { x: move.to.x - shift[0], y: move.to.y - shift[1], z: move.to.z };
    return move.kind === 'arc' ? { ...move, to, centre: { x: move.centre.x - shift[0], y: move.centre.y - shift[1] } } : { ...move, to };
  };
  const moves = [...ring(-DEPTH), ...round(TAB_TOP), ...round(THROUGH, TAB_TOP)];
  const job = { design: design({ outline: { ...outline, tabs } }) };
  const here = proveCut(options({ ...job, programs: [program(6, ...moves)] }));
  const there = proveCut(options({ ...job, programs: [{ ...program(6, ...moves.map(back)), start: { x: 250.5, y: -40.25, z: 20 }, shift }] }));
  expect(there.outline).toEqual(here.outline);
  expect(there.wrongCut.mm2).toBe(0);
  expect(there.offSheet.mm).toBe(0);
});
