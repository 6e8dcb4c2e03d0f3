import '../src/values/types.ts';
import { SINGLE_STROKE_NAMES, writePhrase } from '../src/lettering/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { LAYOUT_PARAMS, layoutOptions, letteringQuantities } from '../src/values/layout-params.ts';

export default defineNode({
  name: 'single-stroke',
  title: 'Single-stroke lettering',
  doc: 'Writes a phrase with the strokes of a pen, which need no tracing: the lettering that A. V. Hershey drew for plotters. Letters without accents, figures and the signs of ASCII.',
  inputs: { baseline: { type: 'strokes', optional: true, doc: 'Its first stroke carries the letters when they stand on a drawn stroke.' } },
  outputs: {
    strokes: { type: 'strokes', doc: 'Centre lines in the order a pen writes them, joined where it goes on; the first baseline begins, ends or is centred at the origin, as it is aligned.' },
    quantities: { type: 'quantities', doc: 'Width and height of the lettering, numbers of letters and of lines.' },
  },
  params: {
    phrase: { kind: 'text', default: 'Lamps & lanterns', maxLength: 1000, label: 'Phrase', doc: 'What the sign says. Line breaks part its lines.' },
    face: { kind: 'choice', options: SINGLE_STROKE_NAMES, default: 'Script simplex', label: 'Lettering', doc: 'Roman simplex is plain and of one line, script simplex is joined handwriting, Greek simplex is plain and Greek, without accents.' },
    rounded: { kind: 'switch', default: true, label: 'Round curves', doc: 'The lettering is drawn on a coarse grid: on, its lines become curves through the same points. Corners and stems stay as they are.' },
    ...LAYOUT_PARAMS,
  },
  examples: [{ title: 'one word', inputs: { baseline: undefined }, params: { phrase: 'lamp' } }],
  compute({ baseline }, { phrase, face, rounded, ...layout }) {
    const options = layoutOptions({ ...layout, direction: 'automatic' }, baseline);
    if (!options.ok) return options;
    const writing = writePhrase(phrase, face, { ...options.options, rounded });
    if (!writing.ok) return writing;
    const { strokes, cautions } = writing.written;
    return { ok: true, outputs: { strokes, quantities: letteringQuantities({ strokes, outlines: [] }, writing.written) }, cautions };
  },
});
