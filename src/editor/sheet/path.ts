import type { Box, Point } from './view.ts';

/** One line or cubic of a drawn path, mm. A line has no control points. */
export interface Piece {
  readonly from: Point;
  readonly to: Point;
  readonly controls?: readonly [Point, Point];
}

/** Pieces in a chain, one beginning where the one before ended. */
export interface Chain {
  readonly pieces: readonly Piece[];
  readonly closed: boolean;
}

/** Arcs become cubics of at most this many degrees: over 22.5 the distance is below 7e-8 of the radius. */
const MOST_DEGREES = 22.5;

const TOKEN = /[MLCAZ]|[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi;
const NUMBERS: Readonly<Record<string, number>> = { M: 2, L: 2, C: 6, A: 7, Z: 0 };

interface Pen {
  at: Point;
  first: Point;
  pieces: Piece[];
  readonly chains: Chain[];
}

/** Reads path data of absolute commands M L C A Z. What is no such command ends the reading; what came before is kept. */
export function readPath(d: string): Chain[] {
  const tokens = d.match(TOKEN) ?? [];
  const pen: Pen = { at: { x: 0, y: 0 }, first: { x: 0, y: 0 }, pieces: [], chains: [] };
  let command = '';
  for (let index = 0; index < tokens.length;) {
    const token = tokens[index]!;
    if (/[MLCAZ]/.test(token)) {
      command = token;
      index += 1;
      if (command === 'Z') close(pen);
    }
    if (command === 'Z') continue;
    const count = NUMBERS[command] ?? 0;
    const values = tokens.slice(index, index + count).map(Number);
    if (count === 0 || values.length < count || !values.every(Number.isFinite)) break;
    draw(pen, command, values);
    // Numbers that go on after a move are lines.
    if (command === 'M') command = 'L';
    index += count;
  }
  finish(pen, false);
  return pen.chains;
}

function draw(pen: Pen, command: string, values: readonly number[]): void {
  const end = { x: values.at(-2)!, y: values.at(-1)! };
  if (command === 'M') {
    finish(pen, false);
    pen.first = end;
  } else if (command === 'L') {
    pen.pieces.push({ from: pen.at, to: end });
  } else if (command === 'C') {
    pen.pieces.push({ from: pen.at, to: end, controls: [{ x: values[0]!, y: values[1]! }, { x: values[2]!, y: values[3]! }] });
  } else {
    pen.pieces.push(...arcPieces(pen.at, end, values));
  }
  pen.at = end;
}

function close(pen: Pen): void {
  if (pen.at.x !== pen.first.x || pen.at.y !== pen.first.y) pen.pieces.push({ from: pen.at, to: pen.first });
  finish(pen, true);
  pen.at = pen.first;
}

function finish(pen: Pen, closed: boolean): void {
  if (pen.pieces.length > 0) pen.chains.push({ pieces: pen.pieces, closed });
  pen.pieces = [];
}

/** An elliptical arc between its ends as cubics (SVG 2, appendix B.2: conversion from endpoint to centre parameters). */
function arcPieces(from: Point, to: Point, [rx, ry, turn, large, sweep]: readonly number[]): Piece[] {
  const angle = ((turn ?? 0) * Math.PI) / 180;
  const turned = rotated({ x: (from.x - to.x) / 2, y: (from.y - to.y) / 2 }, -angle);
  const first = { x: Math.abs(rx ?? 0), y: Math.abs(ry ?? 0) };
  if (first.x === 0 || first.y === 0 || (turned.x === 0 && turned.y === 0)) return [{ from, to }];
  const excess = (turned.x / first.x) ** 2 + (turned.y / first.y) ** 2;
  const grown = Math.sqrt(Math.max(1, excess));
  const radius = { x: first.x * grown, y: first.y * grown };
  const factor = Math.sqrt(Math.max(0, 1 / Math.min(1, excess) - 1)) * ((large ?? 0) === (sweep ?? 0) ? -1 : 1);
  const centred = excess >= 1 ? { x: 0, y: 0 } : { x: (factor * radius.x * turned.y) / radius.y, y: (-factor * radius.y * turned.x) / radius.x };
  const offset = rotated(centred, angle);
  const centre = { x: offset.x + (from.x + to.x) / 2, y: offset.y + (from.y + to.y) / 2 };
  const start = Math.atan2((turned.y - centred.y) / radius.y, (turned.x - centred.x) / radius.x);
  const end = Math.atan2((-turned.y - centred.y) / radius.y, (-turned.x - centred.x) / radius.x);
  return ellipsePieces({ centre, radius, angle, start, sweep: turnBetween(start, end, sweep !== 0) }, from, to);
}

function turnBetween(start: number, end: number, positive: boolean): number {
  const turn = (end - start) % (2 * Math.PI);
  if (positive) return turn < 0 ? turn + 2 * Math.PI : turn;
  return turn > 0 ? turn - 2 * Math.PI : turn;
}

interface Ellipse {
  readonly centre: Point;
  readonly radius: Point;
  readonly angle: number;
  readonly start: number;
  readonly sweep: number;
}

function ellipsePieces({ centre, radius, angle, start, sweep }: Ellipse, from: Point, to: Point): Piece[] {
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / ((MOST_DEGREES * Math.PI) / 180) - 1e-9));
  const step = sweep / count;
  const reach = (4 / 3) * Math.tan(step / 4);
  const at = (x: number, y: number) => {
    const place = rotated({ x: x * radius.x, y: y * radius.y }, angle);
    return { x: place.x + centre.x, y: place.y + centre.y };
  };
  return Array.from({ length: count }, (_, index) => {
    const a = start + index * step;
    const b = a + step;
    return {
      from: index === 0 ? from : at(Math.cos(a), Math.sin(a)),
      to: index === count - 1 ? to : at(Math.cos(b), Math.sin(b)),
      controls: [at(Math.cos(a) - reach * Math.sin(a), Math.sin(a) + reach * Math.cos(a)), at(Math.cos(b) + reach * Math.sin(b), Math.sin(b) - reach * Math.cos(b))],
    };
  });
}

