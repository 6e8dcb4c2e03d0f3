import {
  type ArcSegment, type EllipticalArc, type Path, type Point, type Segment, distance, ellipseAngles, ellipticalArcToCubics,
} from '../geometry/index.ts';

/** One connected piece of a drawn path, in user units, y down. */
export interface Subpath {
  /** Without segments it is a dot. */
  readonly path: Path;
  /** False when a move is followed by nothing at all: such a place is not drawn. */
  readonly drawn: boolean;
}

/** How curves that are no cubics are kept. */
export interface BuildOptions {
  /** Circular arcs stay arcs; to be chosen only when the transform to come is a similarity. */
  readonly keepArcs: boolean;
  /** Greatest deviation of the cubics that replace an elliptical arc, in user units. */
  readonly tolerance: number;
}

const same = (a: Point, b: Point): boolean => a.x === b.x && a.y === b.y;

/** Floating-point dust of a chain of relative steps; real gaps in drawings are written with far fewer digits. */
const DUST = 1e-9;

function nearlySame(a: Point, b: Point): boolean {
  const size = Math.max(Math.abs(a.x), Math.abs(a.y), Math.abs(b.x), Math.abs(b.y));
  return Math.hypot(a.x - b.x, a.y - b.y) <= size * DUST;
}

/** Radii in chords beyond which the lesser arc is a line: it bulges by 1.25e-7 of its chord. */
const STRAIGHT = 1e6;

function isStraight(start: Point, { radiusX, radiusY, large, end }: EllipticalArc): boolean {
  if (radiusX === 0 || radiusY === 0) return true;
  return !large && Math.min(Math.abs(radiusX), Math.abs(radiusY)) > STRAIGHT * distance(start, end);
}

/** Radii in chords beyond which the lesser arc is rather kept as a cubic: its centre would lie out of all reach. */
const FAR = 1e3;

/** The arc as one of a circle, when both radii are equal. Growing angles are counter-clockwise by the formulas, whatever the screen shows. */
function circularArc(start: Point, arc: EllipticalArc): ArcSegment | undefined {
  if (Math.abs(arc.radiusX) !== Math.abs(arc.radiusY)) return undefined;
  const found = ellipseAngles(start, arc);
  if (!found || (!arc.large && found.radiusX > FAR * distance(start, arc.end))) return undefined;
  return { kind: 'arc', end: arc.end, centre: found.centre, clockwise: !arc.sweep };
}

/** Collects subpaths from drawing commands in absolute coordinates. Steps of no length leave no segment. */
export class PathBuilder {
  readonly subpaths: Subpath[] = [];
  /** Starts, ends and control points stated so far, those of steps without length included: a measure of the work. */
  points = 0;
  start: Point = { x: 0, y: 0 };
  current: Point = { x: 0, y: 0 };
  private segments: Segment[] = [];
  private drawn = false;
  private open = false;

  constructor(private readonly options: BuildOptions) {}

  moveTo(to: Point): void {
    this.finish();
    this.begin(to);
  }

  lineTo(end: Point): void {
    this.step(1);
    if (!same(this.current, end)) this.push({ kind: 'line', end });
  }

  cubicTo(control1: Point, control2: Point, end: Point): void {
    this.step(3);
    const still = same(this.current, control1) && same(this.current, control2) && same(this.current, end);
    if (!still) this.push({ kind: 'cubic', control1, control2, end });
  }

  /** The same curve as a cubic: control points two thirds of the way to the quadratic's own. */
  quadraticTo(control: Point, end: Point): void {
    const towards = (p: Point): Point => ({ x: p.x + (2 / 3) * (control.x - p.x), y: p.y + (2 / 3) * (control.y - p.y) });
    this.cubicTo(towards(this.current), towards(end), end);
  }

  arcTo(arc: EllipticalArc): void {
    this.step(2);
    if (same(this.current, arc.end)) return;
    if (isStraight(this.current, arc)) return this.lineTo(arc.end);
    const round = this.options.keepArcs ? circularArc(this.current, arc) : undefined;
    if (round) return this.push(round);
    for (const [, control1, control2, end] of ellipticalArcToCubics(this.current, arc, this.options.tolerance)) {
      this.push({ kind: 'cubic', control1, control2, end });
    }
  }

  /** Draws back to the start. What follows without a move begins there. */
  close(): void {
    this.step(1);
    const last = this.segments.at(-1);
    if (last && nearlySame(last.end, this.start)) this.segments[this.segments.length - 1] = { ...last, end: this.start };
    else if (last) this.push({ kind: 'line', end: this.start });
    this.finish(true);
    this.current = this.start;
  }

  /** Ends the piece in work; to be called once after the last command. */
  finish(closed = false): void {
    if (!this.open) return;
    const path = { start: this.start, segments: this.segments, closed: closed && this.segments.length > 0 };
    this.subpaths.push({ path, drawn: this.drawn });
    this.open = false;
  }

  private begin(at: Point): void {
    this.start = this.current = at;
    this.segments = [];
    this.drawn = false;
    this.open = true;
    this.points += 1;
  }

  private step(points: number): void {
    if (!this.open) this.begin(this.current);
    this.drawn = true;
    this.points += points;
  }

  private push(segment: Segment): void {
    this.segments.push(segment);
    this.current = segment.end;
  }
}
