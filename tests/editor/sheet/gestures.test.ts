// @vitest-environment happy-dom
import { beforeEach, describe, expect, it } from 'vitest';
import { addPlace, removePlace, takeHold } from '../../../src/editor/sheet/gestures.ts';
import { allGrips, gripAt, nextGrip } from '../../../src/editor/sheet/grips.ts';
import { pressKey, releaseKey } from '../../../src/editor/sheet/keys.ts';
import { sheet, takeTool } from '../../../src/editor/sheet/store.ts';
import { subject } from '../../../src/editor/sheet/subject.ts';
import { edit, editor, present, undoStep } from '../../../src/editor/state/editor.ts';
import { DOCUMENT, FENCES_PICTURE, HOLES_PICTURE, STROKES_PICTURE, showSample } from './samples.ts';

const paramsOf = (id: string) => present().nodes.find((node) => node.id === id)!.params;
const steps = () => editor.getState().history.past.map(({ says }) => says);
const press = (key: string, more: object = {}) => pressKey({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, repeat: false, ...more });

describe('two lists of places on one picture', () => {
  beforeEach(() => showSample(FENCES_PICTURE));

  it('begin each as its own part of the output, and are named after their parameter', () => {
    takeHold({ handle: 0, place: 0 })!.moveTo({ x: 5, y: 0 });
    takeHold({ handle: 1, place: 1 })!.moveTo({ x: 0, y: -7 });
    expect(paramsOf('fences')).toEqual({ upright: [{ x: 405, y: 250 }], level: [{ x: 500, y: 200 }, { x: 500, y: 293 }] });
    expect(steps()).toEqual(['Move one of the fences up', 'Move one of the fences along']);
  });

  it('take a new place into the list whose place was chosen last, else into the first', () => {
    addPlace({ x: 700, y: 100 });
    expect(paramsOf('fences')).toEqual({ upright: [{ x: 400, y: 250 }, { x: 700, y: 100 }] });
    sheet.setState({ grip: { handle: 1, place: 0 } });
    addPlace({ x: 100, y: 400 });
    expect(paramsOf('fences').level).toEqual([{ x: 500, y: 200 }, { x: 500, y: 300 }, { x: 100, y: 400 }]);
  });
});

describe('places put by hand', () => {
  beforeEach(() => showSample(HOLES_PICTURE));

  it('begin as those that came out, and set what goes with them, in one step to undo', () => {
    const hold = takeHold({ handle: 0, place: 1 })!;
    expect(present()).toBe(DOCUMENT);
    for (const x of [1, 2, 3]) hold.moveTo({ x, y: -0.123456 });
    expect(editor.getState().gesturing).toBe(true);
    hold.release();
    expect(editor.getState().gesturing).toBe(false);
    expect(paramsOf('holes')).toEqual({ pattern: 'by hand', places: [{ x: 50, y: 50 }, { x: 953, y: 449.88 }] });
    expect(steps()).toEqual(['Move one of the holes']);
    undoStep();
    expect(present()).toEqual(DOCUMENT);
  });

  it('count from where they were taken, not from the last move', () => {
    const hold = takeHold({ handle: 0, place: 0 })!;
    hold.moveTo({ x: 10, y: 0 });
    hold.moveTo({ x: 0, y: 0 });
    expect(paramsOf('holes').places).toEqual([{ x: 50, y: 50 }, { x: 950, y: 450 }]);
  });

  it('are taken from the parameter once it holds them', () => {
    takeHold({ handle: 0, place: 0 })!.moveTo({ x: 5, y: 5 });
    takeHold({ handle: 0, place: 0 })!.moveTo({ x: 5, y: 5 });
    expect(paramsOf('holes').places).toEqual([{ x: 60, y: 60 }, { x: 950, y: 450 }]);
    expect(steps()).toHaveLength(2);
  });

  it('are those that came out again once what goes with them was set otherwise', () => {
    takeHold({ handle: 0, place: 0 })!.moveTo({ x: 5, y: 5 });
    edit('Pattern', (draft) => { draft.nodes[3]!.params.pattern = 'corners'; });
    takeHold({ handle: 0, place: 0 })!.moveTo({ x: 1, y: 1 });
    expect(paramsOf('holes')).toEqual({ pattern: 'by hand', places: [{ x: 51, y: 51 }, { x: 950, y: 450 }] });
  });

  it('are added and taken away, each as one step, and the new one is held', () => {
    addPlace({ x: 300.004, y: 200 });
    expect(paramsOf('holes').places).toHaveLength(3);
    expect(sheet.getState().grip).toEqual({ handle: 0, place: 2 });
    removePlace({ handle: 0, place: 0 });
    expect(paramsOf('holes').places).toEqual([{ x: 950, y: 450 }, { x: 300, y: 200 }]);
    expect(steps()).toEqual(['Add one of the holes', 'Remove one of the holes']);
  });

  it('move by keys: 1 mm, 10 with Shift, 0.1 with Alt; a key that repeats is one step', () => {
    expect(press('ArrowRight')).toBe(true);
    expect(present()).toBe(DOCUMENT);
    sheet.setState({ grip: { handle: 0, place: 0 } });
    press('ArrowRight');
    releaseKey();
    press('ArrowUp', { shiftKey: true });
    releaseKey();
    press('ArrowLeft', { altKey: true });
    press('ArrowLeft', { altKey: true, repeat: true });
    press('ArrowLeft', { altKey: true, repeat: true });
    releaseKey();
    expect((paramsOf('holes').places as unknown[])[0]).toEqual({ x: 50.7, y: 60 });
    expect(steps()).toHaveLength(3);
    expect(editor.getState().gesturing).toBe(false);
  });

  it('are removed by Delete only while one is held', () => {
    expect(press('Delete')).toBe(false);
    sheet.setState({ grip: { handle: 0, place: 1 } });
    expect(press('Delete')).toBe(true);
    expect(paramsOf('holes').places).toEqual([{ x: 50, y: 50 }]);
  });

  it('are added at the cursor that keys move', () => {
    takeTool('add');
    press('ArrowRight');
    press('Enter');
    expect((paramsOf('holes').places as unknown[])[2]).toEqual({ x: 510, y: 250 });
  });

  it('are found by pointing near them, and walked through by keys', () => {
    expect(gripAt(subject()!, { x: 955, y: 445 }, 10, new Set())).toEqual({ handle: 0, place: 1 });
    expect(gripAt(subject()!, { x: 500, y: 250 }, 10, new Set())).toBeUndefined();
    const all = allGrips(subject()!);
    expect(all).toHaveLength(2);
    expect(nextGrip(subject()!, undefined, 1)).toEqual(all[0]);
    expect(nextGrip(subject()!, all[1], 1)).toEqual(all[0]);
    expect(nextGrip(subject()!, all[0], -1)).toEqual(all[1]);
    expect(nextGrip(subject()!, undefined, -1)).toEqual(all[1]);
  });
});

