// @vitest-environment happy-dom
import { beforeEach, expect, it, vi } from 'vitest';
import { overlay } from '../../../src/editor/playback/overlay.ts';
import { drawValues } from '../../../src/editor/sheet/drawing.ts';
import { followImages } from '../../../src/editor/sheet/images.ts';
import { frameOf, sheet } from '../../../src/editor/sheet/store.ts';
import { toScreen } from '../../../src/editor/sheet/view.ts';
import { editor } from '../../../src/editor/state/editor.ts';
import { STROKES_PICTURE, picture, showSample } from './samples.ts';
import { PALETTE, RecordedPath, recordingContext } from './recording.ts';

vi.stubGlobal('Path2D', RecordedPath);

const box = { minX: 100, minY: 50, maxX: 500, maxY: 250 };
const shown = picture('view', [{ kind: 'image', name: 'lit view', items: [{ d: 'M100 50L500 50L500 250L100 250Z', image: { png: 'iVBO', box } }] }]);
const pixels = { pixels: true } as unknown as CanvasImageSource;
const settled = () => new Promise((done) => { setTimeout(done); });

function imagesDrawn() {
  const { ctx, calls } = recordingContext();
  drawValues(ctx, { editor: editor.getState(), sheet: sheet.getState(), overlay: overlay.getState(), palette: PALETTE, ratio: 2 });
  return calls.filter(({ name }) => name === 'drawImage').map(({ args }) => args);
}

beforeEach(() => {
  showSample(STROKES_PICTURE);
  sheet.setState({ images: new Map(), hidden: new Set() });
});

it('draws a picture of pixels to scale once it is decoded, and not while its layer is hidden', async () => {
  const addresses: string[] = [];
  const stop = followImages((address) => {
    addresses.push(address);
    return Promise.resolve(pixels);
  });
  editor.setState({ picture: shown });
  expect(imagesDrawn()).toEqual([]);
  await settled();
  expect(addresses).toEqual(['data:image/png;base64,iVBO']);
  const frame = frameOf(sheet.getState());
  const { x, y } = toScreen(frame, { x: 100, y: 250 });
  expect(imagesDrawn()).toEqual([[pixels, x, y, 400 * frame.scale, 200 * frame.scale]]);
  sheet.setState({ hidden: new Set(['lit view']) });
  expect(imagesDrawn()).toEqual([]);
  editor.setState({ picture: STROKES_PICTURE });
  await settled();
  expect(sheet.getState().images.size).toBe(0);
  stop();
});

it('leaves out what cannot be decoded, and what is no longer shown once it has been', async () => {
  const broken = followImages(() => Promise.reject(new Error('no picture')));
  editor.setState({ picture: shown });
  await settled();
  expect(imagesDrawn()).toEqual([]);
  broken();
  let finish: (image: CanvasImageSource) => void = () => undefined;
  const stop = followImages(() => new Promise((resolve) => { finish = resolve; }));
  editor.setState({ picture: STROKES_PICTURE });
  finish(pixels);
  await settled();
  expect(sheet.getState().images.size).toBe(0);
  stop();
});
