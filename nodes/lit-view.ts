import '../src/values/types.ts';
import { COLOUR_TEMPERATURES, MOST_PIXELS, fluxOf, litImage, signOf } from '../src/lit/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_LIGHTING } from '../src/values/examples.ts';

/** Taken where neither the strip nor a person says otherwise, K. */
const WARM = 3000;

export default defineNode({
  name: 'lit-view',
  title: 'Lit view',
  doc: `Shows how the sign looks lit, as a picture for the customer. Tubes shine along what is lit of the centre lines, light falls on the board and on the wall behind, and strays as in an eye or a lens. How materials send light back is common practice, not measured: judge colour and brightness by a sample. At most ${MOST_PIXELS / 1e6} million pixels, which takes some ${(MOST_PIXELS * 40) / 1e6} MB.`,
  inputs: {
    channel: { type: 'channel', doc: 'The groove the tubes lie in.' },
    board: { type: 'region', optional: true, doc: 'The board; without it the tubes hang before the wall alone.' },
    lighting: { type: 'lighting', optional: true, doc: 'What is lit of the groove; without it all of it shines.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'Holes: of mounting holes the heads of the fixings are seen.' },
  },
  outputs: {
    image: { type: 'image', doc: 'The picture, to scale.' },
    files: { type: 'files', doc: 'The picture as PNG.' },
    quantities: { type: 'quantities', doc: 'The light that leaves the tubes, where the lighting is known.' },
  },
  params: {
    boardColour: { kind: 'choice', options: ['white', 'clear', 'black'], default: 'white', label: 'Board', doc: 'Colour of the acrylic. White lets some light through, clear shows the wall behind, black keeps all of it.' },
    wall: { kind: 'choice', options: ['white', 'grey', 'dark'], default: 'white', label: 'Wall', doc: 'Tone of the wall behind the sign.' },
    wallDistance: { kind: 'number', unit: 'mm', default: 30, min: 1, max: 1000, step: 1, label: 'Distance from the wall', doc: 'From the back of the sign to the wall: the length of its stand-offs.' },
    headDiameter: { kind: 'number', unit: 'mm', default: 14, min: 0, max: 200, step: 1, label: 'Heads of fixings', doc: 'Diameter of what is seen of the fixings; 0 for hidden ones.' },
    colourTemperature: {
      kind: 'number', unit: 'K', default: 0, min: 0, max: COLOUR_TEMPERATURES.max, step: 100, label: 'Colour temperature',
      doc: `Of the light, ${COLOUR_TEMPERATURES.min} K or more: 2700 to 3000 is warm, 4000 neutral, 6500 cold. 0 takes that of the strip, or ${WARM} where none is wired.`,
    },
    white: { kind: 'number', unit: 'K', default: 5000, min: 2500, max: 10000, step: 100, label: 'White at', doc: 'Colour temperature that looks white, as the eye or a camera is set: a higher one makes the sign look warmer.' },
    brightness: { kind: 'number', unit: 'ratio', default: 1, min: 0, max: 1, step: 0.05, label: 'Brightness', doc: 'How far the sign is dimmed: 1 is full power, 0 is switched off.' },
    ambient: { kind: 'number', unit: 'ratio', default: 0.15, min: 0, max: 1, step: 0.05, label: 'Light of the place', doc: 'From 0, a dark night, to 1, a day in the shade.' },
    exposure: { kind: 'number', unit: 'count', default: 0, min: -5, max: 5, step: 0.5, label: 'Exposure', doc: 'Lighter or darker by so many stops: each doubles or halves the light.' },
    surround: { kind: 'number', unit: 'ratio', default: 0.25, min: 0, max: 2, step: 0.05, label: 'Wall around', doc: 'How much wall is seen around the sign, as a share of the mean of its width and height.' },
    pixels: { kind: 'number', unit: 'count', default: 1600, min: 64, max: 4000, step: 100, label: 'Pixels across', doc: 'Width of the picture; narrower where it would be too high.' },
    transmission: { kind: 'number', unit: 'ratio', default: 0.7, min: 0.05, max: 1, step: 0.05, label: 'Light let through', doc: 'Share of the strip\'s light that leaves the diffuser, for the luminous flux only. 0.7 is common practice, no source.' },
    file: { kind: 'text', default: 'lit-view.png', maxLength: 80, label: 'File name', doc: 'Name of the file.' },
  },
  examples: [
    { title: 'a warm line on a white board', inputs: { channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, lighting: EXAMPLE_LIGHTING, holes: [] }, params: { pixels: 96 } },
  ],
  compute({ channel, board, lighting, holes }, { boardColour, headDiameter, surround, pixels, transmission, file, ...params }, { checkpoint }) {
    const colourTemperature = params.colourTemperature || (lighting?.strip.colourTemperature ?? WARM);
    if (colourTemperature < COLOUR_TEMPERATURES.min || colourTemperature > COLOUR_TEMPERATURES.max) return { ok: false, problems: [noColour(colourTemperature)] };
    const sign = signOf({ channel, board, lighting, holes: holes.flat(), headDiameter });
    const view = { ...params, board: boardColour, colourTemperature };
    const image = litImage({ sign, view, surround, columns: Math.round(pixels) }, checkpoint);
    if (!image) return { ok: false, problems: [NOTHING] };
    return {
      ok: true,
      outputs: { image, files: [{ path: file, base64: image.png }], quantities: lighting ? { luminousFlux: { value: fluxOf(lighting, transmission), unit: 'lm' } } : {} },
      cautions: image.columns < Math.round(pixels) ? [tooHigh(image.columns, pixels)] : [],
    };
  },
});

const NOTHING: Problem = { place: 'channel', expected: 'a groove', found: 'an empty one', advice: 'Wire a groove with at least one centre line to this node.' };

const noColour = (kelvin: number): Problem => ({
  place: 'colourTemperature', expected: `${COLOUR_TEMPERATURES.min} to ${COLOUR_TEMPERATURES.max} K`, found: `${kelvin} K`, advice: 'Give a colour temperature within these limits, or 0 for that of the strip.',
});

const tooHigh = (columns: number, wanted: number): Problem => ({
  place: 'pixels', expected: `a picture of at most ${MOST_PIXELS / 1e6} million pixels`, found: `more at ${wanted} across`, advice: `The picture is ${columns} pixels across.`,
});
