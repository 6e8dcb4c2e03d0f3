import { growBox, type Point } from '../../geometry/index.ts';
import { cutterProblems, positive, refusal } from './cutter-problems.ts';
import { type Cutter } from '../job/cutter.ts';
import { type CuttingFeeds, cuttingFeeds } from './cutting-data.ts';
import { drillDown, type EntryStyle } from './entry.ts';
import { helixDropPerTurn } from '../job/feeds.ts';
import { type CutDirection, type PassPlan } from './groove-request.ts';
import { type Hole, holeEnds, holePath } from '../job/hole.ts';
import { equalLayers } from './layers.ts';
import { type Pass } from '../job/pass.ts';
import { type Caution, type MachiningProblem, millimetres, placeName } from '../job/problem.ts';
import { type Tiling } from '../job/tiling.ts';
import { makeRecorder, type Recorder } from './recorder.ts';
import { cutStroke } from './stroke-cut.ts';
import { tileAt } from './tiles.ts';
import { arcPieces, linePiece, reverseTrack, type Track, trackFromPieces, trackOf, trackPart } from './track.ts';
import { isWithinBox } from './track-within.ts';

/** The holes to make and how. Lengths mm, feeds mm/min. */
export interface HoleRequest {
  readonly holes: readonly Hole[];
  readonly cutter: Cutter;
  /** Depth of a hole that goes through the thickest sheet and into the spoilboard. */
  readonly throughDepth: number;
  /** Greatest depth drilled before the cutter is lifted out. */
  readonly peckDepth: number;
  readonly direction: CutDirection;
  /** Height above the sheet where passes begin. */
  readonly retract: number;
  /** The machine's greatest feed. */
  readonly greatestFeed: number;
  /** Where the sheet is cut in several set-ups: each hole then belongs to the one whose core holds its centre. */
  readonly tiling?: Tiling;
}

/** A hole is drilled by a cutter of its own diameter, give or take this, mm. */
const DRILL_FIT = 0.05;
/** A hole wider than its cutter by less than this fraction of the diameter is drilled, then widened by one turn at full depth. */
const WIDEN_UNDER = 0.2;
/** Largest stepover between the circles of a wide hole as a fraction of the diameter: nothing is left between them. */
const STEPOVER = 0.45;

/**
 * One pass per hole, named `hole 1`, `hole 2`, ... in the order given. A cutter of the hole's diameter drills it in
 * pecks; a thinner one bores it down a helix no steeper than its ramp angle. A hole wider than two cutters is bored away
 * whole from the inside out, layer by layer, so that no loose slug is left. A cutter wider than a hole is a problem.
 */
export function holePasses(request: HoleRequest): PassPlan {
  const { holes, cutter, throughDepth, peckDepth, greatestFeed } = request;
  const problems = [...cutterProblems({ ...request, depth: throughDepth }), ...positive('peck depth', peckDepth), ...sizeProblems(holes, cutter)];
  const refused = refusal(problems);
  if (refused) return refused;
  const feeds = cuttingFeeds(cutter, 0, greatestFeed);
  const { tiling } = request;
  const passes = holes.flatMap((hole, i) => {
    const setUp = tiling && setUpOf(hole, tiling);
    return tiling && setUp === undefined ? [] : holePass(request, hole, feeds, { name: `hole ${i + 1}`, setUp });
  });
  return { ok: true, passes, cautions: tiling ? outOfWindow(holes, tiling) : [] };
}

const setUpOf = ({ setUp, centre }: Hole, tiling: Tiling): number | undefined => setUp ?? tileAt(tiling, centre);

/** Holes that no set-up may cut whole: beyond a seam by more than the lap, or off the sheet. Who says which set-up makes a hole has seen to its reach. */
function outOfWindow(holes: readonly Hole[], tiling: Tiling): Caution[] {
  const lost = holes.filter(({ setUp }) => setUp === undefined).filter((hole) => {
    const tile = tiling.tiles[setUpOf(hole, tiling) ?? -1];
    return !tile || !holeEnds(hole).every((end) => isWithinBox(growBox(tile.window, -hole.diameter / 2), end));
  });
  return lost.map(({ centre, diameter }) => ({
    at: centre, place: placeName(centre), expected: 'a hole within one set-up', found: `one of ${millimetres(diameter)} mm that reaches beyond its set-up's lap`,
    advice: 'Move the seam away from the hole, or the hole away from the seam.',
  }));
}

/** One problem for each diameter that is too small, with the place of its first hole. */
function sizeProblems(holes: readonly Hole[], cutter: Cutter): MachiningProblem[] {
  const narrow = holes.filter(({ diameter }) => diameter < cutter.diameter - DRILL_FIT);
  return [...new Set(narrow.map(({ diameter }) => diameter))].map((size) => {
    const alike = narrow.filter(({ diameter }) => diameter === size);
    const others = alike.length > 1 ? ` and ${alike.length - 1} more` : '';
    return {
      place: `hole at ${placeName(alike[0]!.centre)}${others}`, expected: `a cutter of at most ${millimetres(size)} mm, the hole's diameter`,
      found: `${millimetres(cutter.diameter)} mm`, advice: 'Choose a thinner cutter for the holes or make the hole wider.',
    };
  });
}

