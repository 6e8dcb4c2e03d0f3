import { distance, type Point } from '../../geometry/point.ts';
import { type Pass, type PassKind } from '../job/pass.ts';
import { shortenTour, type Stop, tourFrom } from './tour.ts';

/** Grooves need the whole sheet's stiffness, holes the board's fixed place; the outline ends both. */
const KIND_ORDER: readonly PassKind[] = ['groove', 'hole', 'outline'];

/** Passes that stay together and in their order: neighbours of one kind and one name. */
interface Unit extends Stop {
  readonly passes: readonly Pass[];
}

/**
 * The passes in the order to cut them: grooves, then holes, then outlines, and an outline inside another before it.
 * Neighbouring passes of one kind and name keep together and in their order; otherwise the rapids between them are made
 * short, starting at `from`: nearest neighbour, then reversals and moves of parts of the tour while they help. Set-ups
 * come one after the other, each ordered by itself.
 */
export function orderPasses(passes: readonly Pass[], from: Point): Pass[] {
  const setUps = [...new Set(passes.map(({ setUp = 0 }) => setUp))].sort((a, b) => a - b);
  return setUps.flatMap((wanted) => orderWithin(passes.filter(({ setUp = 0 }) => setUp === wanted), from));
}

function orderWithin(passes: readonly Pass[], from: Point): Pass[] {
  const ordered: Pass[] = [];
  let at = from;
  for (const kind of KIND_ORDER) {
    const units = unitsOf(passes.filter((pass) => pass.kind === kind));
    for (const group of kind === 'outline' ? innerFirst(units) : [units]) {
      const tour = shortenTour(tourFrom(group, at), at);
      ordered.push(...tour.flatMap((unit) => unit.passes));
      at = tour.at(-1)?.end ?? at;
    }
  }
  return ordered;
}

/** Length of the rapids across the sheet between passes in the order given, from `from` on, mm. */
export function rapidLength(passes: readonly Pass[], from: Point): number {
  let total = 0;
  let at = from;
  for (const pass of passes) {
    total += distance(at, pass.start);
    at = endOf(pass);
  }
  return total;
}

const endOf = (pass: Pass): Point => pass.moves.at(-1)?.to ?? pass.start;

function unitsOf(passes: readonly Pass[]): Unit[] {
  const groups: Pass[][] = [];
  for (const pass of passes) {
    const last = groups.at(-1);
    if (last && last[0]!.name === pass.name) last.push(pass);
    else groups.push([pass]);
  }
  return groups.map((group) => ({ passes: group, start: group[0]!.start, end: endOf(group.at(-1)!) }));
}

/** Groups of units, those whose surroundings hold most others' first: what lies within an outline is cut before it. */
function innerFirst(units: readonly Unit[]): Unit[][] {
  const boxes = units.map(boxOfUnit);
  const levels = boxes.map((box) => boxes.filter((other) => other !== box && isWithin(box, other)).length);
  return [...new Set(levels)].sort((a, b) => b - a).map((level) => units.filter((_, i) => levels[i] === level));
}

interface Extent {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Bounds of the moves' ends: coarse for arcs, which are at most half circles, but enough to tell inside from outside. */
function boxOfUnit({ passes }: Unit): Extent {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of passes.flatMap((pass) => [pass.start, ...pass.moves.map(({ to }) => to)])) {
    [minX, minY, maxX, maxY] = [Math.min(minX, x), Math.min(minY, y), Math.max(maxX, x), Math.max(maxY, y)];
  }
  return { minX, minY, maxX, maxY };
}

const isWithin = (a: Extent, b: Extent): boolean => a.minX > b.minX && a.minY > b.minY && a.maxX < b.maxX && a.maxY < b.maxY;
