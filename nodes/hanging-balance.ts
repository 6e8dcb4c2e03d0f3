import '../src/values/types.ts';
import { type Point, regionBounds } from '../src/geometry/index.ts';
import { boardMass, clearArea, GRAVITY, type Hole, levelPair, loadShares, type Mass, outsideFixings } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, type Quantities, atLeast, atMost } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_STOCK } from '../src/values/examples.ts';

export default defineNode({
  name: 'hanging-balance',
  title: 'Hanging balance',
  doc: 'Finds the centre of mass of the board, where two hangers keep it level, and what each fixing carries. Forces are for a board at rest: wind, knocks and the wall come on top, and local code and the people licensed under it decide how a sign is fixed.',
  inputs: {
    board: { type: 'region', doc: 'The board.' },
    channel: { type: 'channel', optional: true, doc: 'The groove: it takes weight away, and hangers keep clear of it.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'All holes of the board; it may hang by those for mounting.' },
    stock: { type: 'stock', doc: 'The sheet, for thickness and density.' },
  },
  outputs: {
    holes: { type: 'holes', doc: 'The hangers that were found or put by hand, as holes to be made; none when the board hangs by holes it has.' },
    checks: { type: 'checks', doc: 'Whether the weight lies between the fixings, two hang at one height above the centre of mass, and what the most loaded must bear.' },
    quantities: { type: 'quantities', doc: 'Weight as it hangs, centre of mass, loads on the fixings.' },
  },
  params: {
    hangBy: { kind: 'choice', options: ['two level hangers', 'mounting holes', 'by hand'], default: 'two level hangers', label: 'Hang by', doc: 'Two hangers found here, as far to the left of the centre of mass as to the right; the holes for mounting; or places put by hand.' },
    share: { kind: 'number', unit: 'ratio', default: 0.5, min: 0.05, max: 1, step: 0.05, label: 'Spacing', doc: 'Distance between two level hangers as a share of the board\'s width; it changes as little as it must.' },
    diameter: { kind: 'number', unit: 'mm', default: 6, min: 0.5, max: 200, step: 0.1, label: 'Hole diameter', doc: 'Diameter of the holes for hangers.' },
    edgeDistance: { kind: 'number', unit: 'mm', default: 15, min: 0, max: 1000, step: 1, label: 'Edge distance', doc: 'Least distance from a hanger to the edge of the board; twice the diameter is common practice.' },
    grooveDistance: { kind: 'number', unit: 'mm', default: 8, min: 0, max: 1000, step: 1, label: 'Groove distance', doc: 'Least material between a hanger\'s hole and a groove or another hole.' },
    places: { kind: 'points', default: [], label: 'Places', doc: 'Hangers put by hand.' },
    filling: { kind: 'number', unit: 'kg/m', default: 0.1, min: 0, max: 10, step: 0.01, label: 'Tube and strip', doc: 'What lies in the groove, by its length; 100 g/m for a tube of some 10 mm with its strip (common practice, no source).' },
    safety: { kind: 'number', unit: 'ratio', default: 4, min: 1, max: 20, step: 0.5, label: 'Safety factor', doc: 'The load at rest is taken so many times; 4 is common practice without a source, local code may ask for more.' },
    rated: { kind: 'number', unit: 'N', default: 100, min: 0, max: 100000, step: 10, label: 'A fixing bears', doc: 'What one fixing may carry in this wall by its maker\'s sheet; 100 N is a small plug in sound masonry (common practice, no source).' },
  },
  handles: [{
    kind: 'places', param: 'places', from: 'holes', sets: { hangBy: 'by hand' },
    doc: 'Drag a hanger, add one, or take one away; from the first change on, hangers are where they were put by hand.',
  }],
  examples: [{ title: 'a small board with one groove', inputs: { board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, holes: [], stock: EXAMPLE_STOCK } }],
  compute({ board, channel, holes, stock }, { hangBy, share, diameter, edgeDistance, grooveDistance, places, filling, safety, rated }) {
    const all = holes.flat();
    const mass = boardMass({ board, channel, holes: all, stock, filling });
    const box = regionBounds(board);
    if (!box || !mass.centre) return { ok: false, problems: [{ expected: 'a board that weighs something', found: 'none', advice: 'Wire the board to this node.' }] };
    const { centre } = mass;
    const found: Record<typeof hangBy, () => readonly Point[]> = {
      'two level hangers': () => levelPair(clearArea(board, channel?.region, all, { edgeDistance, apart: grooveDistance + diameter / 2, tolerance: 0.01 }), centre, share * (box.maxX - box.minX)) ?? [],
      'mounting holes': () => all.filter(({ purpose }) => purpose === 'mounting').map((hole) => hole.centre),
      'by hand': () => places,
    };
    const fixings = found[hangBy]();
    if (fixings.length === 0) return { ok: false, problems: [NOTHING[hangBy]] };
    const made: readonly Hole[] = hangBy === 'mounting holes' ? [] : fixings.map((place) => ({ centre: place, diameter, purpose: 'mounting' }));
    return { ok: true, outputs: { holes: made, ...reckoned({ fixings, mass: { ...mass, centre }, safety, rated, named: made.length > 0 }) } };
  },
});

const NOTHING: Readonly<Record<'two level hangers' | 'mounting holes' | 'by hand', Problem>> = {
  'two level hangers': { place: 'edgeDistance', expected: 'two clear places at one height above the centre of mass', found: 'none', advice: 'Lower the edge and groove distances, widen the board\'s margin, or put hangers by hand.' },
  'mounting holes': { place: 'hangBy', expected: 'mounting holes', found: 'none', advice: 'Wire the mounting holes to this node, or let it find two level hangers.' },
  'by hand': { place: 'places', expected: 'at least one hanger', found: 'none', advice: 'Put hangers on the picture, or let two be found.' },
};

interface Hung {
  readonly fixings: readonly Point[];
  readonly mass: Mass & { readonly centre: Point };
  readonly safety: number;
  readonly rated: number;
  /** Whether each fixing's load is told, or only the least and the greatest. */
  readonly named: boolean;
}

function reckoned(hung: Hung): { checks: Check[]; quantities: Quantities } {
  const { fixings, mass: { kg, centre }, safety, named } = hung;
  const loads = loadShares(fixings, centre).map((share) => share * kg * GRAVITY);
  const newtons = (value: number) => ({ value, unit: 'N' });
  return {
    checks: [...hangsChecks(hung), loadCheck(hung, loads)],
    quantities: {
      hungWeight: { value: kg, unit: 'kg' }, centreOfMassX: { value: centre.x, unit: 'mm' }, centreOfMassY: { value: centre.y, unit: 'mm' },
      fixings: { value: fixings.length, unit: 'count' }, leastFixingLoad: newtons(Math.min(...loads)), greatestFixingLoad: newtons(Math.max(...loads)),
      designFixingLoad: newtons(Math.max(...loads) * safety),
      ...(named && Object.fromEntries(loads.map((load, i) => [`hanger${i + 1}Load`, newtons(load)]))),
    },
  };
}

/** Hangers may differ by this in height before a board on equal cords is seen to lean, mm (common practice, no source). */
const LEVEL = 1;

function hangsChecks({ fixings, mass: { centre } }: Hung): Check[] {
  const outside = atMost({
    check: 'weight-between-fixings', subject: 'Distance of the centre of mass beyond the outermost fixing', value: outsideFixings(fixings, centre), limit: 0, unit: 'mm', at: centre,
    advice: 'Put fixings on both sides of the centre of mass: the board would turn.',
  });
  if (fixings.length !== 2) return [outside];
  const [a, b] = fixings as [Point, Point];
  const level = atMost({ check: 'hangers-level', subject: 'Difference in height of the two hangers', value: Math.abs(a.y - b.y), limit: LEVEL, unit: 'mm', at: a, advice: 'Put both at one height, or make their cords as different.' }, 'caution');
  const above = atLeast({
    check: 'hangers-above-centre', subject: 'Height of the lower hanger above the centre of mass', value: Math.min(a.y, b.y) - centre.y, limit: 0, unit: 'mm', at: centre,
    advice: 'Move the hangers up: a board hung below its centre of mass turns over.',
  }, 'caution');
  return [outside, level, above];
}

function loadCheck({ fixings, safety, rated }: Hung, loads: readonly number[]): Check {
  const most = Math.max(...loads);
  return atMost({
    check: 'fixing-load', subject: `Design load of the most loaded fixing, ${safety} times its share of the weight (local code decides)`, value: most * safety, limit: rated, unit: 'N', at: fixings[loads.indexOf(most)]!,
    advice: 'Use more or stronger fixings by their maker\'s sheet for this wall; ask a licensed person.',
  }, 'caution');
}
