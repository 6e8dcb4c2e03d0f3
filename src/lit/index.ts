export { COLOUR_TEMPERATURES } from './colour.ts';
export { MOST_PIXELS } from './frame.ts';
export { type PlacedImage } from './image.ts';
export { type LitImageOptions, litImage } from './lit-image.ts';
export { fluxOf, signOf } from './sign.ts';
