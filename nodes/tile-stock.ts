import '../src/values/types.ts';
import { type AxisPlan, type FeatureKind, type SeamClearance, type TilingPlan, planTiling } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { type Check, amount, atLeast, atMost } from '../src/values/check.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK } from '../src/values/examples.ts';

/** Grooves crossed at a smaller angle leave long tips at the seam, degrees (common practice, no source). */
const LEAST_ANGLE = 30;

export default defineNode({
  name: 'tile-stock',
  title: 'Tile the sheet',
  doc: 'Divides a sheet longer than the machine into set-ups: the fewest its travel allows, with seams where they cross the fewest grooves, squarely, and clear of holes, stroke ends, tight bends and grooves that run along them. A sheet that fits is one set-up without a seam.',
  inputs: {
    stock: { type: 'stock', doc: 'The sheet.' },
    machine: { type: 'machine', doc: 'The machine, for its travel along X and Y.' },
    cutters: { type: 'cutter', many: true, doc: 'All cutters: the widest says how far set-ups overlap.' },
    board: { type: 'region', optional: true, doc: 'The board that is cut out.' },
    channel: { type: 'channel', optional: true, doc: 'The groove.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'All holes.' },
  },
  outputs: {
    tiling: { type: 'tiling', doc: 'The set-ups in the order they run, and the seams between them.' },
    checks: { type: 'checks', doc: 'The reach of the set-ups against the travel; for each seam its flattest crossing and what lies nearest to it.' },
    quantities: { type: 'quantities', doc: 'Set-ups, the least possible, seams, crossings, those of evenly spaced seams, and what the seams cost.' },
  },
  params: {
    lap: { kind: 'number', unit: 'mm', default: 0, min: 0, max: 500, step: 1, label: 'Lap', doc: 'How far each set-up cuts beyond a seam. Never less than one diameter of the widest cutter; 0 is just that.' },
    seams: { kind: 'choice', options: ['planned', 'by hand'], default: 'planned', label: 'Seams', doc: 'Whether seams are planned or lie where they were put.' },
    seamsAcross: { kind: 'points', default: [], label: 'Seams across', doc: 'Places of seams that run up the sheet: of each the X counts. While there is none these seams are planned.' },
    seamsAlong: { kind: 'points', default: [], label: 'Seams along', doc: 'Places of seams that run along the sheet: of each the Y counts. While there is none these seams are planned.' },
    order: { kind: 'choice', options: ['rows', 'columns'], default: 'rows', label: 'Order', doc: 'Whether set-ups follow each other row by row or column by column where the sheet is divided both ways; always to and fro.' },
  },
  handles: [
    { kind: 'places', param: 'seamsAcross', from: 'tiling.x', axis: 'x', sets: { seams: 'by hand' }, doc: 'Drag a seam that runs up the sheet; from then on seams lie where they were put by hand.' },
    { kind: 'places', param: 'seamsAlong', from: 'tiling.y', axis: 'y', sets: { seams: 'by hand' }, doc: 'Drag a seam that runs along the sheet.' },
  ],
  examples: [
    { title: 'a sheet that fits', inputs: { stock: EXAMPLE_STOCK, machine: EXAMPLE_MACHINE, cutters: [EXAMPLE_CUTTER], board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, holes: [] } },
    { title: 'a machine half as long', inputs: { stock: EXAMPLE_STOCK, machine: { ...EXAMPLE_MACHINE, travelX: 200 }, cutters: [EXAMPLE_CUTTER], board: EXAMPLE_BOARD, channel: EXAMPLE_CHANNEL, holes: [] } },
  ],
  compute({ stock, machine, cutters, board, channel, holes }, { lap, seams, seamsAcross, seamsAlong, order }) {
    const byHand = seams === 'by hand';
    const [across, along] = [onSheet(seamsAcross.map(({ x }) => x), stock.width), onSheet(seamsAlong.map(({ y }) => y), stock.height)];
    const plan = planTiling({
      sheet: stock, travel: [machine.travelX, machine.travelY], holes: holes.flat(), cutters: cutters.map(({ diameter }) => diameter), lap, order,
      ...(board && { board }), ...(channel && { channel }),
      byHand: { ...(byHand && across.length > 0 && { x: across }), ...(byHand && along.length > 0 && { y: along }) },
    });
    if (!plan.ok) return plan;
    const off = byHand ? seamsAcross.length + seamsAlong.length - across.length - along.length : 0;
    return {
      ok: true,
      outputs: { tiling: plan.tiling, checks: [...travelChecks(plan), ...seamChecks(plan)], quantities: quantitiesOf(plan) },
      cautions: [...(off > 0 ? [offSheet(off)] : []), ...(plan.idle > 0 ? [leftOut(plan.idle)] : []), ...plan.clearances.filter(isDisturbing).map((one) => disturbance(one, plan))],
    };
  },
});

const onSheet = (places: readonly number[], length: number): number[] => places.filter((place) => place > 0 && place < length);

function travelChecks({ axes, tiling }: TilingPlan): Check[] {
  return axes.map(({ axis, widest: { reach, index } }, i) => {
    const tile = tiling.tiles.find(({ column, row }) => (axis === 'x' ? column : row) === index);
    return atMost({
      check: `set-up-reach-${axis}`, value: hundredths(reach), limit: tiling.travel[i]!, unit: 'mm', subject: `Widest reach along ${axis.toUpperCase()}, in ${tile?.name ?? 'no set-up'}`,
      advice: 'Move its seams closer together or add one.',
      ...(tile && { at: { x: (tile.core.minX + tile.core.maxX) / 2, y: (tile.core.minY + tile.core.maxY) / 2 } }),
    });
  });
}

function seamChecks({ tiling, clearances }: TilingPlan): Check[] {
  return tiling.seams.flatMap(({ axis, at, crossings }, i) => {
    const name = `Seam ${i + 1} at ${axis.toUpperCase()} ${amount(at, 'mm')}`;
    const flattest = crossings.reduce((a, b) => (b.angle < a.angle ? b : a), crossings[0] ?? { at: undefined, angle: 90 });
    const { distance, wanted, feature } = clearances[i]!;
    const count = crossings.length === 1 ? '1 groove' : `${crossings.length} grooves`;
    return [
      atLeast({
        check: `seam-${i + 1}-angle`, value: hundredths(flattest.angle), limit: LEAST_ANGLE, unit: 'deg', ...(flattest.at && { at: flattest.at }),
        subject: `${name} crosses ${count}, the flattest at`, advice: 'Move the seam to where it crosses squarely.',
      }, 'caution'),
      ...(feature ? [atLeast({
        check: `seam-${i + 1}-clear`, value: hundredths(Math.max(0, distance)), limit: hundredths(wanted), unit: 'mm', at: feature.at,
        subject: `${name}, from the nearest ${FEATURES[feature.kind]}`, advice: 'Move the seam away from it.',
      }, 'caution')] : []),
    ];
  });
}

const FEATURES: Readonly<Record<FeatureKind, string>> = {
  hole: 'hole', crossing: 'crossing of grooves', end: 'end of a stroke', bend: 'tight bend', along: 'groove that runs along it', edge: 'edge of the board that runs along it',
};

function quantitiesOf({ tiling, axes, idle }: TilingPlan) {
  const count = (value: number) => ({ value, unit: 'count' });
  const sum = (of: (axis: AxisPlan) => number) => axes.reduce((total, axis) => total + of(axis), 0);
  return {
    setUps: count(tiling.tiles.length),
    setUpsLeast: count(axes[0].least * axes[1].least - (axes.some(({ byHand }) => byHand) ? 0 : idle)),
    seams: count(tiling.seams.length),
    seamCrossings: count(tiling.seams.reduce((total, { crossings }) => total + crossings.length, 0)),
    seamCrossingsEvenly: count(sum(({ evenCrossings }) => evenCrossings)),
    seamCost: { value: tiling.seams.reduce((total, { cost }) => total + cost, 0), unit: '' },
  };
}

const isDisturbing = ({ distance, wanted }: SeamClearance): boolean => distance < wanted;

function disturbance({ seam, distance, wanted, feature, disturbed }: SeamClearance, { tiling, axes }: TilingPlan): Problem {
  const { axis, at } = tiling.seams[seam]!;
  const byHand = axes.find((one) => one.axis === axis)!.byHand;
  const { x, y } = feature!.at;
  return {
    place: byHand ? (axis === 'x' ? 'seamsAcross' : 'seamsAlong') : 'seams',
    expected: `seam ${seam + 1} at least ${amount(wanted, 'mm')} from holes, crossings and ends of grooves, tight bends, and what runs along it`,
    found: `${amount(Math.max(0, distance), 'mm')} from the ${FEATURES[feature!.kind]} at (${x.toFixed(1)}, ${y.toFixed(1)}) mm${disturbed > 1 ? `, and ${disturbed - 1} more too near` : ''}`,
    advice: byHand ? `Move the seam at ${axis.toUpperCase()} ${amount(at, 'mm')}.` : 'No plan of so few set-ups has all its seams clear; this is the least bad. Look at the place, or put seams by hand.',
  };
}

const offSheet = (count: number): Problem => ({ place: 'seams', expected: 'seams on the sheet', found: `${count} beside it`, advice: 'They are left out; move them onto the sheet.' });

const leftOut = (count: number): Problem => ({ place: 'stock', expected: 'work in every part of the sheet', found: `${count} ${count === 1 ? 'part' : 'parts'} with nothing to cut`, advice: 'There is no set-up for it.' });

const hundredths = (value: number): number => Math.round(value * 100) / 100;
