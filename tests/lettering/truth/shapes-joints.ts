import { applyToPath, type Path, pathFromCubics, type Point, rotation } from '../../../src/geometry/index.ts';
import { at, bow, curve, even, ring, straight, uneven, wander } from './curves.ts';
import { flat, round, W } from './shapes-plain.ts';
import type { Pen, WidthLaw } from './sweep.ts';
import { drawn, type Truth } from './truth.ts';

const polar = (degrees: number, radius: number) => at(radius * Math.cos((degrees * Math.PI) / 180), radius * Math.sin((degrees * Math.PI) / 180));

/** Paths joined end to end; each must begin where the one before ends. */
export const chain = (...paths: readonly Path[]): Path => ({ start: paths[0]!.start, segments: paths.flatMap(({ segments }) => segments), closed: false });

/** Two straight strokes across each other. Long enough that each has free length beside a shallow crossing. */
export function crossing(degrees: number, second = W): Truth {
  const half = Math.max(60, 2.5 * (W / Math.sin((degrees * Math.PI) / 180)));
  const arm = (angle: number, law: WidthLaw) => round(straight(polar(angle + 180, half), polar(angle, half)), law);
  return drawn(`X ${degrees}${second === W ? '' : ' unequal'}`, [arm(3, even(W)), arm(3 + degrees, even(second))]);
}

/** Two bent strokes of uneven width across each other; they are `degrees` apart where they cross, and bend apart or alike. */
export function bentCrossing(degrees: number, seed = 1, apart = true): Truth {
  // Strokes that bend apart come together again; their bends and lengths keep the ends clear of each other.
  const ease = apart ? Math.min(1, degrees / 70) : 1;
  const reach = Math.max(160, (7 * W) / Math.sin((degrees * Math.PI) / 180));
  const bent = (angle: number, turn: number, law: WidthLaw) => {
    const path = curve((t) => {
      const [s, bend] = [reach * (t - 0.5), (turn * Math.PI) / 180 / reach];
      const across = (1 - Math.cos(bend * s)) / bend;
      const along = Math.sin(bend * s) / bend;
      const [c, n] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
      return at(along * c - across * n, along * n + across * c);
    });
    return round(path, law);
  };
  return drawn(`X ${degrees} bent${apart ? '' : ' alike'}`, [bent(-7, 70 * ease, uneven(W, 0.18, seed)), bent(degrees - 7, apart ? -60 * ease : 60, uneven(0.8 * W, 0.18, seed + 1))]);
}

/** A stem that comes to a bar at an angle and ends on its centre line. */
export function tee(degrees: number, stem = W): Truth {
  return drawn(`T ${degrees}${stem === W ? '' : ' thin stem'}`, [round(straight(at(-70, 0), at(70, 0))), round(straight(polar(degrees, 80), at(0, 0)), even(stem))], [[1, 1]]);
}

export const bentTee = (): Truth => drawn('T on a bow', [
  round(bow(0, -60, 60, 150, 30), uneven(W, 0.15, 8)), round(wander(at(60 * Math.cos(1.4), 60 * Math.sin(1.4) - 60), 95, [[75, -25]]), uneven(0.9 * W, 0.15, 9)),
], [[1, 0]]);

/** A long slanted stroke with a short arm that joins it from above. */
export const letterY = (): Truth => drawn('y', [round(straight(at(35, 60), at(-30, -55))), round(straight(at(-40, 60), at(2.8696, 3.0769)))], [[1, 1]]);

/** Three arms that meet, a third of a turn apart: any two of them, or none, may be one stroke. */
export const wye = (): Truth => ({ ...drawn('Y of three like arms', [90, 210, 330].map((angle) => round(straight(polar(angle, 70), at(0, 0)))), [[0, 1], [1, 1], [2, 1]]), counts: [2, 3] });

export const letterK = (): Truth => drawn('K', [
  round(straight(at(0, 100), at(0, 0))), round(straight(at(60, 98), at(0, 42))), round(straight(at(18, 58.8), at(62, 0))),
], [[1, 1], [2, 0]]);

/** A line that goes up, round and back across itself. */
export const loopE = (seed = 2): Truth => drawn('e', [round(wander(at(-60, -12), 5, [[70, 40], [95, 225], [40, 40], [60, 20]]), uneven(W, 0.15, seed))]);
export const loopL = (seed = 4): Truth => drawn('l', [round(wander(at(-30, -10), 15, [[60, 50], [80, 10], [70, 180], [90, 15], [60, 70]]), uneven(0.8 * W, 0.15, seed))]);

const X_HEIGHT = 80;

/** The line that leaves a stem upwards from (x, start), goes over and comes down `over` mm to the right, to height `foot`. */
function archLine(x: number, start: number, over: number, foot: number, top = X_HEIGHT): Path {
  const shoulder = top - start;
  const quarter = (from: number, to: number, rise: number) => curve((t) => {
    const angle = ((from + (to - from) * t) * Math.PI) / 180;
    return at(x + over / 2 + (over / 2) * Math.cos(angle), top - rise + rise * Math.sin(angle));
  });
  const fall = Math.min(shoulder, over / 2);
  return chain(quarter(180, 90, shoulder), quarter(90, 0, fall), straight(at(x + over, top - fall), at(x + over, foot)));
}

