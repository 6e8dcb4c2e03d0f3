import { PEG_AWAY } from '../hand/pegs.ts';
import { type Target, nextKind, offered, sameTarget, screenPlace } from '../hand/targets.ts';
import { piecePoints } from '../hand/pieces.ts';
import { type Way, kindOfPlace } from '../hand/ways.ts';
import { distance } from '../near.ts';
import type { SheetState } from '../store.ts';
import { type Point, toScreen, visibleBox } from '../view.ts';
import { type Ink, circle, polyline, write } from './ink.ts';

type Hand = Pick<SheetState, 'picked' | 'target' | 'aimed' | 'pull'>;

/** What can be taken hold of for the act at hand, what is taken, and what is under way. */
export function drawHand(ink: Ink, way: Way, hand: Hand): void {
  const kind = nextKind(way, hand.picked);
  const marked = [hand.target, hand.aimed];
  for (const one of marked) if (one?.kind === 'arm') drawArm(ink, way, one);
  if (kind === 'junction') drawJunctions(ink, way, hand);
  else if (kind === 'arm') drawPegs(ink, way, offered(way, hand.picked), marked);
  else if (kind === 'end') for (const end of inSight(ink, offered(way, hand.picked))) drawPeg(ink, screenPlace(way, end, ink.frame), isMarked(end, marked));
  if (kind === 'piece') for (const one of marked) if (one?.kind === 'stroke') drawPiece(ink, piecePoints(way, one.stroke, one.at));
  drawPull(ink, way, hand);
  drawTaken(ink, way, hand);
  if (hand.target) drawStoodOn(ink, screenPlace(way, hand.target, ink.frame));
  if (kind === 'stroke' && hand.aimed) circle(ink, toScreen(ink.frame, hand.aimed.at), 6, { fill: ink.palette.colours.paper, pen: { colour: ink.palette.colours.petrol, width: 2 } });
}

const isMarked = (target: Target, marked: readonly (Target | undefined)[]): boolean => marked.some((one) => one && sameTarget(one, target));

function inSight({ frame }: Ink, targets: readonly Target[]): readonly Target[] {
  const { minX, minY, maxX, maxY } = visibleBox(frame, PEG_AWAY);
  return targets.filter(({ at: { x, y } }) => x >= minX && x <= maxX && y >= minY && y <= maxY);
}

/** Radius of a junction's ring on the screen at least, CSS pixels. */
const RING = 7;
/** Pixels between junctions from which on the pegs of all are drawn: nearer, they would run into one another. */
const ROOM = 3 * PEG_AWAY;

/** Every junction as a ring; its arms as pegs where there is room, or where it is pointed at. */
function drawJunctions(ink: Ink, way: Way, { picked, target, aimed }: Hand): void {
  const seen = inSight(ink, offered(way, picked));
  const places = seen.map(({ at }) => toScreen(ink.frame, at));
  const pen = { colour: ink.palette.colours.petrol, width: 1.5 };
  seen.forEach((one, i) => {
    if (one.kind !== 'junction') return;
    const radius = (way.map.junctions[one.junction]?.radius ?? 0) * ink.frame.scale;
    circle(ink, places[i]!, Math.max(RING, radius), { pen });
    const pointedAt = [target, aimed].some((other) => other && 'junction' in other && other.junction === one.junction);
    const alone = places.every((place, j) => j === i || distance(place, places[i]!) >= ROOM);
    if (kindOfPlace(way, picked.length + 1) === 'arm' && (alone || pointedAt)) drawArms(ink, way, one, [target, aimed]);
  });
}

/** How a junction's arms are joined now, and a peg for each. */
function drawArms(ink: Ink, way: Way, junction: Extract<Target, { kind: 'junction' }>, marked: readonly (Target | undefined)[]): void {
  const arms = offered({ ...way, on: ['arm'] }, [junction]);
  drawPairs(ink, way, junction.junction);
  drawPegs(ink, way, arms, marked);
}

function drawPairs(ink: Ink, way: Way, index: number): void {
  const junction = way.map.junctions[index];
  const centre = junction && toScreen(ink.frame, junction.at);
  for (const [a, b] of junction?.pairs ?? []) {
    const [from, to] = [a, b].map((arm) => screenPlace(way, { kind: 'arm', junction: index, arm, at: junction!.arms[arm]!.at }, ink.frame));
    drawBend(ink, from!, centre!, to!);
  }
}