interface PassOwner {
  readonly name: string;
  readonly setUp: number | undefined;
}

function holePass(request: HoleRequest, hole: Hole, feeds: CuttingFeeds, { name, setUp }: PassOwner): Pass[] {
  const { centre, diameter } = hole;
  const { cutter, retract, throughDepth, peckDepth } = request;
  const style: EntryStyle = { cutter, feeds };
  const recorder = makeRecorder({ kind: 'hole', name, cutter, retract, plungeFeed: feeds.plunge, ...(setUp !== undefined && { setUp }) });
  const radius = (diameter - cutter.diameter) / 2;
  if (hole.slot) {
    cutSlot(recorder, request, hole, style);
  } else if (diameter - cutter.diameter < WIDEN_UNDER * cutter.diameter) {
    recorder.comeDown(centre, 0);
    drillDown(recorder, -throughDepth, style, peckDepth);
    if (diameter > cutter.diameter + DRILL_FIT) widen(recorder, request, circleTrack(centre, radius, request.direction), centre, style);
  } else {
    bore(recorder, request, boreRadii(radius, cutter.diameter).map((r) => circleTrack(centre, r, request.direction)), style);
  }
  return recorder.passes();
}

/** A slot as wide as the cutter is cut along its middle; a wider one as a wide hole is, from the inside out. */
function cutSlot(recorder: Recorder, request: HoleRequest, hole: Hole, style: EntryStyle): void {
  const { cutter, throughDepth, direction } = request;
  const radius = (hole.diameter - cutter.diameter) / 2;
  if (2 * radius <= DRILL_FIT) {
    const [start, end] = holeEnds(hole);
    const track = trackFromPieces([linePiece(start, end)], false);
    cutStroke(recorder, { start, track }, equalLayers(0, -throughDepth, cutter.depthOfCut), style);
    return;
  }
  const tracks = boreRadii(radius, cutter.diameter).map((r) => trackOf(holePath({ ...hole, diameter: 2 * r })));
  bore(recorder, request, direction === 'climb' ? tracks : tracks.map(reverseTrack), style);
}

/** Takes the thin rest of a drilled hole away in one turn at full depth, and comes back to the middle. */
function widen(recorder: Recorder, { throughDepth }: HoleRequest, circle: Track, centre: Point, { feeds }: EntryStyle): void {
  const z = -throughDepth;
  recorder.lineTo({ ...circle.pieces[0]!.from, z }, feeds.cut);
  recorder.along(circle, z, feeds.cut);
  recorder.lineTo({ ...centre, z }, feeds.cut);
}

/** Radii of the circles that clear a hole whose outermost circle has this radius: even steps, so small that nothing is left. */
export function boreRadii(radius: number, diameter: number): number[] {
  const count = Math.max(1, Math.ceil(radius / (STEPOVER * diameter) - 1e-9));
  return Array.from({ length: count }, (_, i) => (radius * (i + 1)) / count);
}

/** Down a helix along the smallest circle, then out over the others, layer by layer. */
function bore(recorder: Recorder, { throughDepth }: HoleRequest, circles: readonly Track[], style: EntryStyle): void {
  const { cutter, feeds } = style;
  const [first, ...others] = circles as [Track, ...Track[]];
  const start = first.pieces[0]!.from;
  const perTurn = Math.min(cutter.depthOfCut, helixDropPerTurn(first.length / (2 * Math.PI), cutter.rampAngle));
  // With one circle the helix may go through to the bottom without a stop.
  const layers = others.length === 0 ? [-throughDepth] : equalLayers(0, -throughDepth, cutter.depthOfCut);
  recorder.comeDown(start, 0);
  for (const z of layers) {
    const drop = recorder.where()!.z - z;
    const turns = Math.ceil(drop / perTurn - 1e-9);
    recorder.along(trackPart(first, 0, first.length * turns), z, feeds.ramp);
    for (const circle of [first, ...others]) {
      recorder.lineTo({ ...circle.pieces[0]!.from, z }, feeds.cut);
      recorder.along(circle, z, feeds.cut);
    }
    recorder.lineTo({ ...start, z }, feeds.cut);
  }
}

/** Once round a circle from its rightmost point, in two halves: counter-clockwise, the wall on the right, to climb. */
function circleTrack(centre: Point, radius: number, direction: CutDirection): Track {
  const start = { x: centre.x + radius, y: centre.y };
  const track = trackFromPieces(arcPieces(start, start, centre, 2 * Math.PI), true);
  return direction === 'climb' ? track : reverseTrack(track);
}
