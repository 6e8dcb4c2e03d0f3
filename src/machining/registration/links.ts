import { type Box, boxHolds, growBox, intersectBoxes, type Point, samplePath, shiftBox, unionBoxes } from '../../geometry/index.ts';
import type { Tile, Tiling } from '../job/tiling.ts';
import { choosePins, type PinPair } from './pin-pair.ts';
import { type Lies, makePlaces, RANK } from './places.ts';
import type { RegistrationRequest } from './request.ts';
import { seamSteps, stepsWith } from './seam-steps.ts';

/** A set-up and the one before it, its neighbour, that drills its holes. */
export interface Link {
  readonly setUp: number;
  readonly drilledIn: number;
  readonly pins: PinPair;
}

/** A set-up for which no two places for pins were found. */
export interface Unlinked {
  readonly setUp: number;
}

/** What every cutter's edge reaches in every set-up, in program coordinates. */
export function commonReach({ tiles }: Tiling): Box {
  return unionBoxes(tiles.map(({ window, shift }) => shiftBox(window, -shift[0], -shift[1])))!;
}

/** The neighbours of a set-up that run before it, the earliest first. */
function neighboursBefore(tiles: readonly Tile[], setUp: number): number[] {
  const { column, row } = tiles[setUp]!;
  return tiles.slice(0, setUp).flatMap((tile, i) => (Math.abs(tile.column - column) + Math.abs(tile.row - row) === 1 ? [i] : []));
}

/** New pins must make steps smaller than this share of what pins that are there make, to be worth making. */
const WORTH = 0.8;
/** A step this much larger, mm, is borne rather than a pin's hole in a groove, or in view (common practice, no source). */
const PRICE: Readonly<Record<Lies, number>> = { waste: 0, groove: 0.03, board: 0.2 };

/** One way to go about it: how much hidden holes are worth, and which neighbours may drill for a set-up. */
interface Strategy {
  readonly price: number;
  readonly from: 'any' | 'row' | 'column';
}

/** Tried in this order: set-ups that all hang on one row or column add up fewer errors where both directions are cut. */
const STRATEGIES: readonly Strategy[] = [1, 0.1].flatMap((price) => (['any', 'column', 'row'] as const).map((from) => ({ price, from })));

/**
 * Finds pins for every set-up after the first: hidden ones if their steps stay within the limit, else those that leave the
 * smallest steps. Pins that serve several moves are taken where they do about as well as others.
 */
export function linkSetUps(request: RegistrationRequest): (Link | Unlinked)[] {
  const desk = deskOf(request);
  let best: { readonly links: (Link | Unlinked)[]; readonly worst: number } | undefined;
  for (const strategy of STRATEGIES) {
    const links = linksBy(desk, strategy);
    const whole = links.every((link) => 'pins' in link);
    const worst = whole ? Math.max(0, ...seamSteps(request, links).map((step) => step.worst)) : Infinity;
    if (!best || worst < best.worst) best = { links, worst };
    if (worst <= request.limit) break;
  }
  return best?.links ?? [];
}

/** What the strategies share: the same places are asked for again and again. */
interface Desk {
  readonly request: RegistrationRequest;
  readonly lies: (place: Point) => Lies | undefined;
  /** The middles of grooves, where the tube hides a hole. */
  readonly hidden: readonly Point[];
  readonly found: Map<string, readonly PinPair[]>;
}

/** Places along the grooves are tried this far apart, mm. */
const ALONG = 15;

const deskOf = (request: RegistrationRequest): Desk => ({
  request, lies: makePlaces(request), found: new Map(),
  hidden: request.centreLines.flatMap((path) => samplePath(path, ALONG).map(({ point }) => point)),
});

function linksBy(desk: Desk, strategy: Strategy): (Link | Unlinked)[] {
  const links: (Link | Unlinked)[] = [];
  desk.request.tiling.tiles.slice(1).forEach((_, i) => { links.push(bestLink(desk, strategy, i + 1, links.filter((link) => 'pins' in link)) ?? { setUp: i + 1 }); });
  return links;
}

