// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fitTo, followPictures, lookAtSetUp } from '../../../src/editor/sheet/camera.ts';
import { drawMoment, drawValues } from '../../../src/editor/sheet/drawing.ts';
import { addPlace, takeHold } from '../../../src/editor/sheet/gestures.ts';
import { allGrips, gripAt, placeOf } from '../../../src/editor/sheet/grips.ts';
import { aloneOf, frameOnMachine, layersSeen, lyingWords, placeOn, read, shareOf } from '../../../src/editor/sheet/set-ups.ts';
import { signsOf } from '../../../src/editor/sheet/signs.ts';
import { frameOf, sheet } from '../../../src/editor/sheet/store.ts';
import { subject } from '../../../src/editor/sheet/subject.ts';
import { toScreen } from '../../../src/editor/sheet/view.ts';
import { sheetCommands } from '../../../src/editor/sheet/commands.ts';
import { NO_OVERLAY } from '../../../src/editor/playback/overlay.ts';
import { editor, present } from '../../../src/editor/state/editor.ts';
import type { PictureLayer } from '../../../src/values/picture.ts';
import { PALETTE, RecordedPath, recordingContext } from './recording.ts';
import { HOLES, PINS_PICTURE, SET_UPS, SHEET_LAYER, STROKES, showSample } from './samples.ts';

const item = (setUps?: readonly number[]) => ({ d: 'M0 0L1 1', ...(setUps && { setUps }) });
const layer = (kind: PictureLayer['kind'], ...setUps: (readonly number[] | undefined)[]): PictureLayer => ({ kind, name: kind, items: setUps.map(item) });
const alone = (place: number) => aloneOf(PINS_PICTURE, place)!;
const counts = (one: PictureLayer, place: number) => {
  const { own, earlier, common } = shareOf(one, alone(place));
  return { own: own.items.length, earlier: earlier.items.length, common: common.items.length };
};
const paramsOf = (id: string) => present().nodes.find((node) => node.id === id)!.params;

beforeEach(() => {
  vi.stubGlobal('Path2D', RecordedPath);
  vi.stubGlobal('matchMedia', () => ({ matches: true, addEventListener: () => undefined, removeEventListener: () => undefined }));
  showSample(PINS_PICTURE);
});
afterEach(() => vi.unstubAllGlobals());

describe('a set-up alone', () => {
  it('is there only where the picture has the one chosen', () => {
    expect(aloneOf(PINS_PICTURE, undefined)).toBeUndefined();
    expect(aloneOf(PINS_PICTURE, 7)).toBeUndefined();
    expect(aloneOf({ ...PINS_PICTURE, setUps: undefined } as never, 0)).toBeUndefined();
    expect(alone(1).setUp.name).toBe('set-up 2');
  });

  it('has its own passes, grey those before it, none of those to come; rapids and what holds the sheet are its own alone', () => {
    expect(counts(layer('passes', [0], [0], [1], [2]), 1)).toEqual({ own: 1, earlier: 2, common: 0 });
    expect(counts(layer('rapids', [0], [1], [2]), 1)).toEqual({ own: 1, earlier: 0, common: 0 });
    expect(counts(layer('hold-downs', [0], [0, 1], undefined), 1)).toEqual({ own: 2, earlier: 0, common: 0 });
    expect(counts(layer('supports', [0], [2]), 1)).toEqual({ own: 0, earlier: 0, common: 0 });
  });

  it('shares what is planned by windows, and leaves seams as they are', () => {
    expect(counts(STROKES, 1)).toEqual({ own: 0, earlier: 0, common: 2 });
    expect(counts(layer('seams', undefined), 1)).toEqual({ own: 1, earlier: 0, common: 0 });
    expect(counts(layer('travel', undefined), 1)).toEqual({ own: 0, earlier: 0, common: 0 });
  });

  it('makes the holes whose middles lie in its part of the sheet', () => {
    expect(counts(HOLES, 0)).toEqual({ own: 1, earlier: 0, common: 0 });
    expect(counts(HOLES, 1)).toEqual({ own: 0, earlier: 1, common: 0 });
    expect(counts(HOLES, 2)).toEqual({ own: 1, earlier: 1, common: 0 });
  });

  it('is asked for once: the same parts while layer and set-up are the same', () => {
    expect(shareOf(STROKES, alone(1))).toBe(shareOf(STROKES, alone(1)));
    expect(shareOf(STROKES, alone(1))).not.toBe(shareOf(STROKES, alone(0)));
    expect(layersSeen([SHEET_LAYER, layer('passes', [2])], alone(1))).toEqual([SHEET_LAYER]);
    expect(layersSeen([HOLES], undefined)).toEqual([HOLES]);
  });

  it('is read in program coordinates: the drawing less the shift', () => {
    expect(read({ x: 400, y: 20 }, alone(1))).toEqual({ x: 100, y: 20 });
    expect(read({ x: 400, y: 20 }, undefined)).toEqual({ x: 400, y: 20 });
    const frame = frameOf(sheet.getState());
    expect(toScreen(frameOnMachine(frame, alone(1)), { x: 100, y: 20 })).toEqual(toScreen(frame, { x: 400, y: 20 }));
  });

  it('tells which way the sheet is moved for it', () => {
    expect([0, 1, 2].map((place) => lyingWords(alone(place)))).toEqual([
      'The sheet’s lower left corner lies at X0 Y0.', 'After set-up 1 the sheet is moved 300 mm left.', 'After set-up 2 the sheet is moved 300 mm left and 20 mm to the back.',
    ]);
    expect([[10, 10], [500, 10], [9000, 10]].map(([x, y]) => placeOn(SET_UPS.list, { x: x!, y: y! }))).toEqual([0, 1, -1]);
  });
});

