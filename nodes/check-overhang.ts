import '../src/values/types.ts';
import { bedOf, carriedSag, LOW_MODULUS, MODULUS, peopleToLift, sheetWeight, type SideOverhang, sideOverhangs, type Support, type Tiling, tippingForce } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, atMost } from '../src/values/check.ts';
import { EXAMPLE_MACHINE, EXAMPLE_STOCK, EXAMPLE_TILING } from '../src/values/examples.ts';

export default defineNode({
  name: 'check-overhang',
  title: 'Check overhang',
  doc: 'Tells, set-up by set-up, how the sheet hangs over the bed\'s edge: how far it sags and slopes, how far it lifts off the bed behind the edge, whether it would tip. Figures are for the first minutes: acrylic creeps, and sags further within hours.',
  inputs: {
    tiling: { type: 'tiling', doc: 'The set-ups.' },
    stock: { type: 'stock', doc: 'The sheet.' },
    machine: { type: 'machine', doc: 'The machine, for its bed.' },
    holding: { type: 'holding', optional: true, doc: 'Supports beside the bed.' },
  },
  outputs: {
    checks: { type: 'checks', doc: 'The largest sag as carried, the largest lift behind the edge as it lies free, and whether anything tips.' },
    quantities: { type: 'quantities', doc: 'Weight of the sheet, people to lift it, longest overhang, sag and slope without supports, force that keeps it from tipping.' },
  },
  params: {
    greatestSag: { kind: 'number', unit: 'mm', default: 5, min: 0.1, max: 100, step: 0.5, label: 'Greatest sag', doc: 'Sag that is allowed where the sheet hangs over the bed.' },
    modulus: { kind: 'number', unit: 'MPa', default: MODULUS, min: LOW_MODULUS / 2, max: 4000, step: 20, label: 'Flexural modulus', doc: `Stiffness of the sheet. Cast acrylic has about ${MODULUS} MPa, at least ${LOW_MODULUS}; after a hundred hours under load some 70 to 80 % of it.` },
  },
  examples: [{
    title: 'a sheet that lies on the bed',
    inputs: {
      tiling: EXAMPLE_TILING,
      stock: EXAMPLE_STOCK, machine: EXAMPLE_MACHINE, holding: undefined,
    },
  }],
  compute({ tiling, stock, machine, holding }, { greatestSag, modulus }) {
    const hangs = sideOverhangs(stock, tiling.tiles, bedOf(tiling, machine.bedMargin), modulus);
    const supports = holding?.supports ?? [];
    const weight = sheetWeight(stock);
    return {
      ok: true,
      outputs: {
        checks: hangs.length > 0 ? [sagCheck(hangs, supports, greatestSag, tiling), ...tipChecks(hangs, supports, tiling)] : [],
        quantities: { sheetWeightToLift: { value: weight, unit: 'kg' }, peopleToLift: { value: peopleToLift(weight), unit: 'count' }, ...freely(hangs) },
      },
      cautions: hangs.filter(({ tips }) => tips).map((hang) => tipping(hang, tiling)),
    };
  },
});

const worstBy = <T>(all: readonly T[], measure: (one: T) => number): T => all.reduce((a, b) => (measure(b) > measure(a) ? b : a));
const nameOf = ({ setUp }: SideOverhang, { tiles }: Tiling): string => tiles[setUp]!.name;

function sagCheck(hangs: readonly SideOverhang[], supports: readonly Support[], limit: number, tiling: Tiling): Check {
  const worst = worstBy(hangs, (hang) => carriedSag(hang, supports));
  return atMost({
    check: 'overhang-sag', subject: `Largest sag beside the bed (${nameOf(worst, tiling)}, ${worst.side})`, value: carriedSag(worst, supports), limit, unit: 'mm',
    advice: 'Add a support beside the bed, or move one.',
  });
}

/** A sheet that tips is carried if a support stands beyond the bed on that side. */
function tipChecks(hangs: readonly SideOverhang[], supports: readonly Support[], tiling: Tiling): Check[] {
  const tipped = hangs.filter((hang) => hang.tips && !supports.some(({ setUp, axis }) => setUp === hang.setUp && axis === hang.axis));
  return [atMost({
    check: 'overhang-tips', subject: `Set-ups in which the sheet tips over the bed's edge${tipped[0] ? ` (${nameOf(tipped[0], tiling)}, ${tipped[0].side})` : ''}`, value: tipped.length, limit: 0, unit: 'count',
    advice: 'Put a support beside the bed before the sheet is laid on it.',
  })];
}

function freely(hangs: readonly SideOverhang[]) {
  if (hangs.length === 0) return {};
  const most = (measure: (hang: SideOverhang) => number) => Math.max(...hangs.map(measure));
  return {
    longestOverhang: { value: most(({ beyond }) => beyond), unit: 'mm' }, freeSag: { value: most(({ free }) => free.tip), unit: 'mm' },
    freeSlope: { value: most(({ free }) => free.slope), unit: 'deg' }, freeLift: { value: most(({ free }) => free.lift), unit: 'mm' },
  };
}

function tipping(hang: SideOverhang, tiling: Tiling): Problem {
  const behind = Math.min(hang.onBed, 100);
  return {
    expected: `the sheet's middle on the bed in ${nameOf(hang, tiling)}`, found: `${hang.beyond.toFixed(0)} mm of it beyond the ${hang.side} edge; held ${behind.toFixed(0)} mm behind the edge it pulls with ${tippingForce(hang, behind).toFixed(0)} N`,
    advice: 'Stand the supports beside the bed first, and lay the sheet on with a helper at its far end.',
  };
}
