import { overlay } from '../playback/overlay.ts';
import { editor } from '../state/editor.ts';
import { type Scene, drawMoment, drawValues } from './drawing.ts';
import { onTheme, readPalette } from './palette.ts';
import { sheet } from './store.ts';

/** Keeps a canvas showing the state: it is drawn again in the next frame after something changed, and only then. Returns how to stop. */
export function paintSheet(canvas: HTMLCanvasElement): () => void {
  const ctx = canvas.getContext('2d');
  if (!ctx) return () => undefined;
  const values = document.createElement('canvas');
  let palette = readPalette(canvas.parentElement!);
  let drawn: readonly unknown[] = [];
  let frame = 0;

  const draw = () => {
    frame = 0;
    const scene: Scene = { editor: editor.getState(), sheet: sheet.getState(), overlay: overlay.getState(), palette, ratio: devicePixelRatio || 1 };
    resize(canvas, scene);
    const key = valuesKey(scene);
    if (key.some((part, index) => part !== drawn[index])) {
      resize(values, scene);
      drawValues(values.getContext('2d')!, scene);
      drawn = key;
    }
    ctx.setTransform(1, 0, 0, 1, 0, 0);
    ctx.clearRect(0, 0, canvas.width, canvas.height);
    if (values.width > 0 && values.height > 0) ctx.drawImage(values, 0, 0);
    drawMoment(ctx, scene);
  };
  const request = () => {
    if (frame === 0) frame = requestAnimationFrame(draw);
  };
  const stops = [
    editor.subscribe(request), sheet.subscribe(request), overlay.subscribe(request),
    onTheme(() => {
      palette = readPalette(canvas.parentElement!);
      request();
    }),
  ];
  // Words are measured and drawn anew once the typeface has come.
  void document.fonts?.ready.then(() => {
    drawn = [];
    request();
  });
  request();
  return () => {
    cancelAnimationFrame(frame);
    for (const stop of stops) stop();
  };
}

/** What the picture of the values hangs on: while all of it is the same, the last drawing is used again. */
function valuesKey({ editor: { picture }, sheet: { view, size, hidden, order, setUp, around, images, ground }, overlay: { relief }, palette, ratio }: Scene): readonly unknown[] {
  return [picture, view, size, hidden, order, setUp, around, images, ground, relief, palette, ratio];
}

function resize(canvas: HTMLCanvasElement, { sheet: { size }, ratio }: Scene): void {
  const [width, height] = [Math.round(size.width * ratio), Math.round(size.height * ratio)];
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
}
