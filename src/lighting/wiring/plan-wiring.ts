import { type Point, distance, pathEnd } from '../../geometry/index.ts';
import { keepsTo } from '../keeps-to.ts';
import { stripLength } from '../strip-length.ts';
import { ampsPerMillimetre } from '../strip.ts';
import type { Feed, LightRun, Lighting, Supply, WirePair, WireSize, Wiring } from '../types.ts';
import { warmer } from './copper.ts';
import { type Element, dropFromBoth, dropFromStart, pairDrop } from './drop.ts';
import { fuseFor, parcels, ratingFor } from './supplies.ts';

/** What the wiring is asked to be. Lengths mm. */
export interface WiringRequest {
  readonly lighting: Lighting;
  /** Sizes to choose from, thinnest first. */
  readonly sizes: readonly WireSize[];
  /** Largest rated power of one supply, W, and how much of it may be taken. */
  readonly largestSupply: number;
  readonly supplyShare: number;
  /** Most voltage lost between a supply and any module, as a share of the rated voltage. */
  readonly greatestDrop: number;
  /** How much warmer than 20 C the copper gets, K. */
  readonly copperRise: number;
  /** Wire from a supply to where its lead reaches the board, and what is spare at both ends of a wire together. */
  readonly leadLength: number;
  readonly spareWire: number;
}

/** Everything that feeds the runs; runs are fed anew where one end is not enough. */
export function planWiring(request: WiringRequest): Lighting & { readonly wiring: Wiring } {
  const { lighting } = request;
  const supplies = suppliesOf(request);
  const fed = lighting.runs.map((run, k) => bestFeed(request, run, k, supplies.find(({ runs }) => runs.includes(k))!));
  return {
    ...lighting, runs: fed.map(({ run }) => run),
    wiring: { supplies, wires: fed.flatMap(({ wires }) => wires), drops: fed.map(({ drop }) => drop) },
  };
}

/** Supplies by lead: each run belongs to the lead nearest to its feed; those of one lead share as few supplies as will do. */
function suppliesOf({ lighting: { runs, leads, strip }, largestSupply, supplyShare }: WiringRequest): Supply[] {
  const nearest = runs.map(({ feeds }) => nearestLead(leads, feeds[0]!.at));
  return leads.flatMap((at) => {
    const own = runs.map((_, k) => k).filter((k) => nearest[k] === at);
    return parcels(own.map((k) => runs[k]!.watts), largestSupply * supplyShare).map((places): Supply => {
      const fed = places.map((place) => own[place]!);
      const watts = fed.reduce((sum, k) => sum + runs[k]!.watts, 0);
      const amps = watts / strip.volts;
      return { at, ratedWatts: ratingFor(watts, supplyShare), watts, amps, fuse: fuseFor(amps), runs: fed };
    });
  });
}

const nearestLead = (leads: readonly Point[], place: Point): Point => leads.reduce((a, b) => (distance(b, place) < distance(a, place) ? b : a));

interface Fed {
  readonly run: LightRun;
  readonly wires: readonly WirePair[];
  readonly drop: number;
}

/**
 * A run fed at its start, at a joint in the middle, or at both ends: the first of these for which a wire that its supply's fuse protects keeps to the
 * drop, and the thinnest such wire. Where none does, both ends and the thickest.
 */
function bestFeed(request: WiringRequest, run: LightRun, index: number, supply: Supply): Fed {
  const limit = request.greatestDrop * request.lighting.strip.volts;
  const safe = request.sizes.filter(({ ampacity }) => ampacity >= supply.fuse);
  const sizes = safe.length > 0 ? safe : request.sizes.slice(-1);
  for (const feeds of feedings(run)) {
    if (feeds.length === 1 && !keepsTo(run.amps, request.lighting.strip.greatestCurrent) && feeds[0]!.joint === 0) continue;
    for (const size of sizes) {
      const fed = feedRun(request, { ...run, feeds }, index, supply, size);
      if (fed.drop <= limit) return fed;
    }
  }
  return feedRun(request, { ...run, feeds: feedings(run).at(-1)! }, index, supply, sizes.at(-1)!);
}

