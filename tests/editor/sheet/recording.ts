import type { Palette } from '../../../src/editor/sheet/palette.ts';

/** One call on a canvas, with what was set when it was made. */
export interface Call {
  readonly name: string;
  readonly args: readonly unknown[];
  readonly stroke: string;
  readonly fill: string;
  readonly width: number;
  readonly dash: readonly number[];
  readonly alpha: number;
  readonly transform: readonly number[];
}

/** A path that remembers what it was made of. */
export class RecordedPath {
  readonly points: (readonly [number, number])[] = [];
  constructor(readonly d = '') {}
  moveTo(x: number, y: number) { this.points.push([x, y]); }
  lineTo(x: number, y: number) { this.points.push([x, y]); }
  closePath() { this.points.push(this.points[0]!); }
}

/** A canvas that draws nothing and remembers every call. */
export function recordingContext(): { readonly ctx: CanvasRenderingContext2D; readonly calls: Call[] } {
  const calls: Call[] = [];
  const state: Record<string, unknown> = { strokeStyle: '', fillStyle: '', lineWidth: 1, globalAlpha: 1 };
  let [dash, transform]: [readonly number[], readonly number[]] = [[], []];
  const ctx = new Proxy(state, {
    get: (target, name: string) => {
      if (name in target) return target[name];
      return (...args: unknown[]) => {
        if (name === 'setLineDash') dash = args[0] as number[];
        if (name === 'setTransform') transform = args as number[];
        calls.push({ name, args, stroke: String(state.strokeStyle), fill: String(state.fillStyle), width: Number(state.lineWidth), dash, alpha: Number(state.globalAlpha), transform });
      };
    },
    set: (target, name: string, value) => {
      target[name] = value;
      return true;
    },
  }) as unknown as CanvasRenderingContext2D;
  return { ctx, calls };
}

const NAMES = ['paper', 'desk', 'ink', 'grey', 'line', 'edge', 'petrol', 'on-petrol', 'petrol-wash', 'amber', 'caution', 'failed', 'groove'];
/** Every colour is called what it is for. */
export const PALETTE: Palette = { colours: Object.fromEntries(NAMES.map((name) => [name, name])) as unknown as Palette['colours'], type: 'sans-serif' };
