import type { LayerKind, PictureItem, PictureLayer } from '../../../values/picture.ts';
import { ringOf, ringRadius } from '../doubts.ts';
import { shapeOf } from '../shapes.ts';
import { type Point, RULER, middleOf, overlaps, toScreen, visibleBox } from '../view.ts';
import { type Ink, circle, drawImage, fillItem, polyline, strokeItems, write } from './ink.ts';

type Painter = (ink: Ink, layer: PictureLayer) => void;

/** How each kind of layer is drawn. Lengths are CSS pixels; only grooves and outlines have true widths, being regions. */
const PAINTERS: Readonly<Record<LayerKind, Painter>> = {
  sheet: (ink, { items }) => {
    for (const item of items) fillItem(ink, item, ink.palette.colours.paper);
    strokeItems(ink, items, { colour: ink.palette.colours.edge, width: 1 });
  },
  outlines: (ink, { items }) => {
    if (!ink.bare) fillEach(ink, items, ink.palette.colours.grey, 0.55);
    strokeItems(ink, items, { colour: ink.palette.colours.grey, width: 1 });
  },
  strokes: (ink, layer) => {
    strokeItems(ink, layer.items, { colour: ink.palette.colours.amber, width: 2 });
    drawOrder(ink, layer, ink.palette.colours.amber);
  },
  region: (ink, { items }) => strokeItems(ink, items, { colour: ink.palette.colours.ink, width: 1.25 }),
  groove: (ink, { items }) => {
    if (ink.bare) strokeItems(ink, items, { colour: ink.palette.colours.groove, width: 1.25 });
    else fillEach(ink, items, ink.palette.colours.groove, 1);
  },
  holes: drawHoles,
  dowels: drawHoles,
  tabs: (ink, { items }) => {
    if (!ink.bare) fillEach(ink, items, ink.palette.colours.ink, 0.4);
    strokeItems(ink, items, { colour: ink.palette.colours.ink, width: 3 });
  },
  // On the shaded sheet what was cut is seen, and the playback draws the way under way.
  passes: (ink, layer) => {
    if (ink.bare) return;
    strokeItems(ink, layer.items, { colour: ink.palette.colours.ink, width: 1 });
    drawOrder(ink, layer, ink.palette.colours.ink);
  },
  rapids: (ink, { items }) => {
    if (!ink.bare) strokeItems(ink, items, { colour: ink.palette.colours.grey, width: 1, dash: [6, 5], cap: 'butt' });
  },
  seams: (ink, { items }) => {
    strokeItems(ink, items, { colour: ink.palette.colours.petrol, width: 1.5, dash: [8, 5], cap: 'butt' });
    for (const item of items) writeBeside(ink, item, ink.palette.colours.petrol);
  },
  tiles: (ink, { items }) => {
    strokeItems(ink, items, { colour: ink.palette.colours.line, width: 1 });
    for (const item of items) writeInside(ink, item);
  },
  pins: (ink, { items }) => {
    for (const item of items) drawPin(ink, item);
  },
  'hold-downs': (ink, { items }) => {
    if (!ink.bare) fillEach(ink, items, ink.palette.colours.caution, 0.12);
    strokeItems(ink, items, { colour: ink.palette.colours.caution, width: 1.25, dash: [5, 3], cap: 'butt' });
    for (const item of items) drawHead(ink, item);
  },
  supports: (ink, { items }) => {
    strokeItems(ink, items, { colour: ink.palette.colours.edge, width: 7, cap: 'butt' });
    strokeItems(ink, items, { colour: ink.palette.colours.desk, width: 4, cap: 'butt' });
    for (const item of items) writeBeside(ink, item, ink.palette.colours.ink);
  },
  lit: (ink, { items }) => {
    for (const item of items) strokeItems(ink, [item], { colour: ink.palette.colours.amber, width: 3, dash: runDash(item), cap: 'butt' });
    for (const item of items) writeAtStart(ink, item);
  },
  unlit: (ink, { items }) => strokeItems(ink, items, { colour: ink.palette.colours.grey, width: 1.5, dash: [2, 3], cap: 'butt' }),
  wires: (ink, { items }) => {
    for (const item of items) strokeItems(ink, [item], { colour: ink.palette.colours.ink, width: 1.25, dash: runDash(item), cap: 'butt' });
    for (const item of items) writeAtStart(ink, item);
  },
  image: (ink, { items }) => {
    for (const item of items) if (ink.images.has(item) && item.image) drawImage(ink, ink.images.get(item)!, item.image.box);
    strokeItems(ink, items, { colour: ink.palette.colours.edge, width: 2 });
  },
  junctions: (ink, { items }) => strokeItems(ink, items, { colour: ink.palette.colours.grey, width: 1.75 }),
  doubts: (ink, { items }) => {
    for (const item of items) drawDoubt(ink, item);
  },
  travel: (ink, { items }) => strokeItems(ink, items, { colour: ink.palette.colours.grey, width: 1.5, dash: [0.1, 5] }),
};