/** Ways to feed a run, the one with least wire first. */
function feedings({ pieces, jumpers, feeds: [start] }: LightRun): (readonly Feed[])[] {
  const end: Feed = { joint: pieces.length, at: pathEnd(pieces.at(-1)!.path) };
  const joints = jumpers.map(({ from }, i): Feed => ({ joint: i + 1, at: from }));
  const load = (joint: number) => stripLength(pieces.slice(0, joint));
  const half = load(pieces.length) / 2;
  const middle = joints.reduce<Feed | undefined>((best, one) => (best && Math.abs(load(best.joint) - half) <= Math.abs(load(one.joint) - half) ? best : one), undefined);
  return [[start!], ...(middle ? [[middle]] : []), [start!, end]];
}

function feedRun(request: WiringRequest, run: LightRun, index: number, supply: Supply, size: WireSize): Fed {
  const ohmsPerKm = warmer(size.ohmsPerKm, request.copperRise);
  const elements = elementsOf(request, run, ohmsPerKm);
  const lengths = run.feeds.map(({ at }) => request.leadLength + distance(supply.at, at) + request.spareWire);
  const shared = shareCurrent(elements, run, lengths.map((length) => pairDrop(length, ohmsPerKm, 1)));
  const feeds = run.feeds.map(({ at }, place) => pairOf({ kind: 'feed', run: index, place, from: supply.at, to: at, length: lengths[place]!, size, amps: shared.amps[place]! }, ohmsPerKm));
  const jumpers = run.jumpers.map((jumper, place) => pairOf({ ...jumper, kind: 'jumper', run: index, place, size, amps: jumperAmps(run, shared.amps, place) }, ohmsPerKm));
  return { run, wires: [...feeds, ...jumpers], drop: shared.drop };
}

const pairOf = (pair: Omit<WirePair, 'drop'>, ohmsPerKm: number): WirePair => ({ ...pair, drop: pairDrop(pair.length, ohmsPerKm, pair.amps) });

/** Strip and jumpers in turn, from the run's start. */
function elementsOf({ lighting: { strip }, copperRise }: WiringRequest, { pieces, jumpers }: LightRun, ohmsPerKm: number): Element[] {
  const rail = warmer(strip.railResistance / 1000, copperRise);
  return pieces.flatMap(({ cutLength }, i): Element[] => {
    const piece = { resistance: cutLength * rail, amps: cutLength * ampsPerMillimetre(strip) };
    const jumper = jumpers[i];
    return jumper ? [piece, { resistance: pairDrop(jumper.length, ohmsPerKm, 1), amps: 0 }] : [piece];
  });
}

/** Currents at the feeds, A, and the most voltage lost anywhere, V. */
function shareCurrent(elements: readonly Element[], { feeds, amps }: LightRun, wires: readonly number[]): { readonly amps: readonly number[]; readonly drop: number } {
  if (feeds.length > 1) {
    const { first, second, drop } = dropFromBoth(elements, wires[0]!, wires[1]!);
    return { amps: [first, second], drop };
  }
  // Between two pieces lies a jumper; a feed at its near end sends the current of what follows through it.
  const { joint } = feeds[0]!;
  const at = joint === 0 ? 0 : 2 * joint - 1;
  const sides = [elements.slice(0, at).reverse(), elements.slice(at)];
  return { amps: [amps], drop: wires[0]! * amps + Math.max(...sides.map(dropFromStart)) };
}

/** Current through the jumper behind piece `place`: what lies beyond it, seen from the feed. */
function jumperAmps({ pieces, feeds, amps }: LightRun, fed: readonly number[], place: number): number {
  const total = stripLength(pieces);
  const before = (amps * stripLength(pieces.slice(0, place + 1))) / total;
  if (feeds.length > 1) return Math.abs(fed[0]! - before);
  return feeds[0]!.joint > place + 1 ? before : amps - before;
}
