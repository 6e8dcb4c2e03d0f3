import type { Haze } from './blur.ts';

/**
 * How light of a small source falls off over a plane, as mixtures of normal distributions: 1 / (r² + h²)^p is the integral of
 * s^(p-1) e^(-s (r² + h²)) over s but for a factor (the gamma function), and e^(-s r²) is a normal distribution of variance 1 / 2s. With t = s h² a
 * share has the density t^(p-2) e^-t; the tables give its mass between powers of two of t, and where in between its mean lies.
 */
type Shares = readonly (readonly [t: number, weight: number])[];

/** p = 2, density e^-t: a lambertian source facing the plane from the distance h. */
const FACING: Shares = [
  [0.00779, 0.015504], [0.02342, 0.015263], [0.04679, 0.02982], [0.09342, 0.056916], [0.1862, 0.103696], [0.3698, 0.17227], [0.72925, 0.238651], [1.41802, 0.232544],
  [2.68696, 0.11702], [5, 0.018316],
];

/** p = 3/2, density t^(-1/2) e^-t / sqrt(pi): a source that shines alike to all sides, at the height h over the plane. */
const BESIDE: Shares = [
  [0.000325, 0.03525], [0.001437, 0.014585], [0.002874, 0.020597], [0.005746, 0.029044], [0.01149, 0.04084], [0.02297, 0.057096], [0.0459, 0.078914], [0.091637, 0.106599],
  [0.182624, 0.137575], [0.36266, 0.16219], [0.715091, 0.160011], [1.390633, 0.111799], [2.638891, 0.040823], [4.918161, 0.004678],
];

const hazeOf = (shares: Shares, distance: number): Haze[] => shares.map(([t, weight]) => ({ sigma: distance / Math.sqrt(2 * t), weight }));

/** Of a lambertian source on a plane that it faces, `distance` away, in the unit wanted: h² / (pi (r² + h²)²). */
export const facing = (distance: number): Haze[] => hazeOf(FACING, distance);

/** Of a source that shines alike to all sides on the plane under it: h / (2 pi (r² + h²)^(3/2)). */
export const beside = (height: number): Haze[] => hazeOf(BESIDE, height);

/**
 * Light strayed in the eye or a lens: as 1 / r² between two radii, which is what equal shares in every octave come to (the exponent of Stiles and Holladay, kept
 * by CIE 135/1, 1999, for angles of some degrees; from memory).
 */
export function stray(from: number, octaves: number): Haze[] {
  return Array.from({ length: octaves }, (_, k) => ({ sigma: from * 2 ** k, weight: 1 / octaves }));
}
