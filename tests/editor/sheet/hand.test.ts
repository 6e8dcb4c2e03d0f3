// @vitest-environment happy-dom
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { placeAlong, trackOf, wayTo } from '../../../src/editor/sheet/hand/along.ts';
import { chooseWay, stepWay } from '../../../src/editor/sheet/hand/doing.ts';
import { followHand } from '../../../src/editor/sheet/hand/follow.ts';
import { fromFraction, toFraction } from '../../../src/editor/sheet/hand/frame.ts';
import { dropHand } from '../../../src/editor/sheet/hand/hand-keys.ts';
import { nextWords, targetWords } from '../../../src/editor/sheet/hand/hand-words.ts';
import { pegPlaces } from '../../../src/editor/sheet/hand/pegs.ts';
import { piecePoints, piecesOf } from '../../../src/editor/sheet/hand/pieces.ts';
import { pointedPlaces } from '../../../src/editor/sheet/hand/pointed.ts';
import { aimedAt, nextTarget, offered, screenPlace } from '../../../src/editor/sheet/hand/targets.ts';
import { wayOf, waysOf } from '../../../src/editor/sheet/hand/ways.ts';
import { leaveKeys, pressKey, releaseKey, takeNext } from '../../../src/editor/sheet/keys.ts';
import { listenToPointers } from '../../../src/editor/sheet/pointer.ts';
import { shapeOf } from '../../../src/editor/sheet/shapes.ts';
import { frameOf, sheet, takeTool } from '../../../src/editor/sheet/store.ts';
import { subject } from '../../../src/editor/sheet/subject.ts';
import { toScreen } from '../../../src/editor/sheet/view.ts';
import { editor, present, redoStep, undoStep } from '../../../src/editor/state/editor.ts';
import { LIMITS } from '../../../src/runtime/index.ts';
import { CROSS_MAP, CROSS_PICTURE, MENDER, MENDS, mends, showCross } from './hand-sample.ts';
import { HOLES_PICTURE } from './samples.ts';

let element: HTMLElement;
let stops: (() => void)[];

beforeEach(() => {
  vi.stubGlobal('matchMedia', () => ({ matches: true, addEventListener: () => undefined, removeEventListener: () => undefined }));
  showCross();
  element = document.createElement('div');
  stops = [listenToPointers(element), followHand()];
});
afterEach(() => {
  dropHand();
  for (const stop of stops) stop();
});

const fire = (type: string, [x, y]: readonly [number, number]) => {
  const at = toScreen(frameOf(sheet.getState()), { x, y });
  element.dispatchEvent(new PointerEvent(type, { clientX: at.x, clientY: at.y, button: 0, pointerId: 1, bubbles: true }));
};
const click = (...places: (readonly [number, number])[]) => { for (const at of places) for (const type of ['pointermove', 'pointerdown', 'pointerup']) fire(type, at); };
const pull = (from: readonly [number, number], to: readonly [number, number], last = 'pointerup') => {
  fire('pointerdown', from);
  fire('pointermove', [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]);
  fire('pointermove', to);
  fire(last, to);
};
const press = (key: string, more: object = {}) => {
  const meant = pressKey({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, repeat: false, ...more });
  releaseKey();
  return meant;
};
const way = (act?: string) => wayOf(waysOf(subject()!), act)!;
const steps = () => editor.getState().history.past.map(({ says }) => says);
const fraction = (x: number, y: number) => toFraction(CROSS_MAP.frame, { x, y });
const PEGS = { left: [230, 100], right: [270, 100], down: [250, 80], up: [250, 120] } as const;
const [LEFT, RIGHT, DOWN] = [[240, 100], [260, 100], [250, 90]] as const;

