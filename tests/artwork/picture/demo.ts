import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { encode } from 'fast-png';
import { readDrawing, type Outline } from '../../../src/artwork/index.ts';
import type { Loop, Region } from '../../../src/geometry/index.ts';
import { cleanOutlines } from '../../../src/lettering/clean.ts';
import { root } from '../../support/command-line.ts';
import { coverOf, inPixels, scanned, seeded } from './scan.ts';

export const PAGE = { width: 760, height: 400 };

/** The shipped lettering, as drawn and as one region. */
export function shippedLettering(): { readonly outlines: readonly Outline[]; readonly region: Region } {
  const read = readDrawing(readFileSync(join(root, 'graphs/lantern-aisle.svg'), 'utf8'));
  if (!read.ok) throw new Error('the lettering could not be read');
  return { outlines: read.drawing.outlines, region: cleanOutlines(read.drawing.outlines)!.region };
}

/** Pixels across the page: fifty to the inch. */
const COLUMNS = 1496;
const TILT = (0.3 * Math.PI) / 180;

/** Dust on the glass: spots up to 2 mm across. */
function dust(): Loop[] {
  const random = seeded(7);
  return Array.from({ length: 40 }, () => {
    const [x, y, radius] = [random() * PAGE.width, random() * PAGE.height, 0.4 + 0.6 * random()];
    return Array.from({ length: 9 }, (_, k) => ({ x: x + radius * (0.7 + 0.6 * random()) * Math.cos((k * 2 * Math.PI) / 9), y: y + radius * Math.sin((k * 2 * Math.PI) / 9) }));
  });
}

/**
 * The shipped scan: the lettering on a page that lay a little askew, with dust, the shade of a lid that did not close, grain, and soft
 * edges, in sixteen greys.
 */
export function demoScan(): { readonly columns: number; readonly rows: number; readonly greys: Uint8Array } {
  const perMm = COLUMNS / PAGE.width;
  const [columns, rows] = [COLUMNS, Math.round(PAGE.height * perMm)];
  const askew = [Math.cos(TILT), Math.sin(TILT), -Math.sin(TILT), Math.cos(TILT), 0, 0] as const;
  const cover = coverOf(inPixels({ loops: [...shippedLettering().region.loops, ...dust()] }, perMm, rows / perMm, askew), columns, rows);
  const codes = scanned(cover, { blur: 0.7, shade: 0.4, grain: 0.006, noise: 0.002, salt: 0.00005 });
  return { columns, rows, greys: codes.map((code) => Math.round(code / 17)) };
}

/** A PNG of sixteen greys. */
export function pngOfGreys({ columns, rows, greys }: ReturnType<typeof demoScan>): Uint8Array {
  const stride = Math.ceil(columns / 2);
  const data = new Uint8Array(stride * rows);
  greys.forEach((grey, i) => { data[Math.floor(i / columns) * stride + ((i % columns) >> 1)]! |= (i % columns) % 2 === 0 ? grey << 4 : grey; });
  return encode({ width: columns, height: rows, data, channels: 1, depth: 4 }, { zlib: { level: 9 } });
}
