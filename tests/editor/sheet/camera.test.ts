// @vitest-environment happy-dom
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { fitTo, flyTo, followPictures, setGround, setSize } from '../../../src/editor/sheet/camera.ts';
import { groundNode } from '../../../src/editor/sheet/ground.ts';
import { labelPlace, LABEL } from '../../../src/editor/sheet/spot-label.ts';
import { frameOf, sheet } from '../../../src/editor/sheet/store.ts';
import { nodesOnSheet } from '../../../src/editor/sheet/space.ts';
import { RULER, toScreen } from '../../../src/editor/sheet/view.ts';
import { writtenAs } from '../../../src/editor/sheet/written.ts';
import { editor, openDocument } from '../../../src/editor/state/editor.ts';
import { DOCUMENT, HOLES_PICTURE, SHEET_LAYER, STROKES, STROKES_PICTURE, picture, showSample } from './samples.ts';

const littleMotion = (wanted: boolean) => vi.stubGlobal('matchMedia', () => ({ matches: wanted, addEventListener: () => undefined, removeEventListener: () => undefined }));
const view = () => sheet.getState().view;

describe('the view', () => {
  let stop = () => {};
  beforeEach(() => {
    stop();
    littleMotion(true);
    showSample(STROKES_PICTURE);
    openDocument(DOCUMENT, { name: 'a.json', saved: DOCUMENT });
    stop = followPictures();
    openDocument(DOCUMENT, { name: 'b.json', saved: DOCUMENT });
    editor.setState({ picture: STROKES_PICTURE });
  });

  it('fits the first picture to its sheet and then stays where it is as values change', () => {
    expect(sheet.getState().fitted).toBe('sheet');
    expect(view()).toMatchObject({ x: 500 });
    sheet.setState({ view: { x: 250, y: 200, scale: 3 }, fitted: undefined });
    editor.setState({ picture: { ...STROKES_PICTURE, outputs: { layers: [STROKES], lines: [] } } });
    expect(view()).toEqual({ x: 250, y: 200, scale: 3 });
  });

  it('stays when another step is shown that is to be seen there, and fits one that is not', () => {
    sheet.setState({ view: { x: 500, y: 250, scale: 0.9 }, fitted: undefined });
    editor.setState({ picture: HOLES_PICTURE });
    expect(view().scale).toBe(0.9);
    editor.setState({ picture: picture('place', [{ kind: 'region', name: 'board', items: [{ d: 'M90000 0L90100 0L90100 50Z' }] }]) });
    expect(view().x).toBeCloseTo(90050, 6);
  });

  it('keeps a view for the sheet and one for drawings before it', () => {
    sheet.setState({ view: { x: 400, y: 200, scale: 2 }, fitted: undefined });
    editor.setState({ picture: picture('file', [{ kind: 'strokes', name: 'strokes', items: [{ d: 'M0 0L60 40' }] }]) });
    expect(view()).toMatchObject({ x: 30, y: 20 });
    editor.setState({ picture: STROKES_PICTURE });
    expect(view()).toEqual({ x: 400, y: 200, scale: 2 });
  });

  it('stays fitted when the window changes, until it is moved', () => {
    fitTo('all');
    const before = view().scale;
    setSize({ width: 524, height: 274 });
    expect(view().scale).toBeLessThan(before);
    sheet.setState({ view: { x: 1, y: 2, scale: 3 }, fitted: undefined });
    setSize({ width: 900, height: 600 });
    setSize({ width: 0, height: 0 });
    setSize({ width: 800, height: 600 });
    expect(view()).toEqual({ x: 1, y: 2, scale: 3 });
  });

  it('takes the sheet beneath into account once it is known', () => {
    editor.setState({ picture: HOLES_PICTURE });
    fitTo('sheet');
    setGround([{ kind: 'sheet', name: 'sheet', items: [{ d: 'M0 0L4000 0L4000 2000L0 2000Z' }] }]);
    expect(view()).toMatchObject({ x: 2000 });
  });

  it('fits above the words about moving things by hand, where there are any', () => {
    const low = () => toScreen(frameOf(sheet.getState()), { x: 0, y: 0 }).y;
    fitTo('sheet');
    expect(low()).toBeLessThanOrEqual(524 - 48);
    editor.setState({ picture: picture('sheet', [SHEET_LAYER]) });
    fitTo('sheet');
    expect(low()).toBeGreaterThan(524 - 48);
    expect(view()).toMatchObject({ x: 500, y: 250 });
  });

  it('goes to a spot at once under reduced motion, and to its end in a flight otherwise', async () => {
    editor.setState({ spot: { at: [120, 130], says: 'Here.', status: 'fail', node: 'place' } });
    expect(view()).toMatchObject({ x: 120, y: 130 });
    littleMotion(false);
    flyTo({ x: 700, y: 300, scale: 5 });
    await vi.waitFor(() => expect(view()).toEqual({ x: 700, y: 300, scale: 5 }), { timeout: 20_000 });
  });
});

