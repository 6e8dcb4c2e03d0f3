import { type Box, growBox, loopArea, type Loop, makeRegionIndex, offsetRegion, type Point, type Region } from '../../geometry/index.ts';
import { cuttingFeeds } from './cutting-data.ts';
import { type EntryStyle, rampRoundLoop } from './entry.ts';
import { finishWall } from './finishing.ts';
import { loopTrack, USUAL_FIT_TOLERANCE } from './fit-track.ts';
import { makeDepthInside } from './free-space.ts';
import { refusal } from './cutter-problems.ts';
import { equalLayers } from './layers.ts';
import { cutLoopWithLead, findOutlineLead, type LeadRoom } from './outline-lead.ts';
import { type OutlinePlan, type OutlineRequest, outlineProblems } from './outline-request.ts';
import { cutOpenOutline, openSpans } from './open-outline.ts';
import { type Pass } from '../job/pass.ts';
import { type Caution, millimetres, placeName } from '../job/problem.ts';
import { makeRecorder, type Recorder } from './recorder.ts';
import { throughDepth } from '../job/stock.ts';
import { cutBetweenTabs, finishBetweenTabs, type Span, spansBetween } from './tab-cut.ts';
import { type Tab } from '../job/tab.ts';
import { tabCount, tabPlaces } from './tab-places.ts';
import { sharesOf } from './tiles.ts';
import { pointAt, reverseTrack, type Track } from './track.ts';
import { nearestOnTrack, trackBox } from './track-query.ts';
import { stretchesWithin } from './track-within.ts';
import { unreachedPlaces } from './unreached.ts';
import { isLoopInside } from '../../geometry/containment.ts';

interface BoardPlan {
  readonly request: OutlineRequest;
  readonly fitTolerance: number;
  readonly bottom: number;
  /** Height of the tabs' tops, or the bottom when there are no tabs. */
  readonly tabTop: number;
  readonly style: EntryStyle;
  readonly room: LeadRoom;
}

/** One closed cut around the board or around a cut-out. */
interface Contour {
  readonly name: string;
  /** Where roughing goes: the wall's own track when there is no finishing pass. */
  readonly rough: Track;
  readonly wall: Track;
}

/**
 * The passes that part a board from the sheet: cut-outs first, then the edge, each layer by layer with ramped entries and
 * then, with an allowance, once at full depth. Tabs stand on straight places, as evenly as those allow; between them
 * the cut goes to full depth, over them it stays at their tops. Passes of one contour share a name and must stay in their order.
 */
export function outlinePasses(request: OutlineRequest): OutlinePlan {
  const refused = refusal(outlineProblems(request));
  if (refused) return refused;
  const plan = planOf(request);
  const { cautions, contours } = contoursOf(plan);
  const cut = contours.map((contour) => cutContour(plan, contour));
  return {
    ok: true,
    passes: cut.flatMap(({ passes }) => passes),
    tabs: cut.flatMap(({ tabs }) => tabs),
    cautions: [...cautions, ...cut.flatMap((one) => one.cautions)],
  };
}

function planOf(request: OutlineRequest): BoardPlan {
  const { cutter, stock, tabs, region, tolerance, finishingAllowance, greatestFeed } = request;
  const fitTolerance = request.fitTolerance ?? USUAL_FIT_TOLERANCE;
  const bottom = -throughDepth(stock);
  const hasTabs = tabs && (!('count' in tabs) || tabs.count >= 1);
  const board = makeDepthInside(region);
  const radius = cutter.diameter / 2;
  return {
    request, fitTolerance, bottom,
    tabTop: hasTabs ? tabs.height - stock.thickness : bottom,
    style: { cutter, feeds: cuttingFeeds(cutter, finishingAllowance, greatestFeed) },
    room: {
      waste: { depthAt: (point) => -board.depthAt(point) },
      inset: radius - tolerance - fitTolerance,
      onSheet: ({ x, y }) => x >= radius && y >= radius && x <= stock.width - radius && y <= stock.height - radius,
    },
  };
}

