import type { LitPiece } from './types.ts';

/** Strip in some pieces, mm. */
export const stripLength = (pieces: readonly Pick<LitPiece, 'cutLength'>[]): number => pieces.reduce((sum, { cutLength }) => sum + cutLength, 0);
