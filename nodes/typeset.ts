import '../src/values/types.ts';
import { bytesOfBase64 } from '../src/artwork/index.ts';
import { namesOfKind, shippedTypeface, TYPEFACE_NAMES, typefaceOfFile, typesetPhrase } from '../src/lettering/index.ts';
import { defineNode, type FileValue, type Problems } from '../src/runtime/index.ts';
import { DIRECTION_PARAM, LAYOUT_PARAMS, layoutOptions, letteringQuantities } from '../src/values/layout-params.ts';

export default defineNode({
  name: 'typeset',
  title: 'Typeset',
  doc: 'Sets a phrase in a typeface as filled outlines, ready to be traced. Letters join, change and move together as the typeface\'s own rules say; scripts from right to left and marks over letters come out right.',
  inputs: { baseline: { type: 'strokes', optional: true, doc: 'Its first stroke carries the letters when they stand on a drawn stroke.' } },
  outputs: {
    outlines: { type: 'outlines', doc: 'One per glyph; the first baseline begins, ends or is centred at the origin, as it is aligned.' },
    quantities: { type: 'quantities', doc: 'Width and height of the lettering, numbers of letters and of lines.' },
  },
  params: {
    phrase: { kind: 'text', default: 'Lamps & lanterns', maxLength: 1000, label: 'Phrase', doc: 'What the sign says. Line breaks part its lines.' },
    typeface: {
      kind: 'choice', options: TYPEFACE_NAMES, default: 'Pacifico', label: 'Typeface',
      doc: `Joined scripts: ${namesOfKind('script')}. Handwriting: ${namesOfKind('handwriting')}. Sans serif, of one stroke width: ${namesOfKind('sans serif')}. Condensed: ${namesOfKind('condensed')}.`,
    },
    font: { kind: 'file', accept: ['.ttf', '.otf', '.woff', '.woff2', '.ttc'], label: 'Own font', doc: 'A font file that is taken instead of the typeface. See that its licence allows signs.' },
    ...LAYOUT_PARAMS,
    ...DIRECTION_PARAM,
  },
  examples: [{ title: 'one word', inputs: { baseline: undefined }, params: { phrase: 'lamp', typeface: 'Sacramento' } }],
  compute({ baseline }, { phrase, typeface, font, ...layout }, { checkpoint }) {
    const options = layoutOptions(layout, baseline);
    if (!options.ok) return options;
    const opening = font === null ? { ok: true, typeface: shippedTypeface(typeface) } as const : ownTypeface(font);
    if (!opening.ok) return opening;
    checkpoint(0.5);
    const typesetting = typesetPhrase(phrase, opening.typeface, options.options);
    if (!typesetting.ok) return typesetting;
    const { outlines, cautions } = typesetting.typeset;
    return { ok: true, outputs: { outlines, quantities: letteringQuantities({ strokes: [], outlines }, typesetting.typeset) }, cautions };
  },
});

function ownTypeface(file: FileValue): ReturnType<typeof typefaceOfFile> | { readonly ok: false; readonly problems: Problems } {
  if ('base64' in file) return typefaceOfFile(file.name, bytesOfBase64(file.base64), 'font');
  return { ok: false, problems: [{ place: 'font', expected: 'a font file', found: `“${file.name}”, which is text`, advice: 'Choose a TrueType, OpenType, WOFF or WOFF2 file.' }] };
}
