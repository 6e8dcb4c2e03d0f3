import type { Key } from '../keys.ts';
import { shapeOf } from '../shapes.ts';
import { sheet } from '../store.ts';
import type { Point } from '../view.ts';
import { placeAlong, trackOf, wayTo } from './along.ts';
import { type AtWork, atWork, end, leave, take, takeBack } from './doing.ts';
import { type HandHold, dragHold } from './pull.ts';
import { type Target, nextKind, nextTarget, offered } from './targets.ts';
import { drags, isOpen } from './ways.ts';

/** What keys drag, from Enter to Enter, and how far it was moved, mm. */
let held: { readonly hold: HandHold; readonly from: Point; by: Point } | undefined;
/** Where keys worked last, so that they go on from there. */
let last: Point | undefined;

/** Does what a key means for the act at hand; `step` is the arrow's direction with its length in mm. Whether it meant anything. */
export function pressHandKey(key: Key, step: Point | undefined): boolean {
  const work = atWork();
  if (!work) return false;
  if (held) return pressHeld(held, key, step);
  if (step) return pressArrow(work, step);
  switch (key.key) {
    case 'Enter': return (isOpen(work.way) && end()) || takeTarget(work);
    case ' ': return takeTarget(work);
    case 'Backspace': return takeBack();
    case 'Escape': return leave();
    default: return false;
  }
}

/** While something is dragged by keys: arrows move it, Enter lets it go, Escape takes it back. */
function pressHeld(dragged: NonNullable<typeof held>, { key }: Key, step: Point | undefined): boolean {
  if (step) {
    dragged.by = { x: dragged.by.x + step.x, y: dragged.by.y + step.y };
    dragged.hold.moveTo(dragged.by);
    last = { x: dragged.from.x + dragged.by.x, y: dragged.from.y + dragged.by.y };
    return true;
  }
  if (key !== 'Enter' && key !== ' ' && key !== 'Escape') return false;
  held = undefined;
  if (key === 'Escape') dragged.hold.undo();
  else dragged.hold.release();
  sheet.setState({ pull: undefined, target: undefined });
  return true;
}

function pressArrow(work: AtWork, step: Point): boolean {
  const { target, picked } = sheet.getState();
  const present = target ?? (nextKind(work.way, picked) === 'anywhere' && picked.length > 0 ? { kind: 'anywhere' as const, at: picked.at(-1)!.at } : undefined);
  if (!present) return false;
  if (present.kind === 'anywhere') standOn({ kind: 'anywhere', at: { x: present.at.x + step.x, y: present.at.y + step.y } });
  else if (present.kind === 'stroke' && nextKind(work.way, picked) === 'stroke') standOn(slid(work, present, step.x + step.y));
  else standOn(nextTarget(offered(work.way, picked), present, step.x + step.y > 0 ? 1 : -1));
  return true;
}

/** A place so many mm farther along its stroke. */
function slid({ way }: AtWork, target: Extract<Target, { kind: 'stroke' }>, by: number): Target {
  const item = way.strokes[target.stroke];
  const track = item && trackOf(shapeOf(item));
  return { ...target, at: (track && placeAlong(track, wayTo(track, target.at) + by)) ?? target.at };
}

function standOn(target: Target | undefined): void {
  if (target) last = target.at;
  sheet.setState({ target, told: '' });
}

/** Stands on the next thing that can be taken, or the one before; where it can be anywhere, on the place in `middle`. The place stood on. */
export function walkTargets(step: 1 | -1, middle: Point): Point | undefined {
  const work = atWork();
  if (!work) return undefined;
  const { target, picked } = sheet.getState();
  const anywhere = nextKind(work.way, picked) === 'anywhere';
  standOn(anywhere ? (target ?? { kind: 'anywhere', at: picked.at(-1)?.at ?? middle }) : nextTarget(offered(work.way, picked), target, step, last));
  return sheet.getState().target?.at;
}

/** Takes what keys stand on. What is to be dragged follows the arrows from then on; else they stand on what comes next. */
function takeTarget(work: AtWork): boolean {
  const { target } = sheet.getState();
  if (!target) return false;
  last = target.at;
  if (drags(work.way)) {
    held = { hold: dragHold(work.subject, work.way, target), from: target.at, by: { x: 0, y: 0 } };
    sheet.setState({ target: undefined, pull: { from: target.at, to: target.at, onto: undefined } });
    return true;
  }
  take(work, target);
  standOnNext();
  return true;
}

/** After a place was taken and more are wanted, keys stand on the nearest of them. */
function standOnNext(): void {
  const work = atWork();
  const { picked } = sheet.getState();
  if (!work || picked.length === 0) return;
  const next = nextKind(work.way, picked) === 'anywhere' ? picked.at(-1) && { kind: 'anywhere' as const, at: picked.at(-1)!.at } : nextTarget(offered(work.way, picked), undefined, 1, last);
  sheet.setState({ target: next });
}

/** What keys drag rests while no key is down, so that everything is computed. */
export function restHand(): void {
  held?.hold.rest();
}

/** The focus went elsewhere: what keys drag is let go where it is. */
export function dropHand(): void {
  if (!held) return;
  const { hold } = held;
  held = undefined;
  hold.release();
  sheet.setState({ pull: undefined });
}
