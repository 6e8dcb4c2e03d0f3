import type { Shore } from './crotch.ts';
import { alongCircle, courseAtEnd } from './ends.ts';
import { relaxed, resample, type Settled, STEP } from './settle.ts';
import { indexAlong, type Track, trackLength } from './track.ts';
import { footFrom } from './walls.ts';

/**
 * An arm followed into its junction for as long as it sees a wall of its own: places from outside inwards, at even steps. What only one wall
 * placed stands half a width from it. `reached` is the branch whose own walls the following came to, if it did.
 */
export interface Grown {
  readonly line: readonly Settled[];
  /** How many of the places come from the arm itself, where both walls are its own. */
  readonly base: number;
  readonly reached: number | undefined;
  /** The wall, seen inwards, that leaves the arm without a corner, so that what it says near there is not to be trusted. */
  readonly shed: 'left' | 'right' | undefined;
}

/** Length of arm that the following starts from, and that each step looks back on, in widths. */
const BASE = 2.5;

/** A wall farther off than half the width by this share of the width, where the line is foreseen to go on, is no longer the arm's own. */
const PARTING = 0.04;

/** What a parted wall said over this last stretch, in widths, is forgotten: it parted before it was noticed. */
const FORGET = 0.3;

/** The following stops after so many widths. */
const LONGEST = 9;

/** As the stretch looked back on moves forward, so many of its first places are held: with one wall in sight nothing else tells where it is. */
const HELD = 6;

/** A wall that is shed is forgotten from this far out, in widths: it begins to part before it can be seen to. */
export const SHED = 0.8;

/** While following, wiggles are smoothed harder: what the arm did so far has to foretell where it goes. */
const STIFF = { smoothing: 0.35, widthSmoothing: 0.8, levelling: 0.6 };

/** An arm that widens into its junction over more than this, in widths, has one wall that is another's from there on. */
const WIDENING = 0.25;

interface Ground {
  readonly shore: Shore;
  /** The half of a branch that a boundary point is a wall of, -1 for none. */
  readonly owner: Int32Array;
}

/** A number for the first or second half of a branch: an arm that comes to the other half of its own branch has gone round a ring. */
export const halfOf = (branch: number, second: boolean): number => 2 * branch + (second ? 1 : 0);

interface Start {
  readonly turned: boolean;
  /** How far, radians, the outline turns at the corner that ends each wall, seen inwards. */
  readonly corners: { readonly left: number; readonly right: number };
  readonly track: Track;
  readonly clear: number;
  readonly safe: number;
  readonly branch: number;
}

interface Alive {
  readonly left: boolean;
  readonly right: boolean;
}

/**
 * Follows an arm inward from its safe place. Where the arm widens there, one wall leaves it without a corner: then each wall is
 * followed alone, and both together in case it is the pen that grew wider: what bends least is the arm's own.
 */
export function growArm(ground: Ground, start: Start): Grown {
  const { track, clear, safe } = start;
  const width = 2 * track.radius[safe]!;
  const line = baseOf(ground.shore, track, safe, width);
  if (line.length < 4) return { line, base: line.length, reached: undefined, shed: undefined };
  if (!widensIn(start)) return follow(ground, halfOf(start.branch, start.turned), line, { left: true, right: true });
  const without = (shed: 'left' | 'right'): Grown =>
    ({ ...follow(ground, halfOf(start.branch, start.turned), shedding(ground.shore, line, shed), { left: shed !== 'left', right: shed !== 'right' }), shed });
  const all = [follow(ground, halfOf(start.branch, start.turned), line, { left: true, right: true }), without('right'), without('left')];
  const steps = Math.min(Math.round(SWERVE / STEP), Math.max(...all.map((one) => one.line.length - one.base)));
  // Beyond the widening the crotch is near, where walls part in any case.
  const widening = Math.min(steps, Math.floor((track.along[safe]! - track.along[clear]!) / (STEP * width)) - 1);
  const staysTogether = all[0]!.line.length >= all[0]!.base + widening && all[0]!.line.slice(all[0]!.base, all[0]!.base + widening).every(({ left, right }) => left.length > 0 && right.length > 0);
  const swerves = all.map((one) => swerve(one, steps) + (one.shed !== undefined && staysTogether ? BOTH_WALLS + CORNERED * Math.max(0, start.corners[one.shed]) : 0));
  return all[swerves.indexOf(Math.min(...swerves))]!;
}

