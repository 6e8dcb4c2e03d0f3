export { traceOutlines, type TraceOptions } from './trace.ts';
export * from './types.ts';
