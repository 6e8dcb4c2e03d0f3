export * from './strip.ts';
export * from './tube.ts';
export type * from './types.ts';
