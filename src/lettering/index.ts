export { traceOutlines, type TraceOptions } from './trace.ts';
export type * from './repair/junction-map.ts';
export * from './types.ts';
export { joinStrokes, type Join, type Joined } from './edit/join.ts';