describe('places as fractions of a frame', () => {
  it('stay the same when all that is drawn is scaled and shifted', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0.1, max: 10, noNaN: true }), (x, y, factor) => {
      const frame = { origin: { x: 40, y: -30 }, size: 700 };
      const larger = { origin: { x: 40 * factor + 5, y: -30 * factor }, size: 700 * factor };
      const place = fromFraction(frame, { x, y });
      expect(fromFraction(frame, toFraction(frame, place)).x).toBeCloseTo(place.x, 2);
      expect(toFraction(larger, { x: place.x * factor + 5, y: place.y * factor }).x).toBeCloseTo(toFraction(frame, place).x, 5);
    }));
  });

  it('are no longer than they need be, and nothing in a frame without size', () => {
    expect(toFraction({ origin: { x: 0, y: 0 }, size: 3 }, { x: 1, y: -1e-9 })).toEqual({ x: 0.333333, y: 0 });
    expect(toFraction({ origin: { x: 0, y: 0 }, size: 0 }, { x: 1, y: 1 })).toEqual({ x: 0, y: 0 });
  });
});

describe('ways of working by hand', () => {
  it('are the acts that are declared; the first is the one in which something is dragged', () => {
    expect(waysOf(subject()!).map(({ label }) => label)).toEqual(['Nudge', 'Marry', 'Snip', 'Tie', 'Drop', 'Draw']);
    expect(way().act).toBe('nudge');
    expect(way('gone').act).toBe('nudge');
    stepWay(1);
    expect(sheet.getState().way).toBe('marry');
    stepWay(-1);
    stepWay(-1);
    expect(sheet.getState().way).toBe('draw');
  });

  it('are none where the output with the junctions is missing, or the node takes no edits', () => {
    editor.setState({ picture: { ...CROSS_PICTURE, junctions: {} } });
    expect(waysOf(subject()!)).toEqual([]);
    expect(takeNext(1)).toBe(false);
    editor.setState({ picture: HOLES_PICTURE });
    expect(waysOf(subject()!)).toEqual([]);
  });

  it('take places from anywhere where the act does not say from what', () => {
    const tie = { places: [2, 2] as const, label: 'Tie', doc: 'Ties.' };
    const shape = { ...MENDER, params: { mends: { ...MENDS, acts: { tie } } } };
    editor.setState({ shapes: new Map([['mender', shape]]) });
    chooseWay('tie');
    click([10, 20], [130, 60]);
    expect(mends()).toEqual([{ act: 'tie', places: [fraction(10, 20), fraction(130, 60)] }]);
  });

  it('rest while another tool is taken up', () => {
    takeTool('tape');
    pull([120, 100], [120, 130]);
    expect(mends()).toEqual([]);
  });
});