/** Draws layers in their order; `faint` for those that lie beneath. The sheet itself is never faint: it is the ground; nor is how it is divided. */
export function drawLayers(ink: Ink, layers: readonly PictureLayer[], hidden: ReadonlySet<string>, faint: boolean): void {
  for (const layer of layers) {
    if (hidden.has(layer.name) || layer.items.length === 0) continue;
    ink.ctx.globalAlpha = faint && !NEVER_FAINT.has(layer.kind) ? FAINT : 1;
    PAINTERS[layer.kind](faint ? { ...ink, order: false } : ink, layer);
  }
  ink.ctx.globalAlpha = 1;
}

const FAINT = 0.4;
const NEVER_FAINT: ReadonlySet<LayerKind> = new Set(['sheet', 'tiles', 'seams']);

function drawHoles(ink: Ink, { items }: PictureLayer): void {
  strokeItems(ink, items, { colour: ink.palette.colours.ink, width: 1.25 });
  for (const item of items) drawCross(ink, item);
}

function fillEach(ink: Ink, items: readonly PictureItem[], colour: string, alpha: number): void {
  const before = ink.ctx.globalAlpha;
  ink.ctx.globalAlpha = before * alpha;
  for (const item of items) fillItem(ink, item, colour);
  ink.ctx.globalAlpha = before;
}

/** A cross at a hole's centre, as on a drawing: over its edge where the hole is small on the screen. */
function drawCross(ink: Ink, item: PictureItem): void {
  const { box } = shapeOf(item);
  if (!box || !overlaps(box, visibleBox(ink.frame))) return;
  const { x, y } = toScreen(ink.frame, middleOf(box));
  const arm = Math.min(8, Math.max(3, ((box.maxX - box.minX) / 2) * ink.frame.scale + 2));
  const pen = { colour: ink.palette.colours.ink, width: 1 };
  polyline(ink, [{ x: x - arm, y }, { x: x + arm, y }], pen);
  polyline(ink, [{ x, y: y - arm }, { x, y: y + arm }], pen);
}

/** A dashed ring with a question mark, never too small to be seen. */
function drawDoubt(ink: Ink, item: PictureItem): void {
  const ring = ringOf(item);
  if (!ring) return;
  const at = toScreen(ink.frame, ring.at);
  const radius = ringRadius(ring.radius, ink.frame);
  const { caution } = ink.palette.colours;
  circle(ink, at, radius, { pen: { colour: caution, width: 1.5, dash: [4, 3], cap: 'butt' } });
  write(ink, '?', { x: at.x + radius * Math.SQRT1_2 + 2, y: at.y - radius * Math.SQRT1_2 }, caution);
}

/** A pin from above: a dot in a ring, never too small to be seen, and which one it is. */
function drawPin(ink: Ink, item: PictureItem): void {
  const { box } = shapeOf(item);
  if (!box) return;
  const at = toScreen(ink.frame, middleOf(box));
  const radius = Math.max(5, ((box.maxX - box.minX) / 2) * ink.frame.scale);
  const { ink: colour, paper } = ink.palette.colours;
  circle(ink, at, radius, { fill: paper, pen: { colour, width: 1.5 } });
  circle(ink, at, 2, { fill: colour });
  if (item.label !== undefined) write(ink, item.label, { x: at.x + radius + 4, y: at.y - radius }, colour);
}

/** Runs beside one another are told apart by their dashes; the first is drawn through, and so is what belongs to none. */
const DASHES: readonly (readonly number[])[] = [[], [14, 4], [6, 3], [14, 3, 3, 3], [3, 2]];
const runDash = ({ run = 0 }: PictureItem): readonly number[] => DASHES[run % DASHES.length]!;