describe('what is moved as a whole', () => {
  beforeEach(() => showSample(STROKES_PICTURE));

  it('shifts two numbers from their present values, rounded to 0.01 mm and kept within their limits', () => {
    const hold = takeHold({ handle: 0 })!;
    hold.moveTo({ x: 12.3456, y: 1000 });
    hold.release();
    expect(paramsOf('place')).toEqual({ right: 12.35, up: 100 });
    expect(steps()).toEqual(['Move strokes']);
  });

  it('is taken hold of on its lines, but not where the layer is hidden or only came in', () => {
    expect(gripAt(subject()!, { x: 250, y: 103 }, 5, new Set())).toEqual({ handle: 0 });
    expect(gripAt(subject()!, { x: 250, y: 103 }, 5, new Set(['strokes']))).toBeUndefined();
    expect(gripAt(subject()!, { x: 0, y: 250 }, 5, new Set())).toBeUndefined();
  });

  it('is not taken away', () => {
    sheet.setState({ grip: { handle: 0 } });
    expect(press('Delete')).toBe(false);
  });

  it('cannot be held once its node is gone', () => {
    editor.setState({ picture: { ...STROKES_PICTURE, node: 'gone' } });
    expect(takeHold({ handle: 0 })).toBeUndefined();
    expect(press('ArrowLeft')).toBe(true);
  });
});

describe('the tape by keys', () => {
  beforeEach(() => showSample(STROKES_PICTURE));

  it('measures from round place to round place, and stays until Escape', () => {
    takeTool('tape');
    press('ArrowRight');
    press('Enter');
    press('ArrowRight', { shiftKey: true });
    press('ArrowUp');
    press('Enter');
    expect(sheet.getState().tape).toEqual({ from: { x: 510, y: 250 }, to: { x: 610, y: 260 } });
    expect(press('Escape')).toBe(true);
    expect(sheet.getState()).toMatchObject({ tool: 'look', tape: {} });
    expect(press('Escape')).toBe(false);
  });

  it('holds on to what is near, but not with Shift', () => {
    takeTool('tape');
    sheet.setState({ cursor: { x: 402, y: 101 } });
    press('Enter');
    expect(sheet.getState().tape.from).toEqual({ x: 400, y: 100 });
    sheet.setState({ cursor: { x: 102, y: 101 } });
    press('Enter', { shiftKey: true });
    expect(sheet.getState().tape.to!.x).toBeCloseTo(102, 9);
  });

  it('brings the cursor in sight when it would leave it', () => {
    takeTool('read');
    for (let i = 0; i < 8; i++) press('ArrowRight', { shiftKey: true });
    expect(sheet.getState().cursor).toEqual({ x: 1300, y: 250 });
    expect(sheet.getState().view.x).toBeGreaterThan(500);
  });

  it('leaves chords with Control to the page', () => {
    expect(press('ArrowLeft', { ctrlKey: true })).toBe(false);
    expect(press('q')).toBe(false);
  });

  it('pushes the view when nothing is held, faster with Shift', () => {
    press('ArrowRight');
    expect(sheet.getState().view.x).toBe(548);
    press('ArrowDown', { shiftKey: true });
    expect(sheet.getState().view.y).toBe(10);
  });
});
