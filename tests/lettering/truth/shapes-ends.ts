import { type Path, type Point, type Region, regionFromLoops, subtractRegion, unionRegions } from '../../../src/geometry/index.ts';
import { at, bow, even, straight, tapered, wander } from './curves.ts';
import { flat, round, W } from './shapes-plain.ts';
import { type Pen, sweptRegion } from './sweep.ts';
import { asOutline, drawn, OUTLINE_TOLERANCE, type Truth } from './truth.ts';

/**
 * Strokes whose ends were cut or shaped after the pen: the line ends where a round cap of the stroke's own width would
 * reach as far as the lettering does along the line.
 */

/** A stem upwards, its top cut at an angle through the place 80 mm up its middle. */
const cutStem = (name: string, shape: (top: Point) => Region): Truth =>
  shaped(name, flat(straight(at(0, 0), at(0, 120))), shape(at(0, 80)), straight(at(0, W / 2), at(0, 80 - W / 2)));

const shaped = (name: string, pen: Pen, cut: Region, path: Path): Truth => ({
  name, width: W, outlines: [asOutline(subtractRegion(sweptRegion([pen], OUTLINE_TOLERANCE * W), cut))], strokes: [{ path, ends: ['free', 'free'] }], counts: [1],
});

/** Everything above a line through a place, slanted by some degrees. */
const above = (degrees: number) => ({ x, y }: Point): Region => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const place = (along: number, up: number): Point => at(x + along * cos - up * sin, y + along * sin + up * cos);
  return regionFromLoops([[place(-200, 0), place(200, 0), place(200, 200), place(-200, 200)]], 'nonzero');
};

export const slantedEnd = (degrees: number): Truth => cutStem(`end slanted by ${degrees}`, above(degrees));

/** An end like a gable, its ridge on the line. */
export const gabledEnd = (): Truth => cutStem('end like a gable', (top) => unionRegions([above(25)(top), above(-25)(top)]));

/** A slanted cut at the end of a bow; its centre line's end is found by the length left. */
export const slantedBow = (degrees: number): Truth => {
  const path = bow(0, 0, 40, 0, 120);
  const top = at(40 * Math.cos((100 * Math.PI) / 180), 40 * Math.sin((100 * Math.PI) / 180));
  const turn = (W / 2 / 40) * (180 / Math.PI);
  return shaped(`bow's end slanted by ${degrees}`, flat(path), above(100 + degrees)(top), bow(0, 0, 40, turn, 100 - turn));
};

/** A stem that widens gently towards its foot within one and a half widths: a round cap of the width it has there. */
export const flaredEnd = (share = 0.35): Truth => {
  const side = (y: number) => (W / 2) * (1 + share * Math.max(0, 1 - y / (1.5 * W)) ** 2);
  const ys = Array.from({ length: 61 }, (_, i) => (i * 80) / 60);
  const loop = [...ys.map((y) => at(side(y), y)), ...[...ys].reverse().map((y) => at(-side(y), y))];
  const foot = Array.from({ length: 60 }).reduce((y: number) => side(y), W / 2);
  return { name: 'flared end', width: W, outlines: [asOutline(regionFromLoops([loop], 'nonzero'))], strokes: [{ path: straight(at(0, foot), at(0, 80 - W / 2)), ends: ['free', 'free'] }], counts: [1] };
};

/** A pen that lifts: its width falls to a point over the last part of a curve. */
export const brushTip = (tip: number): Truth => {
  const path = wander(at(0, 0), 20, [[60, 40], [50, -30]]);
  const pen: Pen = { path, law: tapered(W, tip), ends: ['round', 'round'] };
  return { name: `brush tip to ${tip}`, width: W, outlines: [asOutline(sweptRegion([pen], OUTLINE_TOLERANCE * W * 0.3))], strokes: [{ path, ends: ['free', 'free'] }], counts: [1] };
};

/** A stem that swings out at its foot into a short hook and grows thinner there, as a pen leaves a letter. */
export const hookedFoot = (turn: number, tip = 0.6): Truth => {
  const path = wander(at(0, 100), -90, [[75, 0], [36, turn], [10, 0]]);
  const eased = (share: number) => Math.min(1, Math.max(0, (share - 0.6) / 0.4)) ** 2;
  const law = (share: number) => W * (1 - (1 - tip) * eased(share));
  return { name: `hooked foot, ${turn}, to ${tip}`, width: W, outlines: [asOutline(sweptRegion([round(path, law)], OUTLINE_TOLERANCE * W))], strokes: [{ path, ends: ['free', 'free'] }], counts: [1] };
};

/** A wedge: straight sides that meet in a point. */
export const wedge = (long: number): Truth => {
  const loop = [at(0, -W / 2), at(long, 0), at(0, W / 2)];
  const half = (W / 2) * (1 - (W / 2) / long);
  return { name: `wedge ${long}`, width: W, outlines: [asOutline({ loops: [loop] })], strokes: [{ path: straight(at(half, 0), at(long, 0)), ends: ['free', 'free'] }], counts: [1] };
};

/** A bow whose end is round, but of the pen's own bend: nothing to cut. */
export const roundBow = (): Truth => {
  const path = bow(0, 0, 18, 0, 200);
  return { name: 'round ends on a bow', width: W, outlines: [asOutline(sweptRegion([round(path, even(W))], OUTLINE_TOLERANCE * W))], strokes: [{ path, ends: ['free', 'free'] }], counts: [1] };
};

/** A broad stroke that thins to a hairline of a twentieth of its width and swells again. */
export const hairlined = (): Truth => {
  const path = wander(at(0, 0), 30, [[80, 80], [80, -120], [80, 90]]);
  const law = (share: number) => W * (0.05 + 0.95 * Math.sin(2 * Math.PI * Math.min(1, Math.max(0, share))) ** 2);
  return { ...drawn('thinning to hairlines', [round(path, law)], [], 0.1), width: W };
};

/** A hairline of a twentieth of the stem's width that bends through the stem. */
export const hairlineThrough = (): Truth => {
  const truth = drawn('hairline through a stem', [round(straight(at(0, 0), at(0, 80))), round(wander(at(-60, 30), 0, [[80, 60], [80, -90]]), even(0.05 * W))], [], 0.1);
  return { ...truth, width: W };
};

export const endShapes = (): Truth[] => [
  ...[0, 10, 20, 30, 45, 60].map(slantedEnd), gabledEnd(), ...[-30, 30].map(slantedBow), flaredEnd(),
  brushTip(4), brushTip(1), brushTip(0.3), wedge(60), wedge(150), roundBow(), hairlined(), hairlineThrough(),
  hookedFoot(80), hookedFoot(120), hookedFoot(-120, 0.5),
];
