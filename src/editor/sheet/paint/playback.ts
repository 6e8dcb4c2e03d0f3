import type { Overlay } from '../../playback/overlay.ts';
import type { Relief } from '../../worker/protocol.ts';
import { toScreen } from '../view.ts';
import { type Ink, circle, drawImage, inPixels, polyline } from './ink.ts';

const images = new WeakMap<Relief, HTMLCanvasElement>();

function imageOf(relief: Relief): HTMLCanvasElement {
  const known = images.get(relief);
  if (known) return known;
  const image = document.createElement('canvas');
  image.width = relief.width;
  image.height = relief.height;
  image.getContext('2d')?.putImageData(new ImageData(relief.pixels, relief.width, relief.height), 0, 0);
  images.set(relief, image);
  return image;
}

/** The shaded sheet, scaled to where it lies. */
export function drawRelief(ink: Ink, relief: Relief): void {
  if (relief.width === 0 || relief.height === 0) return;
  drawImage(ink, imageOf(relief), relief.box);
}

/** The way already gone, and the cutter at its true diameter: filled while it is in the material, a ring above it. */
export function drawPlayback(ink: Ink, { trail, cutter }: Overlay): void {
  const { colours } = ink.palette;
  inPixels(ink);
  if (trail) {
    drawPairs(ink, trail.rapid, { colour: colours.grey, width: 1, dash: [6, 5] });
    drawPairs(ink, trail.cut, { colour: colours.petrol, width: 2, dash: [] });
  }
  if (!cutter) return;
  const at = toScreen(ink.frame, cutter);
  const radius = Math.max(2, (cutter.diameter / 2) * ink.frame.scale);
  circle(ink, at, radius, { pen: { colour: colours.ink, width: 2 }, ...(cutter.z < 0 && { fill: colours.petrol }) });
  const ground = cutter.z < 0 ? colours['on-petrol'] : colours.ink;
  polyline(ink, [{ x: at.x - 4, y: at.y }, { x: at.x + 4, y: at.y }], { colour: ground, width: 1 });
  polyline(ink, [{ x: at.x, y: at.y - 4 }, { x: at.x, y: at.y + 4 }], { colour: ground, width: 1 });
}

/** Lines from place to place, four numbers each: x, y where it begins and x, y where it ends. */
function drawPairs({ ctx, frame }: Ink, pairs: Float32Array, pen: { readonly colour: string; readonly width: number; readonly dash: number[] }): void {
  ctx.beginPath();
  for (let index = 0; index + 3 < pairs.length; index += 4) {
    const from = toScreen(frame, { x: pairs[index]!, y: pairs[index + 1]! });
    const to = toScreen(frame, { x: pairs[index + 2]!, y: pairs[index + 3]! });
    const goesOn = index > 0 && pairs[index] === pairs[index - 2] && pairs[index + 1] === pairs[index - 1];
    if (!goesOn) ctx.moveTo(from.x, from.y);
    ctx.lineTo(to.x, to.y);
  }
  ctx.strokeStyle = pen.colour;
  ctx.lineWidth = pen.width;
  ctx.lineCap = 'butt';
  ctx.lineJoin = 'bevel';
  ctx.setLineDash(pen.dash);
  ctx.stroke();
}
