// @vitest-environment happy-dom
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { overlay } from '../../../src/editor/playback/overlay.ts';
import { drawMoment, drawValues } from '../../../src/editor/sheet/drawing.ts';
import { frameOf, sheet } from '../../../src/editor/sheet/store.ts';
import { toScreen } from '../../../src/editor/sheet/view.ts';
import { editor } from '../../../src/editor/state/editor.ts';
import type { LayerKind } from '../../../src/values/picture.ts';
import { HOLES_PICTURE, SHEET_LAYER, STROKES, STROKES_PICTURE, picture, showSample } from './samples.ts';
import { type Call, PALETTE, RecordedPath, recordingContext } from './recording.ts';

vi.stubGlobal('Path2D', RecordedPath);

function drawn(draw: typeof drawValues): Call[] {
  const { ctx, calls } = recordingContext();
  draw(ctx, { editor: editor.getState(), sheet: sheet.getState(), overlay: overlay.getState(), palette: PALETTE, ratio: 2 });
  return calls;
}
const pathsOf = (calls: readonly Call[], name: 'stroke' | 'fill') => calls.filter((call) => call.name === name && call.args[0] instanceof RecordedPath);
const texts = (calls: readonly Call[]) => calls.filter(({ name }) => name === 'fillText').map(({ args }) => args[0]);

beforeEach(() => {
  overlay.setState({ relief: undefined, cutter: undefined, trail: undefined });
  showSample(STROKES_PICTURE);
});

describe('the picture of values', () => {
  it('puts millimetres where the view says, y up, in device pixels, and keeps lines as wide on the screen', () => {
    sheet.setState({ view: { x: 420, y: 310, scale: 4 } });
    const stroke = pathsOf(drawn(drawValues), 'stroke').find((call) => call.stroke === 'amber')!;
    const [a, b, c, d, e, f] = stroke.transform as [number, number, number, number, number, number];
    const place = toScreen(frameOf(sheet.getState()), { x: 400, y: 300 });
    expect({ x: a * 400 + c * 300 + e, y: b * 400 + d * 300 + f }).toEqual({ x: 2 * place.x, y: 2 * place.y });
    expect(stroke.width * Math.abs(a)).toBeCloseTo(2 * 2, 12);
    expect((stroke.args[0] as RecordedPath).d).toBe(STROKES.items.map(({ d: data }) => data).join(' '));
  });

  it('draws the sheet first and never faint, what came in fainter than what leaves', () => {
    editor.setState({ picture: { ...HOLES_PICTURE, inputs: [STROKES, SHEET_LAYER] } });
    const calls = drawn(drawValues);
    expect(calls.find(({ name }) => name === 'fill')).toMatchObject({ fill: 'paper', alpha: 1 });
    const alpha = (colour: string) => pathsOf(calls, 'stroke').find((call) => call.stroke === colour)!.alpha;
    expect(alpha('amber')).toBeLessThan(0.6);
    expect(alpha('ink')).toBe(1);
  });

  it('numbers strokes and shows their direction only when asked to and long enough on the screen', () => {
    expect(texts(drawn(drawValues))).toEqual(['1', '2']);
    sheet.setState({ order: false });
    expect(texts(drawn(drawValues))).toEqual([]);
    sheet.setState({ order: true, view: { x: 250, y: 200, scale: 0.1 } });
    expect(texts(drawn(drawValues))).toEqual([]);
  });

  it('leaves out hidden layers', () => {
    sheet.setState({ hidden: new Set(['strokes']) });
    expect(pathsOf(drawn(drawValues), 'stroke').some((call) => call.stroke === 'amber')).toBe(false);
  });

  it('tells every kind of layer apart by its line or its fill, not by its colour alone', () => {
    const kinds: readonly LayerKind[] = ['sheet', 'outlines', 'strokes', 'region', 'groove', 'holes', 'tabs', 'passes', 'rapids', 'seams', 'travel', 'junctions', 'doubts'];
    sheet.setState({ order: false });
    const looks = kinds.map((kind) => {
      editor.setState({ picture: picture('place', [{ kind, name: kind, items: [{ d: 'M100 100L200 100L200 200Z' }] }]) });
      return drawn(drawValues).filter(({ name }) => name === 'fill' || name === 'stroke').map(({ name, width, dash, alpha }) => `${name} ${width} ${dash.join()} ${alpha}`).join();
    });
    const same = looks.filter((look, i) => looks.indexOf(look) !== i);
    expect(same).toEqual([]);
  });

  it('fills a groove at its true size and draws nothing but edges over the shaded sheet', () => {
    const groove = picture('place', [{ kind: 'groove', name: 'groove', items: [{ d: 'M0 0L10 0L10 10Z' }] }]);
    editor.setState({ picture: groove });
    expect(pathsOf(drawn(drawValues), 'fill')).toMatchObject([{ fill: 'groove', args: [expect.anything(), 'evenodd'] }]);
    overlay.setState({ relief: { width: 0, height: 0, pixels: new Uint8ClampedArray(0), box: { minX: 0, minY: 0, maxX: 1, maxY: 1 } } });
    expect(pathsOf(drawn(drawValues), 'fill')).toEqual([]);
  });

  it('is right within a hundredth of a pixel where a hundredth of a millimetre is 100 pixels', () => {
    editor.setState({ picture: picture('place', [{ kind: 'strokes', name: 'strokes', items: [{ d: 'M2400.01 1200.02L2400.03 1200L2500 1300' }] }]) });
    sheet.setState({ view: { x: 2400.02, y: 1200.01, scale: 10_000 } });
    const stroke = pathsOf(drawn(drawValues), 'stroke')[0]!;
    expect(stroke.transform).toEqual([2, 0, 0, 2, 0, 0]);
    const [first, second] = (stroke.args[0] as RecordedPath).points;
    expect(Math.fround(first![0])).toBeCloseTo(524 - 100, 2);
    expect(Math.fround(first![1])).toBeCloseTo(274 - 100, 2);
    expect(second![0] - first![0]).toBeCloseTo(200, 5);
    expect(second![1] - first![1]).toBeCloseTo(200, 5);
  });

  it('draws nothing where there is no picture', () => {
    editor.setState({ picture: undefined });
    expect(drawn(drawValues).filter(({ name }) => name === 'stroke' || name === 'fill')).toEqual([]);
  });
});

