import { describe, expect, it } from 'vitest';
import { adaptMoves } from '../../src/machining/program/adapt.ts';
import { arcRadius, arcSweep, moveLength, placedMoves, pointOnArc, type ArcMove, type PlacedMove } from '../../src/machining/job/moves.ts';
import { type Controller } from '../../src/machining/job/machine.ts';
import { type Move } from '../../src/machining/job/pass.ts';
import { lastDecimal, roundFeed, roundLength } from '../../src/machining/program/resolution.ts';
import { controller } from '../support/machines.ts';
import { seeded } from '../support/random.ts';
import { at, randomMoves, someController } from './program-fixture.ts';

const arcs = (moves: readonly Move[]) => moves.filter((move) => move.kind === 'arc');
const start = at(0, 0, 0);

describe('what a controller can say', () => {
  it('ends, centres and feeds are its decimals', () => {
    const [line, arc] = adaptMoves([{ kind: 'line', to: at(1.00004, 2.99996, -0.00004), feed: 1234.56 },
      { kind: 'arc', to: at(1.00004, 12.99996, 0), centre: { x: 1.00004, y: 7.99996 }, clockwise: true, feed: 900 }], controller, 0.01);
    expect(line).toEqual({ kind: 'line', to: at(1, 3, 0), feed: 1234.6 });
    expect(Object.is(line!.to.z, 0)).toBe(true);
    expect(arc).toMatchObject({ kind: 'arc', to: at(1, 13, 0), centre: { x: 1, y: 8 } });
  });

  it('inches are rounded as inches', () => {
    const inch = { ...controller, units: 'inch' as const };
    expect(adaptMoves([{ kind: 'rapid', to: at(10, 0, 0) }], inch, 0.01)[0]!.to.x).toBe(0.3937 * 25.4);
    expect(lastDecimal(inch)).toBeCloseTo(0.00254, 12);
    expect(roundFeed(1000, inch) / 25.4).toBeCloseTo(39.37, 9);
  });

  it('moves that rounding leaves no length vanish, a feed never becomes 0', () => {
    expect(adaptMoves([{ kind: 'line', to: at(0.00004, 0, 0), feed: 1 }, { kind: 'rapid', to: start }], controller, 0.01)).toEqual([]);
    expect(roundFeed(0.001, controller)).toBe(0.1);
  });

  it('small steps add up instead of being lost', () => {
    const steps = Array.from({ length: 1000 }, (_, k): Move => ({ kind: 'line', to: at((k + 1) * 0.00004, 0, 0), feed: 1000 }));
    const adapted = adaptMoves(steps, controller, 0.01);
    expect(adapted.at(-1)!.to.x).toBe(0.04);
    expect(adapted.length).toBe(400);
  });

  it('refuses what is no coordinate, no feed and no tolerance', () => {
    expect(() => roundLength(NaN, controller)).toThrow(RangeError);
    expect(() => roundLength(1e308, controller)).toThrow(RangeError);
    expect(() => roundFeed(0, controller)).toThrow(RangeError);
    expect(() => roundFeed(Infinity, controller)).toThrow(RangeError);
    expect(() => adaptMoves([], controller, 0)).toThrow(RangeError);
  });
});

