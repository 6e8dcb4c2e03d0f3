import { components, isEmptyRegion, offsetRegion, type Region } from '../../geometry/index.ts';
import { refusal } from './cutter-problems.ts';
import { cuttingFeeds } from './cutting-data.ts';
import { type EntryStyle } from './entry.ts';
import { USUAL_FIT_TOLERANCE } from './fit-track.ts';
import { makeDepthInside } from './free-space.ts';
import { type AreaTools, clearByRings, cutDeepPlaces, finishBesideStrokes, type GroovePlan } from './groove-area.ts';
import { grooveProblems, type GrooveRequest, type PassPlan } from './groove-request.ts';
import { type GrooveShare, shareOut } from './groove-shares.ts';
import { equalLayers } from './layers.ts';
import { narrowAlongLines, narrowInArea } from './narrow.ts';
import { type Pass } from '../job/pass.ts';
import { type Caution } from '../job/problem.ts';
import { makeRecorder } from './recorder.ts';
import { cutStroke, strokeTracks } from './stroke-cut.ts';

/** A groove wider than its cutter and allowances by less than this fraction of the diameter is roughed along its centre lines. */
const ROOM_FOR_RINGS = 0.1;
/** Share of the channel's tolerance that offsets of its region may add. */
const OFFSET_SHARE = 0.5;

/** How a groove is roughed: along its centre lines only, along them and then along its walls, or in rings. */
type Method = 'lines' | 'lines-and-walls' | 'rings';

/**
 * The passes that cut a groove. A groove hardly wider than the cutter is cut along its centre lines. Otherwise it is
 * roughed, in rings from the inside out or along the centre lines where there is no room for rings, and its walls are
 * finished at full depth. The cutter never plunges into material, except to drill a place smaller than a turn of its
 * ramp. Passes of one connected part share a name and must stay in their order.
 */
export function groovePasses(request: GrooveRequest): PassPlan {
  const refused = refusal(grooveProblems(request));
  if (refused) return refused;
  const plan = planOf(request);
  const inside = makeDepthInside(request.region);
  const { cutter, centreLines, region } = request;
  const narrow = narrowAlongLines(inside, centreLines, cutter.diameter / 2 - plan.slack, cutter.diameter);
  const method = methodFor(plan, narrow.length === 0);
  const strokes = method === 'rings' ? [] : strokeTracks(centreLines, plan.fitTolerance);
  const parts = components(region).flatMap((part) => shareOut(part, request.tiling, strokes, cutter.diameter)).map((share, i, all) => {
    request.progress?.(i / all.length);
    return partPasses(plan, share, method, `groove ${i + 1}`);
  });
  const passes = parts.flatMap((part) => part.passes);
  const cautions = [...narrow, ...parts.flatMap((part) => part.cautions)];
  if (passes.length > 0 || isEmptyRegion(region)) return { ok: true, passes, cautions };
  return refusal(cautions) ?? { ok: true, passes, cautions };
}

function planOf(request: GrooveRequest): GroovePlan {
  const fitTolerance = request.fitTolerance ?? USUAL_FIT_TOLERANCE;
  const offsetTolerance = request.tolerance * OFFSET_SHARE;
  const layers = equalLayers(0, -request.depth, request.cutter.depthOfCut);
  return { request, fitTolerance, offsetTolerance, slack: request.tolerance + offsetTolerance + fitTolerance, layers };
}

function methodFor({ request }: GroovePlan, linesAreFree: boolean): Method {
  const { cutter, width, tolerance, finishingAllowance, centreLines } = request;
  if (!linesAreFree || centreLines.length === 0) return 'rings';
  const room = width - cutter.diameter;
  if (room <= 2 * tolerance + 1e-9) return 'lines';
  return room <= 2 * finishingAllowance + ROOM_FOR_RINGS * cutter.diameter ? 'lines-and-walls' : 'rings';
}


interface PartPasses {
  readonly passes: readonly Pass[];
  readonly cautions: readonly Caution[];
}

/** The passes of one connected part of the groove, or of what one set-up cuts of it. */
function partPasses(plan: GroovePlan, share: GrooveShare, method: Method, name: string): PartPasses {
  const { part, strokes, setUp } = share;
  const { cutter, finishingAllowance, width, retract, greatestFeed } = plan.request;
  const skin = method === 'rings' ? finishingAllowance : (width - cutter.diameter) / 2;
  const style: EntryStyle = { cutter, feeds: cuttingFeeds(cutter, skin, greatestFeed) };
  const recorder = makeRecorder({ kind: 'groove', name, cutter, retract, plungeFeed: style.feeds.plunge, ...(setUp !== undefined && { setUp }) });
  for (const stroke of strokes) cutStroke(recorder, stroke, plan.layers, style);
  const tools: AreaTools = { recorder, plan, style, inside: makeDepthInside(part) };
  const room = offsetRegion(part, -cutter.diameter / 2, { join: 'round', tolerance: plan.offsetTolerance });
  if (method === 'lines') {
    cutDeepPlaces(tools, room);
    return { passes: recorder.passes(), cautions: [] };
  }
  for (const area of components(room)) {
    if (method === 'rings') clearByRings(tools, area);
    else finishBesideStrokes(tools, area, strokes);
  }
  return { passes: recorder.passes(), cautions: narrowPlaces(share, room, plan) };
}

/** Where a window cuts a part off the other set-up goes on, so that only the uncut part tells which places are narrow; its first share tells them. */
function narrowPlaces({ part, cutFrom, tells }: GrooveShare, room: Region, { request, offsetTolerance }: GroovePlan): Caution[] {
  const { diameter } = request.cutter;
  if (!tells) return [];
  return narrowInArea(cutFrom ?? part, cutFrom ? offsetRegion(cutFrom, -diameter / 2, { join: 'round', tolerance: offsetTolerance }) : room, diameter);
}
