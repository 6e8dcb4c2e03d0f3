import { type Tick, ticks } from '../ticks.ts';
import { type Point, RULER, toScreen, visibleBox } from '../view.ts';
import { type Ink, polyline } from './ink.ts';

const LENGTHS: Readonly<Record<Tick['kind'], number>> = { labelled: 11, half: 7, small: 4 };

/** Pixels the longest label takes, with its unit: the last one that has this room carries the unit. */
const LABEL_ROOM = 68;

/** Millimetre rulers along the top and the left, with marks at the cursor. */
export function drawRulers(ink: Ink, cursor: Point | undefined): void {
  const { ctx, frame, palette } = ink;
  ctx.fillStyle = palette.colours.desk;
  ctx.fillRect(0, 0, frame.width, RULER);
  ctx.fillRect(0, 0, RULER, frame.height);
  drawTop(ink);
  drawLeft(ink);
  if (cursor) drawMarks(ink, cursor);
  drawCorner(ink);
}

function drawTop(ink: Ink): void {
  const { ctx, frame } = ink;
  const sight = visibleBox(frame);
  const list = ticks(sight.minX, sight.maxX, frame.scale);
  lines(ink, list, (tick) => {
    const x = toScreen(frame, { x: tick.value, y: 0 }).x;
    return [{ x, y: RULER }, { x, y: RULER - LENGTHS[tick.kind] }];
  });
  prepareLabels(ink);
  const place = (tick: Tick) => toScreen(frame, { x: tick.value, y: 0 }).x + 3;
  const last = list.findLast((tick) => tick.label !== undefined && place(tick) < frame.width - LABEL_ROOM);
  for (const tick of list) if (tick.label !== undefined) ctx.fillText(withUnit(tick, last), place(tick), 11);
}

function drawLeft(ink: Ink): void {
  const { ctx, frame } = ink;
  const sight = visibleBox(frame);
  const list = ticks(sight.minY, sight.maxY, frame.scale);
  lines(ink, list, (tick) => {
    const y = toScreen(frame, { x: 0, y: tick.value }).y;
    return [{ x: RULER, y }, { x: RULER - LENGTHS[tick.kind], y }];
  });
  prepareLabels(ink);
  const place = (tick: Tick) => toScreen(frame, { x: 0, y: tick.value }).y - 3;
  const last = list.findLast((tick) => tick.label !== undefined && place(tick) > RULER + LABEL_ROOM);
  for (const tick of list) if (tick.label !== undefined) writeUpwards(ctx, withUnit(tick, last), place(tick));
}

/** The unit stands with the last label: the ruler is read towards it. */
const withUnit = (tick: Tick, last: Tick | undefined): string => (tick === last ? `${tick.label ?? ''} mm` : tick.label ?? '');

function writeUpwards(ctx: CanvasRenderingContext2D, text: string, y: number): void {
  ctx.save();
  ctx.translate(11, y);
  ctx.rotate(-Math.PI / 2);
  ctx.fillText(text, 0, 0);
  ctx.restore();
}

function prepareLabels({ ctx, palette }: Ink): void {
  ctx.font = `11px ${palette.type}`;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'alphabetic';
  ctx.fillStyle = palette.colours.grey;
}

function lines({ ctx, palette }: Ink, list: readonly Tick[], ends: (tick: Tick) => readonly [Point, Point]): void {
  ctx.beginPath();
  for (const tick of list) {
    const [from, to] = ends(tick);
    ctx.moveTo(from.x, from.y);
    ctx.lineTo(to.x, to.y);
  }
  ctx.strokeStyle = palette.colours.edge;
  ctx.lineWidth = 1;
  ctx.setLineDash([]);
  ctx.stroke();
}

/** Where the cursor is on both rulers. */
function drawMarks(ink: Ink, cursor: Point): void {
  const { x, y } = toScreen(ink.frame, cursor);
  const pen = { colour: ink.palette.colours.petrol, width: 2 };
  if (x > RULER) polyline(ink, [{ x, y: 0 }, { x, y: RULER }], pen);
  if (y > RULER) polyline(ink, [{ x: 0, y }, { x: RULER, y }], pen);
}

function drawCorner(ink: Ink): void {
  const { ctx, frame, palette } = ink;
  ctx.fillStyle = palette.colours.desk;
  ctx.fillRect(0, 0, RULER, RULER);
  const pen = { colour: palette.colours.line, width: 1 };
  polyline(ink, [{ x: 0, y: RULER + 0.5 }, { x: frame.width, y: RULER + 0.5 }], pen);
  polyline(ink, [{ x: RULER + 0.5, y: 0 }, { x: RULER + 0.5, y: frame.height }], pen);
}
