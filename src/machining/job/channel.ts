import type { Path } from '../../geometry/path.ts';
import type { Region } from '../../geometry/region.ts';

/** The groove to be milled: its centre lines, the region they sweep at one width, and its depth. Millimetres. */
export interface Channel {
  readonly centreLines: readonly Path[];
  readonly region: Region;
  readonly width: number;
  readonly depth: number;
  /** Greatest chord deviation of the region's boundary. */
  readonly tolerance: number;
}
