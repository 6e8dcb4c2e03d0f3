import '../src/values/types.ts';
import { planLayout } from '../src/lighting/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_CHANNEL, EXAMPLE_STRIP, EXAMPLE_TUBE } from '../src/values/examples.ts';
import { layoutChecks, layoutQuantities } from '../src/values/light-checks.ts';

export default defineNode({
  name: 'light-layout',
  title: 'Light layout',
  doc: 'Lays tube and strip into the groove: whole modules, what stays dark the same at both ends. Where a stroke ends on another it starts clear of it; where two cross the shorter is cut in two. Pieces are grouped into as few runs as the current allows, with short jumpers, each fed from its end nearest to a supply\'s lead.',
  inputs: {
    channel: { type: 'channel', doc: 'The groove.' },
    strip: { type: 'strip', doc: 'The strip.' },
    tube: { type: 'tube', doc: 'The diffuser tube.' },
  },
  outputs: {
    lighting: { type: 'lighting', doc: 'The runs with their pieces, jumpers and feeds, not yet wired to supplies.' },
    holes: { type: 'holes', doc: 'Cable holes, inside the groove.' },
    checks: { type: 'checks', doc: 'Room for strip and tube, their bends, current of a run, stretches without light, strokes too short for a module.' },
    quantities: { type: 'quantities', doc: 'Strip in whole modules, tube, share of the groove that is lit, power, current, light, jumpers.' },
  },
  params: {
    cableHoleDiameter: { kind: 'number', unit: 'mm', default: 6, min: 0.5, max: 100, step: 0.1, label: 'Cable hole', doc: 'Diameter of the cable holes; no wider than the groove.' },
    holesAt: { kind: 'choice', options: ['ends of pieces', 'ends of runs'], default: 'ends of pieces', label: 'Holes at', doc: 'Ends of pieces: jumpers lie behind the board. Ends of runs: only where a run starts and ends, as at the ends of a word; then jumpers have to lie in the groove.' },
    holesClear: { kind: 'switch', default: false, label: 'Holes clear of the tube', doc: 'Tubes end beside the cable holes rather than over them.' },
    leastEnd: { kind: 'number', unit: 'mm', default: 5, min: 0, max: 500, step: 1, label: 'Least unlit end', doc: 'Tube without strip at each end of a piece, at least: for the end cap and the wires.' },
    greatestDark: { kind: 'number', unit: 'mm', default: 35, min: 0, max: 1000, step: 1, label: 'Longest dark stretch', doc: 'A longer stretch without light is worth a caution.' },
    stripDrop: { kind: 'number', unit: 'ratio', default: 0.02, min: 0.001, max: 0.2, step: 0.005, label: 'Drop along a run', doc: 'Most voltage lost along the strip of one run fed from one end, as a share of the rated voltage: it limits how long runs become. 3 % with the wires is what even light asks for.' },
    leads: { kind: 'points', default: [], label: 'Leads of supplies', doc: 'Where leads from supplies reach the board; the middle of all strip while there is none.' },
    spareWire: { kind: 'number', unit: 'mm', default: 60, min: 0, max: 2000, step: 5, label: 'Spare wire', doc: 'Added at each end of a jumper: for going through the board, stripping and joining.' },
  },
  handles: [{ kind: 'places', param: 'leads', doc: 'Add the place where a supply\'s lead reaches the board, or move it.' }],
  examples: [{ title: 'one straight groove', inputs: { channel: EXAMPLE_CHANNEL, strip: EXAMPLE_STRIP, tube: EXAMPLE_TUBE } }],
  compute({ channel, strip, tube }, { cableHoleDiameter, holesAt, holesClear, leastEnd, greatestDark, stripDrop, leads, spareWire }) {
    const layout = planLayout({
      centreLines: channel.centreLines, strip, tube, leastEnd, stripDrop, leads, spareWire, holesClear, holeDiameter: cableHoleDiameter, holesAt: holesAt === 'ends of runs' ? 'runs' : 'pieces',
    });
    const { lighting, holes } = layout;
    if (lighting.runs.length === 0)
      return { ok: false, problems: [{ place: 'channel', expected: `a stroke long enough for one module of ${strip.moduleLength} mm and its ends`, found: 'none', advice: 'Make the lettering larger, or take a strip of shorter modules.' }] };
    return {
      ok: true,
      outputs: {
        lighting, holes: holes.map((centre) => ({ centre, diameter: cableHoleDiameter, purpose: 'cable' as const })),
        checks: layoutChecks(layout, channel, greatestDark), quantities: layoutQuantities(lighting, channel),
      },
    };
  },
});
