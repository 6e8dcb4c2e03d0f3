import type { Overlay } from '../playback/overlay.ts';
import type { EditorState } from '../state/editor.ts';
import { needsPlacing } from './deep.ts';
import { drawSigns, drawGrips, drawSpot, drawTape } from './paint/marks.ts';
import { pointedPlaces } from './hand/pointed.ts';
import { wayOf, waysOf } from './hand/ways.ts';
import { drawHand, drawPointed } from './paint/hand.ts';
import { type Ink, inPixels } from './paint/ink.ts';
import { drawAlone } from './paint/alone.ts';
import { drawLayers } from './paint/layers.ts';
import { drawPlayback, drawRelief } from './paint/playback.ts';
import { drawRulers } from './paint/rulers.ts';
import type { Palette } from './palette.ts';
import { contentBox, isGround } from './shapes.ts';
import { aloneOf, frameOnMachine, read } from './set-ups.ts';
import { signsOf, spotHere } from './signs.ts';
import { labelPlace } from './spot-label.ts';
import { type SheetState, frameOf } from './store.ts';
import { subjectOf } from './subject.ts';

/** All the sheet's canvas shows is a function of this. */
export interface Scene {
  readonly editor: EditorState;
  readonly sheet: SheetState;
  readonly overlay: Overlay;
  readonly palette: Palette;
  readonly ratio: number;
}

function inkFor(ctx: CanvasRenderingContext2D, { editor, sheet, overlay, palette, ratio }: Scene): Ink {
  const frame = frameOf(sheet);
  const box = editor.picture && contentBox(editor.picture);
  return { ctx, palette, frame, ratio, order: sheet.order, images: sheet.images, bare: overlay.relief !== undefined, deep: box !== undefined && needsPlacing(frame, box) };
}

/** Draws the values and, beneath them, the shaded sheet: all that costs time and stays while a pointer moves. */
export function drawValues(ctx: CanvasRenderingContext2D, scene: Scene): void {
  const ink = inkFor(ctx, scene);
  const { editor: { picture }, sheet: { hidden, ground, setUp }, overlay: { relief } } = scene;
  inPixels(ink);
  ctx.clearRect(0, 0, ink.frame.width, ink.frame.height);
  if (!picture) return;
  const alone = aloneOf(picture, setUp);
  if (alone) {
    drawAlone(ink, scene, alone);
    return;
  }
  const [before, above] = [picture.inputs.filter(isGround), picture.inputs.filter((layer) => !isGround(layer))];
  drawLayers(ink, [...ground, ...before], hidden, false);
  drawLayers(ink, picture.outputs.layers.filter(isGround), hidden, false);
  if (relief) drawRelief(ink, relief);
  drawLayers(ink, above, hidden, picture.outputs.layers.length > 0);
  drawLayers(ink, picture.outputs.layers.filter((layer) => !isGround(layer)), hidden, false);
}

/** Draws what changes from moment to moment over the values: playback, signs, what is held, the tape, the rulers. */
export function drawMoment(ctx: CanvasRenderingContext2D, scene: Scene): void {
  const ink = inkFor(ctx, scene);
  const { editor, sheet, overlay } = scene;
  inPixels(ink);
  drawPlayback(ink, overlay);
  const subject = subjectOf(editor, sheet.setUp);
  const alone = aloneOf(editor.picture, sheet.setUp);
  if (subject) drawGrips(ink, subject, sheet);
  const way = subject && sheet.tool === 'look' ? wayOf(waysOf(subject), sheet.way) : undefined;
  if (way) drawHand(ink, way, sheet);
  drawPointed(ink, pointedPlaces(editor));
  drawSigns(ink, signsOf(editor, alone));
  const spot = spotHere(editor);
  if (spot) drawSpot(ink, spot, labelPlace(ink.frame, spot.at).line);
  drawTape(ink, sheet);
  drawRulers({ ...ink, frame: frameOnMachine(ink.frame, alone) }, sheet.cursor && read(sheet.cursor, alone));
}
