export { BrokenFont } from './broken.ts';
export { unpackFont } from './unpack.ts';
export { LARGEST_FONT } from './sfnt.ts';