describe('by pointer', () => {
  it('a place anywhere on a stroke is dragged, live, as one step to undo', () => {
    const live: boolean[] = [];
    const unwatch = editor.subscribe(({ gesturing, history }, before) => { if (history !== before.history) live.push(gesturing); });
    pull([150, 103], [150, 133]);
    unwatch();
    expect(mends()).toEqual([{ act: 'nudge', places: [fraction(150, 100), fraction(150, 130)] }]);
    expect(live.length).toBeGreaterThan(1);
    expect(live.every(Boolean)).toBe(true);
    expect(editor.getState().gesturing).toBe(false);
    expect(steps()).toEqual(['Nudge']);
    pull([300, 100], [300, 90]);
    expect(mends()).toHaveLength(2);
    undoStep();
    expect(mends()).toHaveLength(1);
    undoStep();
    expect(mends()).toEqual([]);
    redoStep();
    expect(mends()).toHaveLength(1);
  });

  it('shows what is dragged as a line until it is let go, and pushes the view beside the strokes', () => {
    fire('pointerdown', [150, 100]);
    fire('pointermove', [160, 140]);
    expect(sheet.getState().pull).toEqual({ from: { x: 150, y: 100 }, to: { x: 160, y: 140 }, onto: undefined });
    fire('pointerup', [160, 140]);
    expect(sheet.getState().pull).toBeUndefined();
    const { x } = sheet.getState().view;
    pull([150, 30], [190, 30]);
    expect(sheet.getState().view.x).toBeLessThan(x);
    expect(mends()).toHaveLength(1);
  });

  it('a click drags nothing', () => {
    click([150, 100], [180, 140]);
    expect(mends()).toEqual([]);
  });

  it('two arms are paired by pulling from peg to peg, or by a click on each', () => {
    chooseWay('marry');
    pull(PEGS.left, PEGS.down);
    const pair = { act: 'marry', places: [fraction(250, 100), fraction(...LEFT), fraction(...DOWN)] };
    expect(mends()).toEqual([pair]);
    click(PEGS.left, PEGS.down);
    expect(mends()).toEqual([pair, pair]);
    click([250, 100], PEGS.right, PEGS.left);
    expect(mends()[2]).toEqual({ act: 'marry', places: [fraction(250, 100), fraction(...RIGHT), fraction(...LEFT)] });
    expect(steps()).toEqual(['Marry', 'Marry', 'Marry']);
  });

  it('a pull that is let go on nothing, or on where it began, makes no edit', () => {
    chooseWay('marry');
    pull(PEGS.left, [330, 180]);
    pull(PEGS.left, PEGS.down, 'pointercancel');
    pull(PEGS.left, [233, 96]);
    expect(mends()).toEqual([]);
  });

  it('a stroke is split where it is clicked, and not where the view was pushed', () => {
    chooseWay('snip');
    pull([150, 101], [190, 101]);
    expect(mends()).toEqual([]);
    sheet.setState({ view: { x: 250, y: 100, scale: 1 } });
    click([150, 104]);
    click([150, 140]);
    expect(mends()).toEqual([{ act: 'snip', places: [fraction(150, 100)] }]);
  });

  it('ends are joined, but none with itself', () => {
    chooseWay('tie');
    click([101, 99], [101, 99], [252, 198]);
    expect(mends()).toEqual([{ act: 'tie', places: [fraction(100, 100), fraction(250, 200)] }]);
    pull([400, 100], [250, 0]);
    expect(mends()).toHaveLength(2);
  });

  it('the piece under the pointer is marked, and a click takes it', () => {
    chooseWay('drop');
    fire('pointermove', [252, 40]);
    expect(sheet.getState().aimed).toMatchObject({ kind: 'stroke', stroke: 1 });
    click([252, 40]);
    expect(mends()).toEqual([{ act: 'drop', places: [fraction(250, 40)] }]);
  });

  it('a line is drawn place by place; a second click on the last ends it, and the most there may be do too', () => {
    chooseWay('draw');
    click([120, 20], [120, 20], [160, 40], [200, 20]);
    expect(mends()).toEqual([]);
    click([200, 21]);
    expect(mends()).toEqual([{ act: 'draw', places: [fraction(120, 20), fraction(160, 40), fraction(200, 20)] }]);
    click([120, 20], [140, 30], [160, 40], [180, 60]);
    expect(mends()).toHaveLength(2);
  });

  it('what the list cannot hold any more is refused, and said', () => {
    editor.setState(({ history }) => ({ history: { ...history, document: { ...history.document, nodes: history.document.nodes.map((node) => (node.id === 'mend' ? { ...node, params: { mends: Array.from({ length: LIMITS.edits }, () => ({ act: 'snip', places: [{ x: 0, y: 0 }] })) } } : node)) } } }));
    chooseWay('snip');
    click([150, 100]);
    expect(mends()).toHaveLength(LIMITS.edits);
    expect(editor.getState().notices.at(-1)?.says).toMatch(/Take some back/);
  });
});

