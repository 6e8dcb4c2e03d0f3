import { describe, expect, it } from 'vitest';
import { type Move } from '../../src/machining/job/pass.ts';
import { proveCut, type Proof } from '../../src/machining/proof/prove.ts';
import { arc, DEPTH, design, follow, GROOVE, line, options, program, rapid, rectangle, ring, STOCK, THROUGH, TOLERANCE, tube } from './prove-fixture.ts';

const near = (at: { x: number; y: number } | undefined, x: number, y: number, within: number) => {
  expect(at).toBeDefined();
  expect(Math.hypot(at!.x - x, at!.y - y)).toBeLessThan(within);
};
/** Chords of the fixture's groove are this close to its round ends, mm. */
const CHORD = TOLERANCE / 8;
const faultless = (proof: Proof) => {
  expect(proof.wrongCut.mm).toBeLessThanOrEqual(CHORD);
  expect(proof.remainder.mm).toBeLessThanOrEqual(CHORD);
  for (const fault of [proof.wrongCut, proof.remainder, proof.unreachable, proof.strayCut, proof.spoilboardCut]) expect(fault.mm2).toBe(0);
  expect(proof).toMatchObject({ depthError: { mm: 0 }, offSheet: { mm: 0 }, outline: { uncut: { mm: 0 }, tabError: { mm: 0 } } });
  expect(proof.rapidsThroughMaterial).toEqual({ count: 0 });
};

it('A right job has no faults, at any cell', () => {
  for (const cell of [0.5, 0.2, 0.1, 0.07]) {
    const proof = proveCut(options({ cell }));
    faultless(proof);
    expect(proof.cell).toBe(cell);
    expect(Math.abs(proof.samples * cell * cell - STOCK.width * STOCK.height)).toBeLessThan(1);
  }
});

describe('A groove moved by 0.05 mm', () => {
  const proof = proveCut(options({ programs: [program(6, ...ring(-3), ...ring(-DEPTH, 0.05))] }));
  it('is a wrong cut of 0.05 mm along the wall it moved into', () => {
    expect(proof.wrongCut.mm).toBeGreaterThan(0.049);
    expect(proof.wrongCut.mm).toBeLessThan(0.05 + CHORD);
    expect(proof.wrongCut.at!.y).toBeCloseTo(45.05, 1);
    // What exceeds the tolerance of 0.02 mm: 0.03 mm along 60 mm of straight wall, and at the two ends of radius 5 the
    // integral of 5 (0.05 sin a - 0.02) over the angles at which it is positive: 0.2264 mm2.
    expect(Math.abs(proof.wrongCut.mm2 - (0.03 * 60 + 0.2264))).toBeLessThan(0.1);
  });
  it('leaves a remainder only where the upper layer was cut in place: in depth, 3 mm, but 0.05 mm sideways', () => {
    expect(proof.remainder.mm).toBeGreaterThan(0.049);
    expect(proof.remainder.mm).toBeLessThan(0.05 + CHORD);
    expect(proof.remainder.at!.y).toBeCloseTo(35.02, 1);
  });
});

it('A level wall moved by less than half a cell is found, although level rows would lie on both sides of it', () => {
  // Rows at a pitch of 0.1 mm from the sheet's edge would pass at 44.95 and 45.05.
  const { wrongCut } = proveCut(options({ programs: [program(6, ...ring(-DEPTH, 0.04))] }));
  expect(wrongCut.mm).toBeGreaterThan(0.039);
  expect(Math.abs(wrongCut.mm2 - 0.02 * 60)).toBeLessThan(0.3);
});

it('One move of many shifted by 0.05 mm is found where it is', () => {
  const moved = ring(-DEPTH).map((move) => (move.to.x === 30 && move.to.y === 42 ? { ...move, to: { ...move.to, y: 42.05 } } : move));
  const proof = proveCut(options({ programs: [program(6, ...moved)] }));
  near(proof.wrongCut.at, 30, 45, 3);
  expect(proof.wrongCut.mm).toBeGreaterThan(0.045);
  expect(proof.wrongCut.mm).toBeLessThan(0.052);
});