describe('arcs', () => {
  const circle: ArcMove = { kind: 'arc', to: at(10, 0, 0), centre: { x: 0, y: 0 }, clockwise: false, feed: 900 };

  it('a full circle becomes two halves', () => {
    const halves = adaptMoves([circle], controller, 0.01, circle.to);
    expect(halves.map((half) => [half.kind, half.to.x, half.to.y])).toEqual([['arc', -10, 0], ['arc', 10, 0]]);
  });

  it('half a circle stays one, a little more becomes two', () => {
    expect(adaptMoves([{ ...circle, to: at(-10, 0, 0) }], controller, 0.01, circle.to)).toHaveLength(1);
    expect(adaptMoves([{ ...circle, to: at(-9.9, -1.410674, 0) }], controller, 0.01, circle.to)).toHaveLength(2);
  });

  it('a controller of lines gets chords within the tolerance: r 50, e 0.01 are 158 to a circle (text-book)', () => {
    const lines = adaptMoves([{ ...circle, to: at(50, 0, 0) }], { ...controller, arcs: 'lines' }, 0.01, at(50, 0, 0));
    expect(lines).toHaveLength(158);
    const middles = placedMoves(at(50, 0, 0), lines).map(({ from, move: { to } }) => 50 - Math.hypot((from.x + to.x) / 2, (from.y + to.y) / 2));
    expect(Math.max(...middles)).toBeGreaterThan(0.0097);
    expect(Math.max(...middles)).toBeLessThan(0.01 + 0.0001);
  });

  it('a controller without helical arcs gets lines for those that change height only', () => {
    const flatOnly = { ...controller, helicalArcs: false };
    expect(arcs(adaptMoves([{ ...circle, to: at(10, 0, -1) }], flatOnly, 0.01, at(10, 0, 0)))).toHaveLength(0);
    expect(arcs(adaptMoves([circle], flatOnly, 0.01, at(10, 0, 0)))).toHaveLength(2);
    expect(adaptMoves([{ ...circle, to: at(10, 0, -1) }], controller, 0.01, at(10, 0, 0)).map(({ to }) => to.z)).toEqual([-0.5, -1]);
  });

  it('one that is nearly straight becomes lines within the tolerance, however far away its centre lies', () => {
    const flat = (radius: number) => {
      const to = { ...at(-500, 0, 0), y: Math.sqrt(radius ** 2 - 500 ** 2) - radius };
      return adaptMoves([{ ...circle, to: at(-500, to.y, 0), centre: { x: 0, y: to.y - Math.sqrt(radius ** 2 - 500 ** 2) } }], controller, 0.004, at(500, to.y, 0));
    };
    expect(flat(9e4).map(({ kind }) => kind)).toEqual(['arc']);
    const bowed = flat(2e5);
    expect(arcs(bowed)).toHaveLength(0);
    expect(Math.max(...bowed.slice(1).map((move, i) => Math.abs(move.to.x - bowed[i]!.to.x)))).toBeLessThanOrEqual(Math.sqrt(8 * 2e5 * 0.0041));
    expect(flat(1e8).every(({ kind }) => kind === 'line')).toBe(true);
  });

  it('one so short that its ends fall together never becomes a full circle', () => {
    const tiny: ArcMove = { ...circle, to: at(10, 0.00003, 0) };
    expect(adaptMoves([tiny], controller, 0.01, at(10, 0, 0))).toEqual([]);
    expect(adaptMoves([{ ...tiny, to: at(10, 0.00003, -1) }], controller, 0.01, at(10, 0, 0))).toEqual([{ kind: 'line', to: at(10, 0, -1), feed: 900 }]);
  });

  it('circles about as small as the last decimal are never arcs, whose centre would fall on their ends', () => {
    for (const radius of [0.00001, 0.00004, 0.00006, 0.0001, 0.0003]) {
      const small: ArcMove = { ...circle, to: at(radius, 0, 0) };
      const adapted = adaptMoves([small], controller, 0.01, small.to);
      expect(arcs(adapted)).toEqual([]);
      expect(adapted.length).toBeLessThan(5);
    }
  });

  it('one whose chord rounding turns round never becomes the rest of the circle', () => {
    const random = seeded(5);
    let longest = 0;
    for (let k = 0; k < 2000; k++) {
      const a = random() * 2 * Math.PI, radius = 10 ** (random() * 4 - 3), turn = (random() * 0.0004) / radius;
      const from = at(radius * Math.cos(a), radius * Math.sin(a), 0);
      const move: ArcMove = { ...circle, to: at(radius * Math.cos(a + turn), radius * Math.sin(a + turn), 0) };
      longest = Math.max(longest, adaptMoves([move], controller, 0.01, from).reduce((sum, one) => sum + moveLength({ ...from, x: roundLength(from.x, controller), y: roundLength(from.y, controller) }, one), 0));
    }
    expect(longest).toBeLessThan(0.002);
  });

  it('with 4 decimals all of 20 000 keep the radius rule of NISTIR 6556, with 3 about 2 in 10 000 do not and become lines (computed)', () => {
    const counted = (decimals: number) => {
      const random = seeded(11), target = { ...controller, decimals };
      let lines = 0, mismatch = 0;
      for (let k = 0; k < 20000; k++) {
        const radius = 2 + random() * 198, a = random() * 2 * Math.PI, turn = 0.2 + random() * 2.9, centre = { x: random() * 500, y: random() * 500 };
        const on = (angle: number) => at(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle), 0);
        const adapted = adaptMoves([{ kind: 'rapid', to: on(a) }, { kind: 'arc', to: on(a + turn), centre, clockwise: false, feed: 900 }], target, 0.01);
        for (const { from, move } of placedMoves(start, adapted)) {
          if (move.kind === 'line') lines++;
          if (move.kind === 'arc') mismatch = Math.max(mismatch, Math.abs(arcRadius(from, move) - arcRadius(move.to, move)));
        }
      }
      return { lines, mismatch };
    };
    const four = counted(4), three = counted(3);
    expect(four.lines).toBe(0);
    expect(four.mismatch).toBeLessThan(0.0002829);
    expect(three.lines).toBeGreaterThan(0);
    expect(three.mismatch).toBeLessThan(0.002);
  });
});

