import { type Loop, type Point, polylinePath, regionFromLoops } from '../../../src/geometry/index.ts';
import { seeded } from '../../support/random.ts';
import { at, bow, curve, even, ring, straight, tapered, uneven, wander } from './curves.ts';
import type { Pen, WidthLaw } from './sweep.ts';
import { asOutline, drawn, type Truth } from './truth.ts';

/** Width of the pens of all shapes, mm. */
export const W = 10;

export const round = (path: Pen['path'], law: WidthLaw = even(W)): Pen => ({ path, law, ends: ['round', 'round'] });
export const flat = (path: Pen['path'], law: WidthLaw = even(W)): Pen => ({ path, law, ends: ['flat', 'flat'] });

export const stadium = (): Truth => drawn('stadium', [round(straight(at(0, 0), at(100, 0)))]);

export const rectangle = (): Truth => drawn('rectangle', [flat(straight(at(0, 0), at(100, 0)))]);

/** An ellipse of half-axes 60 and 20: its medial axis is the middle (a^2 - b^2) / a of its long axis on either side. */
export const ellipse = (a = 60, b = 20): Truth => {
  const half = (a * a - b * b) / a;
  const loop = Array.from({ length: 720 }, (_, i): Point => at(a * Math.cos((i * Math.PI) / 360), b * Math.sin((i * Math.PI) / 360)));
  return { name: `ellipse ${a} x ${b}`, width: 2 * b, outlines: [asOutline({ loops: [loop] })], strokes: [{ path: straight(at(-half, 0), at(half, 0)), ends: ['free', 'free'] }], counts: [1] };
};

export const annulus = (): Truth => drawn('annulus', [round(ring(0, 0, 45))]);

/** Two half circles with eased curvature between. */
const sPath = () => wander(at(0, 0), 60, [[70, 150], [80, -210], [60, 120]]);

export const uprightS = (seed = 1): Truth => drawn('S of uneven width', [round(sPath(), uneven(W, 0.2, seed))]);
export const taper = (): Truth => drawn('taper', [round(wander(at(0, 0), 10, [[60, 25], [90, -40]]), tapered(14, 6))]);
export const arch = (seed = 3): Truth => drawn('arch of uneven width', [round(wander(at(0, 0), 90, [[50, 0], [70, -180], [50, 0]]), uneven(W, 0.2, seed))]);
export const flatS = (seed = 5): Truth => drawn('S with flat ends', [flat(sPath(), uneven(W, 0.15, seed))]);
/** A long thin stroke that swells to three times its width, as swashes do. */
export const swash = (): Truth => drawn('swash', [round(wander(at(0, 0), -20, [[90, 100], [110, -160]]), (share) => 4 + 8 * Math.sin(Math.PI * Math.min(1, Math.max(0, share))) ** 2)]);

export const roundDot = (): Truth => ({ ...ellipse(W / 2, W / 2 - 1e-3), name: 'round dot', width: W, strokes: [{ path: straight(at(-1e-3, 0), at(1e-3, 0)), ends: ['free', 'free'] }], counts: [1] });
export const ovalDot = (): Truth => ({ ...ellipse(9, 5), name: 'oval dot', width: W });
export const ringDot = (): Truth => drawn('ring dot', [round(ring(0, 0, 6), even(4))]);
/** A drop with a tail, as commas are: one stroke. */
export const comma = (): Truth => drawn('comma', [round(bow(0, 0, 16, 20, -50), tapered(11, 4))]);

/** A stem on feet, with or without round hollows between: one stroke, or one with a bar at each end. */
export const serifs = (): Truth => {
  const stem = flat(straight(at(0, 0), at(0, 90)));
  const foot = (y: number) => flat(straight(at(-14, y), at(14, y)), even(4));
  const truth = drawn('serifs', [stem, foot(2), foot(88)]);
  return { ...truth, width: W, strokes: [{ path: straight(at(0, 5), at(0, 85)), ends: ['free', 'free'] }], counts: [1, 3] };
};

const noStroke = (name: string, loop: Loop): Truth => ({ name, width: W, outlines: [asOutline(regionFromLoops([loop], 'nonzero'))], strokes: [], counts: [0] });

export const star = (points = 5): Truth => noStroke('filled star', Array.from({ length: 2 * points }, (_, i) => {
  const [angle, radius] = [(i * Math.PI) / points + 0.1, i % 2 ? 19 : 50];
  return at(radius * Math.cos(angle), radius * Math.sin(angle));
}));

export const blob = (): Truth => {
  const random = seeded(11);
  const waves = [2, 3, 4, 5].map((k) => ({ k, size: 8 / k, phase: 7 * random() }));
  return noStroke('filled blob', Array.from({ length: 400 }, (_, i) => {
    const angle = (i * Math.PI) / 200;
    const radius = 45 + waves.reduce((sum, { k, size, phase }) => sum + size * Math.cos(k * angle + phase), 0);
    return at(radius * Math.cos(angle), radius * Math.sin(angle));
  }));
};

/** The square, as a shape that is as wide as it is long. */
export const square = (): Truth => noStroke('filled square', polylinePath([at(0, 0), at(60, 0), at(60, 60), at(0, 60)], false).segments.map(({ end }) => end).concat(at(0, 0)));

export const wave = (seed: number): Truth => drawn(`wave ${seed}`, [round(curve((t) => at(200 * t, 25 * Math.sin(2 * Math.PI * 1.5 * t))), uneven(W, 0.2, seed))]);

export const plainShapes = (): Truth[] => [stadium(), rectangle(), ellipse(), annulus(), uprightS(), taper(), arch(), flatS(), swash(), wave(21), wave(22)];
export const smallShapes = (): Truth[] => [roundDot(), ovalDot(), ringDot(), comma(), serifs()];
export const strokeless = (): Truth[] => [star(), blob(), square()];