describe('looking at a set-up alone', () => {
  it('leaves the machine where it is on the screen, and moves the sheet', () => {
    const zero = () => toScreen(frameOnMachine(frameOf(sheet.getState()), aloneOf(PINS_PICTURE, sheet.getState().setUp)), { x: 0, y: 0 });
    const before = zero();
    for (const place of [1, 2, undefined]) {
      lookAtSetUp(place);
      expect(zero()).toEqual(before);
    }
  });

  it('fits sheet and bed together', () => {
    fitTo('sheet');
    lookAtSetUp(2);
    const frame = frameOf(sheet.getState());
    const corner = toScreen(frame, { x: 600 - 50, y: -20 - 50 });
    expect(corner.y).toBeLessThan(524);
    expect(toScreen(frame, { x: 0, y: 0 }).x).toBeGreaterThan(24);
    expect(toScreen(frame, { x: 1000, y: 0 }).x).toBeLessThan(1024);
  });

  it('goes round by one key, all of them between the last and the first', () => {
    const next = sheetCommands.find(({ id }) => id === 'sheet-set-up-next')!;
    const seen = [0, 1, 2, 3].map(() => { next.run(); return sheet.getState().setUp; });
    expect(seen).toEqual([0, 1, 2, undefined]);
    sheetCommands.find(({ id }) => id === 'sheet-set-up-before')!.run();
    expect(sheet.getState().setUp).toBe(2);
    editor.setState({ picture: { ...PINS_PICTURE, setUps: undefined } as never });
    expect(next.refusal!()).toBe('What the sheet shows is not cut in several set-ups.');
  });

  it('goes on to the set-up a check’s place belongs to, and stays for one it cuts itself', () => {
    const stop = followPictures();
    lookAtSetUp(0);
    const spot = (x: number) => editor.setState({ spot: { at: [x, 100], says: 'Here.', status: 'fail', node: 'pins' } });
    spot(305);
    expect([sheet.getState().setUp, sheet.getState().view.x]).toEqual([0, 305]);
    spot(900);
    expect([sheet.getState().setUp, sheet.getState().view.x]).toEqual([2, 900]);
    stop();
  });

  it('shows the signs of what it cuts only', () => {
    const check = (x: number) => ({ check: 'gap', status: 'fail' as const, value: 0, limit: 1, unit: 'mm', says: 'Near.', at: [x, 100] as const, node: 'pins' });
    editor.setState({ outcome: { status: 'fail', checks: [check(100), check(500)], quantities: {}, files: [], keptBack: [] } });
    expect(signsOf(editor.getState()).length).toBe(2);
    expect(signsOf(editor.getState(), alone(1)).map(({ at }) => at[0])).toEqual([500]);
  });

  it('draws bed and zero, what hangs over fainter, passes of earlier ones grey, and rulers in program coordinates', () => {
    const drawn = (setUp: number | undefined) => {
      sheet.setState({ setUp });
      const { ctx, calls } = recordingContext();
      const scene = { editor: editor.getState(), sheet: sheet.getState(), overlay: NO_OVERLAY, palette: PALETTE, ratio: 1 };
      drawValues(ctx, scene);
      drawMoment(ctx, scene);
      return calls;
    };
    const words = (calls: ReturnType<typeof drawn>) => calls.filter(({ name }) => name === 'fillText').map(({ args }) => args[0]);
    const calls = drawn(1);
    expect(words(calls)).toEqual(expect.arrayContaining(['bed', 'reach', 'X0 Y0', 'pin 1']));
    expect(calls.some(({ name, fill, args, alpha }) => name === 'fill' && fill === 'desk' && args[0] === 'evenodd' && alpha === 0.6)).toBe(true);
    const path = (d: string) => calls.find(({ name, args }) => name === 'stroke' && (args[0] as RecordedPath | undefined)?.d === d);
    const veil = calls.findIndex(({ name, fill, alpha }) => name === 'fillRect' && fill === 'paper' && alpha === 0.65);
    expect(calls.indexOf(path('M10 10L20 20')!)).toBeLessThan(veil);
    expect(calls.indexOf(path('M400 10L420 20')!)).toBeGreaterThan(veil);
    expect(path('M400 10L420 20')?.alpha).toBe(1);
    expect(path('M800 10L820 20')).toBeUndefined();
    expect(words(drawn(undefined))).not.toContain('bed');
    const labels = (all: ReturnType<typeof drawn>) => all.filter(({ name, args }) => name === 'fillText' && args[0] === '0').map(({ args }) => args[1]);
    expect(labels(drawn(1))).not.toEqual(labels(drawn(undefined)));
  });
});

