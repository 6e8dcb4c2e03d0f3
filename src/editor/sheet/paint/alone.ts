import { LAYER_ORDER } from '../../../values/layer-kinds.ts';
import type { LayerKind, PictureLayer } from '../../../values/picture.ts';
import type { Scene } from '../drawing.ts';
import { type Alone, boxOnSheet, frameOnMachine, shareOf } from '../set-ups.ts';
import { isGround } from '../shapes.ts';
import { type Box, toScreen } from '../view.ts';
import { type Ink, type Pen, circle, inPixels, polyline, write } from './ink.ts';
import { drawLayers } from './layers.ts';
import { drawRelief } from './playback.ts';

/** What stands on the machine, on the sheet or beside it: drawn over what hangs over the bed. */
const STANDS: ReadonlySet<LayerKind> = new Set(['supports', 'hold-downs', 'pins', 'seams']);

interface Part {
  readonly layers: readonly PictureLayer[];
  readonly faint: boolean;
}

/** Draws one set-up as it lies on the machine: the sheet where it lies then, what earlier set-ups left in it, what this one does, and what holds it. */
export function drawAlone(ink: Ink, { editor: { picture }, sheet: { hidden, ground, around }, overlay: { relief } }: Scene, alone: Alone): void {
  const { inputs, outputs } = picture!;
  const all = [...ground, ...inputs, ...outputs.layers, ...around];
  const over = outputs.layers.length > 0;
  const parts: readonly Part[] = [{ layers: around, faint: false }, { layers: inputs, faint: over }, { layers: outputs.layers, faint: false }];
  drawLayers(ink, all.filter(isGround).slice(0, 1), hidden, false);
  if (relief) drawRelief(ink, relief);
  drawEarlier(ink, parts, hidden, alone);
  within(ink, { boxes: [alone.setUp.window] }, () => {
    for (const { layers, faint } of parts) drawLayers(ink, layers.map((layer) => shareOf(layer, alone).common), hidden, faint);
  });
  const own = parts.map(({ layers, faint }) => ({ faint, layers: layers.map((layer) => shareOf(layer, alone).own) }));
  for (const { layers, faint } of own) drawLayers(ink, layers.filter(({ kind }) => !STANDS.has(kind)), hidden, faint);
  drawMachine(ink, alone);
  const stands = own.flatMap(({ layers }) => layers.filter(({ kind }) => STANDS.has(kind)));
  for (const layer of stands.toSorted((a, b) => LAYER_ORDER.indexOf(a.kind) - LAYER_ORDER.indexOf(b.kind))) drawStanding(ink, layer, hidden, alone);
}

/** How grey becomes what earlier set-ups left, however much of it lies one over the other. */
const GREY = 0.65;

/** What earlier set-ups left, grey: what lies in their windows. */
function drawEarlier(ink: Ink, parts: readonly Part[], hidden: ReadonlySet<string>, alone: Alone): void {
  const { place, setUp, setUps: { list } } = alone;
  if (place === 0) return;
  const earlier = list.slice(0, place).map(({ window }) => window);
  within(ink, { boxes: earlier, but: setUp.window }, () => {
    for (const { layers } of parts) drawLayers({ ...ink, order: false }, layers.flatMap((layer) => [shareOf(layer, alone).common, shareOf(layer, alone).earlier]), hidden, false);
    inPixels(ink);
    ink.ctx.globalAlpha = GREY;
    ink.ctx.fillStyle = ink.palette.colours.paper;
    ink.ctx.fillRect(0, 0, ink.frame.width, ink.frame.height);
    ink.ctx.globalAlpha = 1;
  });
}

/** Draws within boxes of the sheet alone, and within those not in one of them. */
function within(ink: Ink, { boxes, but }: { readonly boxes: readonly Box[]; readonly but?: Box }, draw: () => void): void {
  const { ctx } = ink;
  inPixels(ink);
  ctx.save();
  ctx.beginPath();
  for (const box of boxes) rectangle(ink, box);
  ctx.clip();
  if (but) {
    ctx.beginPath();
    ctx.rect(0, 0, ink.frame.width, ink.frame.height);
    rectangle(ink, but);
    ctx.clip('evenodd');
  }
  draw();
  ctx.restore();
  inPixels(ink);
}

function rectangle({ ctx, frame }: Ink, { minX, minY, maxX, maxY }: Box): void {
  const [low, high] = [toScreen(frame, { x: minX, y: minY }), toScreen(frame, { x: maxX, y: maxY })];
  ctx.rect(low.x, high.y, high.x - low.x, low.y - high.y);
}

/** How faint what hangs over the bed becomes. */
const VEIL = 0.6;

/** Height of the reach on the screen, pixels, in which its name stands in nobody's way. */
const ROOM_TO_NAME = 200;

/** The bed, with all that hangs over its edges made faint; what the cutter reaches; and the programs' zero. */
function drawMachine(ink: Ink, alone: Alone): void {
  const { ctx, frame, palette: { colours } } = ink;
  const { bed, reach } = alone.setUps;
  if (bed) {
    ctx.beginPath();
    ctx.rect(0, 0, frame.width, frame.height);
    rectangle(ink, boxOnSheet(bed, alone));
    ctx.globalAlpha = VEIL;
    ctx.fillStyle = colours.desk;
    ctx.fill('evenodd');
    ctx.globalAlpha = 1;
    const { right, bottom } = drawBox(ink, boxOnSheet(bed, alone), { colour: colours.ink, width: 1.5 });
    write(ink, 'bed', { x: right - 26, y: bottom + 14 }, colours.ink);
  }
  const { right, top, bottom: foot } = drawBox(ink, boxOnSheet(reach, alone), { colour: colours.grey, width: 1.5, dash: [0.1, 5] });
  if (foot - top >= ROOM_TO_NAME) write(ink, 'reach', { x: right - 36, y: top + 14 }, colours.grey);
  drawZero(ink, alone);
}

/** Draws a box's outline; where it ends on the screen, pixels. */
function drawBox(ink: Ink, { minX, minY, maxX, maxY }: Box, pen: Pen): { readonly right: number; readonly top: number; readonly bottom: number } {
  const [low, high] = [toScreen(ink.frame, { x: minX, y: minY }), toScreen(ink.frame, { x: maxX, y: maxY })];
  polyline(ink, [low, { x: high.x, y: low.y }, high, { x: low.x, y: high.y }, low], pen);
  return { right: high.x, top: high.y, bottom: low.y };
}

/** Where the programs' X0 Y0 is on the machine: the same place in every set-up. */
function drawZero(ink: Ink, alone: Alone): void {
  const at = toScreen(frameOnMachine(ink.frame, alone), { x: 0, y: 0 });
  const { ink: colour, paper } = ink.palette.colours;
  const pen = { colour, width: 1.5 };
  circle(ink, at, 6, { fill: paper, pen });
  for (const [dx, dy] of [[1, 0], [0, 1]] as const) polyline(ink, [{ x: at.x - 11 * dx, y: at.y - 11 * dy }, { x: at.x + 11 * dx, y: at.y + 11 * dy }], pen);
  write(ink, 'X0 Y0', { x: at.x - 48, y: at.y + 18 }, colour);
}

/** A layer may lie on the machine rather than on the sheet. */
function drawStanding(ink: Ink, layer: PictureLayer, hidden: ReadonlySet<string>, alone: Alone): void {
  const fixed = layer.items.some((item) => item.fixed === true);
  drawLayers(fixed ? { ...ink, frame: frameOnMachine(ink.frame, alone) } : ink, [layer], hidden, false);
}
