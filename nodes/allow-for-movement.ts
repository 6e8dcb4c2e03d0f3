import '../src/values/types.ts';
import { asSlot, asWideHole, fixedHole, type Hole, movementAt, sparePlay } from '../src/machining/index.ts';
import { defineNode } from '../src/runtime/index.ts';
import { type Check, atLeast } from '../src/values/check.ts';

const hole = (x: number): Hole => ({ centre: { x, y: 50 }, diameter: 5, purpose: 'mounting' });

export default defineNode({
  name: 'allow-for-movement',
  title: 'Allow for movement',
  doc: 'Lets the board grow and shrink on its screws: the mounting hole nearest to the middle stays as it is, the others become slots that point at it, or larger holes. Acrylic grows 0.7 mm per metre and 10 degrees, about three times as much as metal.',
  inputs: { holes: { type: 'holes', many: true, doc: 'The holes; only those for mounting are changed.' } },
  outputs: {
    holes: { type: 'holes', doc: 'The holes as they should be made.' },
    checks: { type: 'checks', doc: 'The least play that is left at any mounting hole.' },
    quantities: { type: 'quantities', doc: 'The largest movement at a mounting hole, each way.' },
  },
  params: {
    make: { kind: 'choice', options: ['slots', 'larger holes', 'no change'], default: 'slots', label: 'Make', doc: 'What is made of the mounting holes.' },
    screw: { kind: 'number', unit: 'mm', default: 4, min: 0.5, max: 50, step: 0.5, label: 'Screw diameter', doc: 'Diameter of the screws. Fit them firm, then back them off a turn.' },
    kelvin: { kind: 'number', unit: 'K', default: 25, min: 0, max: 80, step: 1, label: 'Change of temperature', doc: 'How much warmer or colder than at its fitting the sign may become, each way.' },
    fixed: { kind: 'points', default: [], label: 'Fixed hole', doc: 'The mounting hole nearest to this place stays fixed; none: the one nearest to the middle of all.' },
  },
  handles: [{ kind: 'places', param: 'fixed', doc: 'Put or drag the place of the hole that stays fixed.' }],
  examples: [{ title: 'three holes in a row of two metres', inputs: { holes: [[hole(0), hole(1000), hole(2000)]] } }],
  compute({ holes }, { make, screw, kelvin, fixed }) {
    const all = holes.flat();
    const mounting = all.filter(({ purpose }) => purpose === 'mounting');
    if (mounting.length === 0) return { ok: true, outputs: { holes: all, checks: [], quantities: {} } };
    const movement = { screw, kelvin };
    const anchor = mounting[fixed[0] ? nearest(mounting, fixed[0]) : fixedHole(mounting)]!;
    const made = all.map((one) => (one.purpose !== 'mounting' || one === anchor || make === 'no change' ? one : make === 'slots' ? asSlot(one, anchor.centre, movement) : asWideHole(one, anchor.centre, movement)));
    const moved = made.filter((one) => one.purpose === 'mounting' && one !== anchor);
    return {
      ok: true,
      outputs: {
        holes: made, checks: playCheck(moved, anchor, movement),
        quantities: { largestMovement: { value: Math.max(0, ...moved.map(({ centre }) => movementAt(Math.hypot(centre.x - anchor.centre.x, centre.y - anchor.centre.y), kelvin))), unit: 'mm' } },
      },
    };
  },
});

function nearest(holes: readonly Hole[], place: { readonly x: number; readonly y: number }): number {
  const away = holes.map(({ centre }) => Math.hypot(centre.x - place.x, centre.y - place.y));
  return away.indexOf(Math.min(...away));
}

function playCheck(moved: readonly Hole[], { centre }: Hole, movement: { readonly screw: number; readonly kelvin: number }): Check[] {
  if (moved.length === 0) return [];
  const plays = moved.map((one) => ({ one, mm: sparePlay(one, centre, movement) }));
  const least = plays.reduce((a, b) => (b.mm < a.mm ? b : a));
  return [atLeast({
    check: 'thermal-play', subject: 'Least play left at a mounting hole when the board has moved', value: least.mm, limit: 0, unit: 'mm', at: least.one.centre,
    advice: 'Make slots or larger holes, or thinner screws; a board that binds on its screws cracks.',
  }, 'caution')];
}