describe('a place in other coordinates than those shown', () => {
  it('has its own step shown, and is gone to once it is', () => {
    littleMotion(true);
    showSample(STROKES_PICTURE);
    const stop = followPictures();
    const before = view();
    editor.setState({ spot: { at: [20, 10], says: 'Here.', status: 'fail', node: 'file' } });
    expect(editor.getState().shown).toBe('file');
    expect(view()).toEqual(before);
    editor.setState({ picture: picture('file', [{ kind: 'strokes', name: 'strokes', items: [{ d: 'M0 0L60 40' }] }]) });
    expect(view()).toMatchObject({ x: 20, y: 10 });
    stop();
  });
});

describe('where values lie', () => {
  it('is the sheet for all that comes after one, and everywhere in a graph without any', () => {
    const { shapes } = editor.getState();
    expect([...nodesOnSheet(DOCUMENT, shapes)].sort()).toEqual(['holes', 'pins', 'place', 'sheet']);
    const without = { ...DOCUMENT, nodes: DOCUMENT.nodes.filter(({ id }) => id !== 'sheet'), wires: [] };
    expect(nodesOnSheet(without, shapes).size).toBe(without.nodes.length);
  });

  it('is on the sheet of the node it comes after, unless the picture has a sheet', () => {
    const { shapes, history } = editor.getState();
    expect(groundNode({ picture: HOLES_PICTURE, shapes, history })).toBe('sheet');
    expect(groundNode({ picture: picture('holes', [SHEET_LAYER]), shapes, history })).toBeUndefined();
    expect(groundNode({ picture: picture('file', []), shapes, history })).toBeUndefined();
  });
});

describe('the sentence about a place', () => {
  it('stands inside the window and beside its place, wherever that is', () => {
    for (const at of [[0, 0], [1000, 0], [0, 500], [1000, 500], [500, 250]] as const) {
      const frame = frameOf({ view: { x: 500, y: 250, scale: 0.9 }, size: { width: 1024, height: 524 } });
      const { left, top, line } = labelPlace(frame, at);
      expect(left).toBeGreaterThan(RULER);
      expect(top).toBeGreaterThan(RULER);
      expect(left + LABEL.width).toBeLessThan(frame.width);
      expect(top + LABEL.height).toBeLessThan(frame.height);
      const place = toScreen(frame, { x: at[0], y: at[1] });
      expect(Math.hypot(line.x - place.x, line.y - place.y)).toBeGreaterThan(17);
    }
  });
});

describe('values in lines', () => {
  it('are told apart: programs, pairs, words', () => {
    expect(writtenAs(['set-up 1: a.ngc, 4 min', '(a comment)', 'G21 G90', 'G1 X1.5 Y-2']).kind).toBe('program');
    expect(writtenAs(['length: 4 mm', 'area: 5 mm2'])).toEqual({ kind: 'pairs', rows: [['length', '4 mm'], ['area', '5 mm2']] });
    expect(writtenAs(['4 mm cutter', 'depth of cut 2 mm']).kind).toBe('words');
    expect(writtenAs([]).kind).toBe('words');
  });
});
