export { type Alignment, type BaselineShape } from './baseline.ts';
export { type LayoutOptions } from './options.ts';
export { type Direction } from './runs.ts';
export { SINGLE_STROKE_NAMES, type SingleStrokeName } from './single-stroke/face.ts';
export { type SingleStroke, writePhrase } from './single-stroke/write.ts';
export { namesOfKind, TYPEFACE_NAMES, type TypefaceName } from './shipped/shipped-typefaces.ts';
export { shippedTypeface, type Typeface, typefaceOfFile } from './typeface.ts';
export { type Typeset, typesetPhrase } from './typeset.ts';
