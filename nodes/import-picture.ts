import '../src/values/types.ts';
import { PICTURE_LIMITS, tracePicture } from '../src/artwork/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { pictureFile } from '../src/values/picture-file.ts';
import { mixedUnits, pictureChecks, pictureQuantities } from '../src/values/picture-checks.ts';

/** A stem of 8 x 32 pixels on 24 x 40, as a PNG of one bit. */
const EXAMPLE = 'iVBORw0KGgoAAAANSUhEUgAAABgAAAAoAQAAAADMdgf4AAAAEklEQVR42mP4//8/Kh5oiOoeAGa1V6kBMh20AAAAAElFTkSuQmCC';

const LETTERING = { 'by the edges': 'either', 'darker than its ground': 'darker', 'lighter than its ground': 'lighter' } as const;
const WIDTH_OF = { 'the picture': 'picture', 'the lettering': 'lettering' } as const;

export default defineNode({
  name: 'import-picture',
  title: 'Import picture',
  doc: `Finds the outlines of lettering in a scan or photo, in millimetres, y up from the picture's lower left corner. Uneven light is evened out, specks are dropped, and edges are followed between the pixels. PNG or JPEG, up to ${PICTURE_LIMITS.fileMiB} MiB and ${PICTURE_LIMITS.megapixels} million pixels (JPEG ${PICTURE_LIMITS.jpegMegapixels}). A photo must be taken square on: slanting lines are kept as they are.`,
  inputs: {},
  outputs: {
    outlines: { type: 'outlines', doc: 'One outline per shape, with its holes.' },
    checks: { type: 'checks', doc: 'Pixels across a stroke, contrast, shapes cut off by the edge of the picture, specks.' },
    quantities: { type: 'quantities', doc: 'Real width and resolution of the picture, width of the strokes, specks dropped and pinholes filled.' },
  },
  params: {
    picture: { kind: 'file', accept: ['.png', '.jpg', '.jpeg'], label: 'Picture', doc: 'A scan or photo of the lettering, PNG or JPEG. Ten pixels across a stroke are plenty.' },
    pictureWidth: {
      kind: 'number', unit: 'mm', default: 0, min: 0, max: 20000, step: 1, label: 'Real width',
      doc: 'What the picture, or the lettering in it, measures across in reality. 0 takes the resolution that the file states.',
    },
    widthOf: { kind: 'choice', options: ['the picture', 'the lettering'], default: 'the picture', label: 'Width of', doc: 'What the real width was measured on: the whole picture from edge to edge, or the lettering alone.' },
    lettering: {
      kind: 'choice', options: ['by the edges', 'darker than its ground', 'lighter than its ground'], default: 'by the edges', label: 'Lettering is',
      doc: 'Which of the two tones is the lettering. By the edges: what runs along the edges of the picture is ground.',
    },
    threshold: { kind: 'number', unit: 'ratio', default: 0, min: 0, max: 0.95, step: 0.05, label: 'Threshold', doc: 'How much of the way from ground to lettering counts as lettering. 0 is automatic: half the way. Less takes in faint strokes, more parts letters that run together.' },
    speckSize: { kind: 'number', unit: 'mm', default: 0, min: 0, max: 1000, step: 0.5, label: 'Speck size', doc: 'Spots smaller than a disc this wide are dropped, and such holes filled. 0 is automatic: a quarter of the width of the strokes.' },
    tolerance: { kind: 'number', unit: 'mm', default: 0, min: 0, max: 10, step: 0.05, label: 'Tolerance', doc: 'Greatest distance between the edge found and the lines and arcs that stand for it. 0 is automatic: a fifth of a pixel, and more where there is noise.' },
  },
  examples: [{ title: 'one stem', inputs: {}, params: { picture: { name: 'stem.png', base64: EXAMPLE }, pictureWidth: 24 } }],
  compute(_inputs, params, { checkpoint }) {
    const reading = pictureFile(params.picture, 'picture');
    if (!reading.ok) return reading;
    checkpoint(0.2);
    const { pictureWidth, threshold, speckSize, tolerance } = params;
    const options = { width: pictureWidth, widthOf: WIDTH_OF[params.widthOf], lettering: LETTERING[params.lettering], threshold, speckSize, tolerance };
    const traced = tracePicture(reading.picture, options, checkpoint);
    if (!traced.ok) return traced;
    const { outlines, seen } = traced;
    return {
      ok: true,
      outputs: { outlines, checks: pictureChecks(seen), quantities: pictureQuantities(seen) },
      cautions: pictureWidth === 0 ? [] : mixedUnits(reading.picture, seen.scale.width),
    };
  },
});