describe('by keys', () => {
  it('pairs arms: N walks to the junction, Enter takes it, arrows choose arms', () => {
    chooseWay('marry');
    expect(takeNext(1)).toBe(true);
    expect(sheet.getState().target).toMatchObject({ kind: 'junction', junction: 0 });
    press('Enter');
    expect(sheet.getState().target).toMatchObject({ kind: 'arm' });
    while ((sheet.getState().target as { arm?: number }).arm !== 0) press('ArrowRight');
    press('Enter');
    while ((sheet.getState().target as { arm?: number }).arm !== 3) press('ArrowLeft');
    press('Enter');
    expect(mends()).toEqual([{ act: 'marry', places: [fraction(250, 100), fraction(...LEFT), fraction(250, 110)] }]);
    expect(sheet.getState().told).toBe('Marry: done, as edit 1. Undo takes it back.');
  });

  it('splits where arrows slid along the stroke: 1 mm, 10 with Shift, a tenth with Alt, never beyond its ends', () => {
    chooseWay('snip');
    takeNext(1);
    press('ArrowRight', { shiftKey: true });
    press('ArrowUp');
    press('ArrowLeft', { altKey: true });
    press('Enter');
    expect(mends()[0]!.places[0]).toEqual(fraction(260.9, 100));
    takeNext(1);
    for (let i = 0; i < 40; i++) press('ArrowRight', { shiftKey: true });
    expect(sheet.getState().target!.at).toEqual({ x: 400, y: 100 });
  });

  it('drags by arrows from Enter to Enter, as one step; Escape takes all of it back', () => {
    takeNext(1);
    press('Enter');
    press('ArrowUp', { shiftKey: true });
    press('ArrowUp');
    press('ArrowRight', { altKey: true });
    expect(mends()).toEqual([{ act: 'nudge', places: [fraction(250, 100), fraction(250.1, 111)] }]);
    expect(editor.getState().gesturing).toBe(false);
    press('Enter');
    expect(steps()).toEqual(['Nudge']);
    expect(sheet.getState().pull).toBeUndefined();
    takeNext(1);
    press('Enter');
    press('ArrowLeft');
    expect(mends()).toHaveLength(2);
    press('Escape');
    expect(mends()).toHaveLength(1);
    expect(sheet.getState()).toMatchObject({ pull: undefined, target: undefined });
  });

  it('lets what it drags go where it is when the focus leaves', () => {
    takeNext(1);
    press('Enter');
    press('ArrowUp');
    leaveKeys();
    press('ArrowUp');
    expect(mends()).toHaveLength(1);
    expect(mends()[0]!.places[1]).toEqual(fraction(250, 101));
    expect(sheet.getState().pull).toBeUndefined();
  });

  it('draws: Space sets, Backspace takes back, Enter ends, Escape leaves', () => {
    chooseWay('draw');
    takeNext(1);
    press(' ');
    press('ArrowRight', { shiftKey: true });
    press(' ');
    press('ArrowUp', { shiftKey: true });
    press(' ');
    press('Backspace');
    press('Enter');
    expect(mends()).toEqual([{ act: 'draw', places: [fraction(250, 100), fraction(260, 100)] }]);
    takeNext(1);
    press('Enter');
    expect(sheet.getState().picked).toHaveLength(1);
    press('Escape');
    expect(sheet.getState().picked).toEqual([]);
    press('Escape');
    expect(sheet.getState().way).toBeUndefined();
    expect(press('Escape')).toBe(false);
    expect(mends()).toHaveLength(1);
  });

  it('joins ends, walking left to right, and from where it last was', () => {
    chooseWay('tie');
    takeNext(-1);
    takeNext(1);
    press('Enter');
    press('Enter');
    expect(mends()).toHaveLength(1);
    const [a, b] = mends()[0]!.places;
    expect(a).not.toEqual(b);
  });

  it('push the view while nothing is walked to', () => {
    press('ArrowRight');
    expect(sheet.getState().view.x).toBe(298);
    expect(press('Enter')).toBe(false);
  });
});