function bestLink(desk: Desk, strategy: Strategy, setUp: number, links: readonly Link[]): Link | undefined {
  const options = drillers(desk.request.tiling.tiles, setUp, strategy.from).flatMap((drilledIn) => optionsFor(desk, setUp, drilledIn, links).map((option) => {
    const step = Math.max(0, ...stepsWith(desk.request, [...links, option.link], setUp));
    return { link: option.link, cost: option.worth * step + strategy.price * option.price };
  }));
  return options.sort((a, b) => a.cost - b.cost)[0]?.link;
}

/** The neighbours that may drill for a set-up; only those in its row or column where it has one there. */
function drillers(tiles: readonly Tile[], setUp: number, from: Strategy['from']): number[] {
  const before = neighboursBefore(tiles, setUp);
  const own = from === 'any' ? before : before.filter((one) => tiles[one]![from] === tiles[setUp]![from]);
  return own.length > 0 ? own : before.length > 0 ? before : [setUp - 1];
}

interface Option {
  readonly link: Link;
  readonly worth: number;
  readonly price: number;
}

/** Pins that could serve one move: those there are, those that later moves could use too, and the best for it alone. */
function optionsFor(desk: Desk, setUp: number, drilledIn: number, links: readonly Link[]): Option[] {
  const { request: { tiling, pins } } = desk;
  const [dx, dy] = tiling.tiles[setUp]!.shift;
  const lies = (pin: Point) => desk.lies({ x: pin.x + dx, y: pin.y + dy });
  const asOption = (pair: PinPair, worth: number): Option => ({ link: { setUp, drilledIn, pins: pair }, worth, price: Math.max(...pair.map((pin) => PRICE[lies(pin) ?? 'board'])) });
  if (pins.length >= 2) return [asOption([pins[0]!, pins[1]!], 1)];
  const box = reachOfMove(desk.request, setUp, drilledIn);
  if (!box) return [];
  const known = links.map((link) => link.pins).filter((pair) => pair.every((pin) => boxHolds(box, pin) && lies(pin) !== undefined));
  const own = remembered(desk, `${setUp} ${drilledIn}`, () => choosePins(box, lies, desk.hidden.map(({ x, y }) => ({ x: x - dx, y: y - dy }))));
  const shared = remembered(desk, `${setUp} ${drilledIn} on`, () => sharedPins(desk, setUp, drilledIn));
  return [...[...known, ...shared].map((pair) => asOption(pair, WORTH)), ...own.map((pair) => asOption(pair, 1))];
}

function remembered({ found }: Desk, key: string, find: () => readonly PinPair[]): readonly PinPair[] {
  const pairs = found.get(key) ?? find();
  found.set(key, pairs);
  return pairs;
}

/** Pins that serve this move and all later ones along the same axis, from one neighbour to the next. */
function sharedPins(desk: Desk, setUp: number, drilledIn: number): PinPair[] {
  const { tiles } = desk.request.tiling;
  const along = tiles[setUp]!.row === tiles[drilledIn]!.row ? 'row' : 'column';
  const moves = tiles.flatMap((tile, later): [number, number][] => {
    const before = later <= setUp ? undefined : neighboursBefore(tiles, later).find((one) => tiles[one]![along] === tile[along]);
    return before === undefined ? [] : [[later, before]];
  });
  if (moves.length === 0) return [];
  const all = [[setUp, drilledIn] as const, ...moves];
  const reach = all.map(([later, before]) => reachOfMove(desk.request, later, before)).reduce((a, b) => a && b && intersectBoxes(a, b));
  return !reach ? [] : choosePins(reach, (pin) => {
    const found = all.map(([later]) => desk.lies({ x: pin.x + tiles[later]!.shift[0], y: pin.y + tiles[later]!.shift[1] }));
    return found.includes(undefined) ? undefined : RANK[Math.max(...found.map((one) => RANK.indexOf(one!)))];
  });
}

/** Program coordinates within reach while a pin's hole is drilled in one set-up, and again while the pin is used in the other. */
function reachOfMove({ tiling, pinDiameter, clearance }: RegistrationRequest, setUp: number, drilledIn: number): Box | undefined {
  const reach = growBox(commonReach(tiling), -(pinDiameter + clearance) / 2);
  const [before, now] = [tiling.tiles[drilledIn]!.shift, tiling.tiles[setUp]!.shift];
  return intersectBoxes(reach, shiftBox(reach, before[0] - now[0], before[1] - now[1]));
}