/** A line from one peg to another that bends by the junction's middle. */
function drawBend({ ctx, palette: { colours } }: Ink, from: Point, by: Point, to: Point): void {
  for (const [colour, width] of [[colours.paper, 5], [colours.petrol, 2]] as const) {
    ctx.beginPath();
    ctx.moveTo(from.x, from.y);
    ctx.quadraticCurveTo(by.x, by.y, to.x, to.y);
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    ctx.setLineDash([]);
    ctx.stroke();
  }
}

function drawPegs(ink: Ink, way: Way, arms: readonly Target[], marked: readonly (Target | undefined)[]): void {
  for (const arm of arms) drawPeg(ink, screenPlace(way, arm, ink.frame), isMarked(arm, marked));
}

function drawPeg({ ctx, palette: { colours } }: Ink, { x, y }: Point, marked: boolean): void {
  const half = marked ? 6 : 4.5;
  ctx.setLineDash([]);
  ctx.fillStyle = colours.paper;
  ctx.strokeStyle = colours.petrol;
  ctx.lineWidth = marked ? 3 : 2;
  ctx.fillRect(x - half, y - half, 2 * half, 2 * half);
  ctx.strokeRect(x - half, y - half, 2 * half, 2 * half);
}

/** The piece that the act would be done to: a broad line with the stroke in its middle. */
function drawPiece(ink: Ink, piece: readonly (readonly Point[])[]): void {
  const { colours } = ink.palette;
  for (const line of piece) {
    const points = line.map((at) => toScreen(ink.frame, at));
    polyline(ink, points, { colour: colours.petrol, width: 10 });
    polyline(ink, points, { colour: colours.paper, width: 6 });
    polyline(ink, points, { colour: colours.petrol, width: 2, dash: [6, 4], cap: 'butt' });
  }
}

/** Along which stroke an arm goes: pegs of arms that lie side by side are turned apart. */
function drawArm(ink: Ink, way: Way, { junction, arm, at }: Extract<Target, { kind: 'arm' }>): void {
  const stroke = way.map.junctions[junction]?.arms[arm]?.stroke;
  if (stroke !== undefined) drawPiece(ink, piecePoints(way, stroke, at));
}

/** The line along which something is pulled or goes on: dashed, since it is not there yet. */
function drawPull(ink: Ink, way: Way, { picked, target, aimed, pull }: Hand): void {
  const { colours } = ink.palette;
  const screen = (at: Point) => toScreen(ink.frame, at);
  const ahead = aimed ?? target;
  const line = pull
    ? [screen(pull.from), pull.onto ? screenPlace(way, pull.onto, ink.frame) : screen(pull.to)]
    : [...picked.filter(({ kind }) => kind !== 'junction').map((one) => screenPlace(way, one, ink.frame)), ...(ahead && picked.length > 0 ? [screenPlace(way, ahead, ink.frame)] : [])];
  if (line.length < 2) return;
  polyline(ink, line, { colour: colours.paper, width: 5 });
  polyline(ink, line, { colour: colours.petrol, width: 2, dash: [6, 4], cap: 'butt' });
  if (pull) circle(ink, line[1]!, 5, { fill: colours.paper, pen: { colour: colours.petrol, width: 2 } });
}

/** Places taken already are filled. */
function drawTaken(ink: Ink, way: Way, { picked, pull }: Hand): void {
  const { colours } = ink.palette;
  for (const one of picked) circle(ink, screenPlace(way, one, ink.frame), 6, { fill: colours.petrol, pen: { colour: colours.paper, width: 2 } });
  if (pull && picked.length === 0) circle(ink, toScreen(ink.frame, pull.from), 4, { fill: colours.petrol, pen: { colour: colours.paper, width: 1 } });
}

/** What keys stand on: a ring with a gap of paper around it, as the focus has elsewhere. */
function drawStoodOn(ink: Ink, at: Point): void {
  const { colours } = ink.palette;
  circle(ink, at, 11, { pen: { colour: colours.paper, width: 5 } });
  circle(ink, at, 11, { pen: { colour: colours.petrol, width: 2 } });
}

/** The places of an edit that is pointed at in its list, in their order. */
export function drawPointed(ink: Ink, places: readonly Point[]): void {
  const { colours } = ink.palette;
  const line = places.map((place) => toScreen(ink.frame, place));
  if (line.length > 1) polyline(ink, line, { colour: colours.paper, width: 5 });
  if (line.length > 1) polyline(ink, line, { colour: colours.petrol, width: 2, dash: [6, 4], cap: 'butt' });
  line.forEach((at, i) => {
    circle(ink, at, 8, { pen: { colour: colours.paper, width: 5 } });
    circle(ink, at, 8, { pen: { colour: colours.petrol, width: 2 } });
    if (line.length > 1) write(ink, String(i + 1), { x: at.x + 11, y: at.y - 6 }, colours.ink);
  });
}