/** The contours to cut, inner ones first, and what of the board's edge the cutter does not reach. */
function contoursOf({ request, fitTolerance }: BoardPlan): { contours: Contour[]; cautions: Caution[] } {
  const { region, cutter, tolerance, finishingAllowance } = request;
  const options = { join: 'round', tolerance } as const;
  const walls = offsetRegion(region, cutter.diameter / 2, options);
  const roughs = finishingAllowance > 0 ? offsetRegion(walls, finishingAllowance, options) : walls;
  const roughTracks = roughs.loops.map((loop) => travel(loop, request, fitTolerance));
  const contours = innerFirst(walls.loops).map((loop, i): Contour => {
    const wall = travel(loop, request, fitTolerance);
    const rough = finishingAllowance > 0 ? nearestTrack(roughTracks, pointAt(wall, 0), finishingAllowance + cutter.diameter / 2) ?? wall : wall;
    return { name: `${loopArea(loop) < 0 ? 'cut-out' : 'board edge'} ${i + 1}`, rough, wall };
  });
  return { contours, cautions: unreachedEdges(region, walls, request) };
}

/** In their own direction loops have the board on the left; climb milling wants it on the right. */
function travel(loop: Loop, { direction }: OutlineRequest, fitTolerance: number): Track {
  const track = loopTrack(loop, fitTolerance);
  return direction === 'climb' ? reverseTrack(track) : track;
}

function innerFirst(loops: readonly Loop[]): Loop[] {
  const depth = (loop: Loop) => loops.filter((other) => other !== loop && isLoopInside(loop, other)).length;
  return loops.map((loop) => ({ loop, depth: depth(loop) })).sort((a, b) => b.depth - a.depth).map(({ loop }) => loop);
}

function nearestTrack(tracks: readonly Track[], point: Point, within: number): Track | undefined {
  let best: { track: Track; distance: number } | undefined;
  for (const track of tracks) {
    const distance = nearestOnTrack(track, point)?.distance ?? Infinity;
    if (distance <= (best?.distance ?? within)) best = { track, distance };
  }
  return best?.track;
}

/** An inner corner is left out of the cautions unless it lies farther than this from the cutter's edge, in diameters. */
const BEYOND = 0.5;

/** Bays, gaps and cut-outs too narrow for the cutter. */
function unreachedEdges(region: Region, walls: Region, { cutter }: OutlineRequest): Caution[] {
  const { diameter } = cutter;
  const places = unreachedPlaces(region.loops, makeRegionIndex(walls).distanceToBoundary, diameter * (0.5 + BEYOND), diameter / 8);
  return places.map(({ at, distance }) => ({
    at, place: placeName(at), expected: `room for a cutter of ${millimetres(diameter)} mm beside the board`,
    found: `an edge ${millimetres(distance - diameter / 2, 1)} mm out of its reach`, advice: 'Widen the place or choose a thinner cutter; it is left uncut.',
  }));
}

interface ContourCut {
  readonly passes: readonly Pass[];
  readonly tabs: readonly Tab[];
  readonly cautions: readonly Caution[];
}

function cutContour(plan: BoardPlan, contour: Contour): ContourCut {
  const { request, bottom } = plan;
  const places = placesForTabs(plan, contour.rough);
  const tabTop = places.length > 0 ? plan.tabTop : bottom;
  const shares = request.tiling ? sharesOf(request.tiling.tiles, trackBox(contour.rough), request.cutter.diameter / 2) : [undefined];
  const cautions = plan.tabTop > bottom && places.length === 0 ? [looseCaution(contour)] : [];
  return {
    passes: shares.flatMap((share) => {
      const standing = { places, tabTop, setUp: share?.setUp };
      return share?.window ? cutPieces(plan, contour, standing, share.window) : cutRound(plan, contour, standing);
    }),
    tabs: places.map((place) => tabAt(request, contour, place)), cautions,
  };
}

/** Where the tabs are, and whose passes they are. */
interface Standing {
  readonly places: readonly number[];
  readonly tabTop: number;
  readonly setUp: number | undefined;
}

const recorderFor = ({ request: { cutter, retract }, style }: BoardPlan, name: string, setUp: number | undefined): Recorder =>
  makeRecorder({ kind: 'outline', name, cutter, retract, plungeFeed: style.feeds.plunge, ...(setUp !== undefined && { setUp }) });

