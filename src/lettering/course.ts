import type { Point } from '../geometry/index.ts';
import type { ArmView } from './arm.ts';
import { type Grown, SHED } from './grow.ts';
import type { Arm, Knot } from './junctions.ts';
import { reverseTrack, type Track } from './track.ts';

/** A place of a stroke in the making: where, half its width, and boundary points on its left and right wall from which its own walls can be reached. */
export interface Sample extends Point {
  readonly half: number;
  readonly left: readonly number[];
  readonly right: readonly number[];
}

/** How one end of a course came about. */
export type CourseEnd = { readonly kind: 'free' } | { readonly kind: 'lone'; readonly knot: number; readonly followed: number };

/** A stroke before its smoothing: samples along its arms, with a first guess where they were joined. */
export interface Course {
  readonly samples: readonly Sample[];
  readonly closed: boolean;
  readonly ends: readonly [CourseEnd, CourseEnd];
  /** The junctions it runs through, by number. */
  readonly knots: readonly number[];
}

/** One arm's place among all junctions. */
interface Seat {
  readonly knot: number;
  readonly arm: number;
}

/** A branch run forward or backward. */
interface Leg {
  readonly branch: number;
  readonly turned: boolean;
}

interface Chain {
  readonly legs: readonly Leg[];
  readonly closed: boolean;
}

interface Plan {
  readonly tracks: readonly Track[];
  readonly knots: readonly Knot[];
  readonly seats: ReadonlyMap<string, Seat>;
}

const key = ({ branch, turned }: Leg) => `${branch} ${turned ? 'end' : 'start'}`;

/** Follows the pairings from arm to arm: each branch that is no bridge ends up in one course. */
export function coursesOf(tracks: readonly Track[], knots: readonly Knot[]): Course[] {
  const seats = new Map(knots.flatMap((knot, k) => knot.arms.map((arm, a): [string, Seat] => [key(arm), { knot: k, arm: a }])));
  const plan: Plan = { tracks, knots, seats };
  const bridges = new Set(knots.flatMap((knot) => knot.bridges));
  const done = new Set<number>();
  const courses: Course[] = [];
  const begin = (starts: (leg: Leg) => boolean) => {
    tracks.forEach((_, branch) => {
      for (const turned of [false, true]) {
        const leg = { branch, turned };
        if (bridges.has(branch) || done.has(branch) || !starts(leg) || isLoneStub(plan, leg)) continue;
        const course = courseOf(plan, chainFrom(plan, leg, done));
        if (course.samples.length > 1) courses.push(course);
      }
    });
  };
  begin((leg) => partnerAt(plan, leg) === undefined);
  begin(() => true);
  return courses;
}

/** A stub whose end is about as broad as its junction and stands out from it by this share of its radius is a stroke, if a short one. */
const [BROAD, STANDS_OUT] = [0.75, 0.85];

function isBlob(track: Track, radius: number): boolean {
  const end = track.radius.at(-1)!;
  return end > BROAD * radius && track.along.at(-1)! + end - radius > STANDS_OUT * radius;
}

/** Whether all but one of a junction's arms are stubs that nothing runs into: then it is but a broad or cornered end. */
const isLastArm = ({ arms, matching }: Knot): boolean => matching.pairs.length === 0 && arms.filter(({ stub }) => stub === undefined).length === 1;

/** A stub that nothing runs into is a corner or bulge of the outline, no stroke. */
function isLoneStub({ knots, seats }: Plan, leg: Leg): boolean {
  const seat = seats.get(key(leg)) ?? seats.get(key(back(leg)));
  if (seat === undefined) return false;
  const { arms, matching, radius } = knots[seat.knot]!;
  const { stub, track } = arms[seat.arm]!;
  return stub !== undefined && !matching.pairs.some((pair) => pair.includes(seat.arm)) && !isBlob(track, radius);
}

/** The arm that the start of a leg is paired with, as the leg that runs into it: its end is there. */
function partnerAt({ knots, seats }: Plan, leg: Leg): Leg | undefined {
  const seat = seats.get(key(leg));
  if (seat === undefined) return undefined;
  const { matching, arms } = knots[seat.knot]!;
  const pair = matching.pairs.find((two) => two.includes(seat.arm));
  if (pair === undefined) return undefined;
  return arms[pair[0] === seat.arm ? pair[1] : pair[0]]!;
}

const back = ({ branch, turned }: Leg): Leg => ({ branch, turned: !turned });