describe('A missing ring', () => {
  const wide = tube(16, [30, 40], [90, 40]);
  const outer = [line(30, 35, -DEPTH), line(90, 35, -DEPTH), arc(90, 45, -DEPTH, { x: 90, y: 40 }), line(30, 45, -DEPTH), arc(30, 35, -DEPTH, { x: 30, y: 40 })];
  const lay = (moves: Move[]) => [rapid(30, 35, 5), ...moves, rapid(30, 35, 5)];
  const channel = { region: wide, depth: DEPTH, cutterDiameter: 6 };
  it('leaves a strip of 4 x 60 mm and its round ends, 6 mm from the walls', () => {
    const proof = proveCut(options({ design: design({ channel }), programs: [program(6, ...lay(outer))] }));
    expect(Math.abs(proof.remainder.mm2 - (4 * 60 + Math.PI * 4))).toBeLessThan(0.5);
    // 8 mm from the wall, but only 6 mm deep.
    expect(proof.remainder.mm).toBeCloseTo(6, 5);
    expect(proof.remainder.at!.y).toBeGreaterThan(37.9);
    expect(proof.unreachable.mm2).toBe(0);
    expect(proof.wrongCut.mm2).toBe(0);
  });
  it('leaves nothing when it is there', () => {
    faultless(proveCut(options({ design: design({ channel }), programs: [program(6, ...lay(outer), ...follow([[30, 40], [90, 40]], -DEPTH))] })));
  });
});

describe('A floor at the wrong height', () => {
  it.each([[0.1, 0.1, 0], [-0.1, 0, 0.1]])('by %d mm is a depth error of that size', (deeper, tooDeep, tooShallow) => {
    const { depthError, wrongCut, remainder } = proveCut(options({ programs: [program(6, ...ring(-DEPTH - deeper))] }));
    expect(depthError.tooDeep).toBeCloseTo(tooDeep, 5);
    expect(depthError.tooShallow).toBeCloseTo(tooShallow, 5);
    expect(depthError.mm).toBeCloseTo(0.1, 5);
    const [fault, other] = deeper > 0 ? [wrongCut, remainder] : [remainder, wrongCut];
    expect(fault.mm).toBeCloseTo(0.1, 5);
    expect(Math.abs(fault.mm2 - (600 + 25 * Math.PI))).toBeLessThan(4);
    expect(other.mm2).toBe(0);
  });
  it('by less than the depth tolerance is stated, but no fault', () => {
    const { depthError, wrongCut } = proveCut(options({ programs: [program(6, ...ring(-DEPTH - 0.04))] }));
    expect(depthError.mm).toBeCloseTo(0.04, 5);
    expect(wrongCut.mm2).toBe(0);
  });
  it('is not measured at the walls, where an upper layer may stand out by less than the tolerance', () => {
    const { depthError, remainder } = proveCut(options({ cell: 0.05, programs: [program(6, ...ring(-3)), program(5.98, ...ring(-DEPTH))] }));
    expect(depthError.mm).toBe(0);
    expect(remainder.mm).toBeGreaterThan(0.005);
    expect(remainder.mm2).toBe(0);
  });
  it('in one ramp that was never cut flat is found at its end', () => {
    const moves = ring(-DEPTH).map((move) => (move.to.x === 90 && move.to.y === 38 ? { ...move, to: { ...move.to, z: -DEPTH - 0.3 } } : move));
    const { depthError } = proveCut(options({ programs: [program(6, ...moves)] }));
    expect(depthError.tooDeep).toBeCloseTo(0.3, 2);
    near(depthError.at, 90, 38, 4.5);
  });
});

describe('Rapids', () => {
  it('across the sheet below its top face are counted, and told where', () => {
    const proof = proveCut(options({ programs: [program(6, ...ring(-3), ...ring(-DEPTH), rapid(30, 38, -1), rapid(30, 70, -1), rapid(60, 70, -1), rapid(60, 70, 5))] }));
    expect(proof.rapidsThroughMaterial.count).toBe(2);
    near(proof.rapidsThroughMaterial.at, 30, 58, 20);
    expect(proof.wrongCut.mm2).toBeGreaterThan(100);
  });
  it('straight down into material are counted', () => {
    const proof = proveCut(options({ programs: [program(6, rapid(60, 40, 5), rapid(60, 40, -2), line(60, 40, -DEPTH), rapid(60, 40, 5), ...ring(-DEPTH))] }));
    expect(proof.rapidsThroughMaterial.count).toBe(1);
    near(proof.rapidsThroughMaterial.at, 60, 40, 3.1);
  });
  it('above the sheet and beside it are not', () => {
    const proof = proveCut(options({ programs: [program(6, ...ring(-DEPTH), rapid(-20, 0, 1), rapid(-20, 0, -2), rapid(-20, 50, -2), rapid(-20, 50, 5))] }));
    expect(proof.rapidsThroughMaterial.count).toBe(0);
    expect(proof.offSheet.mm).toBeCloseTo(23, 9);
  });
});