describe('what can be taken', () => {
  it('has pegs that keep apart however small the junction is on the screen, and are found there', () => {
    const arm = { kind: 'arm', junction: 0, arm: 3, at: { x: 250, y: 110 } } as const;
    for (const scale of [0.01, 0.3, 1]) {
      const frame = { ...frameOf(sheet.getState()), scale };
      const centre = toScreen(frame, { x: 250, y: 100 });
      const peg = screenPlace(way(), arm, frame);
      expect([peg.x - centre.x, peg.y - centre.y]).toEqual([0, -20]);
      expect(aimedAt(way('marry'), [], { x: 250, y: 100 + 20 / scale }, frame)).toEqual(arm);
    }
    expect(screenPlace(way(), arm, { ...frameOf(sheet.getState()), scale: 10 }).y).toBeCloseTo(toScreen({ ...frameOf(sheet.getState()), scale: 10 }, arm.at).y, 9);
  });

  it('has pegs apart from one another where arms set out side by side', () => {
    const arm = (degrees: number) => ({ stroke: 0, at: { x: 10 * Math.cos((degrees * Math.PI) / 180), y: 10 * Math.sin((degrees * Math.PI) / 180) } });
    for (const angles of [[90, 88, 270], [0, 1, 2, 3], [0, 0, 0, 180, 180, 181, 90], [10, 190]]) {
      const pegs = pegPlaces({ at: { x: 0, y: 0 }, radius: 5, arms: angles.map(arm), pairs: [] }, { ...frameOf(sheet.getState()), scale: 0.5 });
      const gaps = pegs.flatMap((a, i) => pegs.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
      expect(Math.min(...gaps)).toBeGreaterThan(13);
    }
  });

  it('is walked through in a ring', () => {
    const ends = offered(way('tie'), []);
    expect(ends.map(({ at }) => at.x)).toEqual([100, 250, 250, 400]);
    expect(nextTarget(ends, ends[3], 1)).toBe(ends[0]);
    expect(nextTarget(ends, undefined, -1)).toBe(ends[3]);
    expect(nextTarget(ends, undefined, 1, { x: 390, y: 100 })).toBe(ends[3]);
    expect(nextTarget([], undefined, 1)).toBeUndefined();
  });

  it('is said in words: which, of how many, where, and how an arm goes on', () => {
    const arm = { kind: 'arm', junction: 0, arm: 1, at: { x: 260, y: 100 } } as const;
    expect(targetWords(way(), arm)).toBe('Arm 2 of 4, along stroke 1, goes on as arm 1: x 260.00, y 100.00 mm');
    expect(targetWords(way(), { kind: 'stroke', stroke: 1, at: { x: 250, y: 50 } })).toBe('Stroke 2 of 2, 50.0 of 200.0 mm along: x 250.00, y 50.00 mm');
    for (const { act } of waysOf(subject()!)) expect(nextWords(way(act), [])).toMatch(/N/);
    expect(nextWords(way('marry'), [{ kind: 'junction', junction: 0, at: { x: 0, y: 0 } }])).toMatch(/arm/);
  });
});

describe('pieces of a stroke', () => {
  it('end where junctions part it, and are walked through one by one', () => {
    expect(piecesOf(way(), 0)).toEqual([{ from: 0, to: 150 }, { from: 150, to: 300 }]);
    expect(piecePoints(way(), 0, { x: 300, y: 100 })).toEqual([[{ x: 250, y: 100 }, { x: 400, y: 100 }]]);
    expect(offered(way('drop'), []).map(({ at }) => [at.x, at.y])).toEqual([[175, 100], [250, 150], [250, 50], [325, 100]]);
    expect(piecesOf(way(), 7)).toEqual([]);
  });

  it('of a closed stroke go on over its beginning', () => {
    const ring = { ...way('drop'), strokes: [{ d: 'M0 0L100 0L100 100L0 100Z' }] };
    const arms = ([x, y]: readonly [number, number], [a, b]: readonly [number, number]) => [{ stroke: 0, at: { x, y } }, { stroke: 0, at: { x: a, y: b } }];
    const junction = (at: readonly [number, number], before: readonly [number, number], after: readonly [number, number]) =>
      ({ at: { x: at[0], y: at[1] }, radius: 5, arms: arms(before, after), pairs: [[0, 1]] as const });
    const one = { ...ring, map: { ...CROSS_MAP, junctions: [junction([0, 0], [0, 10], [10, 0])] } };
    expect(piecesOf(one, 0)).toEqual([{ from: 0, to: 400 }]);
    const two = { ...ring, map: { ...CROSS_MAP, junctions: [junction([50, 0], [40, 0], [60, 0]), junction([50, 100], [60, 100], [40, 100])] } };
    expect(piecesOf(two, 0)).toEqual([{ from: 50, to: 250 }, { from: 250, to: 450 }]);
    expect(piecePoints(two, 0, { x: 0, y: 50 })).toEqual([[{ x: 50, y: 100 }, { x: 0, y: 100 }, { x: 0, y: 0 }], [{ x: 0, y: 0 }, { x: 50, y: 0 }]]);
    expect(offered(two, []).map(({ at }) => [at.x, at.y])).toEqual([[0, 50], [100, 50]]);
  });
});

describe('walking along a line', () => {
  it('finds the way to a place and the place at a way, on curves too', () => {
    const track = trackOf(shapeOf({ d: 'M0 0L100 0C150 0 150 50 100 50' }));
    for (const along of [0, 30, 100, 120, track.length]) expect(wayTo(track, placeAlong(track, along)!)).toBeCloseTo(along, 6);
    expect(placeAlong(track, 1e9)).toEqual({ x: 100, y: 50 });
    expect(placeAlong(trackOf(shapeOf({ d: '' })), 5)).toBeUndefined();
  });
});

describe('another picture', () => {
  it('of the same node lets go of what was taken, since numbers mean others now; places that are anywhere stay', () => {
    chooseWay('marry');
    click([250, 100]);
    editor.setState({ picture: structuredClone(CROSS_PICTURE) });
    expect(sheet.getState().picked).toHaveLength(1);
    editor.setState({ picture: { ...CROSS_PICTURE, junctions: { meets: { ...CROSS_MAP, ends: [] } } } });
    expect(sheet.getState().picked).toEqual([]);
    chooseWay('draw');
    click([120, 20]);
    editor.setState({ picture: CROSS_PICTURE });
    expect(sheet.getState().picked).toHaveLength(1);
    editor.setState({ picture: { ...CROSS_PICTURE, junctions: { meets: { ...CROSS_MAP, frame: { ...CROSS_MAP.frame, size: 600 } } } } });
    expect(sheet.getState().picked).toEqual([]);
    expect(sheet.getState().way).toBe('draw');
  });

  it('of another node ends all work by hand', () => {
    chooseWay('draw');
    click([120, 20]);
    editor.setState({ picture: HOLES_PICTURE });
    expect(sheet.getState()).toMatchObject({ way: undefined, picked: [], target: undefined });
  });
});

describe('an edit pointed at in its list', () => {
  it('has its places where they are on what is shown, whatever its size, and is flown to once', () => {
    pull([150, 100], [150, 130]);
    editor.setState({ pointed: { node: 'mend', param: 'mends', index: 0, goes: true } });
    expect(pointedPlaces(editor.getState()).map(({ x }) => x)).toEqual([150, 150].map((x) => expect.closeTo(x, 3)));
    expect(sheet.getState().view.x).toBeCloseTo(150, 3);
    sheet.setState({ view: { x: 0, y: 0, scale: 1 } });
    const twice = { ...CROSS_MAP, frame: { origin: { x: 200, y: 0 }, size: 600 } };
    editor.setState({ picture: { ...CROSS_PICTURE, junctions: { meets: twice } } });
    expect(pointedPlaces(editor.getState())[1]).toEqual({ x: expect.closeTo(300, 3), y: expect.closeTo(260, 3) });
    expect(sheet.getState().view.x).toBe(0);
    undoStep();
    expect(pointedPlaces(editor.getState())).toEqual([]);
    expect(present().nodes.at(-1)!.params).toEqual({});
  });
});