const stem = (top: number, law = even(W), foot = 0): Pen => flat(straight(at(0, top), at(0, foot)), law);
const leg = (path: Path, law = even(W)): Pen => ({ path, law, ends: ['round', 'flat'] });

/** Tangential arches: the arch begins on the stem's centre line, in its direction. */
export const letterN = (over = 44, start = 40, top = X_HEIGHT): Truth =>
  drawn(top > X_HEIGHT + 5 ? 'h' : top < X_HEIGHT ? 'n without a spur' : 'n', [stem(top), leg(archLine(0, start, over, 0))], [[1, 0]]);
export const letterH = (): Truth => letterN(44, 40, 130);
/** The stem's top barely shows beside the arch: a pen may have made one stroke of it or two. */
export const spurless = (): Truth => ({ ...letterN(44, 40, X_HEIGHT - 6), counts: [1, 2] });
export const letterM = (): Truth => drawn('m', [stem(X_HEIGHT), leg(archLine(0, 40, 42, 0)), leg(archLine(42, 40, 42, 0))], [[1, 0], [2, 0]]);
export const letterR = (): Truth => drawn('r', [stem(X_HEIGHT), round(curve((t) => {
  const angle = Math.PI - (t * 110 * Math.PI) / 180;
  return at(22 + 22 * Math.cos(angle), 46 + 34 * Math.sin(angle));
}))], [[1, 0]]);
/** An n upside down. */
export const letterU = (): Truth =>
  drawn('u', [stem(X_HEIGHT), leg(archLine(0, 40, 44, 0))].map((pen) => ({ ...pen, path: applyToPath(rotation(180), pen.path) })), [[1, 0]]);
/** The same with widths that change, as brushes leave them. */
export const brushN = (): Truth => drawn('n of a brush', [stem(X_HEIGHT, uneven(W, 0.1, 31, 1)), round(archLine(0, 30, 50, 0), uneven(0.9 * W, 0.15, 32, 1))], [[1, 0]]);

/** A bowl on a stem: it leaves the stem sharply below and comes back at an angle above. */
function bowl(name: string, low: number, foot: number, top: number): Truth {
  const path = curve((t) => {
    const angle = ((-155 + 310 * t) * Math.PI) / 180;
    return at(30 + 33.1 * Math.cos(angle), low + 40 + 40 * Math.sin(angle));
  });
  return drawn(name, [flat(straight(at(0, top), at(0, foot))), round(path, uneven(0.9 * W, 0.08, 41))], [[1, 0], [1, 1]]);
}
export const letterB = (): Truth => bowl('b', 5, 0, 140);
export const letterP = (): Truth => bowl('p', 5, -50, 90);
/** A bowl whose lower end runs into the foot of the stem: a sharp tip. */
export const tippedB = (): Truth => drawn('b with a V tip', [flat(straight(at(0, 140), at(0, 0))), round(chain(
  hermite(at(0, 5), 50, at(48, 48), 90, 60), hermite(at(48, 48), 90, at(0, 74), 200, 70)), even(0.9 * W))], [[1, 0], [1, 1]]);

/** A broad stem that runs out into a hairline below, met by another hairline that comes up along it: as pointed pens write d and u. */
export const swellingStem = (): Truth => {
  const law: WidthLaw = (share) => 3.5 + 8.5 * (0.5 + 0.5 * Math.cos(Math.PI * Math.min(1, Math.max(0, (share - 0.25) / 0.3))));
  return drawn('stem into a hairline', [
    round(wander(at(40, 110), 245, [[85, 0], [55, 155], [40, 10]]), law),
    round(hermite(at(-40, 25), 0, at(12.5, 51), 50, 70), even(3.5)),
  ], [[1, 1]]);
};

/** One cubic between two points with a heading at each, in degrees; `pull` mm is how far the headings reach. */
function hermite(from: Point, leaving: number, to: Point, arriving: number, pull: number): Path {
  const [out, into] = [polar(leaving, pull / 3), polar(arriving, pull / 3)];
  return pathFromCubics(from, [[at(from.x + out.x, from.y + out.y), at(to.x - into.x, to.y - into.y), to]], false);
}

/** Two bowls and a short line between them, as in "bo" and "ou". */
export const connected = (gap: number): Truth => drawn(`short connector ${gap / W} w`, [
  round(ring(0, 0, 26, 34)), round(ring(52 + W + gap, 0, 26, 34)),
  round(curve((t) => at(14.34 + t * (23.32 + W + gap), 28.363 - 9 * Math.sin(Math.PI * t))), even(0.7 * W)),
], [[2, 0], [2, 1]]);

export const archShapes = (): Truth[] => [letterN(), letterH(), spurless(), letterM(), letterR(), letterU(), brushN()];
export const jointShapes = (): Truth[] => [bentTee(), letterY(), wye(), letterK(), letterB(), letterP(), tippedB(), swellingStem(), connected(6), connected(15)];
export const loopShapes = (): Truth[] => [loopE(), loopL()];
