import '../src/values/types.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, atMost } from '../src/values/check.ts';
import { EXAMPLE_MACHINE } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-travel',
  title: 'Check travel',
  doc: 'Compares how far the programs reach with the machine\'s usable travel, axis by axis, wherever the work\'s zero is put. It stays there for all set-ups, so that they count together.',
  inputs: {
    setups: { type: 'set-ups', doc: 'The programs.' },
    machine: { type: 'machine', doc: 'The machine.' },
  },
  outputs: { checks: { type: 'checks', doc: 'The reach of all programs together along X, Y and Z.' } },
  params: {},
  examples: [{ title: 'no program reaches nowhere', inputs: { setups: [], machine: EXAMPLE_MACHINE } }],
  compute({ setups, machine }) {
    const reaches = setups.flatMap(({ programs }) => programs.map(({ reach }) => reach));
    const checks = (['x', 'y', 'z'] as const).map((axis): Check => {
      const span = Math.max(...reaches.map(({ max }) => max[axis])) - Math.min(...reaches.map(({ min }) => min[axis]));
      const letter = axis.toUpperCase() as 'X' | 'Y' | 'Z';
      return atMost({
        check: `travel-${axis}`, value: Math.max(0, span), limit: machine[`travel${letter}`], unit: 'mm',
        subject: `Reach of all programs along ${letter}`, advice: 'Turn or move the work, make it smaller, or cut it in several set-ups.',
      });
    });
    return { ok: true, outputs: { checks } };
  },
});
