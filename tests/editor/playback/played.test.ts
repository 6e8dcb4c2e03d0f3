import { describe, expect, it } from 'vitest';
import { playedNode } from '../../../src/editor/playback/played.ts';
import { historyOf } from '../../../src/editor/model/history.ts';
import type { NodePicture, NodeReport } from '../../../src/editor/worker/protocol.ts';
import { catalogue, shippedGraph } from '../../support/shipped-run.ts';

const report = (state: NodeReport['state']) => ({ state }) as NodeReport;
const picture = (node: string, playable: boolean) => ({ node, playable }) as NodePicture;
const state = { history: historyOf(shippedGraph('drawn-strokes.json')), shapes: catalogue };

describe('the step whose programs are played', () => {
  it('is the one on the sheet where that has programs', () => {
    expect(playedNode({ ...state, picture: picture('programs', true), reports: new Map([['proof', report('ready')]]) })).toBe('programs');
  });

  it('is the one that knows most of them while the sheet shows something else, once it is computed', () => {
    const on = (proof: NodeReport['state']) => playedNode({ ...state, picture: picture('drawing', false), reports: new Map([['proof', report(proof)]]) });
    expect([on('ready'), on('failed'), on('blocked')]).toEqual(['proof', undefined, undefined]);
    expect(playedNode({ ...state, picture: undefined, reports: new Map() })).toBeUndefined();
  });
});
