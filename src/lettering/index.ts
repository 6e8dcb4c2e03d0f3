export { traceOutlines, type TraceOptions } from './trace.ts';
export { frameOf, fromFrame, toFrame } from './repair/frame.ts';
export { junctionsOf } from './repair/junctions.ts';
export type * from './repair/junction-map.ts';
export { type Missed, type Repair, type Repaired, repairStrokes } from './repair/repair.ts';
export * from './types.ts';
export { joinStrokes, type Join, type Joined } from './edit/join.ts';
export { type Smoothed, smoothStrokes } from './edit/smooth.ts';
