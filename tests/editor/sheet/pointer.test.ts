// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { listenToPointers, wheelFactor } from '../../../src/editor/sheet/pointer.ts';
import { frameOf, sheet, takeTool } from '../../../src/editor/sheet/store.ts';
import { toScreen, toSheet } from '../../../src/editor/sheet/view.ts';
import { editor, present } from '../../../src/editor/state/editor.ts';
import { DOCUMENT, HOLES_PICTURE, STROKES_PICTURE, showSample } from './samples.ts';

let element: HTMLElement;
let stop: () => void;

const fire = (type: string, x: number, y: number, more: PointerEventInit = {}) =>
  element.dispatchEvent(new PointerEvent(type, { clientX: x, clientY: y, button: 0, pointerId: 1, bubbles: true, ...more }));
const onScreen = (x: number, y: number) => toScreen(frameOf(sheet.getState()), { x, y });
const click = (x: number, y: number, more: PointerEventInit = {}) => {
  const at = onScreen(x, y);
  fire('pointerdown', at.x, at.y, more);
  fire('pointerup', at.x, at.y, more);
};
const dragTo = (from: readonly [number, number], to: readonly [number, number], more: PointerEventInit = {}) => {
  const [a, b] = [onScreen(...from), onScreen(...to)];
  fire('pointerdown', a.x, a.y, more);
  fire('pointermove', (a.x + b.x) / 2, (a.y + b.y) / 2, more);
  fire('pointermove', b.x, b.y, more);
  fire('pointerup', b.x, b.y, more);
};

beforeEach(() => {
  showSample(HOLES_PICTURE);
  element = document.createElement('div');
  document.body.append(element);
  stop = listenToPointers(element);
});
afterEach(() => {
  stop();
  element.remove();
});

describe('the pointer on the sheet', () => {
  it('pushes the view where nothing can be taken hold of, and keeps the place under it', () => {
    const at = onScreen(500, 250);
    fire('pointerdown', at.x, at.y);
    fire('pointermove', at.x + 60, at.y - 30);
    expect(toSheet(frameOf(sheet.getState()), { x: at.x + 60, y: at.y - 30 })).toEqual({ x: 500, y: 250 });
    fire('pointerup', at.x + 60, at.y - 30);
    expect(present()).toBe(DOCUMENT);
  });

  it('drags a place by as much as it moved, live, as one step', () => {
    const live: unknown[] = [];
    const unwatch = editor.subscribe((state, before) => { if (state.history !== before.history) live.push(state.gesturing); });
    dragTo([50, 50], [90, 70]);
    unwatch();
    expect(present().nodes[3]!.params.places).toEqual([{ x: 90, y: 70 }, { x: 950, y: 450 }]);
    expect(live.length).toBeGreaterThan(1);
    expect(live.every((gesturing) => gesturing === true)).toBe(true);
    expect(editor.getState().history.past).toHaveLength(1);
    expect(editor.getState().gesturing).toBe(false);
  });

  it('chooses a place by a click without moving it', () => {
    click(51, 49);
    expect(sheet.getState().grip).toEqual({ handle: 0, place: 0 });
    expect(present()).toBe(DOCUMENT);
    click(500, 250);
    expect(sheet.getState().grip).toBeUndefined();
  });

  it('pushes the view with its middle button even over what could be taken', () => {
    dragTo([50, 50], [90, 70], { button: 1 });
    expect(present()).toBe(DOCUMENT);
    expect(sheet.getState().view.x).toBe(460);
  });

  it('adds a place where it is clicked, but not where it dragged', () => {
    takeTool('add');
    dragTo([500, 250], [560, 250]);
    expect(present()).toBe(DOCUMENT);
    click(500, 250);
    expect((present().nodes[3]!.params.places as unknown[])[2]).toEqual({ x: 500, y: 250 });
  });

  it('lets go of what it holds when the press is cancelled or a second finger comes', () => {
    const at = onScreen(50, 50);
    fire('pointerdown', at.x, at.y);
    fire('pointermove', at.x + 20, at.y);
    expect(editor.getState().gesturing).toBe(true);
    fire('pointerdown', at.x + 200, at.y, { pointerId: 2 });
    expect(editor.getState().gesturing).toBe(false);
  });

  it('zooms with two fingers about what lies between them', () => {
    fire('pointerdown', 400, 300, { pointerId: 1, pointerType: 'touch' });
    fire('pointerdown', 600, 300, { pointerId: 2, pointerType: 'touch' });
    const between = toSheet(frameOf(sheet.getState()), { x: 500, y: 300 });
    fire('pointermove', 300, 300, { pointerId: 1 });
    fire('pointermove', 700, 300, { pointerId: 2 });
    const { view } = sheet.getState();
    expect(view.scale).toBeCloseTo(2, 9);
    expect(toScreen(frameOf(sheet.getState()), between).x).toBeCloseTo(500, 6);
  });

  it('measures between two clicks that hold on to what is near', () => {
    showSample(STROKES_PICTURE);
    takeTool('tape');
    click(103, 98);
    click(402, 303);
    expect(sheet.getState().tape).toEqual({ from: { x: 100, y: 100 }, to: { x: 400, y: 300 } });
    click(103, 98, { shiftKey: true });
    expect(sheet.getState().tape).toEqual({ from: { x: 103, y: 98 } });
  });

  it('tells where it is until it leaves', () => {
    fire('pointermove', 512, 262);
    expect(sheet.getState().cursor).toEqual(toSheet(frameOf(sheet.getState()), { x: 512, y: 262 }));
    fire('pointerleave', 0, 0);
    expect(sheet.getState().cursor).toBeUndefined();
  });

  it('goes to a check by its sign', () => {
    const check = { check: 'bend', status: 'caution' as const, value: 1, limit: 2, unit: 'mm', at: [500, 250] as const, says: 'Too tight.', node: 'holes' };
    editor.setState({ outcome: { status: 'caution', checks: [check], quantities: {}, files: [], keptBack: [] } });
    click(503, 252);
    expect(editor.getState().spot).toEqual({ at: [500, 250], says: 'Too tight.', status: 'caution', node: 'holes' });
  });
});

describe('the wheel', () => {
  it('zooms at the pointer, and only the sheet', () => {
    const held = toSheet(frameOf(sheet.getState()), { x: 300, y: 200 });
    // The page of the tests knows no place of a wheel event.
    const event = Object.defineProperties(new WheelEvent('wheel', { deltaY: -100, cancelable: true }), { clientX: { value: 300 }, clientY: { value: 200 } });
    element.dispatchEvent(event);
    expect(event.defaultPrevented).toBe(true);
    expect(sheet.getState().view.scale).toBeGreaterThan(1);
    const now = toScreen(frameOf(sheet.getState()), held);
    expect(now.x).toBeCloseTo(300, 9);
    expect(now.y).toBeCloseTo(200, 9);
  });

  it('goes back by as much as it came, and never leaps', () => {
    const notch = (deltaY: number, deltaMode = 0) => wheelFactor({ deltaY, deltaMode, ctrlKey: false });
    expect(notch(100) * notch(-100)).toBeCloseTo(1, 12);
    expect(notch(-3, 1)).toBeGreaterThan(1);
    expect(notch(-1e6)).toBe(4);
    expect(wheelFactor({ deltaY: -4, deltaMode: 0, ctrlKey: true })).toBeGreaterThan(notch(-4));
  });
});