describe('A cutter that is too large', () => {
  it('cuts both walls wrong by the difference of the radii', () => {
    const proof = proveCut(options({ programs: [program(7, ...ring(-DEPTH))] }));
    expect(proof.wrongCut.mm).toBeGreaterThan(0.499);
    expect(proof.wrongCut.mm).toBeLessThan(0.503);
    // Half a millimetre all around less the tolerance: A' = A + P d + pi d^2 (J. Steiner, Ueber parallele Flaechen, 1840).
    const grown = (d: number) => (120 + 10 * Math.PI) * d + Math.PI * d * d;
    expect(Math.abs(proof.wrongCut.mm2 - (grown(0.5) - grown(TOLERANCE)))).toBeLessThan(0.3);
  });
  it('for the groove altogether makes all of it unreachable', () => {
    const proof = proveCut(options({ design: design({ channel: { region: GROOVE, depth: DEPTH, cutterDiameter: 12 } }), programs: [] }));
    expect(proof.remainder.mm2).toBeLessThan(5);
    expect(Math.abs(proof.unreachable.mm2 - (600 + 25 * Math.PI))).toBeLessThan(5);
    expect(proof.unreachable.mm).toBeGreaterThan(4.9);
  });
  it('is not one that is exactly as wide as the groove', () => {
    const fits = design({ channel: { region: tube(6, [30, 40], [90, 40]), depth: DEPTH, cutterDiameter: 6 } });
    faultless(proveCut(options({ design: fits, programs: [program(6, ...follow([[30, 40], [90, 40]], -DEPTH))] })));
    const half = proveCut(options({ design: fits, programs: [program(6, ...follow([[30, 40], [60, 40]], -DEPTH))] }));
    expect(Math.abs(half.remainder.mm2 - 180)).toBeLessThan(5);
    expect(half.unreachable.mm2).toBeLessThan(1);
  });
});

