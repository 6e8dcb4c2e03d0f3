import { moveLength } from '../job/moves.ts';
import { type Codes } from './codes.ts';
import { feedFor } from './feed.ts';
import { target } from './offsets.ts';
import { PLANE_AXES, type PlaneAxes } from './plane.ts';
import { AXES, addMove, place, startPlace, type State, type Triple } from './state.ts';
import { refuse, type Refusal } from './types.ts';

/** Greatest difference of an arc's radii: 0.002 mm, or 0.0002 inch in inch mode. NISTIR 6556, 3.5.3.2. */
const RADIUS_LIMIT = { mm: 0.002, inch: 0.0002 * 25.4 };
/** Differences are of decimal fractions: their rounding must not break a rule they keep. */
const NOISE = 1e-9;
const OFFSET_LETTERS = ['I', 'J', 'K'] as const;

/** G2 and G3 in either format, helical if the axis normal to the plane moves as well. */
export function moveArc(clockwise: boolean, codes: Codes, state: State): Refusal | undefined {
  const plane = PLANE_AXES[state.plane];
  const to = target(codes, state);
  const centre = centreOf(to, clockwise, codes, state);
  if ('expected' in centre) return centre;
  const flat = ({ first, second, normal }: PlaneAxes, t: Triple) => ({ x: t[first], y: t[second], z: t[normal] });
  const arc = { kind: 'arc' as const, to: flat(plane, to), centre: flat(plane, centre), clockwise, feed: 0 };
  const feed = feedFor(moveLength(flat(plane, state.position), arc), codes, state);
  if (typeof feed !== 'number') return feed;
  const { line, spindle, spindleSpeed, feedMode } = state;
  return addMove(state, to, {
    kind: 'arc', line, from: startPlace(state), to: place(to), spindle, spindleSpeed, feed, feedMode, plane: state.plane, centre: place(centre), clockwise,
  });
}

function centreOf(to: Triple, clockwise: boolean, codes: Codes, state: State): Triple | Refusal {
  const { first, second, normal } = PLANE_AXES[state.plane];
  const [one, two] = [AXES[first], AXES[second]];
  if (!codes.values.has(one) && !codes.values.has(two)) {
    return refuse(`an ${one} or ${two} word with an arc in the ${state.plane} plane`, 'neither', 'Say where the arc ends.');
  }
  const wrong = OFFSET_LETTERS[normal];
  if (codes.values.has(wrong)) return refuse(`no ${wrong} word with an arc in the ${state.plane} plane`, `${wrong}${codes.values.get(wrong)}`, 'Take it away, or select the plane it belongs to.');
  const centred = codes.values.has(OFFSET_LETTERS[first]) || codes.values.has(OFFSET_LETTERS[second]);
  const radius = codes.values.get('R');
  if (centred && radius !== undefined) return refuse('a radius or a centre', 'both', 'Take the R word away.');
  if (radius !== undefined) return centreByRadius(to, radius * state.unit * (clockwise ? 1 : -1), state);
  if (centred) return centreByOffsets(to, codes, state);
  return refuse(`${OFFSET_LETTERS[first]}, ${OFFSET_LETTERS[second]} or R with an arc`, 'none', 'Give the centre of the arc, from its start.');
}

function centreByOffsets(to: Triple, { values }: Codes, state: State): Triple | Refusal {
  const { first, second } = PLANE_AXES[state.plane];
  const centre: Triple = [...state.position];
  for (const axis of [first, second]) centre[axis] += (values.get(OFFSET_LETTERS[axis]) ?? 0) * state.unit;
  const distance = (from: Triple) => Math.hypot(from[first] - centre[first], from[second] - centre[second]);
  const [start, end] = [distance(state.position), distance(to)];
  if (start === 0) return refuse('an arc with a radius', 'a centre at its start', 'Correct I, J or K: they count from the start of the arc.');
  const inches = state.unit !== 1;
  if (Math.abs(start - end) > (inches ? RADIUS_LIMIT.inch : RADIUS_LIMIT.mm) + NOISE) {
    return refuse(`radii at both ends within ${inches ? '0.0002 inch' : '0.002 mm'}`, `${text(start)} and ${text(end)} mm`, 'Write arcs with more decimals, or correct the centre.');
  }
  return centre;
}

/** The sign of `radius` has been turned so that above 0 the centre lies to the right of the chord. */
function centreByRadius(to: Triple, radius: number, state: State): Triple | Refusal {
  const { first, second } = PLANE_AXES[state.plane];
  const from = state.position;
  const [dx, dy] = [to[first] - from[first], to[second] - from[second]];
  const half = Math.hypot(dx, dy) / 2;
  if (half === 0) return refuse('a radius arc that ends away from its start', 'the same place', 'Write full circles with I and J.');
  if (half > Math.abs(radius) + NOISE) return refuse(`a radius of at least half the distance, ${text(half)} mm`, `${text(Math.abs(radius))} mm`, 'Correct R or the end of the arc.');
  const height = Math.sqrt(Math.max(0, radius * radius - half * half)) * Math.sign(radius);
  const centre: Triple = [...from];
  centre[first] += dx / 2 + (height * dy) / (2 * half);
  centre[second] += dy / 2 - (height * dx) / (2 * half);
  return centre;
}

const text = (length: number): string => length.toFixed(4);
