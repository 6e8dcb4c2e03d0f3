import './types.ts';

export { csvLine } from '../costing/csv.ts';
export * from './check.ts';
export * from './describe.ts';
export * from './hand-over.ts';
export * from './recipe-checks.ts';
export * from './report.ts';
export * from './report-difference.ts';
export * from './results.ts';
export type * from './picture.ts';
export { pictureOf } from './pictures/picture-of.ts';
export { pictureSetUps } from './pictures/set-ups.ts';
export { arrangeLayers, layerKey } from './pictures/shapes.ts';
export { junctionsOf, spotsOf } from './pictures/spots.ts';
export { thumbnailOf } from './pictures/thumbnail.ts';
export { probeValues } from './probe/probe.ts';
