import '../src/values/types.ts';
import { measureWidth } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { atLeast, atMost } from '../src/values/check.ts';
import { EXAMPLE_CHANNEL } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-width',
  title: 'Check width',
  doc: 'Measures the groove\'s width everywhere on its region, from wall to wall, and compares the least and the largest with the width that was asked for.',
  inputs: { channel: { type: 'channel', doc: 'The groove.' } },
  outputs: { checks: { type: 'checks', doc: 'The least and the largest width, each with its place.' } },
  params: {
    allowed: { kind: 'number', unit: 'mm', default: 0.05, min: 0.001, max: 2, step: 0.01, label: 'Allowed', doc: 'Greatest difference from the width that was asked for.' },
  },
  examples: [{
    title: 'a straight groove',
    inputs: { channel: EXAMPLE_CHANNEL },
  }],
  compute({ channel }, { allowed }) {
    const range = measureWidth(channel);
    if (!range) return { ok: false, problems: [{ place: 'channel', expected: 'a groove', found: 'none', advice: 'Wire a groove with at least one stroke to this node.' }] };
    const { least, largest } = range;
    const advice = 'Look at this place: strokes that overlap or bends tighter than half the width change the groove.';
    return {
      ok: true,
      outputs: {
        checks: [
          atLeast({ check: 'groove-width-least', value: least.width, limit: channel.width - allowed, unit: 'mm', at: least.at, subject: 'Least groove width', advice }),
          atMost({ check: 'groove-width-largest', value: largest.width, limit: channel.width + allowed, unit: 'mm', at: largest.at, subject: 'Largest groove width', advice }),
        ],
      },
    };
  },
});
