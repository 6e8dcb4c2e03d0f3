import { type Controller } from '../../src/machining/job/machine.ts';
import { type Move, type Pass } from '../../src/machining/job/pass.ts';
import { controller, flat6 } from '../support/machines.ts';
import { seeded } from '../support/random.ts';

export const at = (x: number, y: number, z: number) => ({ x, y, z });

/** An arc of a random radius, turn and rise; one in eight is a full circle, one in eight very short. */
function randomArc(random: () => number, from: { x: number; y: number; z: number }): Move {
  const radius = 10 ** (random() * 6 - 3.5), angle = random() * 2 * Math.PI;
  const choice = random(), clockwise = random() < 0.5;
  const turn = choice < 0.125 ? 2 * Math.PI : choice < 0.25 ? (random() * 0.01) / radius : random() * 2 * Math.PI;
  const centre = { x: from.x - radius * Math.cos(angle), y: from.y - radius * Math.sin(angle) };
  const end = angle + (clockwise ? -turn : turn);
  const z = random() < 0.3 ? from.z - random() * 2 : from.z;
  const to = choice < 0.125 ? { ...from, z } : { x: centre.x + radius * Math.cos(end), y: centre.y + radius * Math.sin(end), z };
  return { kind: 'arc', to, centre, clockwise, feed: 200 + random() * 3000 };
}

export function randomMoves(random: () => number, from: { x: number; y: number; z: number }, count: number): Move[] {
  const moves: Move[] = [];
  let here = from;
  for (let k = 0; k < count; k++) {
    const step = 10 ** (random() * 6 - 4);
    const line: Move = { kind: 'line', to: at(here.x + (random() - 0.5) * step, here.y + (random() - 0.5) * step, here.z - random() * 0.1 * Number(random() < 0.3)), feed: 200 + random() * 3000 };
    const move = random() < 0.5 ? line : randomArc(random, here);
    moves.push(move);
    here = move.to;
  }
  return moves;
}

export function randomPasses(seed: number): Pass[] {
  const random = seeded(seed);
  return Array.from({ length: 1 + Math.floor(random() * 4) }, (_, k): Pass => {
    const start = at((random() - 0.2) * 900, (random() - 0.2) * 600, 2);
    const down: Move = { kind: 'line', to: { ...start, z: -random() * 5 }, feed: 500 };
    return { kind: 'groove', name: `groove ${k + 1}`, cutter: flat6, start, moves: [down, ...randomMoves(random, down.to, 1 + Math.floor(random() * 25))] };
  });
}

/** Controllers of every kind, by number. */
export function someController(seed: number): Controller {
  const random = seeded(seed * 7919 + 1);
  const pick = <T>(...from: readonly T[]): T => from[Math.floor(random() * from.length)]!;
  const units = pick<'mm' | 'inch'>('mm', 'mm', 'inch');
  return {
    ...controller, units, arcs: pick('centre', 'centre', 'lines'), helicalArcs: pick(true, false), decimals: units === 'mm' ? pick(2, 3, 4, 5) : pick(4, 5),
    lineNumbers: pick(true, false), percentLines: pick(true, false), comments: pick('parentheses', 'none'), programEnd: pick('M2', 'M30'),
    dwellUnit: pick('seconds', 'milliseconds'), longestLine: pick(64, 70, 256),
  };
}