function chainFrom(plan: Plan, start: Leg, done: Set<number>): Chain {
  const legs: Leg[] = [];
  for (let leg: Leg | undefined = start; leg !== undefined && !done.has(leg.branch); leg = partnerAt(plan, back(leg))) {
    legs.push({ branch: leg.branch, turned: leg.turned });
    done.add(leg.branch);
  }
  const onward = partnerAt(plan, back(legs.at(-1)!));
  const ring = onward === undefined && plan.seats.get(key(start)) === undefined && isRing(plan.tracks[start.branch]!);
  return { legs, closed: ring || (onward?.branch === start.branch && onward.turned === start.turned) };
}

const isRing = ({ x, y }: Track) => x.length > 3 && x[0] === x.at(-1) && y[0] === y.at(-1);

function courseOf(plan: Plan, { legs, closed }: Chain): Course {
  const runs = legs.map((leg) => runOf(plan, leg)).filter((run) => run.samples.length > 0);
  const round = closed && runs[0]?.first !== undefined;
  for (let k = 0; k < runs.length - (round ? 0 : 1); k++) apart(runs, k, (k + 1) % runs.length);
  const samples = runs.flatMap((run, k) => [...run.samples, ...(k + 1 < runs.length || round ? bridge(run, runs[(k + 1) % runs.length]!) : [])]);
  const end = (leg: Leg): CourseEnd => {
    const seat = plan.seats.get(key(leg));
    return seat === undefined || isLastArm(plan.knots[seat.knot]!) ? { kind: 'free' } : { kind: 'lone', knot: seat.knot, followed: lengthOf(plan.knots[seat.knot]!.arms[seat.arm]!.grown) };
  };
  const knots = legs.slice(1).concat(closed ? legs.slice(0, 1) : []).flatMap((leg) => plan.seats.get(key(leg))?.knot ?? []);
  return { samples: distinct(samples, closed), closed, ends: [end(legs[0]!), end(back(legs.at(-1)!))], knots };
}

const lengthOf = ({ line, base }: Grown): number =>
  line.slice(base).reduce((sum, place, i) => sum + Math.hypot(place.x - line[base + i - 1]!.x, place.y - line[base + i - 1]!.y), 0);

interface Run {
  readonly samples: Sample[];
  readonly first: ArmView | undefined;
  readonly last: ArmView | undefined;
}

/** One end of a leg at a junction: its arm's safe place, and what was followed inward from there. */
interface LegEnd {
  readonly view: ArmView;
  readonly safe: number;
  readonly shed: Grown['shed'];
  readonly grown: readonly Sample[];
  /** Whether it is a stub that its partner runs through. */
  readonly stub: boolean;
}

/** A leg from where its arms come out of the junctions at its ends: what was followed inward, and the safe part between. */
function runOf(plan: Plan, leg: Leg): Run {
  const track = leg.turned ? reverseTrack(plan.tracks[leg.branch]!) : plan.tracks[leg.branch]!;
  const [first, last] = [legEnd(plan, leg), legEnd(plan, back(leg))];
  if (first?.stub || last?.stub) return { samples: [], first: first?.view, last: last?.view };
  const head = [...(first?.grown ?? [])].reverse().map(flipped);
  return { samples: [...head, ...safePart(track, first, last), ...(last?.grown ?? [])], first: first?.view, last: last?.view };
}

function legEnd({ knots, seats }: Plan, end: Leg): LegEnd | undefined {
  const seat = seats.get(key(end));
  if (seat === undefined) return undefined;
  const { arms, views, matching } = knots[seat.knot]!;
  const [{ grown, safe, stub }, view] = [arms[seat.arm]!, views[seat.arm]!];
  const pair = matching.pairs.find((two) => two.includes(seat.arm));
  const partner = pair && arms[pair[0] === seat.arm ? pair[1] : pair[0]];
  // A lone arm is followed as far as it goes: past the middle of the junction, should its own wall lead there.
  const tip = partner === undefined ? grown.line.length - 1 : partner.stub ? nearestIndex(grown.line, partner.stub) : view.tip;
  const followed: readonly Sample[] = grown.line.slice(grown.base, tip + 1);
  return { view, safe, shed: grown.shed, grown: partner?.stub ? besideStub(followed, partner) : followed, stub: stub !== undefined && partner !== undefined && partner.stub === undefined };
}

/** A stub's disc no wider than the stroke's own by more than this share touches the stroke's walls. */
const OWN = 0.01;

