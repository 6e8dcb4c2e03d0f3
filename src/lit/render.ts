import type { Loop } from '../geometry/index.ts';
import { blurred, spread } from './blur.ts';
import { coverOf } from './cover.ts';
import { beside, facing, stray } from './fall-off.ts';
import { type Frame } from './frame.ts';
import { BOARDS, DIFFUSER, METAL, NO_BOARD, WALLS } from './materials.ts';
import { plasterRow } from './plaster.ts';
import { type Raster, addTo, emptyRaster } from './raster.ts';
import type { LitSign, View } from './scene.ts';
import { trailOf } from './trail.ts';

/** What comes from each place of the picture to the eye, beside the luminance of a tube at full power: the sign's own light, and light of the room sent back. */
export interface Light {
  readonly sign: Raster;
  readonly room: Raster;
}

/** Light mixes in the tube within this share of its width (standard deviation). */
const MIXING = 0.4;

/** Height of the tube's light over the board's face, and how far light spreads inside a board, in widths of the tube (common practice, no source). */
const PROUD = 0.35;
const INSIDE = 2.5;

/** Of the light, strayed in the eye and the lens; from where on, in widths of the tube, and over how many octaves. */
const STRAYED = 0.13;
const STRAY_FROM = 0.3;
const STRAY_OCTAVES = 7;

/** How soft and how far down the board's shadow is, as shares of the distance to the wall. */
const SHADOW = 0.4;

/** Width of the bright rim along a board's edge, mm. */
const RIM = 1.2;

/** The light of a scene. `pause` is called between steps of the work. */
export function lightOf(sign: LitSign, view: View, frame: Frame, pause: () => void): Light {
  const tubes = coverOf(sign.tubes, frame);
  pause();
  const glow = glowOf(sign, tubes, frame);
  pause();
  const light = wallLight(sign, view, glow, frame, pause);
  if (sign.board) layBoard(light, sign.board, { view, glow, sign, frame, pause });
  layTubes(light, tubes, glow);
  layFixings(light, sign, frame);
  pause();
  return { sign: strayed(light.sign, sign.tubeWidth * frame.scale, pause), room: light.room };
}

/** Luminance of the tubes' fronts: 1 along the middle of a long one, less towards its walls and at the ends of what shines in it. */
export function glowOf({ lines, tubeWidth }: LitSign, tubes: Raster, frame: Frame): Raster {
  const sigma = MIXING * tubeWidth;
  const glow = blurred(trailOf(lines, frame), sigma * frame.scale);
  const level = sigma * Math.sqrt(2 * Math.PI);
  for (let i = 0; i < glow.values.length; i++) glow.values[i]! *= level * tubes.values[i]!;
  return glow;
}

const inPixels = (hazes: ReturnType<typeof facing>, scale: number) => hazes.map(({ sigma, weight }) => ({ sigma: sigma * scale, weight }));

/** The wall, lit from the back of the sign. */
function wallLight({ board }: LitSign, view: View, glow: Raster, frame: Frame, pause: () => void): Light {
  const behind = board ? BOARDS[view.board].behind : NO_BOARD;
  const light: Light = { sign: emptyRaster(frame), room: emptyRaster(frame) };
  if (behind > 0) addTo(light.sign, spread(glow, inPixels(facing(view.wallDistance), frame.scale), pause), behind * WALLS[view.wall]);
  light.room.values.fill(WALLS[view.wall]);
  roughen(light, frame);
  pause();
  return light;
}

/** The wall is plastered, and the room's light comes from above. */
function roughen({ sign, room }: Light, frame: Frame): void {
  const { columns, rows } = frame;
  const row = new Float32Array(columns);
  for (let y = 0, i = 0; y < rows; y++) {
    plasterRow(frame, y, row);
    const height = 1.15 - (0.4 * y) / rows;
    for (let x = 0; x < columns; x++, i++) {
      sign.values[i]! *= row[x]!;
      room.values[i]! *= row[x]! * height;
    }
  }
}