/** An item's label beside the place where it begins. */
function writeAtStart(ink: Ink, { label, start }: PictureItem): void {
  if (label === undefined || !start) return;
  const at = toScreen(ink.frame, { x: start.at[0], y: start.at[1] });
  write(ink, label, beside(at, { x: start.along[0], y: -start.along[1] }), ink.palette.colours.ink);
}

/** The head of a screw or clamp in the middle of its disc. */
function drawHead(ink: Ink, item: PictureItem): void {
  const { box } = shapeOf(item);
  if (box) circle(ink, toScreen(ink.frame, middleOf(box)), 3, { fill: ink.palette.colours.caution });
}

/** An item's label in its upper left corner, where there is room for it. */
function writeInside(ink: Ink, item: PictureItem): void {
  const { box } = shapeOf(item);
  if (item.label === undefined || !box || (box.maxX - box.minX) * ink.frame.scale < LABEL_ROOM) return;
  const corner = toScreen(ink.frame, { x: box.minX, y: box.maxY });
  write(ink, item.label, { x: Math.max(corner.x, RULER) + 8, y: Math.max(corner.y, RULER) + 18 }, ink.palette.colours.grey);
}

const LABEL_ROOM = 72;

/** On the screen an item is at least so long, in pixels, for its label to be written beside it. */
const LONG_ENOUGH_TO_NAME = 150;

/** An item's label at the lower end of it. */
function writeBeside(ink: Ink, item: PictureItem, colour: string): void {
  const { box } = shapeOf(item);
  const words = item.label ?? item.title;
  if (words === undefined || !box || Math.max(box.maxX - box.minX, box.maxY - box.minY) * ink.frame.scale < LONG_ENOUGH_TO_NAME) return;
  const foot = toScreen(ink.frame, { x: box.minX, y: box.minY });
  write(ink, words, { x: foot.x + 6, y: Math.min(foot.y, ink.frame.height) - 8 }, colour);
}

/** On the screen an item is at least so long, in pixels, for its order and direction to be drawn. */
const LONG_ENOUGH = 40;
/** Numbers keep this distance, so that they stay readable where many begin at one place. */
const APART = 22;

/** Where each item begins, which way it goes, and the how manieth it is. */
function drawOrder(ink: Ink, { items }: PictureLayer, colour: string): void {
  if (!ink.order) return;
  const sight = visibleBox(ink.frame);
  const written: Point[] = [];
  items.forEach((item, index) => {
    const { box } = shapeOf(item);
    if (!item.start || !box || !overlaps(box, sight)) return;
    if (Math.max(box.maxX - box.minX, box.maxY - box.minY) * ink.frame.scale < LONG_ENOUGH) return;
    const at = toScreen(ink.frame, { x: item.start.at[0], y: item.start.at[1] });
    const along = { x: item.start.along[0], y: -item.start.along[1] };
    circle(ink, at, 3.5, { fill: colour });
    drawArrow(ink, at, along, colour);
    if (written.some(({ x, y }) => Math.hypot(x - at.x, y - at.y) < APART)) return;
    written.push(at);
    write(ink, String(index + 1), beside(at, along), ink.palette.colours.ink);
  });
}

/** A head a little way along, its point in the direction the item goes. */
function drawArrow({ ctx }: Ink, at: Point, { x, y }: Point, colour: string): void {
  const tip = { x: at.x + 19 * x, y: at.y + 19 * y };
  ctx.beginPath();
  ctx.moveTo(tip.x, tip.y);
  ctx.lineTo(tip.x - 9 * x - 4.5 * y, tip.y - 9 * y + 4.5 * x);
  ctx.lineTo(tip.x - 9 * x + 4.5 * y, tip.y - 9 * y - 4.5 * x);
  ctx.closePath();
  ctx.fillStyle = colour;
  ctx.fill();
}

/** Where the number goes: to the side of the direction, away from the line. */
const beside = (at: Point, { x, y }: Point): Point => ({ x: at.x - 10 * x + 9 * Math.abs(y) - 3, y: at.y - 10 * y - 9 * Math.abs(x) + 4 });