/** Whether an arm widens into its junction over a length worth telling from the pen's own growing wider. */
export const widensIn = ({ track, clear, safe }: Pick<Start, 'track' | 'clear' | 'safe'>): boolean =>
  track.along[safe]! - track.along[clear]! >= WIDENING * 2 * track.radius[safe]!;

/** An arm that widens, taken for a pen that grew wider: both walls are its own from its clear place on, and it is followed on both. */
export function growPlain({ shore, owner }: Ground, start: Start): Grown {
  const { track, clear } = start;
  const line = baseOf(shore, track, clear, 2 * track.radius[clear]!);
  if (line.length < 4) return { line, base: line.length, reached: undefined, shed: undefined };
  return follow({ shore, owner }, halfOf(start.branch, start.turned), line, { left: true, right: true });
}

/** A base placed by one wall alone over its last part, the other's word there being worth nothing. */
function shedding(shore: Shore, line: readonly Settled[], side: 'left' | 'right'): readonly Settled[] {
  const from = line.length - Math.min(Math.round(SHED / STEP), line.length >> 1);
  return relaxed(shore, line.map((place, i) => (i >= from ? { ...place, [side]: [] } : place)), STIFF);
}

/** Two followings are compared over this length, in widths. */
const SWERVE = 1.3;

/** One wall alone must do better than both by this much, radians. */
const BOTH_WALLS = 0.03;

/** And by as much more for each radian of the corner that ends the wall: a wall that leaves does so without one. */
const CORNERED = 0.05;

/** How far, radians, a following turned away from the circle its base lay on over so many steps; more if it lost its way before half of them. */
function swerve({ line: whole, base }: Grown, steps: number): number {
  const done = Math.min(steps, whole.length - base);
  if (2 * done < steps) return Math.PI;
  if (steps < 1) return 0;
  const line = whole.slice(0, base + done);
  const width = 2 * line[base - 1]!.half;
  const before = courseAtEnd(line.slice(0, base), 1.2 * width);
  const after = courseAtEnd(line, 0.6 * width);
  const turned = after.heading - before.heading - before.curvature * STEP * width * done;
  return (Math.abs(turned - 2 * Math.PI * Math.round(turned / (2 * Math.PI))) * steps) / done;
}

function follow({ shore, owner }: Ground, own: number, start: readonly Settled[], walls: Alive): Grown {
  const base = start.length;
  const width = 2 * start.at(-1)!.half;
  const window = Math.ceil(BASE / STEP);
  let line = [...start];
  let alive = walls;
  let reached: number | undefined;
  while (line.length < base + LONGEST / STEP) {
    const ahead = foreseen(line, width);
    const seen = look(shore, ahead, alive, width, line.length < base + SETTING_OUT);
    for (const side of ['left', 'right'] as const) if (alive[side] && seen[side] === undefined) line = forgotten(line, side);
    alive = { left: seen.left !== undefined, right: seen.right !== undefined };
    if (!alive.left && !alive.right) break;
    reached = alive.left && alive.right ? undefined : otherOwner(owner, seen, own);
    if (reached !== undefined) break;
    line.push({ ...ahead, left: alive.left ? [seen.left!] : [], right: alive.right ? [seen.right!] : [] });
    const from = Math.max(0, line.length - window);
    line = [...line.slice(0, from), ...relaxed(shore, line.slice(from), STIFF, from > 0 ? HELD : 0)];
  }
  while (line.length > base && line.at(-1)!.left.length === 0 && line.at(-1)!.right.length === 0) line.pop();
  return { line, base, reached, shed: undefined };
}

