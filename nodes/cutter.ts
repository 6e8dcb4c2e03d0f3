import '../src/values/types.ts';
import { cuttingSpeed, feedRate } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';

export default defineNode({
  name: 'cutter',
  title: 'Cutter',
  doc: 'An end mill and how it is driven: the feed rate is spindle speed times flutes times chip load. Chip loads are common practice, not a promise: make a test cut first.',
  inputs: {},
  outputs: {
    cutter: { type: 'cutter', doc: 'The cutter with its feeds.' },
    quantities: { type: 'quantities', doc: 'Its feed rate and cutting speed.' },
  },
  params: {
    diameter: { kind: 'number', unit: 'mm', default: 6, min: 0.2, max: 50, step: 0.1, label: 'Cutter diameter', doc: 'Diameter of the cutting edge.' },
    flutes: { kind: 'number', unit: 'count', default: 1, min: 1, max: 8, step: 1, label: 'Flutes', doc: 'Number of cutting edges.' },
    chipLoad: { kind: 'number', unit: 'mm/tooth', default: 0.1, min: 0.005, max: 1, step: 0.005, label: 'Chip load', doc: 'Advance per tooth. In cast acrylic 0.05 to 0.3 mm for 3 to 6 mm cutters (common practice, unverified).' },
    spindleSpeed: { kind: 'number', unit: '1/min', default: 18000, min: 100, max: 60000, step: 100, label: 'Spindle speed', doc: 'Turns per minute.' },
    depthOfCut: { kind: 'number', unit: 'mm', default: 3, min: 0.05, max: 50, step: 0.1, label: 'Depth of cut', doc: 'Greatest depth of one layer; half to one cutter diameter is common practice.' },
    cuttingLength: { kind: 'number', unit: 'mm', default: 20, min: 0.5, max: 200, step: 0.5, label: 'Cutting length', doc: 'Length of the cutting edge: no cut may be deeper.' },
    rampAngle: { kind: 'number', unit: 'deg', default: 3, min: 0.5, max: 30, step: 0.5, label: 'Ramp angle', doc: 'Greatest angle at which the cutter goes down into the sheet while moving.' },
    plungeShare: { kind: 'number', unit: 'ratio', default: 0.3, min: 0.05, max: 1, step: 0.05, label: 'Plunge share', doc: 'Feed straight down, as a share of the feed rate; a quarter to a half is common practice.' },
  },
  examples: [{ title: 'one flute of 6 mm at 18 000 turns', inputs: {}, params: { diameter: 6, flutes: 1, chipLoad: 0.1, spindleSpeed: 18000 } }],
  compute(_inputs, { plungeShare, ...cutter }) {
    const feed = feedRate(cutter.spindleSpeed, cutter.flutes, cutter.chipLoad);
    return {
      ok: true,
      outputs: {
        cutter: { ...cutter, name: `${cutter.diameter} mm cutter`, feedRate: feed, plungeFeed: feed * plungeShare },
        quantities: {
          feedRate: { value: feed, unit: 'mm/min' },
          cuttingSpeed: { value: cuttingSpeed(cutter.diameter, cutter.spindleSpeed), unit: 'm/min' },
        },
      },
    };
  },
});
