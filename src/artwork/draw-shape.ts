import { type Affine, type Path, type Point, applyToPath, determinant, distance, isSimilarity, largestStretch } from '../geometry/index.ts';
import { type CautionKind, nameOf } from './cautions.ts';
import { MM_PER_PX } from './length.ts';
import { type Paint, paintOf } from './paint.ts';
import { type BuildOptions, type Subpath } from './path-builder.ts';
import { parsePathData } from './path-data.ts';
import { type Reading, type Surroundings, looksLikeNoNumber, readLength, refuseCoordinates, spend } from './reading.ts';
import { type Lengths, type Shape, ellipseShape, lineShape, polyShape, rectShape } from './shapes.ts';
import { type XmlElement } from './xml.ts';

type Declared = ReadonlyMap<string, string>;
/** What a shape makes of its element. `around` holds its own style and its own transform already. */
interface Job {
  readonly reading: Reading;
  readonly element: XmlElement;
  readonly declared: Declared;
  readonly around: Surroundings;
}

/** Characters of path data that count as one point: padding may not buy endless work. */
const CHARACTERS_PER_POINT = 64;

function pathShape({ reading, element, declared }: Job, options: BuildOptions): Shape {
  const stated = declared.get('d') ?? '';
  // As a property of CSS the data stand in quotes: path("...").
  const text = /^\s*path\(\s*["']([^"']*)["']\s*\)\s*$/.exec(stated)?.[1] ?? (stated.trim() === 'none' ? '' : stated);
  const { subpaths, points, error } = parsePathData(text, options, reading.limits.points - reading.used.points);
  spend(reading, element, 'points', Math.max(points, Math.floor(text.length / CHARACTERS_PER_POINT)));
  if (error && looksLikeNoNumber(error.found)) refuseCoordinates(reading, element, error.found);
  else if (error) reading.cautions.add('pathData', element, error.found === '' ? 'the data end too early' : error.found);
  return { subpaths };
}

function pointsShape({ reading, element, declared }: Job, options: BuildOptions): Shape {
  const text = declared.get('points') ?? '';
  const shape = polyShape(text, element.name === 'polygon', options);
  spend(reading, element, 'points', Math.floor(text.length / 4));
  if (shape.malformed && /\b(?:nan|inf)/i.test(text)) refuseCoordinates(reading, element, text);
  else if (shape.malformed) reading.cautions.add('pathData', element);
  return shape;
}

const SHAPES: Readonly<Record<string, (job: Job, at: Lengths, options: BuildOptions) => Shape>> = {
  path: (job, _at, options) => pathShape(job, options),
  rect: (_job, at, options) => rectShape(at, options),
  circle: (_job, at, options) => ellipseShape(at, options, ['r', 'r']),
  ellipse: (_job, at, options) => ellipseShape(at, options, ['rx', 'ry']),
  line: (_job, at, options) => lineShape(at, options),
  polyline: (job, _at, options) => pointsShape(job, options),
  polygon: (job, _at, options) => pointsShape(job, options),
};

export const isShape = (name: string): boolean => Object.hasOwn(SHAPES, name);

/** Draws a visible shape into strokes and outlines, by the rules stated at `readDrawing`. */
export function drawShape(job: Job): void {
  const { reading, element, declared, around } = job;
  const make = SHAPES[element.name];
  if (!make || !isUsable(job)) return;
  const tolerance = reading.tolerance / largestStretch(around.affine);
  const at: Lengths = (name) => readLength(reading, element, name, declared.get(name), around);
  const shape = make(job, at, { keepArcs: isSimilarity(around.affine), tolerance });
  if (shape.empty) reading.cautions.add('empty', element);
  const paths = placed(job, shape.subpaths);
  if (!reading.problem) sort(job, paths);
}

/** Whether the transform leaves anything to see. */
function isUsable({ reading, element, around: { affine } }: Job): boolean {
  const stretch = largestStretch(affine);
  if (!affine.every(Number.isFinite) || !Number.isFinite(stretch)) refuseCoordinates(reading, element, 'a transform out of all bounds');
  else if (Math.abs(determinant(affine)) > 1e-12 * stretch * stretch && stretch > 1e-12) return true;
  else reading.cautions.add('flat', element);
  return false;
}

function placed({ reading, element, around }: Job, subpaths: readonly Subpath[]): readonly Path[] {
  const paths: Path[] = [];
  for (const { path, drawn } of subpaths) {
    if (!drawn) {
      reading.cautions.add('lone', element);
      continue;
    }
    const inMm = applyToPath(around.affine, path, reading.tolerance);
    const stray = firstStray(inMm, reading.limits.reach);
    if (stray) {
      refuseCoordinates(reading, element, `a point at ${stray.x}, ${stray.y} mm`);
      return [];
    }
    paths.push(inMm);
  }
  return paths;
}

