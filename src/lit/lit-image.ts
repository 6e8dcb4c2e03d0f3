import { type Box, boxSize, growBox, loopsBounds, unionBoxes } from '../geometry/index.ts';
import { developed } from './develop.ts';
import { frameOf } from './frame.ts';
import { type PlacedImage, smaller } from './image.ts';
import { pngOf } from './png.ts';
import { lightOf } from './render.ts';
import type { LitSign, View } from './scene.ts';

export interface LitImageOptions {
  readonly sign: LitSign;
  readonly view: View;
  /** Of the wall around the sign, as a share of the sign's mean size. */
  readonly surround: number;
  /** Pixels across; fewer where the picture would hold more than the most pixels. */
  readonly columns: number;
}

/** Steps of the work, about: what is done is told by their count. */
const STEPS = 120;

/** The sign as it looks, as a PNG; undefined where there is nothing to see. */
export function litImage({ sign, view, surround, columns }: LitImageOptions, checkpoint: (done: number) => void): PlacedImage | undefined {
  const box = boxOf(sign);
  if (!box) return undefined;
  const { width, height } = boxSize(box);
  const frame = frameOf(growBox(box, Math.max(1, surround * Math.sqrt(width * height))), columns);
  let steps = 0;
  const pause = () => checkpoint(Math.min(1, ++steps / STEPS));
  const pixels = developed(lightOf(sign, view, frame, pause), view, pause);
  return { png: pngOf(pixels, pause), small: pngOf(smaller(pixels), pause), columns: frame.columns, rows: frame.rows, box: frame.box, says: saying(sign, view, box) };
}

function boxOf({ tubes, board = [], fixings }: LitSign): Box | undefined {
  const heads = fixings.map(({ centre: { x, y }, diameter }): Box => ({ minX: x - diameter / 2, minY: y - diameter / 2, maxX: x + diameter / 2, maxY: y + diameter / 2 }));
  return unionBoxes([loopsBounds(tubes), loopsBounds(board), ...heads]);
}

/** The picture in words. */
function saying({ lines, board }: LitSign, view: View, box: Box): string {
  const { width, height } = boxSize(box);
  const on = board ? `on a ${view.board} board before` : 'before';
  const hour = view.ambient < 0.25 ? 'at night' : view.ambient < 0.6 ? 'at dusk' : 'by day';
  const light = lines.length === 0 ? 'unlit' : `${lines.length} ${lines.length === 1 ? 'line' : 'lines'} of light, ${view.colourTemperature} K`;
  return `Sign of ${Math.round(width)} x ${Math.round(height)} mm ${hour}, ${light}, ${on} a ${view.wall} wall`;
}
