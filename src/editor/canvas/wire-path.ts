import type { Box } from '../model/boxes.ts';

/** A place on the bench: x right, y down. */
export type Spot = readonly [number, number];

/** An end of a wire: where its port is, and which of the parallel lanes beside the card it turns in. */
export interface WireEnd {
  readonly at: Spot;
  readonly lane: number;
}

/** How far a wire goes straight on before its first turn, past the words on the card's edge. */
const STUB = 60;
/** Where cards are close: only just past the edge, under the words. */
const SHORT = 26;
const LANE = 7;
/** Room left between a wire and the card it passes. */
const CLEAR = 14;
/** Corridors tried before a wire simply goes behind the cards in its way. */
const MOST_CORRIDORS = 24;

/** How far above or below its ends a wire may go to find a free corridor. */
const DETOUR = 700;

const EPSILON = 0.5;

/**
 * The turns of a wire from an output (leaving to the right) to an input (entered from the left): square turns only, around
 * cards where there is a way with few turns, behind them where there is none. `lane` keeps wires of different outputs apart.
 */
export function routeWire(from: WireEnd, to: WireEnd, cards: readonly Box[], lane = 0): readonly Spot[] {
  const [[sx, sy], [ex, ey]] = [from.at, to.at];
  const turns = { out: sx + STUB + from.lane * LANE, back: ex - STUB - to.lane * LANE };
  const near = cardsBetween(cards, [turns.out, turns.back, sx, ex], [sy, ey]);
  const straight: readonly Spot[] = [from.at, to.at];
  if (Math.abs(sy - ey) < EPSILON && sx <= ex && isFree(straight, near)) return straight;
  const close = { out: sx + SHORT, back: ex - SHORT };
  return freeWay(from.at, to.at, turns, { near, lane }) ?? freeWay(from.at, to.at, close, { near, lane })
    ?? directWays(from.at, to.at, turns)[0] ?? through(from.at, to.at, turns, (sy + ey) / 2);
}

/** Cards that a wire between these places may meet. */
function cardsBetween(cards: readonly Box[], xs: readonly number[], ys: readonly number[]): readonly Box[] {
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys) - DETOUR, Math.max(...ys) + DETOUR];
  return cards.filter(({ x, y, width, height }) => x < right && x + width > left && y < bottom && y + height > top);
}

/** A way with these first and last turns that meets no card. */
function freeWay(from: Spot, to: Spot, turns: Turns, among: Among): readonly Spot[] | undefined {
  return directWays(from, to, turns).find((way) => isFree(way, among.near)) ?? aroundCards(from, to, turns, among);
}

/** Ways with one upright piece: beside the card they leave, or beside the one they reach. */
function directWays(from: Spot, to: Spot, { out, back }: Turns): readonly (readonly Spot[])[] {
  return out <= back + EPSILON ? [bend(from, to, out), bend(from, to, back)] : tight(from, to);
}

const bend = (from: Spot, to: Spot, x: number): readonly Spot[] => [from, [x, from[1]], [x, to[1]], to];

/** Ports that face one another across a narrow gap: one turn in the middle. */
const tight = (from: Spot, to: Spot): readonly (readonly Spot[])[] =>
  to[0] - from[0] >= STUB ? [bend(from, to, (from[0] + to[0]) / 2)] : [];

interface Turns {
  readonly out: number;
  readonly back: number;
}

interface Among {
  readonly near: readonly Box[];
  readonly lane: number;
}

const through = (from: Spot, to: Spot, { out, back }: Turns, y: number): readonly Spot[] =>
  [from, [out, from[1]], [out, y], [back, y], [back, to[1]], to];

/** Along the nearest free line between rows of cards; undefined when none is found. */
function aroundCards(from: Spot, to: Spot, turns: Turns, { near, lane }: Among): readonly Spot[] | undefined {
  const middle = (from[1] + to[1]) / 2;
  const room = CLEAR + lane * LANE;
  const heights = near.flatMap(({ y, height }) => [y - room, y + height + room]);
  const tried = [middle, ...heights].filter((y) => y > Math.min(from[1], to[1]) - DETOUR && y < Math.max(from[1], to[1]) + DETOUR).sort((a, b) => Math.abs(a - middle) - Math.abs(b - middle)).slice(0, MOST_CORRIDORS);
  return tried.map((y) => through(from, to, turns, y)).find((way) => isFree(way, near));
}

function isFree(way: readonly Spot[], cards: readonly Box[]): boolean {
  return way.every((spot, i) => i === 0 || !cards.some((card) => crosses(way[i - 1]!, spot, card)));
}

/** Whether a level or upright line runs through the inside of a card. */
function crosses([ax, ay]: Spot, [bx, by]: Spot, { x, y, width, height }: Box): boolean {
  return Math.min(ax, bx) < x + width - EPSILON && Math.max(ax, bx) > x + EPSILON
    && Math.min(ay, by) < y + height - EPSILON && Math.max(ay, by) > y + EPSILON;
}

/** SVG path data along the turns, each rounded by `radius` or as much as its two sides allow. */
export function drawWire(turns: readonly Spot[], radius = 6): string {
  const spots = turns.filter(([x, y], i) => i === 0 || Math.hypot(x - turns[i - 1]![0], y - turns[i - 1]![1]) > EPSILON);
  return spots.map((spot, i) => {
    const [before, after] = [spots[i - 1], spots[i + 1]];
    if (before === undefined) return `M${show(spot)}`;
    if (after === undefined) return `L${show(spot)}`;
    const round = Math.min(radius, length(before, spot) / 2, length(spot, after) / 2);
    return `L${show(toward(spot, before, round))}Q${show(spot)} ${show(toward(spot, after, round))}`;
  }).join('');
}

const length = ([ax, ay]: Spot, [bx, by]: Spot): number => Math.hypot(bx - ax, by - ay);

function toward(from: Spot, to: Spot, distance: number): Spot {
  const whole = length(from, to);
  return [from[0] + ((to[0] - from[0]) * distance) / whole, from[1] + ((to[1] - from[1]) * distance) / whole];
}

const show = ([x, y]: Spot): string => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;

/** A place halfway along the turns: where a wire's name and buttons are shown. */
export function middleOf(turns: readonly Spot[]): Spot {
  const whole = turns.reduce((sum, spot, i) => (i === 0 ? 0 : sum + length(turns[i - 1]!, spot)), 0);
  let left = whole / 2;
  for (let i = 1; i < turns.length; i += 1) {
    const piece = length(turns[i - 1]!, turns[i]!);
    if (left <= piece && piece > 0) return toward(turns[i - 1]!, turns[i]!, left);
    left -= piece;
  }
  return turns[0] ?? [0, 0];
}

/** Whether a place lies within `reach` of a wire's level and upright pieces. */
export function isNear(turns: readonly Spot[], [x, y]: Spot, reach: number): boolean {
  return turns.some(([bx, by], i) => {
    const [ax, ay] = turns[i - 1] ?? [bx, by];
    return x >= Math.min(ax, bx) - reach && x <= Math.max(ax, bx) + reach && y >= Math.min(ay, by) - reach && y <= Math.max(ay, by) + reach;
  });
}