describe('Corners the cutter cannot reach', () => {
  // A square pocket of 40 mm: a 6 mm cutter leaves (4 - pi) r^2 in its corners, (sqrt 2 - 1) r from each of them.
  const square = design({ channel: { region: rectangle(30, 20, 70, 60), depth: DEPTH, cutterDiameter: 6 } });
  const spiral = [17, 12.5, 8, 3.5].flatMap((r) => follow([[50 - r, 40 - r], [50 + r, 40 - r], [50 + r, 40 + r], [50 - r, 40 + r], [50 - r, 40 - r]], -DEPTH))
    .concat(follow([[50, 40]], -DEPTH));
  const proof = proveCut(options({ design: square, programs: [program(6, ...spiral)] }));
  it('are reported apart, with their area and place', () => {
    // Less what lies within the tolerance of the two walls.
    expect(proof.unreachable.mm2).toBeGreaterThan((4 - Math.PI) * 9 - 0.6);
    expect(proof.unreachable.mm2).toBeLessThan((4 - Math.PI) * 9 + 0.1);
    // Farthest from both walls in the corner's bisector, just beside the cutter: r (1 - 1 / sqrt 2).
    expect(proof.unreachable.mm).toBeCloseTo(3 * (1 - Math.SQRT1_2), 1);
    const { x, y } = proof.unreachable.at!;
    near({ x: Math.abs(x - 50), y: Math.abs(y - 40) }, 20, 20, 1.5);
  });
  it('are no remainder', () => {
    expect(proof.remainder.mm).toBeLessThan(TOLERANCE);
    expect(proof.remainder.mm2).toBe(0);
  });
  it('hold no remainder either when the cutter is smaller by less than the tolerance', () => {
    const { remainder } = proveCut(options({ design: square, cell: 0.02, programs: [program(5.97, ...spiral)] }));
    expect(remainder.mm).toBeGreaterThan(0.01);
    expect(remainder.mm).toBeLessThan(TOLERANCE);
  });
  it('are told from the rest of a pocket that was not cut at all', () => {
    const uncut = proveCut(options({ design: square, programs: [] }));
    expect(Math.abs(uncut.unreachable.mm2 - (4 - Math.PI) * 9)).toBeLessThan(0.6);
    expect(Math.abs(uncut.remainder.mm2 - (1600 - 160 * TOLERANCE - (4 - Math.PI) * 9))).toBeLessThan(1.5);
    expect(uncut.remainder.mm).toBeCloseTo(DEPTH, 5);
  });
  it('and a neck too narrow for the cutter are told from an uncut pocket beside it', () => {
    const necked = { loops: [[[20, 30], [60, 30], [60, 37.5], [100, 37.5], [100, 42.5], [60, 42.5], [60, 50], [20, 50]].map(([x, y]) => ({ x: x!, y: y! }))] };
    const { unreachable, remainder } = proveCut(options({ design: design({ channel: { region: necked, depth: DEPTH, cutterDiameter: 6 } }), programs: [] }));
    // The cutter pokes into the neck by the segment of a circle of radius 3 over a chord of 5 mm.
    const poke = 9 * Math.asin(2.5 / 3) - 2.5 * Math.sqrt(9 - 6.25);
    const corners = (4 - Math.PI) * 9;
    // Nothing counts within the tolerance of a wall: 85 mm round the neck, 115 mm round the pocket.
    expect(Math.abs(unreachable.mm2 - (200 - poke + corners - 85 * TOLERANCE))).toBeLessThan(0.5);
    expect(Math.abs(remainder.mm2 - (800 + poke - corners - 115 * TOLERANCE))).toBeLessThan(0.7);
    expect(unreachable.mm).toBeCloseTo(2.5, 1);
  });
  it('become a remainder when a smaller cutter was meant to get there', () => {
    const finer = { ...square, channel: { ...square.channel!, cutterDiameter: 3 } };
    const rest = proveCut(options({ design: finer, programs: [program(6, ...spiral)] }));
    expect(Math.abs(rest.remainder.mm2 - (4 - Math.PI) * (9 - 2.25))).toBeLessThan(0.6);
    expect(Math.abs(rest.unreachable.mm2 - (4 - Math.PI) * 2.25)).toBeLessThan(0.4);
  });
  it('of 20 degrees are no remainder either', () => {
    const wedge = { loops: [[{ x: 10, y: 40 }, { x: 100, y: 40 - 90 * Math.tan(Math.PI / 18) }, { x: 100, y: 40 + 90 * Math.tan(Math.PI / 18) }]] };
    const sharp = design({ channel: { region: wedge, depth: DEPTH, cutterDiameter: 6 } });
    const inset = 3 / Math.sin(Math.PI / 18);
    const rows: Move[] = [];
    // Level lines up and down the wedge, then once along its walls: whatever the cutter reaches, it cuts.
    const span = (97 - 10 - inset) * Math.tan(Math.PI / 18);
    for (let y = -span; y <= span; y += 1) rows.push(...follow([[10 + inset + Math.abs(y) / Math.tan(Math.PI / 18), 40 + y], [97, 40 + y]], -DEPTH));
    rows.push(...follow([[97, 40 + span], [10 + inset, 40], [97, 40 - span], [97, 40 + span]], -DEPTH));
    const found = proveCut(options({ design: sharp, programs: [program(6, ...rows)] }));
    expect(found.remainder.mm2).toBe(0);
    expect(found.remainder.mm).toBeLessThan(TOLERANCE);
    expect(found.unreachable.mm2).toBeGreaterThan(10);
    expect(found.wrongCut.mm2).toBe(0);
  });
});

