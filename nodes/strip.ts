import '../src/values/types.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_STRIP } from '../src/values/examples.ts';

export default defineNode({
  name: 'strip',
  title: 'Strip',
  doc: 'The LED strip, direct current, as its data sheet states it. The figures it starts with are common practice; take those of the strip you buy.',
  inputs: {},
  outputs: { strip: { type: 'strip', doc: 'The strip.' } },
  params: {
    wattsPerMetre: { kind: 'number', unit: 'W/m', default: EXAMPLE_STRIP.wattsPerMetre, min: 0.1, max: 100, step: 0.1, label: 'Power', doc: 'Power of a metre at the rated voltage.' },
    volts: { kind: 'number', unit: 'V', default: EXAMPLE_STRIP.volts, min: 1, max: 250, step: 1, label: 'Voltage', doc: 'Rated voltage, direct current.' },
    moduleLength: { kind: 'number', unit: 'mm', default: EXAMPLE_STRIP.moduleLength, min: 1, max: 1000, step: 0.1, label: 'Module length', doc: 'Distance between the places where the strip may be cut.' },
    lies: { kind: 'choice', options: ['on edge', 'flat'], default: EXAMPLE_STRIP.lies, label: 'Lies', doc: 'How it lies in the groove. A strip bends across its face, so on edge it follows letters; flat only where it is made to be bent sideways.' },
    leastBend: { kind: 'number', unit: 'mm', default: EXAMPLE_STRIP.leastBend, min: 0, max: 1000, step: 1, label: 'Least bend radius', doc: 'Tightest bend within the plane of the board that the strip allows as it lies.' },
    width: { kind: 'number', unit: 'mm', default: EXAMPLE_STRIP.width, min: 1, max: 100, step: 0.5, label: 'Strip width', doc: 'Width of its face; on edge it reaches that far from back to front.' },
    colourTemperature: { kind: 'number', unit: 'K', default: EXAMPLE_STRIP.colourTemperature, min: 1000, max: 20000, step: 100, label: 'Colour temperature', doc: 'Correlated colour temperature: 2700 to 3000 is warm, 4000 neutral, 6500 cold.' },
    lumensPerMetre: { kind: 'number', unit: 'lm/m', default: EXAMPLE_STRIP.lumensPerMetre, min: 1, max: 20000, step: 10, label: 'Luminous flux', doc: 'Light of a metre.' },
    railResistance: { kind: 'number', unit: 'ohm/m', default: EXAMPLE_STRIP.railResistance, min: 0, max: 10, step: 0.005, label: 'Resistance of the rails', doc: 'Of both supply rails together, there and back, for a metre of strip.' },
    greatestCurrent: { kind: 'number', unit: 'A', default: EXAMPLE_STRIP.greatestCurrent, min: 0.01, max: 100, step: 0.1, label: 'Greatest current', doc: 'Most current that one feed may send into the strip: its longest run at its power.' },
  },
  examples: [{ title: 'a warm strip of 12 V', inputs: {}, params: { volts: 12, moduleLength: 25, colourTemperature: 2700 } }],
  compute(_inputs, params) {
    return { ok: true, outputs: { strip: params } };
  },
});
