import type { Picture, Sighting } from '../artwork/index.ts';
import type { Problem } from '../runtime/problem.ts';
import { atLeast, atMost, type Check, type Quantities } from './check.ts';

/** Strokes narrower than this many pixels are guessed rather than measured: their edges touch each other's blur. */
const LEAST_PIXELS = 5;

/** Nearer tones than this share of the lighter one leave the edge to the noise. */
const LEAST_CONTRAST = 0.25;

/** Specks are many where there are this many of them for each shape that was kept, and more than a handful. */
const SPECKS_PER_SHAPE = 10;
const HANDFUL = 20;

/** What there is to say of a picture's quality. */
export function pictureChecks({ strokePixels, contrast, cutOff, specks, shapes }: Sighting): Check[] {
  const [first] = cutOff;
  return [
    atLeast({
      check: 'picture-resolution', subject: 'Width of the strokes in pixels', value: Math.round(strokePixels * 10) / 10, limit: LEAST_PIXELS, unit: '',
      advice: 'Scan at a higher resolution: the centre lines will waver.',
    }, 'caution'),
    atLeast({
      check: 'picture-contrast', subject: 'Contrast of lettering and ground', value: Math.round(contrast * 100) / 100, limit: LEAST_CONTRAST, unit: 'ratio',
      advice: 'Scan with more contrast, and look whether the outlines are right.',
    }, 'caution'),
    atMost({
      check: 'picture-edge', subject: 'Shapes cut off by the edge of the picture', value: cutOff.length, limit: 0, unit: 'count', ...(first && { at: first }),
      advice: 'Scan with ground all around the lettering; crop away dark edges of the page.',
    }, 'caution'),
    atMost({
      check: 'picture-specks', subject: 'Specks dropped', value: specks, limit: Math.max(HANDFUL, SPECKS_PER_SHAPE * shapes), unit: 'count',
      advice: 'Clean the glass, or look whether dots of letters went with them.',
    }, 'caution'),
  ];
}

export const pictureQuantities = ({ scale, strokePixels, specks, pinholes, columns }: Sighting): Quantities => ({
  pictureWidth: { value: scale.width, unit: 'mm' },
  pictureResolution: { value: columns / scale.width, unit: '1/mm' },
  strokeWidthInPicture: { value: strokePixels * scale.across, unit: 'mm' },
  specksDropped: { value: specks, unit: 'count' },
  pinholesFilled: { value: pinholes, unit: 'count' },
});

/** Resolutions in dots per inch that programs write when they know none. */
const HOLLOW = [72, 96];

/** Ratios of units that are taken for one another, such as inches for millimetres. */
const MIXED = [25.4, 10, 100, 1000];

/** A stated width that is just so many times the scanned one as one unit is of another. Other ratios are enlargements, which are usual. */
export function mixedUnits({ columns, resolution }: Picture, width: number): Problem[] {
  if (resolution === undefined || HOLLOW.some((dots) => Math.abs(resolution.across * 25.4 - dots) < 0.5)) return [];
  const scanned = columns / resolution.across;
  const ratio = Math.max(width / scanned, scanned / width);
  if (!MIXED.some((mixed) => Math.abs(ratio / mixed - 1) < 0.005)) return [];
  const says = `${width.toFixed(1)} mm for a picture that is ${scanned.toFixed(1)} mm wide by the resolution in its file, ${ratio.toFixed(1)} times ${width > scanned ? 'as much' : 'less'}`;
  return [{ place: 'pictureWidth', expected: 'a width in mm', found: says, advice: 'See whether it was measured in inches or cm.' }];
}