/** Once round in one set-up. */
function cutRound(plan: BoardPlan, contour: Contour, { places, tabTop, setUp }: Standing): readonly Pass[] {
  const { request: { cutter }, style, bottom } = plan;
  const recorder = recorderFor(plan, contour.name, setUp);
  const spans = spansBetween(contour.rough, places, tabZone(plan.request));
  roughLoop(recorder, plan, contour, equalLayers(0, tabTop, cutter.depthOfCut));
  if (spans.length > 0) cutBetweenTabs(recorder, { spans, tabTop, layers: equalLayers(tabTop, bottom, cutter.depthOfCut), style });
  if (contour.rough !== contour.wall) finishEdge(recorder, plan, contour, spans);
  return recorder.passes();
}

/** The pieces of a contour that lie in a set-up's window, each cut from its own ends. */
function cutPieces(plan: BoardPlan, contour: Contour, { places, tabTop, setUp }: Standing, window: Box): readonly Pass[] {
  const { request: { cutter, finishingAllowance }, style, bottom } = plan;
  const room = growBox(window, -cutter.diameter / 2 - finishingAllowance);
  return stretchesWithin(contour.rough, room).flatMap((stretch, i) => {
    const recorder = recorderFor(plan, `${contour.name}, piece ${i + 1}`, setUp);
    const spans = openSpans(contour.rough, stretch, places, tabZone(plan.request));
    cutOpenOutline(recorder, { spans, tabTop, bottom, style, ...(contour.rough !== contour.wall && { wall: contour.wall }) });
    return recorder.passes();
  });
}

/** Length of track a tab takes: its own, and half a cutter on both sides. */
const tabZone = ({ tabs, cutter }: OutlineRequest) => (tabs?.width ?? 0) + cutter.diameter;

function placesForTabs({ request, tabTop, bottom }: BoardPlan, track: Track): number[] {
  const { tabs, cutter } = request;
  if (!tabs || tabTop <= bottom) return [];
  const zone = tabZone(request);
  return tabPlaces(track, tabCount(tabs, track.length), zone, cutter.diameter, nearSeam(request, zone));
}

/** No tab may stand where two set-ups cut: it would be cut from both sides, each a little off. */
function nearSeam({ tiling, cutter }: OutlineRequest, zone: number): ((place: Point) => boolean) | undefined {
  if (!tiling || tiling.seams.length === 0) return undefined;
  const within = tiling.lap + zone / 2 + cutter.diameter;
  return (place) => tiling.seams.some(({ axis, at }) => Math.abs(place[axis] - at) < within);
}

function tabAt({ tabs }: OutlineRequest, { rough, wall }: Contour, place: number): Tab {
  const middle = pointAt(rough, place);
  return { centre: nearestOnTrack(wall, middle)?.point ?? middle, width: tabs!.width, height: tabs!.height };
}

function looseCaution({ name, wall }: Contour): Caution {
  const at = pointAt(wall, 0);
  return { at, place: placeName(at), expected: 'room for a tab', found: `${name} is only ${millimetres(wall.length, 1)} mm round`, advice: 'The piece comes loose: hold it down, or make the tabs narrower.' };
}

/** Cuts once round at every layer; the arc that leads in spares the edge where no finishing pass follows. */
function roughLoop(recorder: Recorder, { request, style, room }: BoardPlan, { rough, wall }: Contour, layers: readonly number[]): void {
  const lead = rough === wall ? findOutlineLead(rough, request.leadIn, request.direction, room) : undefined;
  if (lead) {
    cutLoopWithLead(recorder, rough, lead, layers, style, room);
    return;
  }
  recorder.comeDown(pointAt(rough, 0), 0);
  let at = 0;
  for (const z of layers) at = rampRoundLoop(recorder, rough, at, z, style);
}

function finishEdge(recorder: Recorder, { request, style, bottom, tabTop, room }: BoardPlan, { rough, wall }: Contour, spans: readonly Span[]): void {
  if (spans.length > 0) {
    finishBetweenTabs(recorder, { spans, wall, tabTop, bottom, style });
    return;
  }
  const layers = equalLayers(0, bottom, request.cutter.depthOfCut);
  finishWall(recorder, { track: wall, cleared: { tracks: [rough], points: [] }, inside: room.waste, inset: room.inset, z: bottom, layers, style });
}
