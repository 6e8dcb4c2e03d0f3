export * from './arrange.ts';
export * from './artwork.ts';
export * from './drawing.ts';
export * from './limits.ts';
export * from './picture/index.ts';
export * from './problem.ts';
export * from './read-drawing.ts';
export * from './write-drawing.ts';