/** How far one planned move and what became of it differ: at the end, in length, from the arc's circle, and the longest turn. */
function compare({ from, move }: PlacedMove, target: Controller, tolerance: number) {
  const adapted = adaptMoves([move], target, tolerance, from);
  const begin = at(roundLength(from.x, target), roundLength(from.y, target), roundLength(from.z, target));
  const end = adapted.at(-1)?.to ?? begin;
  const said = placedMoves(begin, adapted);
  const length = said.reduce((sum, one) => sum + moveLength(one.from, one.move), 0) - moveLength(from, move);
  const places = move.kind === 'arc' ? said.flatMap((one) => [0.25, 0.5, 0.75].map((fraction) => one.move.kind === 'arc'
    ? pointOnArc(one.from, one.move, fraction)
    : at(one.from.x + fraction * (one.move.to.x - one.from.x), one.from.y + fraction * (one.move.to.y - one.from.y), 0))) : [];
  const off = move.kind === 'arc' ? places.map((p) => Math.abs(Math.hypot(p.x - move.centre.x, p.y - move.centre.y) - arcRadius(from, move))) : [];
  const turns = said.map((one) => (one.move.kind === 'arc' ? arcSweep(one.from, one.move) : 0));
  return { count: adapted.length, end: Math.max(...(['x', 'y', 'z'] as const).map((axis) => Math.abs(end[axis] - move.to[axis]))), length: Math.abs(length), off: Math.max(0, ...off), turn: Math.max(0, ...turns) };
}

describe('any moves on any controller', () => {
  it.each(Array.from({ length: 40 }, (_, seed) => seed))('go the planned way: same ends, nowhere further off than tolerance and rounding (seed %i)', (seed) => {
    const target = someController(seed), unit = lastDecimal(target), tolerance = 0.005;
    const worst = { end: 0, length: 0, off: 0, turn: 0 };
    for (const placed of placedMoves(start, randomMoves(seeded(seed), start, 30))) {
      const found = compare(placed, target, tolerance);
      worst.end = Math.max(worst.end, found.end / unit);
      worst.length = Math.max(worst.length, found.length / (2 * unit * (found.count + 8) + tolerance * Math.max(8, found.count)));
      worst.off = Math.max(worst.off, found.off / (Math.max(tolerance, unit / 2) + 3 * unit));
      const radius = placed.move.kind === 'arc' ? arcRadius(placed.from, placed.move) : 1;
      worst.turn = Math.max(worst.turn, found.turn / (180 + (8 * unit * 180) / (Math.PI * radius)));
    }
    expect(worst.end).toBeLessThanOrEqual(0.5000001);
    expect(worst.length).toBeLessThan(1);
    expect(worst.off).toBeLessThan(1);
    expect(worst.turn).toBeLessThan(1.00001);
  });
});
