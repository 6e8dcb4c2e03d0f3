import { notify } from '../state/editor.ts';

/** For a promise's `catch`: tells the person the sentence, and gives no value. */
export const failed = (says: string) => (error: unknown): undefined => {
  notify({ kind: 'failed', says: error instanceof Error && error.message !== '' ? `${says} (The browser says: ${error.message})` : says });
};
