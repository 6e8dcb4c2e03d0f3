import { distance, insetRings, type Loop, offsetRegion, type Point, type Region } from '../../geometry/index.ts';
import { type EntryStyle } from './entry.ts';
import { finishWall } from './finishing.ts';
import { loopTrack } from './fit-track.ts';
import { type ClearedSpace, type DepthInside, segmentStaysInside } from './free-space.ts';
import { type GrooveRequest } from './groove-request.ts';
import { type Recorder } from './recorder.ts';
import { cutRings, type Ring } from './ring-cut.ts';
import { type StrokeTrack } from './stroke-cut.ts';
import { reverseTrack, type Track } from './track.ts';
import { distanceTo, unreachedPlaces } from './unreached.ts';

/** What the plans of all parts of one groove share. */
export interface GroovePlan {
  readonly request: GrooveRequest;
  readonly offsetTolerance: number;
  readonly fitTolerance: number;
  /** How far the axis may stray towards a wall, mm: the tolerances added up. */
  readonly slack: number;
  /** Heights of the layers, from the top down. */
  readonly layers: readonly number[];
}

export interface AreaTools {
  readonly recorder: Recorder;
  readonly plan: GroovePlan;
  readonly style: EntryStyle;
  /** Depths inside the part of the groove that is being cut. */
  readonly inside: DepthInside;
}

/** Largest stepover as a fraction of the diameter: under half, so that the smallest rings, which take long to enter, may be left out. */
const WIDEST_STEPOVER = 0.45;
/** Longest way across to the next ring with the cutter down, in diameters. */
const LONGEST_CROSSING = 3;
/** How much thicker than the finishing allowance the skin may be, in corners, as a fraction of the diameter. */
const THICKER_SKIN = 0.25;

const stepOf = ({ request }: GroovePlan) => Math.min(request.stepover, WIDEST_STEPOVER) * request.cutter.diameter;

/**
 * Clears one area (a connected place for the cutter's axis) in rings from the inside out. With a finishing allowance
 * the rings keep that far off the walls, which are then cut once round at full depth; where the area is too narrow to
 * leave any allowance, the walls themselves are the outermost rings.
 */
export function clearByRings(tools: AreaTools, area: Region): void {
  const { finishingAllowance } = tools.plan.request;
  if (finishingAllowance === 0 || !leavesEvenSkin(tools.plan, area)) {
    const walls = loopTracks(tools.plan, area).map((track): Ring => ({ track, level: 0 }));
    cutAreaRings(tools, [...walls, ...ringsInside(tools.plan, area, stepOf(tools.plan), 1)], 0);
    return;
  }
  const rings = ringsInside(tools.plan, area, finishingAllowance, 0);
  cutAreaRings(tools, rings, finishingAllowance);
  finishWalls(tools, area, { tracks: rings.map(({ track }) => track), points: [] });
}

/** Finishes the walls of an area that was roughed along its centre lines. */
export function finishBesideStrokes(tools: AreaTools, area: Region, strokes: readonly StrokeTrack[]): void {
  cutDeepPlaces(tools, area);
  finishWalls(tools, area, { tracks: strokes.map(({ track }) => track), points: strokes.map(({ start }) => start) });
}

/** Clears what lies more than a stepover from the walls of `room`: the middle of crossings, which passes along lines or walls may miss. */
export function cutDeepPlaces(tools: AreaTools, room: Region): void {
  cutAreaRings(tools, ringsInside(tools.plan, room, stepOf(tools.plan), 1), 0);
}

function cutAreaRings({ recorder, plan, style, inside }: AreaTools, rings: readonly Ring[], allowance: number): void {
  const { diameter } = style.cutter;
  const inset = diameter / 2 + allowance - plan.slack;
  const mayCross = (a: Point, b: Point) => distance(a, b) <= LONGEST_CROSSING * diameter && segmentStaysInside(inside, a, b, inset);
  cutRings(recorder, { rings, layers: plan.layers, style, mayCross });
}

function finishWalls({ recorder, plan, style, inside }: AreaTools, area: Region, cleared: ClearedSpace): void {
  const { layers } = plan;
  const inset = style.cutter.diameter / 2 - plan.slack;
  for (const track of loopTracks(plan, area)) {
    finishWall(recorder, { track, cleared, inside, inset, z: layers.at(-1)!, layers, style });
  }
}

/** Rings at `first`, `first` + stepover, ... inside a region; the first has the level given. */
function ringsInside(plan: GroovePlan, region: Region, first: number, level: number): Ring[] {
  const step = stepOf(plan);
  const { diameter } = plan.request.cutter;
  const rings = insetRings(region, first, step, { join: 'round', tolerance: plan.offsetTolerance });
  // What a ring surrounds is at most its length over 2 pi deeper; the ring around it reaches half a diameter deep.
  const shortest = 2 * Math.PI * (diameter / 2 - step - 2 * plan.slack);
  return rings.flatMap((ring, i) => loopTracks(plan, ring)
    .filter((track) => i + level === 0 || track.length > shortest)
    .map((track): Ring => ({ track, level: level + i })));
}

/** The loops of a region as tracks in the direction that cuts as asked: in their own, climb milling has the wall on the right. */
function loopTracks({ request, fitTolerance }: GroovePlan, { loops }: Region): Track[] {
  const tracks = loops.map((loop: Loop) => loopTrack(loop, fitTolerance)).filter(({ length }) => length > 0);
  return request.direction === 'climb' ? tracks : tracks.map(reverseTrack);
}

/** Whether rings that keep the allowance off the walls of an area leave no more than a skin beside them, apart from corners. */
function leavesEvenSkin({ request, offsetTolerance }: GroovePlan, area: Region): boolean {
  const { cutter, finishingAllowance } = request;
  const kept = offsetRegion(area, -finishingAllowance, { join: 'round', tolerance: offsetTolerance });
  const thickest = finishingAllowance + THICKER_SKIN * cutter.diameter;
  return unreachedPlaces(area.loops, distanceTo(kept), thickest, cutter.diameter / 8).length === 0;
}