describe('Holes', () => {
  const holes = [{ centre: { x: 20, y: 15 }, diameter: 8, purpose: 'mounting' as const }, { centre: { x: 30, y: 40 }, diameter: 6, purpose: 'cable' as const }];
  const drilled = design({ holes });
  const bore = [rapid(20, 14, 5), line(20, 14, 0), ...[-4, -8, THROUGH, THROUGH].map((z) => arc(20, 14, z, { x: 20, y: 15 })), rapid(20, 14, 5)];
  const cable = [rapid(30, 40, 5), line(30, 40, THROUGH), rapid(30, 40, 5)];
  it('drilled or bored are right, also where they meet the groove', () => {
    faultless(proveCut(options({ design: drilled, programs: [program(6, ...ring(-DEPTH), ...bore, ...cable)] })));
  });
  it('that are missing are a remainder of their area, half their diameter from their edge', () => {
    const { remainder } = proveCut(options({ design: drilled, programs: [program(6, ...ring(-DEPTH), ...cable)] }));
    expect(Math.abs(remainder.mm2 - 16 * Math.PI)).toBeLessThan(0.7);
    expect(remainder.mm).toBeGreaterThan(3.9);
    near(remainder.at, 20, 15, 0.15);
  });
  it('missing from the floor of a groove are a remainder too', () => {
    const { remainder } = proveCut(options({ design: drilled, programs: [program(6, ...ring(-DEPTH), ...bore)] }));
    expect(Math.abs(remainder.mm2 - 9 * Math.PI)).toBeLessThan(0.6);
    near(remainder.at, 30, 40, 0.2);
  });
  it('that do not go through the thickest sheet are a remainder', () => {
    const short = [rapid(30, 40, 5), line(30, 40, -10.2), rapid(30, 40, 5)];
    const { remainder } = proveCut(options({ design: drilled, programs: [program(6, ...ring(-DEPTH), ...bore, ...short)] }));
    expect(remainder.mm).toBeCloseTo(0.2, 5);
  });
  it('where none are drawn are wrong cuts', () => {
    const { wrongCut } = proveCut(options({ programs: [program(6, ...ring(-DEPTH), rapid(60, 60, 5), line(60, 60, THROUGH), rapid(60, 60, 5))] }));
    expect(Math.abs(wrongCut.mm2 - 9 * Math.PI)).toBeLessThan(0.2);
    expect(wrongCut.mm).toBeCloseTo(-THROUGH, 3);
  });
  it('too deep are told as cuts into the spoilboard', () => {
    const deep = [rapid(30, 40, 5), line(30, 40, -12), rapid(30, 40, 5)];
    const { spoilboardCut, wrongCut } = proveCut(options({ design: drilled, programs: [program(6, ...ring(-DEPTH), ...bore, ...deep)] }));
    expect(spoilboardCut.mm).toBeCloseTo(1.25, 5);
    expect(Math.abs(spoilboardCut.mm2 - 9 * Math.PI)).toBeLessThan(0.2);
    near(spoilboardCut.at, 30, 40, 3);
    expect(wrongCut.mm2).toBe(0);
  });
  it('may be drilled by a program with a cutter of its own, on the same sheet', () => {
    const drill = [rapid(20, 15, 5), line(20, 15, THROUGH), rapid(20, 15, 5)];
    const programs = [program(6, ...ring(-DEPTH), ...cable), program(8, ...drill)];
    faultless(proveCut(options({ design: drilled, programs })));
    const swapped = proveCut(options({ design: drilled, programs: [program(8, ...ring(-DEPTH), ...cable), program(6, ...drill)] }));
    expect(swapped.wrongCut.mm).toBeGreaterThan(0.99);
    expect(swapped.remainder.mm).toBeCloseTo(1, 1);
  });
  it('without a groove are right on a sheet that is otherwise left alone', () => {
    faultless(proveCut(options({ design: { stock: STOCK, holes: [holes[0]!] }, programs: [program(6, ...bore)] })));
  });
  it('listed twice count once, there or missing', () => {
    const twice = design({ holes: [...holes, ...holes] });
    faultless(proveCut(options({ design: twice, programs: [program(6, ...ring(-DEPTH), ...bore, ...cable)] })));
    const { remainder } = proveCut(options({ design: twice, programs: [program(6, ...ring(-DEPTH), ...cable)] }));
    expect(Math.abs(remainder.mm2 - 16 * Math.PI)).toBeLessThan(0.7);
  });
  it('bored too wide are a wrong cut of the difference of the radii', () => {
    const wide = bore.map((move) => ({ ...move, to: { ...move.to, y: 13.8 } }));
    const { wrongCut } = proveCut(options({ design: drilled, programs: [program(6, ...ring(-DEPTH), ...wide, ...cable)] }));
    expect(wrongCut.mm).toBeGreaterThan(0.19);
    expect(wrongCut.mm).toBeLessThan(0.2001);
  });
  it('standing in the middle of an uncut groove are as far from being right as the groove\'s wall', () => {
    const spot = { stock: STOCK, holes: [holes[1]!], channel: { region: tube(10, [30, 40], [30.001, 40]), depth: DEPTH, cutterDiameter: 6 } };
    expect(proveCut(options({ design: spot, programs: [] })).remainder.mm).toBeGreaterThan(4.9);
  });
});
