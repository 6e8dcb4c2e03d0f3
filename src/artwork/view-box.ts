import { type Affine } from '../geometry/index.ts';
import { readNumbers } from './scanner.ts';

/** The rectangle of user space that fills a viewport. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Four numbers, neither size negative; nothing otherwise. A size of zero is allowed and draws nothing. */
export function parseViewBox(text: string): ViewBox | undefined {
  const { numbers, complete } = readNumbers(text);
  const [x, y, width, height] = numbers;
  if (!complete || numbers.length !== 4 || !numbers.every(Number.isFinite)) return undefined;
  if (x === undefined || y === undefined || width === undefined || height === undefined) return undefined;
  return width < 0 || height < 0 ? undefined : { x, y, width, height };
}

const RATIO = /^\s*(?:defer\s+)?(?:(none)|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?\s*$/;
const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/** How a view box is fitted into a viewport of another shape. */
export interface AspectRatio {
  /** Share of the slack put before the view box, 0 to 1, along x and y; absent when it is stretched instead. */
  readonly align?: { readonly x: number; readonly y: number };
  readonly slice: boolean;
}

/** Reads `preserveAspectRatio`; nothing when it is malformed. */
export function parseAspectRatio(text: string): AspectRatio | undefined {
  const found = RATIO.exec(text);
  if (!found) return undefined;
  const [, none, x = '', y = '', mode] = found;
  const slice = mode === 'slice';
  return none ? { slice } : { align: { x: SHARE[x] ?? 0, y: SHARE[y] ?? 0 }, slice };
}

export const DEFAULT_ASPECT_RATIO: AspectRatio = { align: { x: 0.5, y: 0.5 }, slice: false };

/** From view box to viewport coordinates (SVG 2, section 8.2, "equivalent transform of an SVG viewport"). Sizes positive. */
export function viewBoxTransform(box: ViewBox, viewport: ViewBox, { align, slice }: AspectRatio): Affine {
  let scaleX = viewport.width / box.width;
  let scaleY = viewport.height / box.height;
  if (align) scaleX = scaleY = slice ? Math.max(scaleX, scaleY) : Math.min(scaleX, scaleY);
  const slackX = viewport.width - box.width * scaleX;
  const slackY = viewport.height - box.height * scaleY;
  return [scaleX, 0, 0, scaleY,
    viewport.x - box.x * scaleX + slackX * (align?.x ?? 0),
    viewport.y - box.y * scaleY + slackY * (align?.y ?? 0)];
}
