/** How far a sum of decimal fractions may miss a whole number of passes and still count as that number. */
const WHOLE = 1e-9;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Feed rate in mm/min: spindle speed (1/min) x flutes x chip load (mm). Machinery's Handbook, milling. */
export const feedRate = (spindleSpeed: number, flutes: number, chipLoad: number): number =>
  spindleSpeed * flutes * chipLoad;

/** Cutting speed in m/min at the cutter's edge: diameter in mm, spindle speed in 1/min. Machinery's Handbook, milling. */
export const cuttingSpeed = (diameter: number, spindleSpeed: number): number =>
  (Math.PI * diameter * spindleSpeed) / 1000;

/**
 * Thickest chip as a fraction of the chip load, 0 to 1: under half a diameter of radial engagement (mm) the chip is
 * thinner than the advance per tooth. Chord geometry of the cutter's circle.
 */
export function chipThinningFactor(engagement: number, diameter: number): number {
  if (engagement <= 0 || diameter <= 0) return 0;
  const share = engagement / diameter;
  return share >= 0.5 ? 1 : 2 * Math.sqrt(share - share * share);
}

/** Material removed in cm3/min: depth of cut and radial engagement in mm, feed in mm/min. Machinery's Handbook, milling. */
export const removalRate = (depthOfCut: number, engagement: number, feed: number): number =>
  (depthOfCut * engagement * feed) / 1000;

/** Length in mm of a ramp that descends by `depth` mm at an angle in degrees; Infinity for a ramp that is level. */
export const rampLength = (depth: number, angle: number): number =>
  depth <= 0 ? 0 : depth / Math.tan(radians(angle));

/** Descent in mm of one turn of a helix of this radius (mm) at an angle in degrees. */
export const helixDropPerTurn = (radius: number, angle: number): number =>
  2 * Math.PI * radius * Math.tan(radians(angle));

/** Layers needed to reach a depth with at most `depthOfCut` each, all in mm; none for no depth. */
export const depthPasses = (depth: number, depthOfCut: number): number =>
  depth <= 0 ? 0 : Math.ceil(depth / depthOfCut - WHOLE);

/** Passes side by side needed to clear a width with at most `stepover` between them, all in mm. */
export const lateralPasses = (width: number, diameter: number, stepover: number): number =>
  1 + Math.max(0, Math.ceil((width - diameter) / stepover - WHOLE));
