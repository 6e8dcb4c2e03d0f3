import type { Spot } from '../../state/editor.ts';
import { type Subject, handlesOf, placeIsSeen, placesOfHandle } from '../handles.ts';
import { lineOf, wholeBox } from '../grips.ts';
import { SIGN } from '../signs.ts';
import type { SheetState } from '../store.ts';
import { type Point, toScreen } from '../view.ts';
import { type Ink, circle, polyline } from './ink.ts';

/** Signs at the places of checks: a triangle for a caution, a cross for a failure. */
export function drawSigns(ink: Ink, signs: readonly Spot[]): void {
  for (const { at, status } of signs) {
    const place = toScreen(ink.frame, { x: at[0], y: at[1] });
    if (status === 'fail') drawCrossSign(ink, place);
    else drawTriangle(ink, place);
  }
}

function drawTriangle(ink: Ink, { x, y }: Point): void {
  const { ctx, palette: { colours } } = ink;
  ctx.beginPath();
  ctx.moveTo(x, y - SIGN);
  ctx.lineTo(x + SIGN, y + SIGN - 2);
  ctx.lineTo(x - SIGN, y + SIGN - 2);
  ctx.closePath();
  ctx.fillStyle = colours.paper;
  ctx.fill();
  ctx.strokeStyle = colours.caution;
  ctx.lineWidth = 2;
  ctx.lineJoin = 'round';
  ctx.setLineDash([]);
  ctx.stroke();
  polyline(ink, [{ x, y: y - 3 }, { x, y: y + 1 }], { colour: colours.caution, width: 2 });
  circle(ink, { x, y: y + 4 }, 1, { fill: colours.caution });
}

function drawCrossSign(ink: Ink, { x, y }: Point): void {
  const { colours } = ink.palette;
  circle(ink, { x, y }, SIGN, { fill: colours.paper, pen: { colour: colours.failed, width: 2 } });
  const pen = { colour: colours.failed, width: 2 };
  polyline(ink, [{ x: x - 3.5, y: y - 3.5 }, { x: x + 3.5, y: y + 3.5 }], pen);
  polyline(ink, [{ x: x - 3.5, y: y + 3.5 }, { x: x + 3.5, y: y - 3.5 }], pen);
}

/** Radius of the ring around a place one was sent to, CSS pixels. */
export const RING = 17;

/** The ring around a place, and the line that leads to the sentence about it. */
export function drawSpot(ink: Ink, { at, status }: Spot, label: Point | undefined): void {
  const { colours } = ink.palette;
  const colour = status === 'fail' ? colours.failed : status === 'caution' ? colours.caution : colours.ink;
  const place = toScreen(ink.frame, { x: at[0], y: at[1] });
  circle(ink, place, RING, { pen: { colour, width: 2 } });
  if (!label) return;
  const far = Math.hypot(label.x - place.x, label.y - place.y);
  if (far <= RING) return;
  const edge = { x: place.x + ((label.x - place.x) * RING) / far, y: place.y + ((label.y - place.y) * RING) / far };
  polyline(ink, [edge, label], { colour, width: 1 });
}

/** What can be taken hold of: a small square per place, filled where it is the chosen one; a frame around a chosen whole. */
export function drawGrips(ink: Ink, subject: Subject, { grip, hovered }: Pick<SheetState, 'grip' | 'hovered'>): void {
  const { colours } = ink.palette;
  for (const line of [grip, hovered]) drawLine(ink, subject, line);
  handlesOf(subject).forEach((handle, index) => placesOfHandle(handle, subject).forEach((place, number) => {
    if (!placeIsSeen(handle, subject, number)) return;
    const chosen = grip?.handle === index && grip.place === number;
    const under = hovered?.handle === index && hovered.place === number;
    drawSquare(ink, toScreen(ink.frame, place), under || chosen ? 6 : 4.5, chosen ? colours.petrol : colours.paper);
  }));
  for (const whole of [grip, hovered]) drawWhole(ink, subject, whole, whole === grip);
}

/** The line that is held runs along with the hand, before all that hangs on it is computed. */
function drawLine(ink: Ink, subject: Subject, grip: SheetState['grip']): void {
  const ends = grip && lineOf(subject, grip);
  if (ends) polyline(ink, ends.map((end) => toScreen(ink.frame, end)), { colour: ink.palette.colours.petrol, width: 2, cap: 'butt' });
}

function drawSquare({ ctx, palette: { colours } }: Ink, { x, y }: Point, half: number, fill: string): void {
  ctx.setLineDash([]);
  ctx.fillStyle = fill;
  ctx.strokeStyle = colours.petrol;
  ctx.lineWidth = 2;
  ctx.fillRect(x - half, y - half, 2 * half, 2 * half);
  ctx.strokeRect(x - half, y - half, 2 * half, 2 * half);
}

function drawWhole(ink: Ink, subject: Subject, whole: SheetState['grip'], chosen: boolean): void {
  const box = whole && wholeBox(subject, whole);
  if (!box) return;
  const [low, high] = [toScreen(ink.frame, { x: box.minX, y: box.minY }), toScreen(ink.frame, { x: box.maxX, y: box.maxY })];
  const corners = [low, { x: high.x, y: low.y }, high, { x: low.x, y: high.y }, low].map(({ x, y }, index) => ({ x: x + (index === 1 || index === 2 ? 6 : -6), y: y + (index < 2 || index === 4 ? 6 : -6) }));
  polyline(ink, corners, { colour: ink.palette.colours.petrol, width: chosen ? 2 : 1, dash: chosen ? [] : [5, 4] });
}

/** The tape, what it holds on to, and the cursor that keys move. */
export function drawTape(ink: Ink, { tape, snap, cursor, byKeys, tool, readings }: SheetState): void {
  const { colours } = ink.palette;
  const end = tape.to ?? (tool === 'tape' ? (snap?.at ?? cursor) : undefined);
  if (tape.from) drawStretch(ink, toScreen(ink.frame, tape.from), end && toScreen(ink.frame, end));
  if (snap) circle(ink, toScreen(ink.frame, snap.at), 7, { pen: { colour: colours.petrol, width: 2 } });
  for (const { at } of readings) circle(ink, toScreen(ink.frame, { x: at[0], y: at[1] }), 3, { fill: colours.petrol, pen: { colour: colours.paper, width: 1 } });
  if (cursor && byKeys && tool !== 'look') drawCrosshair(ink, toScreen(ink.frame, cursor));
}

function drawStretch(ink: Ink, from: Point, to: Point | undefined): void {
  const pen = { colour: ink.palette.colours.petrol, width: 2 };
  circle(ink, from, 4, { fill: ink.palette.colours.paper, pen });
  if (!to) return;
  polyline(ink, [from, to], pen);
  circle(ink, to, 4, { fill: ink.palette.colours.paper, pen });
}

function drawCrosshair(ink: Ink, { x, y }: Point): void {
  const pen = { colour: ink.palette.colours.petrol, width: 2 };
  for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1]] as const)
    polyline(ink, [{ x: x + 5 * dx, y: y + 5 * dy }, { x: x + 16 * dx, y: y + 16 * dy }], pen);
}
