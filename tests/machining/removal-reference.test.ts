import { expect, it } from 'vitest';
import { type Point3 } from '../../src/geometry/point.ts';
import { type Move } from '../../src/machining/job/pass.ts';
import { makeGrid, sweepMoves } from '../../src/machining/proof/removal.ts';
import { seeded } from '../support/random.ts';

const INSTANTS = 1000;
const CELL = 0.5;

/** Where the cutter's tip is at many instants of a move, told from the meaning of the move alone. */
function instants(from: Point3, move: Move): Point3[] {
  const { to } = move;
  if (move.kind !== 'arc') {
    return Array.from({ length: INSTANTS + 1 }, (_, k) => ({
      x: from.x + (k / INSTANTS) * (to.x - from.x), y: from.y + (k / INSTANTS) * (to.y - from.y), z: from.z + (k / INSTANTS) * (to.z - from.z) }));
  }
  const { centre } = move;
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const begin = Math.atan2(from.y - centre.y, from.x - centre.x);
  let turn = Math.atan2(to.y - centre.y, to.x - centre.x) - begin;
  if (move.clockwise) while (turn >= -1e-9) turn -= 2 * Math.PI;
  else while (turn <= 1e-9) turn += 2 * Math.PI;
  return Array.from({ length: INSTANTS + 1 }, (_, k) => ({
    x: centre.x + radius * Math.cos(begin + (k / INSTANTS) * turn), y: centre.y + radius * Math.sin(begin + (k / INSTANTS) * turn),
    z: from.z + (k / INSTANTS) * (to.z - from.z) }));
}

function randomMove(random: () => number, from: Point3): Move {
  const z = random() < 0.3 ? from.z : 2 - 6 * random();
  if (random() < 0.35) return { kind: 'line', to: { x: 16 * random(), y: 16 * random(), z }, feed: 1 };
  const radius = random() < 0.5 ? 0.2 + 3 * random() : 2 + 8 * random();
  const [toCentre, ends] = [2 * Math.PI * random(), 2 * Math.PI * random()];
  const centre = { x: from.x + radius * Math.cos(toCentre), y: from.y + radius * Math.sin(toCentre) };
  const whole = random() < 0.3;
  const to = whole ? { x: from.x, y: from.y, z } : { x: centre.x + radius * Math.cos(ends), y: centre.y + radius * Math.sin(ends), z };
  return { kind: 'arc', to, centre, clockwise: random() < 0.5, feed: 1 };
}

it('Every sample is as deep as the disc gets over it at any instant, for 60 seeded moves of all kinds', () => {
  const random = seeded(20);
  let rim = 0;
  const wrong: unknown[] = [];
  let cells = 0;
  for (let n = 0; n < 60; n++) {
    const from = { x: 16 * random(), y: 16 * random(), z: 2 - 6 * random() };
    const move = randomMove(random, from);
    const radius = 0.6 + 3 * random();
    const grid = makeGrid({ minX: -2.03, minY: -2.07, maxX: 18, maxY: 18 }, CELL);
    sweepMoves(grid, from, [move], 2 * radius);
    const tips = instants(from, move);
    const fall = Math.abs(move.to.z - from.z) / INSTANTS;
    const lowest = Math.min(from.z, move.to.z);
    for (let i = 0; i < grid.depth.length; i++) {
      const x = grid.origin.x + ((i % grid.columns) + 0.5) * CELL;
      const y = grid.origin.y + (Math.floor(i / grid.columns) + 0.5) * CELL;
      const found = grid.depth[i]!;
      let plain = 0;
      let nearest = Infinity;
      for (const tip of tips) {
        const apart = (tip.x - x) ** 2 + (tip.y - y) ** 2;
        if (apart < nearest) nearest = apart;
        if (apart <= radius * radius && tip.z < plain) plain = tip.z;
      }
      if (found > plain + 1e-6 || found < Math.min(0, lowest) - 1e-6) wrong.push({ n, x, y, found, plain });
      cells++;
      if (plain - found <= fall + 1e-6) continue;
      // Between two instants the disc may touch a sample that only its very rim reaches.
      rim++;
      if (Math.abs(Math.sqrt(nearest) - radius) > 2e-3) wrong.push({ n, x, y, found, plain });
    }
  }
  expect(wrong).toEqual([]);
  expect(cells).toBeGreaterThan(90_000);
  expect(rim / cells).toBeLessThan(1e-3);
});
