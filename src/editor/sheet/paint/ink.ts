import type { PictureBox, PictureItem } from '../../../values/picture.ts';
import { placed } from '../deep.ts';
import type { Palette } from '../palette.ts';
import { shapeOf } from '../shapes.ts';
import { type Frame, type Point, overlaps, toScreen, visibleBox } from '../view.ts';

/** What painters draw with. */
export interface Ink {
  readonly ctx: CanvasRenderingContext2D;
  readonly palette: Palette;
  readonly frame: Frame;
  /** Device pixels per CSS pixel. */
  readonly ratio: number;
  /** Order and direction are drawn too. */
  readonly order: boolean;
  /** Pictures of pixels that have been decoded. */
  readonly images: ReadonlyMap<PictureItem, CanvasImageSource>;
  /** Surfaces are drawn by their edges only: the shaded sheet lies beneath. */
  readonly bare: boolean;
  /** The view is so near that places are told to the canvas in screen coordinates; see deep.ts. */
  readonly deep: boolean;
}

/** How a line is drawn; lengths in CSS pixels. */
export interface Pen {
  readonly colour: string;
  readonly width: number;
  readonly dash?: readonly number[];
  readonly cap?: CanvasLineCap;
}

const together = new WeakMap<readonly PictureItem[], Path2D>();
const single = new WeakMap<PictureItem, Path2D>();

function remembered<K extends object>(cache: WeakMap<K, Path2D>, key: K, make: () => string): Path2D {
  const known = cache.get(key);
  if (known) return known;
  const path = new Path2D(make());
  cache.set(key, path);
  return path;
}

/** Has the canvas measure in CSS pixels from its top left corner. */
export function inPixels({ ctx, ratio }: Ink): void {
  ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
}

/** Has the canvas measure in mm on the sheet, y up. */
function inMillimetres({ ctx, ratio, frame }: Ink): void {
  const origin = toScreen(frame, { x: 0, y: 0 });
  const scale = ratio * frame.scale;
  ctx.setTransform(scale, 0, 0, -scale, ratio * origin.x, ratio * origin.y);
}

/** Draws the lines of items; widths and dashes stay as they are on the screen, however near the view. */
export function strokeItems(ink: Ink, items: readonly PictureItem[], pen: Pen): void {
  const { ctx, frame, deep } = ink;
  const unit = deep ? 1 : 1 / frame.scale;
  const path = deep ? placedPath(ink, items) : remembered(together, items, () => items.map(({ d }) => d).join(' '));
  if (deep) inPixels(ink);
  else inMillimetres(ink);
  ctx.strokeStyle = pen.colour;
  ctx.lineWidth = pen.width * unit;
  ctx.lineCap = pen.cap ?? 'round';
  ctx.lineJoin = 'round';
  ctx.setLineDash((pen.dash ?? []).map((length) => length * unit));
  ctx.stroke(path);
  inPixels(ink);
}

/** Fills one item by its rule. */
export function fillItem(ink: Ink, item: PictureItem, colour: string): void {
  const { ctx, deep } = ink;
  const path = deep ? placedPath(ink, [item]) : remembered(single, item, () => item.d);
  if (deep) inPixels(ink);
  else inMillimetres(ink);
  ctx.fillStyle = colour;
  ctx.fill(path, item.fillRule ?? 'evenodd');
  inPixels(ink);
}

function placedPath({ frame }: Ink, items: readonly PictureItem[]): Path2D {
  const path = new Path2D();
  const sight = visibleBox(frame);
  for (const item of items) {
    const { chains, box } = shapeOf(item);
    if (!box || !overlaps(box, sight)) continue;
    for (const chain of chains) {
      placed(chain, frame).forEach(({ x, y }, index) => (index === 0 ? path.moveTo(x, y) : path.lineTo(x, y)));
      if (chain.closed) path.closePath();
    }
  }
  return path;
}

/** Draws pixels to fill a box on the sheet. */
export function drawImage({ ctx, frame }: Ink, image: CanvasImageSource, { minX, minY, maxX, maxY }: PictureBox): void {
  const corner = toScreen(frame, { x: minX, y: maxY });
  // Made smaller, lines of one pixel would break into dots.
  ctx.imageSmoothingQuality = 'high';
  ctx.drawImage(image, corner.x, corner.y, (maxX - minX) * frame.scale, (maxY - minY) * frame.scale);
}

/** Words on the canvas, with a rim of the ground's colour so that lines beneath do not cross them out. */
export function write({ ctx, palette }: Ink, text: string, at: Point, colour: string, size = 12): void {
  ctx.font = `${size}px ${palette.type}`;
  ctx.textAlign = 'left';
  ctx.textBaseline = 'alphabetic';
  ctx.lineJoin = 'round';
  ctx.setLineDash([]);
  ctx.lineWidth = 3;
  ctx.strokeStyle = palette.colours.paper;
  ctx.strokeText(text, at.x, at.y);
  ctx.fillStyle = colour;
  ctx.fillText(text, at.x, at.y);
}

/** A line along screen places, in CSS pixels. */
export function polyline({ ctx }: Ink, points: readonly Point[], pen: Pen): void {
  ctx.beginPath();
  points.forEach(({ x, y }, index) => (index === 0 ? ctx.moveTo(x, y) : ctx.lineTo(x, y)));
  applyPen(ctx, pen);
  ctx.stroke();
}

/** A circle on the screen, in CSS pixels. */
export function circle({ ctx }: Ink, at: Point, radius: number, look: { readonly pen?: Pen; readonly fill?: string }): void {
  ctx.beginPath();
  ctx.arc(at.x, at.y, radius, 0, 2 * Math.PI);
  if (look.fill !== undefined) {
    ctx.fillStyle = look.fill;
    ctx.fill();
  }
  if (look.pen) {
    applyPen(ctx, look.pen);
    ctx.stroke();
  }
}

function applyPen(ctx: CanvasRenderingContext2D, { colour, width, dash, cap }: Pen): void {
  ctx.strokeStyle = colour;
  ctx.lineWidth = width;
  ctx.lineCap = cap ?? 'round';
  ctx.setLineDash([...(dash ?? [])]);
}