function otherOwner(owner: Int32Array, { left, right }: Seen, own: number): number | undefined {
  const half = [left, right].flatMap((foot) => (foot === undefined ? [] : owner[foot]!)).find((one) => one >= 0 && one !== own);
  return half === undefined ? undefined : half >> 1;
}

interface Seen {
  readonly left: number | undefined;
  readonly right: number | undefined;
}

/** The arm's own places next to the junction, evenly spaced, from outside inwards. */
function baseOf(shore: Shore, track: Track, safe: number, width: number): Settled[] {
  const end = indexAlong(track, Math.min(track.along[safe]! + BASE * width, trackLength(track)));
  const places: Settled[] = [];
  for (let k = end; k >= safe; k--) {
    // Seen inwards, left and right change places.
    places.push({ x: track.x[k]!, y: track.y[k]!, half: track.radius[k]!, left: [track.right[k]!], right: [track.left[k]!], seen: 2 });
  }
  if (places.length < 2) return places;
  const even = resample(places, false, STEP * width);
  return even.length < 4 ? even : relaxed(shore, even, STIFF);
}

/** The next place, were the line to go on as it went. */
function foreseen(line: readonly Settled[], width: number): Settled {
  const last = line.at(-1)!;
  const { heading, curvature } = courseAtEnd(line, 0.8 * width);
  const before = line[Math.max(0, line.length - 5)]!;
  // Seen by one wall, the width may go on as it went, or level out: half of the latest change.
  const lately = (last.half - before.half) / (last.left.length > 0 && last.right.length > 0 ? 4 : 8);
  const half = Math.max(0.8 * last.half, last.half + lately);
  return { ...last, ...alongCircle(last, heading, curvature, STEP * width), half, seen: 1 };
}

/** Over this many first steps on one wall the line may be foreseen worse, by this share of the width: the base knew two walls. */
const [SETTING_OUT, LEAVING] = [4, 0.09];

/** A wall nearer than half a width by this share of the width is some other wall. */
const NEARER = 0.15;

/** Should both walls part at once, the one that does so less goes on if it is no farther off than this. */
const LEEWAY = 0.12;

/** How far off a wall may be while both are seen. Where both part alike it is the pen that grows wider; where one does so less, that one goes on. */
function limitFor(left: number, right: number): number {
  const [less, more] = [Math.min(left, right), Math.max(left, right)];
  if (less < PARTING || less >= LEEWAY) return PARTING;
  return (less > ALIKE * more && more < LEEWAY ? more : less) + 1e-9;
}

/** Two walls part alike when one does so at least by this share of what the other does. */
const ALIKE = 0.5;

/** Boundary points of the walls still alive, across from a place and half a width off. */
function look({ boundary }: Shore, place: Settled, alive: Alive, width: number, setOut: boolean): Seen {
  const at = (side: 'left' | 'right') => {
    const hint = alive[side] ? place[side][0] : undefined;
    if (hint === undefined) return undefined;
    const { index, distance } = footFrom(boundary, hint, place);
    // A wall that comes nearer does not leave: the line was foreseen too wide or too close to it.
    const off = (distance - place.half) / width;
    return { index, off: off < 0 ? (off < -NEARER ? Infinity : 0) : off };
  };
  const [left, right] = [at('left'), at('right')];
  const limit = left && right ? limitFor(left.off, right.off) : setOut ? LEAVING : PARTING;
  const own = (foot: typeof left) => (foot !== undefined && foot.off < limit ? foot.index : undefined);
  return { left: own(left), right: own(right) };
}

function forgotten(line: readonly Settled[], side: 'left' | 'right'): Settled[] {
  const from = line.length - Math.round(FORGET / STEP);
  return line.map((place, i) => (i >= from ? { ...place, [side]: [] } : place));
}