describe('what is drawn over the values', () => {
  it('labels both rulers in round steps, with the unit at their last labels', () => {
    const labels = texts(drawn(drawMoment));
    expect(labels).toContain('900 mm');
    expect(labels.filter((label) => String(label).endsWith('mm'))).toHaveLength(2);
    expect(labels).toContain('300');
  });

  it('shows the cutter at its true diameter, filled while in the material', () => {
    const circles = (z: number) => {
      overlay.setState({ cutter: { x: 500, y: 250, z, diameter: 40 } });
      const calls = drawn(drawMoment);
      const at = calls.findIndex(({ name, args }) => name === 'arc' && args[2] === 20);
      return calls.slice(at + 1, at + 2).map(({ name }) => name);
    };
    expect(circles(-1)).toEqual(['fill']);
    expect(circles(3)).not.toEqual(['fill']);
  });

  it('marks checks that did not pass, failures otherwise than cautions, and none of other coordinates', () => {
    const check = (status: 'pass' | 'caution' | 'fail', node: string) => ({ check: 'x', status, value: 1, limit: 2, unit: 'mm', at: [500, 250] as const, says: 'Says.', node });
    const marks = (...checks: ReturnType<typeof check>[]) => {
      editor.setState({ outcome: { status: 'fail', checks, quantities: {}, files: [], keptBack: [] } });
      return drawn(drawMoment).filter(({ stroke, name }) => name === 'stroke' && (stroke === 'caution' || stroke === 'failed')).map(({ stroke }) => stroke);
    };
    const [caution, failed] = [marks(check('caution', 'holes')), marks(check('fail', 'holes'))];
    expect(new Set(caution)).toEqual(new Set(['caution']));
    expect(new Set(failed)).toEqual(new Set(['failed']));
    expect(caution.length).not.toBe(failed.length);
    expect(marks(check('pass', 'holes'), check('fail', 'file'))).toEqual([]);
  });

  it('rings the place one was sent to and leads to its sentence', () => {
    editor.setState({ spot: { at: [500, 250], says: 'Too tight.', status: 'caution', node: 'place' } });
    const calls = drawn(drawMoment);
    expect(calls.some(({ name, args }) => name === 'arc' && args[0] === 524 && args[1] === 274 && args[2] === 17)).toBe(true);
  });

  it('draws a square for each place to take hold of', () => {
    editor.setState({ picture: HOLES_PICTURE });
    expect(drawn(drawMoment).filter(({ name, stroke }) => name === 'strokeRect' && stroke === 'petrol')).toHaveLength(2);
  });
});