function rotated({ x, y }: Point, angle: number): Point {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}

/** The box around a piece's ends and control points: the piece lies within. */
export function pieceBox({ from, to, controls }: Piece): Box {
  const box = { minX: Math.min(from.x, to.x), minY: Math.min(from.y, to.y), maxX: Math.max(from.x, to.x), maxY: Math.max(from.y, to.y) };
  if (!controls) return box;
  const [a, b] = controls;
  return {
    minX: Math.min(box.minX, a.x, b.x), minY: Math.min(box.minY, a.y, b.y), maxX: Math.max(box.maxX, a.x, b.x), maxY: Math.max(box.maxY, a.y, b.y),
  };
}

/** The place at `t` from 0 to 1 on a piece. */
export function pieceAt({ from, to, controls }: Piece, t: number): Point {
  const s = 1 - t;
  if (!controls) return { x: s * from.x + t * to.x, y: s * from.y + t * to.y };
  const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return {
    x: a * from.x + b * controls[0].x + c * controls[1].x + d * to.x,
    y: a * from.y + b * controls[0].y + c * controls[1].y + d * to.y,
  };
}

/** Both halves of a piece. */
export function halves(piece: Piece): readonly [Piece, Piece] {
  const { from, to, controls } = piece;
  const centre = pieceAt(piece, 0.5);
  if (!controls) return [{ from, to: centre }, { from: centre, to }];
  const mid = (p: Point, q: Point) => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const [a, b, c] = [mid(from, controls[0]), mid(controls[0], controls[1]), mid(controls[1], to)];
  return [{ from, to: centre, controls: [a, mid(a, b)] }, { from: centre, to, controls: [mid(b, c), c] }];
}
