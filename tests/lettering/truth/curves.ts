import { type Path, pathFromCubics, type Point, polylinePath, type Vector } from '../../../src/geometry/index.ts';
import { seeded } from '../../support/random.ts';
import type { WidthLaw } from './sweep.ts';

/** A pen of one width. */
export const even = (width: number): WidthLaw => () => width;

/** A pen whose width runs smoothly from one value to another, level at both ends. */
export const tapered = (from: number, to: number): WidthLaw => (share) => {
  const s = Math.min(1, Math.max(0, share));
  return from + (to - from) * s * s * s * (10 - 15 * s + 6 * s * s);
};

/** A pen whose width swings about `width` by up to `swing` of it: three waves of random phase, up to `waves` over the length. */
export function uneven(width: number, swing: number, seed: number, waves = 2): WidthLaw {
  const random = seeded(seed);
  const parts = [1, 2, 3].map((k) => ({ size: 0.5 + random(), waves: (waves * k) / 3, phase: random() * 2 * Math.PI }));
  const whole = parts.reduce((sum, { size }) => sum + size, 0);
  return (share) => width * (1 + swing * parts.reduce((sum, { size, waves: w, phase }) => sum + (size / whole) * Math.cos(2 * Math.PI * w * share + phase), 0));
}

export const at = (x: number, y: number): Point => ({ x, y });

export const straight = (...points: readonly Point[]): Path => polylinePath(points, false);

/** A curve given by a function over 0 to 1, in cubics that share its points and directions. */
export function curve(f: (t: number) => Point, pieces = 48, closed = false): Path {
  const step = 1e-5;
  const velocity = (t: number): Vector => {
    const [a, b] = [f(t - step), f(t + step)];
    return { x: (b.x - a.x) / (2 * step), y: (b.y - a.y) / (2 * step) };
  };
  const third = 1 / (3 * pieces);
  const cubics = Array.from({ length: pieces }, (_, i) => {
    const [from, to] = [i / pieces, (i + 1) / pieces];
    const [start, end] = [f(from), closed && i === pieces - 1 ? f(0) : f(to)];
    const [out, into] = [velocity(from), velocity(to)];
    return [at(start.x + out.x * third, start.y + out.y * third), at(end.x - into.x * third, end.y - into.y * third), end] as const;
  });
  return pathFromCubics(f(0), cubics, closed);
}

/** The part of a circle from one angle to another, degrees counter-clockwise from +x; angles may fall. */
export const bow = (x: number, y: number, radius: number, from: number, to: number): Path => curve((t) => {
  const angle = ((from + (to - from) * t) * Math.PI) / 180;
  return at(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
});

export const ring = (x: number, y: number, rx: number, ry = rx): Path =>
  curve((t) => at(x + rx * Math.cos(2 * Math.PI * t), y + ry * Math.sin(2 * Math.PI * t)), 48, true);

/** A path that starts at `start` heading in `heading` degrees and bends by pieces of (length, degrees turned); curvature eases in and out of each piece. */
export function wander(start: Point, heading: number, pieces: readonly (readonly [length: number, turn: number])[]): Path {
  const steps = 400;
  const places = [{ ...start, angle: (heading * Math.PI) / 180 }];
  for (const [length, turn] of pieces) {
    for (let i = 0; i < steps; i++) {
      const { x, y, angle } = places.at(-1)!;
      // A raised cosine of curvature: none at the piece's ends, so that pieces join with even curvature.
      const turned = ((turn * Math.PI) / 180) * eased((i + 1) / steps) - ((turn * Math.PI) / 180) * eased(i / steps);
      const middle = angle + turned / 2;
      places.push({ x: x + (length / steps) * Math.cos(middle), y: y + (length / steps) * Math.sin(middle), angle: angle + turned });
    }
  }
  const stride = 20;
  const knots = places.filter((_, i) => i % stride === 0);
  const cubics = knots.slice(1).map((to, i) => {
    const from = knots[i]!;
    const handle = (pieces[Math.floor((i * stride) / steps)]![0] / steps) * (stride / 3);
    return [at(from.x + handle * Math.cos(from.angle), from.y + handle * Math.sin(from.angle)),
      at(to.x - handle * Math.cos(to.angle), to.y - handle * Math.sin(to.angle)), at(to.x, to.y)] as const;
  });
  return pathFromCubics(start, cubics, false);
}

const eased = (s: number): number => s - Math.sin(2 * Math.PI * s) / (2 * Math.PI);
