import jpeg from 'jpeg-js';
import { it } from 'vitest';
import { decodePicture, tracePicture } from '../../src/artwork/index.ts';
import { applyToPath, flattenPath, loopArea, regionArea, rotation } from '../../src/geometry/index.ts';
import { traceOutlines } from '../../src/lettering/index.ts';
import { shippedLettering } from '../artwork/picture/demo.ts';
import { coverOf, type Faults, inPixels, pngOf, scanned } from '../artwork/picture/scan.ts';
import { compare, type Errors } from '../lettering/truth/compare.ts';

const OPTIONS = { widthOf: 'picture', lettering: 'either', threshold: 0, speckSize: 0, tolerance: 0 } as const;
const ALL: Faults = { noise: 0.03, grain: 0.02, blur: 0.8, shade: 0.4, salt: 0.001 };

/** Name, dots per inch, faults, JPEG quality (0: PNG), degrees askew. */
const ROWS: readonly (readonly [string, number, Faults, number, number])[] = [
  ['no fault', 150, {}, 0, 0], ['all faults', 150, ALL, 60, 1],
  ['no fault', 75, {}, 0, 0], ['noise 5 %', 75, { noise: 0.05 }, 0, 0], ['paper grain 3 %', 75, { grain: 0.03 }, 0, 0], ['blur 1.5 px', 75, { blur: 1.5 }, 0, 0], ['shade 40 %', 75, { shade: 0.4 }, 0, 0],
  ['salt 0.5 %', 75, { salt: 0.005 }, 0, 0], ['askew 1 degree', 75, {}, 0, 1], ['JPEG quality 60', 75, {}, 60, 0], ['light on dark, shaded', 75, { paper: 0.05, ink: 0.8, shade: 0.4, noise: 0.02 }, 0, 0],
  ['pencil grey, shaded', 75, { ink: 0.55, shade: 0.3, noise: 0.02 }, 0, 0], ['all faults', 75, ALL, 60, 1],
  ['no fault', 40, {}, 0, 0], ['codes add up, not light', 40, { adds: 'codes' }, 0, 0], ['all faults', 40, ALL, 60, 1], ['no fault', 20, {}, 0, 0],
];

it('prints what scans of the shipped lettering are traced to', () => {
  const { outlines, region } = shippedLettering();
  const truth = traceOutlines(outlines, { tolerance: 0.02 }, () => {}).strokes;
  const percent = ({ mean, p95, max }: Errors) => [mean, p95, max].map((value) => value.toFixed(2).padStart(6)).join('');
  const lines = ROWS.map(([name, dotsPerInch, faults, quality, degrees]) => {
    const perMm = dotsPerInch / 25.4;
    const [columns, rows] = [Math.round(760 * perMm), Math.round(400 * perMm)];
    const codes = scanned(coverOf(inPixels(region, perMm, rows / perMm, rotation(degrees)), columns, rows), faults);
    const bytes = quality === 0 ? pngOf(codes, columns, rows) : jpegOf(codes, columns, rows, quality);
    const begun = performance.now();
    const reading = decodePicture(bytes);
    if (!reading.ok) throw new Error(reading.problems[0].found);
    const decoded = performance.now();
    const found = tracePicture(reading.picture, { ...OPTIONS, width: columns / perMm }, () => {});
    if (!found.ok) throw new Error(found.problems[0].found);
    const done = performance.now();
    const strokes = truth.map(({ path }) => ({ path: applyToPath(rotation(degrees), path), ends: [] }));
    const { inner, count, kinks } = compare({ name, width: 13, outlines: [], strokes, counts: [truth.length] }, traceOutlines(found.outlines, { tolerance: 0.02 }, () => {}));
    const paths = found.outlines.flatMap((outline) => outline.paths);
    const area = paths.reduce((sum, path) => sum + loopArea(flattenPath(path, 0.005)), 0) / regionArea(region) - 1;
    return [
      String(dotsPerInch).padStart(4), name.padEnd(24), percent(inner), String(count).padStart(4), String(kinks).padStart(3), (100 * area).toFixed(2).padStart(7), found.seen.strokePixels.toFixed(1).padStart(6),
      String(paths.reduce((sum, { segments }) => sum + segments.length, 0)).padStart(6), String(found.seen.specks).padStart(5), (decoded - begun).toFixed(0).padStart(6), (done - decoded).toFixed(0).padStart(6), (columns * rows / 1e6).toFixed(1).padStart(5),
    ].join(' ');
  });
  process.stdout.write(`\nScans of the shipped lettering (${truth.length} strokes): distance to the drawing's own centre lines, percent of 13 mm\n dpi fault                      mean   p95   max strokes kinks area% px/stroke segments specks decode trace Mpx\n${lines.join('\n')}\n`);
}, 600_000);

function jpegOf(codes: Uint8Array, width: number, height: number, quality: number): Uint8Array {
  const data = new Uint8Array(4 * codes.length).fill(255);
  codes.forEach((code, i) => data.fill(code, 4 * i, 4 * i + 3));
  return jpeg.encode({ width, height, data }, quality).data;
}
