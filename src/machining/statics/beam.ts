/** Standard gravity, m/s2 (ISO 80000-3). */
export const GRAVITY = 9.80665;

/**
 * Cast acrylic's flexural modulus, MPa: what design texts use, and the least that a certified sheet must have
 * (ISO 527-2, ASTM D638 as listed in Unified Facilities Criteria 4-159-01 table 3-1).
 */
export const MODULUS = 3200;
export const LOW_MODULUS = 2760;

/** A strip of sheet seen from its edge: weight per length, N/mm, and bending stiffness, N mm2. */
export interface Beam {
  readonly load: number;
  readonly stiffness: number;
}

export interface Plank {
  /** Across the bending, mm. */
  readonly width: number;
  /** mm. */
  readonly thickness: number;
  /** kg/m3. */
  readonly density: number;
  /** MPa. */
  readonly modulus?: number;
}

/** The beam that a plank is under its own weight: I = b h^3 / 12. */
export const beamOf = ({ width, thickness, density, modulus = MODULUS }: Plank): Beam => ({
  load: density * 1e-9 * GRAVITY * width * thickness,
  stiffness: (modulus * width * thickness ** 3) / 12,
});

/** Sag of the tip of a beam clamped at one end, mm: w L^4 / 8 EI (Roark, table 8.1 case 2a). */
export const clampedTip = ({ load, stiffness }: Beam, length: number): number => (load * length ** 4) / (8 * stiffness);

/** Slope of that tip, degrees: w L^3 / 6 EI. */
export const clampedSlope = ({ load, stiffness }: Beam, length: number): number => degrees((load * length ** 3) / (6 * stiffness));

/** Greatest bending stress of that beam, at its root, MPa: M = w L^2 / 2, sigma = M / (b h^2 / 6). */
export const clampedStress = ({ load }: Beam, length: number, { width, thickness }: Plank): number => (3 * load * length ** 2) / (width * thickness ** 2);

/** Longest clamped overhang whose tip sags by no more than `sag`, mm. */
export const clampedLength = ({ load, stiffness }: Beam, sag: number): number => ((8 * stiffness * sag) / load) ** 0.25;

/** Sag in the middle of a beam on two supports, mm: 5 w L^4 / 384 EI. */
export const spanSag = ({ load, stiffness }: Beam, span: number): number => (5 * load * span ** 4) / (384 * stiffness);

/** Slope at its ends, degrees: w L^3 / 24 EI. */
export const spanSlope = ({ load, stiffness }: Beam, span: number): number => degrees((load * span ** 3) / (24 * stiffness));

/** Longest span that sags by no more than `sag`, mm. */
export const spanLength = ({ load, stiffness }: Beam, sag: number): number => ((384 * stiffness * sag) / (5 * load)) ** 0.25;

/**
 * Sag of the tip of an overhang beyond the second of two supports that are `back` mm apart:
 * w c (3 c^3 + 4 a c^2 - a^3) / 24 EI (Machinery's Handbook, beams). Negative where the tip rises.
 */
export const overhangTip = ({ load, stiffness }: Beam, overhang: number, back: number): number =>
  (load * overhang * (3 * overhang ** 3 + 4 * back * overhang ** 2 - back ** 3)) / (24 * stiffness);

/** How a sheet that lies free on a flat bed hangs over its edge. Millimetres, degrees. */
export interface FreeOverhang {
  readonly tip: number;
  readonly slope: number;
  /** Length over which it lifts off the bed behind the edge, and by how much at most. */
  readonly liftLength: number;
  readonly lift: number;
}

/** Behind the edge a free sheet lifts over this share of its overhang, where neither moment nor slope is left. */
const LIFT_SHARE = Math.SQRT2;

/**
 * A free-lying sheet: it lifts off where its moment and its slope are zero, sqrt(2) c behind the edge, which makes its tip
 * sag (3 + 2 sqrt 2) / 3 times as far as the clamped one's. `onBed` mm of it lie on the bed; with less than it would lift
 * over, it rests on its far end.
 */
export function freeOverhang(beam: Beam, overhang: number, onBed: number): FreeOverhang {
  const back = Math.min(onBed, LIFT_SHARE * overhang);
  if (!(overhang > 0 && back > 0)) return { tip: 0, slope: 0, liftLength: 0, lift: 0 };
  const { load, stiffness } = beam;
  const end = (load * back) / 2 - (load * overhang ** 2) / (2 * back);
  // Slope at the edge from the span behind it, and that of the overhang's own bending.
  const atEdge = slopeAtEdge(beam, overhang, back);
  const lift = back < LIFT_SHARE * overhang ? liftOnEnd(beam, overhang, back) : ((3 * end) / load) ** 3 * (end / (24 * stiffness));
  return { tip: overhangTip(beam, overhang, back), slope: degrees(atEdge + (load * overhang ** 3) / (6 * stiffness)), liftLength: back, lift };
}

/** Downward slope over the second support: w (4 a c^2 - a^3) / 24 EI, rad. */
const slopeAtEdge = ({ load, stiffness }: Beam, overhang: number, back: number): number =>
  (load * (4 * back * overhang ** 2 - back ** 3)) / (24 * stiffness);

/** Places tried along a span for its greatest lift: the error is far below what a bed is flat to. */
const TRIED = 400;

/** Greatest rise between two supports of a beam whose overhang lifts it. */
function liftOnEnd({ load, stiffness }: Beam, overhang: number, back: number): number {
  const end = (load * back) / 2 - (load * overhang ** 2) / (2 * back);
  const turn = (load * back ** 3) / 24 - (end * back ** 2) / 6;
  const rise = (x: number) => ((end * x ** 3) / 6 - (load * x ** 4) / 24 + turn * x) / stiffness;
  return Math.max(...Array.from({ length: TRIED + 1 }, (_, i) => rise((back * i) / TRIED)));
}

/** Longest free overhang whose tip sags by no more than `sag`, mm, with enough of the sheet on the bed. */
export const freeLength = ({ load, stiffness }: Beam, sag: number): number => ((24 * stiffness * sag) / ((3 + 2 * Math.SQRT2) * load)) ** 0.25;

/**
 * Force that keeps a sheet from tipping over the bed's edge, N: w (c^2 - s^2) / 2x, with c mm beyond the edge, s on the
 * bed and a hold-down x behind the edge. None where more lies on the bed than beyond.
 */
export const holdingForce = ({ load }: Beam, overhang: number, onBed: number, behind: number): number =>
  Math.max(0, (load * (overhang ** 2 - onBed ** 2)) / (2 * behind));

const degrees = (radians: number): number => (radians * 180) / Math.PI;
