import { distance } from '../near.ts';
import type { Subject } from '../handles.ts';
import { EMPTY_HANDED, frameOf, sheet } from '../store.ts';
import { subject } from '../subject.ts';
import { type Point, toScreen } from '../view.ts';
import { canEnd, withTarget } from './picking.ts';
import { type HandHold, finish, holdTarget, takeAll } from './pull.ts';
import { type Target, aimedAt } from './targets.ts';
import { type Way, drags, isOpen, wayOf, waysOf } from './ways.ts';

/** The node shown and how it is worked on by hand. */
export interface AtWork {
  readonly subject: Subject;
  readonly way: Way;
}

/** What is worked on now; undefined while another tool is taken up, or where nothing can be done by hand. */
export function atWork(): AtWork | undefined {
  const { tool, way: chosen } = sheet.getState();
  const shown = tool === 'look' ? subject() : undefined;
  const way = shown && wayOf(waysOf(shown), chosen);
  return shown && way ? { subject: shown, way } : undefined;
}

/** Chooses an act; what was begun with another is given up. */
export function chooseWay(act: string | undefined): void {
  sheet.setState({ tool: 'look', tape: {}, snap: undefined, grip: undefined, hovered: undefined, way: act, ...EMPTY_HANDED });
}

/** Chooses the act after the present one, or before it. */
export function stepWay(step: 1 | -1): void {
  const shown = subject();
  const ways = shown ? waysOf(shown) : [];
  const index = ways.findIndex(({ act }) => act === wayOf(ways, sheet.getState().way)?.act);
  chooseWay(ways[(index + step + ways.length) % ways.length]?.act);
}

/** What lies under a place of the sheet and can be taken next. */
export function aimAt(at: Point): Target | undefined {
  const work = atWork();
  return work && aimedAt(work.way, sheet.getState().picked, at, frameOf(sheet.getState()));
}

/** Takes hold of what lies under a place, where the act is done by pulling. */
export function holdUnder(at: Point): HandHold | undefined {
  const work = atWork();
  const target = work && aimAt(at);
  return work && target && holdTarget(work.subject, work.way, target, at);
}

/** A click on the sheet: takes what lies there; whether there was something to take. */
export function clickAt(at: Point): boolean {
  const work = atWork();
  const target = work && aimAt(at);
  if (!work || !target) return false;
  // A click alone drags nothing; keys can go on from there.
  if (drags(work.way)) sheet.setState({ target, told: '' });
  else if (isOpen(work.way) && isAgain(at)) end();
  else take(work, target);
  return true;
}

/** Pixels within which a second click means the same place. */
const SAME_PLACE = 5;

/** A second click on the last place ends what has as many places as one likes, as a double click does. */
function isAgain(at: Point): boolean {
  const { picked } = sheet.getState();
  const frame = frameOf(sheet.getState());
  const last = picked.at(-1);
  return last !== undefined && distance(toScreen(frame, last.at), toScreen(frame, at)) <= SAME_PLACE;
}

/** Takes a target for the next place. */
export function take({ subject: shown, way }: AtWork, target: Target): void {
  takeAll(shown, way, withTarget(way, sheet.getState().picked, target));
}

/** Ends an edit of as many places as one likes; whether there were enough. */
export function end(): boolean {
  const work = atWork();
  const { picked } = sheet.getState();
  if (!work || !canEnd(work.way, picked)) return false;
  finish(work.subject, work.way, picked);
  return true;
}

/** Gives the last place taken back; whether there was one. */
export function takeBack(): boolean {
  const { picked } = sheet.getState();
  if (picked.length === 0) return false;
  sheet.setState({ picked: picked.slice(0, -1), target: undefined, told: '' });
  return true;
}

/** Gives up what was begun, else lets go of what keys stand on, else goes back to the first way; whether there was anything to leave. */
export function leave(): boolean {
  const { picked, target, way, pull } = sheet.getState();
  if (picked.length > 0 || target || pull) sheet.setState(EMPTY_HANDED);
  else if (way !== undefined) chooseWay(undefined);
  else return false;
  return true;
}
