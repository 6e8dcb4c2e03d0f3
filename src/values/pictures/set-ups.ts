import { type Tiling, bedOf } from '../../machining/index.ts';
import type { PictureSetUps } from '../picture.ts';

/** A plan's set-ups one by one, on a bed that reaches so many mm beyond what the cutter reaches; undefined where there are not several. */
export function pictureSetUps(tiling: Tiling, bedMargin: number | undefined): PictureSetUps | undefined {
  if (tiling.tiles.length < 2) return undefined;
  return {
    list: tiling.tiles.map(({ name, shift, core, window }) => ({ name, shift, core, window })),
    reach: bedOf(tiling, 0), ...(bedMargin !== undefined && { bed: bedOf(tiling, bedMargin) }),
  };
}