/** Places with the walls of the stub that was followed into, where they have lost their own and the stub's disc is the stroke's. */
function besideStub(followed: readonly Sample[], { track, clear }: Arm): Sample[] {
  const discs = track.x.map((x, i) => ({ x, y: track.y[i]! }));
  return followed.map((place): Sample => {
    const k = nearestIndex(discs, place);
    if (k < Math.max(1, clear) || track.radius[k]! > (1 + OWN) * place.half) return place;
    return { ...place, left: place.left.length > 0 ? place.left : [track.left[k]!], right: place.right.length > 0 ? place.right : [track.right[k]!] };
  });
}

/** The track between the safe places of its ends. The shed walls are named as seen inwards: against the track at its start, along it at its end. */
function safePart(track: Track, first: LegEnd | undefined, last: LegEnd | undefined): Sample[] {
  const from = first?.safe ?? 0;
  const to = Math.max(from, track.x.length - 1 - (last?.safe ?? 0));
  return Array.from({ length: to - from + 1 }, (_, i): Sample => {
    const k = from + i;
    const sheds = (end: LegEnd | undefined, way: number) => (way < SHED * 2 * track.radius[k]! ? end?.shed : undefined);
    const [early, late] = [sheds(first, track.along[k]! - track.along[from]!), sheds(last, track.along[to]! - track.along[k]!)];
    const [noLeft, noRight] = [early === 'right' || late === 'left', early === 'left' || late === 'right'];
    return { x: track.x[k]!, y: track.y[k]!, half: track.radius[k]!, left: noLeft ? [] : [track.left[k]!], right: noRight ? [] : [track.right[k]!] };
  });
}

function nearestIndex(line: readonly Point[], { x, y }: Point): number {
  return line.reduce((best, place, i) => (Math.hypot(place.x - x, place.y - y) < Math.hypot(line[best]!.x - x, line[best]!.y - y) ? i : best), 0);
}

/** As seen the other way. */
const flipped = (sample: Sample): Sample => ({ ...sample, left: sample.right, right: sample.left });

/** A bridge between two runs is at least this long, in half-widths. */
const LEAST_GAP = 0.4;

/** Shortens two runs where they come together until the second lies ahead of the first: each may have been followed past the other. */
function apart(runs: readonly Run[], one: number, two: number): void {
  const [a, b] = [runs[one]!.samples, runs[two]!.samples];
  const [from, to] = [runs[one]!.last!.direction + Math.PI, runs[two]!.first!.direction];
  const [ux, uy] = [Math.cos(from) + Math.cos(to), Math.sin(from) + Math.sin(to)];
  const size = Math.hypot(ux, uy);
  for (let k = 0; size > 0.5 && a.length > 6 && b.length > 6; k++) {
    const [p, q] = [a.at(-1)!, b[0]!];
    if ((q.x - p.x) * ux + (q.y - p.y) * uy >= (LEAST_GAP * size * (p.half + q.half)) / 2) return;
    if (k % 2 === 0) a.pop();
    else b.shift();
  }
}

/** Samples between two runs on a cubic with their directions; no wall is seen there. */
function bridge(run: Run, next: Run): Sample[] {
  const [a, b] = [run.samples.at(-1)!, next.samples[0]!];
  const apart = Math.hypot(b.x - a.x, b.y - a.y);
  const [u, v] = [run.last!.direction + Math.PI, next.first!.direction];
  const handle = apart / 3;
  const [c, d] = [{ x: a.x + handle * Math.cos(u), y: a.y + handle * Math.sin(u) }, { x: b.x - handle * Math.cos(v), y: b.y - handle * Math.sin(v) }];
  const count = Math.max(1, Math.ceil((16 * apart) / (a.half + b.half)));
  return Array.from({ length: count - 1 }, (_, k): Sample => {
    const t = (k + 1) / count;
    const s = 1 - t;
    const mix = (p: number, q: number, r: number, w: number) => s * s * s * p + 3 * s * s * t * q + 3 * s * t * t * r + t * t * t * w;
    return {
      x: mix(a.x, c.x, d.x, b.x), y: mix(a.y, c.y, d.y, b.y), half: s * a.half + t * b.half,
      left: [], right: [],
    };
  });
}

function distinct(samples: readonly Sample[], closed: boolean): Sample[] {
  const kept: Sample[] = [];
  const near = (p: Point, q: Point, half: number) => Math.hypot(p.x - q.x, p.y - q.y) < 1e-3 * half;
  for (const sample of samples) if (kept.length === 0 || !near(kept.at(-1)!, sample, sample.half)) kept.push(sample);
  while (closed && kept.length > 1 && near(kept.at(-1)!, kept[0]!, kept[0]!.half)) kept.pop();
  return kept;
}