interface Around {
  readonly view: View;
  readonly glow: Raster;
  readonly sign: LitSign;
  readonly frame: Frame;
  readonly pause: () => void;
}

/** The board over the wall: its shadow there, light on its face and from within, its rim. */
function layBoard({ sign, room }: Light, loops: readonly Loop[], { view, glow, sign: { tubeWidth }, frame, pause }: Around): void {
  const { reflects, along, within, edge, clear } = BOARDS[view.board];
  const board = coverOf(loops, frame);
  shade(room, spread(board, [{ sigma: SHADOW * view.wallDistance * frame.scale, weight: 1 }], pause), view.wallDistance * frame.scale, clear);
  pause();
  const face = spread(glow, inPixels(beside(PROUD * tubeWidth), frame.scale), pause);
  const inside = spread(glow, inPixels(facing(INSIDE * tubeWidth), frame.scale), pause);
  const soft = blurred(board, RIM * frame.scale);
  for (let i = 0; i < board.values.length; i++) {
    const cover = board.values[i]!;
    if (cover === 0) continue;
    const rim = Math.max(0, 2 * (cover - soft.values[i]!));
    const own = reflects * along * face.values[i]! + within * inside.values[i]! + edge * rim * inside.values[i]!;
    sign.values[i] = sign.values[i]! * (1 - cover * (1 - clear)) + cover * own;
    room.values[i] = room.values[i]! * (1 - cover * (1 - clear)) + cover * (reflects + 0.25 * rim);
  }
  pause();
}

/** The board keeps the room's light from the wall, most from above. */
function shade({ columns, values }: Raster, shadow: Raster, distance: number, clear: number): void {
  const lower = Math.round(distance * SHADOW) * columns;
  for (let i = 0; i < values.length; i++) values[i]! *= 1 - 0.65 * (1 - 0.7 * clear) * (shadow.values[i - lower] ?? 0);
}

function layTubes({ sign, room }: Light, tubes: Raster, glow: Raster): void {
  for (let i = 0; i < tubes.values.length; i++) {
    const cover = tubes.values[i]!;
    if (cover === 0) continue;
    sign.values[i] = sign.values[i]! * (1 - cover * (1 - DIFFUSER * 0.6)) + glow.values[i]!;
    room.values[i] = room.values[i]! * (1 - cover) + cover * DIFFUSER;
  }
}

/** Heads of metal: a bright rim round a face that mirrors some of the light about it. */
function layFixings({ sign, room }: Light, { fixings }: LitSign, frame: Frame): void {
  if (fixings.length === 0) return;
  const [heads, faces] = [1, 0.78].map((share) => coverOf(fixings.map(({ centre, diameter }) => circle(centre, (share * diameter) / 2)), frame));
  for (let i = 0; i < heads!.values.length; i++) {
    const cover = heads!.values[i]!;
    if (cover === 0) continue;
    const rim = cover - faces!.values[i]!;
    sign.values[i]! *= 1 - 0.45 * cover + 0.6 * rim;
    room.values[i] = room.values[i]! * (1 - cover) + cover * METAL + 0.3 * rim;
  }
}

/** Corners of a circle; lengths of chords stay under a tenth of its radius. */
const CORNERS = 64;

const circle = ({ x, y }: { readonly x: number; readonly y: number }, radius: number): Loop =>
  Array.from({ length: CORNERS }, (_, i) => ({ x: x + radius * Math.cos((2 * Math.PI * i) / CORNERS), y: y + radius * Math.sin((2 * Math.PI * i) / CORNERS) }));

function strayed(light: Raster, tube: number, pause: () => void): Raster {
  return spread(light, [{ sigma: 0, weight: 1 - STRAYED }, ...stray(STRAY_FROM * tube, STRAY_OCTAVES).map(({ sigma, weight }) => ({ sigma, weight: weight * STRAYED }))], pause);
}