describe('places on the machine', () => {
  it('are taken hold of and put where the set-up has them, and kept in program coordinates', () => {
    expect(placeOf(subject()!, { handle: 0, place: 0 })).toEqual({ x: 50, y: 40 });
    sheet.setState({ setUp: 1 });
    expect(placeOf(subject()!, { handle: 0, place: 0 })).toEqual({ x: 350, y: 40 });
    expect(gripAt(subject()!, { x: 351, y: 41 }, 5, new Set())).toEqual({ handle: 0, place: 0 });
    takeHold({ handle: 0, place: 0 })!.moveTo({ x: 10, y: -5 });
    addPlace({ x: 420, y: 60 });
    expect(paramsOf('pins').pins).toEqual([{ x: 60, y: 35 }, { x: 120, y: 60 }]);
  });

  it('are not taken hold of where they belong to other set-ups', () => {
    expect(allGrips(subject()!).filter(({ handle }) => handle === 1).length).toBe(3);
    sheet.setState({ setUp: 1 });
    expect(allGrips(subject()!).filter(({ handle }) => handle === 1)).toEqual([{ handle: 1, place: 1 }, { handle: 1, place: 2 }]);
    expect(gripAt(subject()!, { x: 100, y: 450 }, 5, new Set())).toBeUndefined();
  });
});

describe('lines across the sheet', () => {
  it('are taken hold of anywhere along them, but not beside the sheet', () => {
    expect(gripAt(subject()!, { x: 702, y: 30 }, 5, new Set())).toEqual({ handle: 2, place: 0 });
    expect(gripAt(subject()!, { x: 702, y: 900 }, 5, new Set())).toBeUndefined();
    expect(gripAt(subject()!, { x: 712, y: 30 }, 5, new Set())).toBeUndefined();
  });

  it('move along their axis only; pushed across it, nothing is changed', () => {
    const hold = takeHold({ handle: 2, place: 0 })!;
    hold.moveTo({ x: 0, y: 40 });
    expect(paramsOf('pins')).toEqual({});
    expect(editor.getState().gesturing).toBe(false);
    hold.moveTo({ x: 12, y: 40 });
    hold.release();
    expect(paramsOf('pins').lines).toEqual([{ x: 712, y: 250 }]);
  });
});
