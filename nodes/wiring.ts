import '../src/values/types.ts';
import { CLASS_5, GAUGES, planWiring } from '../src/lighting/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_LIGHTING } from '../src/values/examples.ts';
import { wiringChecks, wiringQuantities } from '../src/values/wiring-checks.ts';
import { wiringDrawing } from '../src/values/wiring-drawing.ts';

export default defineNode({
  name: 'wiring',
  title: 'Wiring',
  doc: 'Chooses supplies, fuses and wires for the runs, and draws them as seen from behind. A run is fed at one end, at a joint in its middle, or at both ends: the first that keeps to the drop. All figures are estimates: the mains side is for a licensed person alone, and local code decides.',
  inputs: {
    lighting: { type: 'lighting', doc: 'The runs.' },
    board: { type: 'region', optional: true, doc: 'The board, for the drawing.' },
    holes: { type: 'holes', many: true, doc: 'Cable holes, for the drawing.' },
  },
  outputs: {
    lighting: { type: 'lighting', doc: 'The runs with supplies, fuses and wires.' },
    checks: { type: 'checks', doc: 'Voltage drop, currents, fuses, load of the supplies, limits of extra-low voltage.' },
    quantities: { type: 'quantities', doc: 'Supplies and wire by size, as pairs.' },
    files: { type: 'files', doc: 'The wiring as seen from behind.' },
  },
  params: {
    wires: { kind: 'choice', options: ['IEC 60228 class 5', 'AWG'], default: 'IEC 60228 class 5', label: 'Wire sizes', doc: 'Sizes to choose from: metric flexible wire by its greatest resistance, or American gauges.' },
    largestSupply: { kind: 'number', unit: 'W', default: 100, min: 1, max: 1000, step: 5, label: 'Largest supply', doc: 'Rated power of one supply at most. Class 2 ends at 60 VA with 12 V and at 100 VA with 24 V.' },
    supplyShare: { kind: 'number', unit: 'ratio', default: 0.8, min: 0.1, max: 1, step: 0.05, label: 'Load of a supply', doc: 'How much of its rated power may be taken for hours on end; 0.8 is common practice.' },
    greatestDrop: { kind: 'number', unit: 'ratio', default: 0.03, min: 0.001, max: 0.2, step: 0.005, label: 'Voltage drop', doc: 'Most voltage lost between a supply and any module, as a share of the rated voltage. 3 % keeps the light even.' },
    copperRise: { kind: 'number', unit: 'K', default: 30, min: 0, max: 60, step: 5, label: 'Warmth of the copper', doc: 'How much warmer than 20 °C wires and strip get.' },
    leadLength: { kind: 'number', unit: 'mm', default: 2000, min: 0, max: 100000, step: 100, label: 'Lead', doc: 'Wire from a supply to where its lead reaches the board.' },
    spareWire: { kind: 'number', unit: 'mm', default: 120, min: 0, max: 5000, step: 10, label: 'Spare wire', doc: 'Added to each feed for both its ends.' },
    wet: { kind: 'switch', default: false, label: 'Wet place', doc: 'Outdoors or where it is wet, parts that may be touched are held to a lower voltage.' },
    file: { kind: 'text', default: 'wiring.svg', maxLength: 80, label: 'File name', doc: 'Name of the drawing\'s file.' },
  },
  examples: [{ title: 'one short run', inputs: { lighting: EXAMPLE_LIGHTING, board: EXAMPLE_BOARD, holes: [] } }],
  compute({ lighting, board, holes }, { wires, file, wet, ...request }) {
    const wired = planWiring({ lighting, sizes: wires === 'AWG' ? GAUGES : CLASS_5, ...request });
    return {
      ok: true,
      outputs: {
        lighting: wired, checks: wiringChecks(wired, { ...request, wet }), quantities: wiringQuantities(wired),
        files: [{ path: file, text: wiringDrawing(wired, { board, holes: holes.flat().filter(({ purpose }) => purpose === 'cable') }) }],
      },
    };
  },
});
