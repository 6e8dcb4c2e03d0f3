export { bytesOfBase64 } from './base64.ts';
export { decodePicture } from './decode.ts';
export { PICTURE_LIMITS } from './limits.ts';
export { type Picture, type PictureReading, type PictureRefusal, type Resolution } from './picture.ts';
export { type Scale } from './scale.ts';
export { tracePicture } from './trace-picture.ts';
export { type PictureOptions, type PictureTracing, type Sighting } from './tracing.ts';
