import '../src/values/types.ts';
import { boxHolds, emptyRegion } from '../src/geometry/index.ts';
import { bedOf, cutRoom, type HeldArea, type HoldDown, type Holding, planHoldDowns, type SideOverhang, sideOverhangs, type Support, supportsFor, type Tiling } from '../src/machining/index.ts';
import { type Problem, defineNode } from '../src/runtime/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CUTTER, EXAMPLE_MACHINE, EXAMPLE_STOCK, EXAMPLE_TILING } from '../src/values/examples.ts';

export default defineNode({
  name: 'hold-down',
  title: 'Hold the sheet',
  doc: 'Plans how the sheet is held and carried in every set-up: screws or clamps in the waste, each with a disc that the cutter keeps out of, or tape or vacuum under the board; and supports beside the bed where the sheet would sag.',
  inputs: {
    tiling: { type: 'tiling', doc: 'The set-ups.' },
    stock: { type: 'stock', doc: 'The sheet.' },
    machine: { type: 'machine', doc: 'The machine, for its bed.' },
    cutters: { type: 'cutter', many: true, doc: 'All cutters: the widest says how much room the cut round the board takes.' },
    board: { type: 'region', optional: true, doc: 'The board: what lies outside it is waste.' },
    holes: { type: 'holes', many: true, optional: true, doc: 'Holes to keep clear of, those for pins among them.' },
  },
  outputs: {
    holding: { type: 'holding', doc: 'Hold-downs, held areas and supports.' },
    quantities: { type: 'quantities', doc: 'How many hold-downs and supports there are in all set-ups together.' },
  },
  params: {
    by: { kind: 'choice', options: ['screws', 'clamps', 'tape', 'vacuum'], default: 'screws', label: 'Hold by', doc: 'Screws stand in the waste, clamps on the sheet\'s edge; tape and vacuum hold the board from below and are in nobody\'s way.' },
    where: { kind: 'choice', options: ['planned', 'by hand'], default: 'planned', label: 'Places', doc: 'Whether screws or clamps are planned or stand where they were put.' },
    places: { kind: 'points', default: [], label: 'Places by hand', doc: 'Where screws or clamps stand on the sheet, in every set-up in which that place lies on the bed.' },
    keepOut: { kind: 'number', unit: 'mm', default: 30, min: 1, max: 500, step: 1, label: 'Keep-out diameter', doc: 'Diameter of the disc round each one that cutter and collet keep out of.' },
    height: { kind: 'number', unit: 'mm', default: 6, min: 0, max: 500, step: 1, label: 'Height', doc: 'How high a screw or clamp stands above the sheet; rapids at the clearance height must pass over it.' },
    pitch: { kind: 'number', unit: 'mm', default: 300, min: 50, max: 5000, step: 10, label: 'Pitch', doc: 'Greatest distance wished for between neighbours.' },
    sag: { kind: 'number', unit: 'mm', default: 2, min: 0.1, max: 100, step: 0.1, label: 'Greatest sag', doc: 'Supports beside the bed are planned so that the sheet sags by no more.' },
    carry: { kind: 'choice', options: ['planned', 'by hand'], default: 'planned', label: 'Supports', doc: 'Whether supports are planned or stand where they were put.' },
    supportsAcross: { kind: 'points', default: [], label: 'Supports across', doc: 'Places of bars that run up the sheet and carry it left and right of the bed: of each the X counts, in every set-up in which it lies beyond the bed. While there is none these supports are planned.' },
    supportsAlong: { kind: 'points', default: [], label: 'Supports along', doc: 'Places of bars that run along the sheet and carry it before and behind the bed: of each the Y counts. While there is none these supports are planned.' },
  },
  handles: [
    { kind: 'places', param: 'places', from: 'holding.down', sets: { where: 'by hand' }, doc: 'Drag a screw or clamp; from then on they stand where they were put by hand.' },
    { kind: 'places', param: 'supportsAcross', from: 'holding.x', axis: 'x', sets: { carry: 'by hand' }, doc: 'Drag a support that runs up the sheet.' },
    { kind: 'places', param: 'supportsAlong', from: 'holding.y', axis: 'y', sets: { carry: 'by hand' }, doc: 'Drag a support that runs along the sheet.' },
  ],
  examples: [{
    title: 'a small sheet on the bed',
    inputs: {
      tiling: EXAMPLE_TILING,
      stock: EXAMPLE_STOCK, machine: EXAMPLE_MACHINE, cutters: [EXAMPLE_CUTTER], board: EXAMPLE_BOARD, holes: [],
    },
  }],
  compute({ tiling, stock, machine, cutters, board = emptyRegion, holes }, { by, where, places, keepOut, height, pitch, sag, carry, supportsAcross, supportsAlong }) {
    const bed = bedOf(tiling, machine.bedMargin);
    const kind = by === 'clamps' ? 'clamp' as const : 'screw' as const;
    const solid = by === 'screws' || by === 'clamps';
    const room = cutRoom(cutters.map(({ diameter }) => diameter));
    const planned = () => planHoldDowns({ stock, tiling, bed, board, holes: holes.flat(), kind, keepOut, height, pitch, cutRoom: room });
    const byHand = () => places.map((at): HoldDown => ({ kind, at, keepOut, height, setUps: setUpsOnBed(tiling, bed, at) }));
    const hangs = sideOverhangs(stock, tiling.tiles, bed);
    const holding: Holding = {
      holdDowns: !solid ? [] : where === 'by hand' ? byHand() : planned(),
      areas: solid ? [] : [{ kind: by === 'tape' ? 'tape' : 'vacuum', region: board } satisfies HeldArea],
      supports: hangs.flatMap((hang) => {
        const put = carry === 'by hand' ? (hang.axis === 'x' ? supportsAcross : supportsAlong).map((place) => place[hang.axis]) : [];
        return put.length > 0 ? supportsAt(hang, put) : supportsFor(hang, sag);
      }),
    };
    return {
      ok: true,
      outputs: { holding, quantities: { holdDowns: { value: holding.holdDowns.length, unit: 'count' }, supports: { value: holding.supports.length, unit: 'count' } } },
      cautions: solid ? unheld(tiling, holding) : [],
    };
  },
});

/** Bars put by hand, those of them that stand beside the bed on this side and under the sheet. */
function supportsAt(hang: SideOverhang, places: readonly number[]): Support[] {
  const low = hang.side === 'left' || hang.side === 'front';
  return places.filter((at) => (low ? at < hang.edge && at > hang.edge - hang.beyond : at > hang.edge && at < hang.edge + hang.beyond))
    .map((at) => ({ setUp: hang.setUp, axis: hang.axis, at, length: hang.across }));
}

function setUpsOnBed({ tiles }: Tiling, bed: ReturnType<typeof bedOf>, at: { readonly x: number; readonly y: number }): number[] {
  return tiles.flatMap(({ shift: [dx, dy] }, setUp) => (boxHolds(bed, { x: at.x - dx, y: at.y - dy }) ? [setUp] : []));
}

function unheld({ tiles }: Tiling, { holdDowns }: Holding): Problem[] {
  return tiles.flatMap(({ name }, setUp) => {
    const own = holdDowns.filter(({ setUps }) => setUps?.includes(setUp)).length;
    return own >= 2 ? [] : [{
      place: 'where', expected: `at least two hold-downs in ${name}`, found: String(own),
      advice: 'Leave more waste round the board, put them by hand, or hold the sheet by tape or vacuum.',
    }];
  });
}
