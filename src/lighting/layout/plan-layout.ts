import { type Path, type Point, distance, pathEnd, pathPiece } from '../../geometry/index.ts';
import { stripLength } from '../strip-length.ts';
import { type Strip, ampsPerMillimetre } from '../strip.ts';
import type { Tube } from '../tube.ts';
import type { DarkSpot, Jumper, LightRun, Lighting } from '../types.ts';
import { type Gap, findGaps } from './contacts.ts';
import { type Courses, coursesOf } from './course.ts';
import type { Chain } from './chain.ts';
import { groupLinks } from './group-runs.ts';
import { type SharedHoles, shareHoles } from './holes.ts';
import { type Piece, type PieceOptions, middleOf, pieceOf, reversePiece } from './pieces.ts';
import { type Span, spansOf } from './spans.ts';

/** What a layout is asked to be. Lengths mm. */
export interface LayoutRequest extends Omit<PieceOptions, 'moduleLength'> {
  readonly centreLines: readonly Path[];
  readonly strip: Strip;
  readonly tube: Tube;
  /** Most voltage lost along the strip of a run fed from one end, as a share of its rated voltage. */
  readonly stripDrop: number;
  /** Holes at all ends of pieces, where jumpers go behind the board; or only where runs start and end. */
  readonly holesAt: 'pieces' | 'runs';
  /** Where leads reach the board; the middle of all strip when there is none. */
  readonly leads: readonly Point[];
  /** Added at each end of a wire. */
  readonly spareWire: number;
}

export interface Layout {
  readonly lighting: Lighting;
  /** Centres of the cable holes. */
  readonly holes: readonly Point[];
  /** Most current of a run, A: the strip's own limit, or what keeps to the drop along it. */
  readonly currentLimit: number;
}

/** Chords stray from centre lines by at most this share of the tube's width. */
const CHORDS = 1e-3;

/** Lays tube and strip into the groove and groups the pieces into runs. */
export function planLayout(request: LayoutRequest): Layout {
  const { centreLines, strip, tube } = request;
  const courses = coursesOf(centreLines, tube.width * CHORDS);
  const gaps = findGaps(courses, tube.width);
  const spans = spansOf(courses, gaps);
  const options = { ...request, moduleLength: strip.moduleLength };
  const pieces = spans.map((span) => pieceOf(courses.list[span.stroke]!, span, options));
  const lit = pieces.filter((piece) => piece !== undefined);
  const leads = request.leads.length > 0 || lit.length === 0 ? request.leads : [middleOfAll(lit)];
  const limit = runCurrentLimit(strip, request.stripDrop);
  const chains = orderedRuns(lit, limit, leads, strip);
  const holes = shareHoles(holePlaces(chains, request.holesAt), 2 * request.holeDiameter);
  const short = spans.flatMap((span, i) => (pieces[i] ? [] : [tooShort(courses, span)]));
  const runs = chains.map((chain) => runOf(chain, holes, request));
  return { lighting: { strip, tube, runs, dark: [...gaps.map(darkOf), ...short], leads }, holes: holes.centres, currentLimit: limit };
}

/**
 * Most current of a run, A. A strip of length L, i A/mm and rails of r ohm/mm loses i r L^2 / 2 when fed from one end; half its current at the
 * far end does as much harm as all of it half-way.
 */
export function runCurrentLimit(strip: Strip, stripDrop: number): number {
  const perMillimetre = ampsPerMillimetre(strip);
  const rail = strip.railResistance / 1000;
  return rail === 0 ? strip.greatestCurrent : Math.min(strip.greatestCurrent, Math.sqrt((2 * stripDrop * strip.volts * perMillimetre) / rail));
}

/** Pieces by run in the order and direction of the current: runs in the order of their first strokes, each begun at its end nearest to a lead. */
function orderedRuns(pieces: readonly Piece[], limit: number, leads: readonly Point[], strip: Strip): Piece[][] {
  const links = pieces.map(({ holes, cutLength }) => ({ ends: holes, load: cutLength * ampsPerMillimetre(strip) }));
  const chains = [...groupLinks(links, limit)].sort((a, b) => firstLink(a) - firstLink(b));
  return chains.map((chain) => fromNearestLead(chain.map(({ link, turned }) => (turned ? reversePiece(pieces[link]!) : pieces[link]!)), leads));
}

const firstLink = (chain: Chain): number => Math.min(...chain.map(({ link }) => link));

function fromNearestLead(pieces: Piece[], leads: readonly Point[]): Piece[] {
  const off = (place: Point) => Math.min(...leads.map((lead) => distance(lead, place)));
  return off(pieces.at(-1)!.holes[1]) < off(pieces[0]!.holes[0]) ? pieces.map(reversePiece).reverse() : pieces;
}

function holePlaces(runs: readonly (readonly Piece[])[], at: LayoutRequest['holesAt']): Point[] {
  return runs.flatMap((pieces) => (at === 'pieces' ? pieces.flatMap(({ holes }) => holes) : [pieces[0]!.holes[0], pieces.at(-1)!.holes[1]]));
}

function runOf(pieces: readonly Piece[], shared: SharedHoles, { strip, spareWire, holesAt }: LayoutRequest): LightRun {
  const place = (hole: Point) => (holesAt === 'pieces' ? shared.of(hole) : hole);
  const jumpers = pieces.slice(1).map((piece, i): Jumper => {
    const [from, to] = [place(pieces[i]!.holes[1]), place(piece.holes[0])];
    return { from, to, length: distance(from, to) + 2 * spareWire };
  });
  const metres = stripLength(pieces) / 1000;
  const watts = metres * strip.wattsPerMetre;
  return { pieces: pieces.map(withoutHoles), jumpers, feeds: [{ joint: 0, at: shared.of(pieces[0]!.holes[0]) }], watts, amps: watts / strip.volts };
}

function withoutHoles({ stroke, path, lit, modules, cutLength, unlitStart, unlitEnd }: Piece): LightRun['pieces'][number] {
  return { stroke, path, lit, modules, cutLength, unlitStart, unlitEnd };
}

const darkOf = ({ stroke, at, dark, why, by }: Gap): DarkSpot => ({ stroke, at, length: dark, why, by });

function tooShort({ list }: Courses, { stroke, from, to }: Span): DarkSpot {
  const { path, length } = list[stroke]!;
  const middle = (from + to) / 2;
  return { stroke, at: pathEnd(pathPiece(path, 0, middle > length ? middle - length : middle)), length: to - from, why: 'too short' };
}

function middleOfAll(pieces: readonly Piece[]): Point {
  const total = stripLength(pieces);
  return pieces.reduce((sum, piece) => {
    const { x, y } = middleOf(piece);
    return { x: sum.x + (x * piece.cutLength) / total, y: sum.y + (y * piece.cutLength) / total };
  }, { x: 0, y: 0 });
}
