import type { Point } from '../../geometry/index.ts';
import { type Picture, type PictureRefusal, refused } from './picture.ts';
import type { Shape } from './shapes.ts';
import type { PictureOptions } from './tracing.ts';

/** How pixels worked on become millimetres. */
export interface Scale {
  /** Size of such a pixel, mm. */
  readonly across: number;
  readonly down: number;
  /** Real width of the whole picture, mm. */
  readonly width: number;
  /** The place in mm, y up from the picture's lower left corner, of one in pixels from its upper left corner. */
  readonly place: (at: { readonly column: number; readonly row: number }) => Point;
}

interface Sized {
  readonly picture: Picture;
  /** Pixels of the picture that make one pixel worked on, across and down. */
  readonly factor: number;
  /** What the lettering is made of. */
  readonly lettering: readonly Shape[];
}

/** Pixels are wide and high alike unless the file says that they differ by more than this share. */
const LEAST_DIFFERENCE = 0.01;

/** The scale that makes picture or lettering as wide as stated, or else as the file's resolution says. */
export function scaleOf({ picture, factor, lettering }: Sized, { width, widthOf }: PictureOptions): Scale | PictureRefusal {
  const { columns, rows, resolution } = picture;
  if (width === 0 && resolution === undefined) return refused('the real width of the picture', 'none stated, and a file that states no resolution', 'Measure it, and state it in mm.');
  const across = width === 0 ? factor / resolution!.across : width / (widthOf === 'picture' ? columns / factor : extent(lettering));
  const ratio = resolution === undefined ? 1 : resolution.across / resolution.down;
  const down = Math.abs(ratio - 1) > LEAST_DIFFERENCE ? across * ratio : across;
  return { across, down, width: (across * columns) / factor, place: ({ column, row }) => ({ x: column * across, y: (rows / factor - row) * down }) };
}

/** Width of shapes together, in pixels. */
function extent(shapes: readonly Shape[]): number {
  let [least, most] = [Infinity, -Infinity];
  for (const { runs } of shapes) for (const { from, to } of runs) [least, most] = [Math.min(least, from), Math.max(most, to)];
  return most > least ? most - least : 1;
}