/** The first point that is not finite or lies out of reach. */
function firstStray(path: Path, reach: number): Point | undefined {
  const near = ({ x, y }: Point) => Math.abs(x) <= reach && Math.abs(y) <= reach;
  if (!near(path.start)) return path.start;
  for (const segment of path.segments) {
    const points = segment.kind === 'cubic' ? [segment.control1, segment.control2, segment.end] : [segment.end];
    if (segment.kind === 'arc') points.push(segment.centre);
    const stray = points.find((point) => !near(point));
    if (stray) return stray;
  }
  return undefined;
}

/** Ends nearer than this are one place: files round to a few digits. In mm. */
const SAME_PLACE = 1e-3;

/** The path as a closed one when it is closed or its ends meet. */
function asArea(path: Path): Path | undefined {
  const end = path.segments.at(-1)?.end;
  if (path.closed || !end) return path.closed ? path : undefined;
  const gap = distance(end, path.start);
  if (gap > SAME_PLACE) return undefined;
  return { ...path, closed: true, segments: gap === 0 ? path.segments : [...path.segments, { kind: 'line', end: path.start }] };
}

/** What the paint makes of a path in its place: a stroke, part of an outline, or both; and what to say about it. */
function classify(path: Path, paint: Paint): { readonly isStroke: boolean; readonly area?: Path; readonly caution?: CautionKind } {
  if (path.segments.length === 0) return { isStroke: true, caution: 'dot' };
  if (!paint.fill) return paint.stroke ? { isStroke: true } : { isStroke: true, caution: 'unpainted' };
  const area = paint.fillStated ? asArea(path) : path.closed ? path : undefined;
  if (area) return { isStroke: paint.stroke, area };
  return paint.fillStated ? { isStroke: true, caution: 'openFilled' } : { isStroke: true };
}

function sort(job: Job, paths: readonly Path[]): void {
  const { reading, element, around } = job;
  const paint = paintOf(around.style);
  const source = nameOf(element);
  const width = paint.stroke && paths.length > 0 ? strokeWidth(job) : undefined;
  const areas: Path[] = [];
  for (const path of paths) {
    const { isStroke, area, caution } = classify(path, paint);
    if (isStroke) reading.strokes.push(width === undefined ? { path, source } : { path, width, source });
    if (area) areas.push(area);
    if (caution) reading.cautions.add(caution, element);
  }
  const fillRule = around.style['fill-rule']?.toLowerCase() === 'evenodd' ? 'evenodd' : 'nonzero';
  if (areas.length > 0) reading.outlines.push({ paths: areas, fillRule, source });
  if (paint.server) reading.cautions.add('gradient', element);
  if (paint.stroke && paths.length > 0) noteLine(job);
}

const stated = (value: string | undefined): boolean => value !== undefined && value.toLowerCase() !== 'none';

function noteLine({ reading, element, around: { style } }: Job): void {
  const markers = [style.marker, style['marker-start'], style['marker-mid'], style['marker-end']];
  if (markers.some(stated)) reading.cautions.add('marker', element);
  if (stated(style['stroke-dasharray']) && /[1-9]/.test(style['stroke-dasharray'] ?? '')) reading.cautions.add('dash', element);
}

/** More than this between the least and the greatest scale, and the line's width visibly varies. */
const UNEVEN = 1.001;

/** Width of the drawn line in mm: one user unit unless stated, times the mean scale. Absent for a width of zero. */
function strokeWidth({ reading, element, declared, around }: Job): number | undefined {
  const found = readLength(reading, element, 'stroke-width', around.style['stroke-width'], around);
  if (found !== undefined && found < 0) reading.cautions.add('value', element, `stroke-width="${around.style['stroke-width'] ?? ''}"`);
  const units = found === undefined || found < 0 ? 1 : found;
  if (units === 0) reading.cautions.add('hairline', element);
  const width = units * lineScale(around.affine, declared);
  if (width > 2 * reading.limits.reach) refuseCoordinates(reading, element, `a line ${width} mm wide`);
  if (isUneven(around.affine) && !keepsWidth(declared)) reading.cautions.add('uneven', element);
  return width > 0 ? width : undefined;
}

const keepsWidth = (declared: Declared): boolean => declared.get('vector-effect')?.trim() === 'non-scaling-stroke';

/** `non-scaling-stroke` measures the line in px of the page, whatever the transform. */
const lineScale = (affine: Affine, declared: Declared): number =>
  keepsWidth(declared) ? MM_PER_PX : Math.sqrt(Math.abs(determinant(affine)));

function isUneven(affine: Affine): boolean {
  const most = largestStretch(affine);
  return most * most > UNEVEN * Math.abs(determinant(affine));
}
