import { distance, loopArea, type Loop, type Path, type PathSample, type Point, type Region, samplePath, simplifyPolyline, unionRegions } from '../../../src/geometry/index.ts';

/**
 * Outlines whose true centre line is known: the boundary of all discs that a pen of changing width leaves along a curve.
 * The disc of radius r at c touches that boundary at c - r r' t +- r sqrt(1 - r'^2) n (envelope of a family of circles),
 * so its touching points lie asin(r') behind the normals. The curve is the boundary's medial axis wherever the pen's
 * radius is under the curve's and the stroke keeps clear of itself.
 */

/** The pen's width in mm at a share (0 to 1) of the stroke's length; smooth a little beyond both. */
export type WidthLaw = (share: number) => number;

export type EndShape = 'round' | 'flat';

/** A stroke as it was drawn. */
export interface Pen {
  readonly path: Path;
  readonly law: WidthLaw;
  readonly ends: readonly [EndShape, EndShape];
}

/** A place of the pen: the disc's centre, direction and radius, and where the disc touches the stroke's two sides. */
interface Place {
  readonly sample: PathSample;
  readonly radius: number;
  readonly left: Point;
  readonly right: Point;
}

/** Sides are computed this close together, as a share of the mean width, and thinned to the tolerance afterwards. */
const SPACING = 1 / 40;
/** Degrees a section may turn: sections do not meet themselves, so that each is a simple polygon. */
const SECTION_TURN = 50;

/** Mean width of a pen, mm. */
export const meanWidth = ({ law }: Pen): number => Array.from({ length: 101 }, (_, i) => law(i / 100)).reduce((a, b) => a + b) / 101;

/** What the strokes cover together; curved sides are chords at most `tolerance` mm off. */
export const sweptRegion = (pens: readonly Pen[], tolerance: number): Region =>
  unionRegions(pens.flatMap((pen) => sections(pen, tolerance)).map((loop) => ({ loops: [loopArea(loop) < 0 ? [...loop].reverse() : loop] })));

/** Simple polygons that share whole edges and make up one stroke: its length in pieces, and its round ends. */
function sections(pen: Pen, tolerance: number): Loop[] {
  const places = placesOf(pen);
  const sides = pen.path.closed ? [...places, places[0]!] : places;
  const cuts = cutsOf(sides);
  const strips = cuts.slice(1).map((to, i) => {
    const run = sides.slice(cuts[i], to + 1);
    const side = (of: (place: Place) => Point) => simplifyPolyline(run.map(of), tolerance);
    return [...side(({ right }) => right), ...side(({ left }) => left).reverse()];
  });
  if (pen.path.closed) return strips;
  const caps = pen.ends.flatMap((shape, i) => (shape === 'round' ? [roundEnd(places.at(-i)!, i === 0, tolerance)] : []));
  return [...strips, ...caps];
}

function placesOf({ path, law, ends: _ }: Pen): Place[] {
  const width = law(0.5);
  const samples = samplePath(path, width * SPACING);
  const total = samples.at(-1)!.distance * (path.closed ? samples.length / (samples.length - 1) : 1);
  return samples.map((sample) => placeAt(sample, law, total));
}

function placeAt(sample: PathSample, law: WidthLaw, total: number): Place {
  const { point, tangent, curvature, distance: along } = sample;
  const share = along / total;
  const step = 1e-5;
  const [radius, slope] = [law(share) / 2, (law(share + step) - law(share - step)) / (4 * step * total)];
  if (!(radius * Math.abs(curvature) < 0.98)) throw new RangeError(`pen of radius ${radius} on a bend of radius ${1 / Math.abs(curvature)}: expected a wider bend`);
  if (!(Math.abs(slope) < 0.9)) throw new RangeError(`the pen's radius changes by ${slope} per mm: expected less than 0.9`);
  const [back, out] = [-radius * slope, radius * Math.sqrt(1 - slope * slope)];
  const touch = (side: number): Point => ({
    x: point.x + back * tangent.x - side * out * tangent.y, y: point.y + back * tangent.y + side * out * tangent.x,
  });
  return { sample, radius, left: touch(1), right: touch(-1) };
}

/** Indices between which the sides are parted into sections, first and last included. */
function cutsOf(places: readonly Place[]): number[] {
  const cuts = [0];
  let turned = 0;
  for (let i = 1; i < places.length - 1; i++) {
    const { sample } = places[i]!;
    turned += Math.abs(sample.curvature) * distance(sample.point, places[i - 1]!.sample.point);
    if (turned * (180 / Math.PI) < SECTION_TURN) continue;
    cuts.push(i);
    turned = 0;
  }
  return [...cuts, places.length - 1];
}

/** The part of the end disc beyond the two points where it touches the sides. */
function roundEnd({ sample, radius, left, right }: Place, isStart: boolean, tolerance: number): Loop {
  const { point } = sample;
  const [from, to] = isStart ? [left, right] : [right, left];
  const start = Math.atan2(from.y - point.y, from.x - point.x);
  const turn = (Math.atan2(to.y - point.y, to.x - point.x) - start + 4 * Math.PI) % (2 * Math.PI);
  const count = Math.max(2, Math.ceil(turn / (2 * Math.acos(1 - Math.min(1, tolerance / radius)))));
  const inner = Array.from({ length: count - 1 }, (_, i): Point => {
    const angle = start + (turn * (i + 1)) / count;
    return { x: point.x + radius * Math.cos(angle), y: point.y + radius * Math.sin(angle) };
  });
  return [from, ...inner, to];
}
