import '../src/values/types.ts';
import { leastLineLength } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';

export default defineNode({
  name: 'machine',
  title: 'Machine',
  doc: 'A three-axis router: its travel, its rates, and what its controller understands. The first numbers decide whether the work fits, the next how long it takes, the last how the programs are written.',
  inputs: {},
  outputs: { machine: { type: 'machine', doc: 'The machine with its controller.' } },
  params: {
    travelX: { kind: 'number', unit: 'mm', default: 1300, min: 10, max: 20000, step: 10, label: 'Travel along X', doc: 'Usable travel along X.' },
    travelY: { kind: 'number', unit: 'mm', default: 900, min: 10, max: 20000, step: 10, label: 'Travel along Y', doc: 'Usable travel along Y.' },
    bedMargin: { kind: 'number', unit: 'mm', default: 80, min: 0, max: 5000, step: 10, label: 'Bed beyond travel', doc: 'How far the bed reaches beyond what the cutter reaches, on every side: the sheet is carried that far.' },
    travelZ: { kind: 'number', unit: 'mm', default: 80, min: 5, max: 2000, step: 5, label: 'Travel along Z', doc: 'Usable travel along Z.' },
    rapidRate: { kind: 'number', unit: 'mm/min', default: 5000, min: 100, max: 100000, step: 100, label: 'Rapid rate', doc: 'Speed of rapid moves.' },
    greatestFeed: { kind: 'number', unit: 'mm/min', default: 4000, min: 50, max: 100000, step: 50, label: 'Greatest feed', doc: 'Fastest feed the machine can hold; feeds are limited to it.' },
    acceleration: { kind: 'number', unit: 'mm/s2', default: 400, min: 10, max: 20000, step: 10, label: 'Acceleration', doc: 'Acceleration of the slowest axis.' },
    cornerDeviation: { kind: 'number', unit: 'mm', default: 0.02, min: 0.001, max: 1, step: 0.005, label: 'Corner deviation', doc: 'How far the controller may round a corner; it sets the speed kept there.' },
    spindleStart: { kind: 'number', unit: 's', default: 5, min: 0, max: 60, step: 1, label: 'Spindle start', doc: 'Time the spindle needs to come up to speed.' },
    clearance: { kind: 'number', unit: 'mm', default: 10, min: 1, max: 500, step: 1, label: 'Clearance height', doc: 'Height above the sheet at which the cutter crosses it: higher than every clamp.' },
    retract: { kind: 'number', unit: 'mm', default: 2, min: 0.1, max: 100, step: 0.5, label: 'Retract height', doc: 'Height above the sheet at which rapids down stop and feeding begins.' },
    units: { kind: 'choice', options: ['mm', 'inch'], default: 'mm', label: 'Units', doc: 'Units of the programs.' },
    arcs: { kind: 'choice', options: ['centre', 'lines'], default: 'centre', label: 'Arcs', doc: 'Arcs in centre format (G2 and G3 with I and J), or short lines only.' },
    helicalArcs: { kind: 'switch', default: true, label: 'Helical arcs', doc: 'Whether an arc may move Z as well; otherwise such arcs become lines.' },
    decimals: { kind: 'number', unit: 'count', default: 4, min: 2, max: 6, step: 1, label: 'Decimals', doc: 'Decimals of a coordinate. Arcs need 4 in millimetres to keep their radius.' },
    lineNumbers: { kind: 'switch', default: false, label: 'Line numbers', doc: 'Whether each block starts with an N word.' },
    percentLines: { kind: 'switch', default: false, label: 'Percent lines', doc: 'Whether the first and last line are a percent sign.' },
    comments: { kind: 'choice', options: ['parentheses', 'none'], default: 'parentheses', label: 'Comments', doc: 'How comments are written, if at all.' },
    programEnd: { kind: 'choice', options: ['M2', 'M30'], default: 'M2', label: 'Program end', doc: 'The word that ends a program.' },
    dwellUnit: { kind: 'choice', options: ['seconds', 'milliseconds'], default: 'seconds', label: 'Dwell unit', doc: 'Unit of the dwell word P; NISTIR 6556 has seconds.' },
    longestLine: { kind: 'number', unit: 'count', default: 70, min: 40, max: 256, step: 1, label: 'Longest line', doc: 'Most characters on a line.' },
  },
  examples: [{ title: 'a small bench router', inputs: {}, params: { travelX: 900, travelY: 600 } }],
  compute(_inputs, params) {
    const { clearance, retract, units, arcs, helicalArcs, decimals, lineNumbers, percentLines, comments, programEnd, dwellUnit, longestLine, ...rest } = params;
    const controller = { units, arcs, helicalArcs, decimals, lineNumbers, percentLines, comments, programEnd, dwellUnit, longestLine };
    const problem = heightsCross(retract, clearance) ?? lineTooShort(longestLine, leastLineLength(controller));
    if (problem) return { ok: false, problems: [problem] };
    return { ok: true, outputs: { machine: { ...rest, heights: { clearance, retract }, controller } } };
  },
});

function heightsCross(retract: number, clearance: number): Problem | undefined {
  if (retract <= clearance) return undefined;
  return { place: 'retract', expected: `at most the clearance height, ${clearance} mm`, found: `${retract} mm`, advice: 'Lower the retract height or raise the clearance height.' };
}

function lineTooShort(longestLine: number, least: number): Problem | undefined {
  if (longestLine >= least) return undefined;
  return { place: 'longestLine', expected: `at least ${least} characters for an arc`, found: `${longestLine}`, advice: 'Allow longer lines, or write fewer decimals and no line numbers.' };
}
