import { decode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import litView from '../../nodes/lit-view.ts';
import { bytesOfBase64 } from '../../src/artwork/index.ts';
import { EXAMPLE_BOARD, EXAMPLE_CHANNEL, EXAMPLE_LIGHTING } from '../../src/values/examples.ts';
import { outcomeOf, outputsOf, problemsOf } from '../support/run-node.ts';

const inputs = { channel: EXAMPLE_CHANNEL, board: EXAMPLE_BOARD, lighting: undefined, holes: [] };
const small = { pixels: 120 };
const read = (base64: string) => decode(bytesOfBase64(base64), { checkCrc: true });
/** Red, green, blue at a place in mm, through the box of the picture. */
function seen(image: { readonly png: string; readonly box: { readonly minX: number; readonly maxX: number; readonly maxY: number } }, x: number, y: number) {
  const { width, data } = read(image.png);
  const scale = width / (image.box.maxX - image.box.minX);
  const at = 3 * (Math.floor((image.box.maxY - y) * scale) * width + Math.floor((x - image.box.minX) * scale));
  return [data[at]!, data[at + 1]!, data[at + 2]!] as const;
}

describe('the picture', () => {
  const { image, files, quantities } = outputsOf(litView, inputs, small);

  it('is a PNG of the size asked for, read by another reader, in proportion to what it shows', () => {
    expect(files).toEqual([{ path: 'lit-view.png', base64: image.png }]);
    const { width, height, channels, depth } = read(image.png);
    expect([width, height, channels, depth]).toEqual([image.columns, image.rows, 3, 8]);
    expect(width).toBe(120);
    const { minX, minY, maxX, maxY } = image.box;
    expect((maxX - minX) / width).toBeCloseTo((maxY - minY) / height, 9);
    expect(minX).toBeLessThan(50);
    expect(maxY).toBeGreaterThan(150);
    expect(read(image.small).width).toBeLessThanOrEqual(256);
    expect(quantities).toEqual({});
  });

  it('holds no time and no text, only what a PNG cannot do without and the kind of its colours', () => {
    const bytes = bytesOfBase64(image.png);
    const names: string[] = [];
    for (let at = 8, length = 0; at < bytes.length; at += length + 12) {
      length = new DataView(bytes.buffer).getUint32(at);
      names.push(String.fromCharCode(...bytes.subarray(at + 4, at + 8)));
    }
    expect(names).toEqual(['IHDR', 'sRGB', 'IDAT', 'IEND']);
  });

  it('is bright and warm on the tube, darker on the board, darker still far off on the wall', () => {
    const [tube, board, wall] = [seen(image, 200, 100), seen(image, 200, 130), seen(image, 22, 26)];
    expect(tube[0]).toBeGreaterThan(240);
    expect(tube[0]).toBeGreaterThan(tube[2] + 15);
    expect(board[0]).toBeLessThan(tube[0] - 80);
    expect(wall[0]).toBeLessThan(board[0]);
  });

  it('says in words what is seen', () => expect(image.says).toBe('Sign of 300 x 100 mm at night, 1 line of light, 3000 K, on a white board before a white wall'));

  it('gets bluer with colder light, dark when dimmed, bright by day', () => {
    const at = (params: Parameters<typeof outputsOf<never, never, (typeof litView)['params']>>[2], x = 200, y = 100) => seen(outputsOf(litView, inputs, { ...small, ...params }).image, x, y);
    const cold = at({ colourTemperature: 9000 });
    expect(cold[2]).toBeGreaterThan(cold[0]);
    expect(at({ brightness: 0 })[0]).toBeLessThan(60);
    expect(at({ ambient: 1 }, 30, 30)[1]).toBeGreaterThan(120);
    expect(at({ exposure: 2 }, 200, 130)[0]).toBeGreaterThan(at({}, 200, 130)[0] + 20);
  });
});

describe('lighting', () => {
  const [run] = EXAMPLE_LIGHTING.runs;
  const [piece] = run!.pieces;
  const half = { ...piece!, lit: { ...piece!.lit, segments: [{ kind: 'line', end: { x: 200, y: 100 } }] }, modules: 2, cutLength: 100, unlitEnd: 100 } as const;
  const lighting = { ...EXAMPLE_LIGHTING, strip: { ...EXAMPLE_LIGHTING.strip, colourTemperature: 4000 }, runs: [{ ...run!, pieces: [half] }] };
  const { image, quantities } = outputsOf(litView, { ...inputs, lighting }, small);

  it('leaves the unlit half of a tube dark', () => {
    expect(seen(image, 150, 100)[0]).toBeGreaterThan(230);
    expect(seen(image, 270, 100)[0]).toBeLessThan(120);
  });

  it('brings the colour of its strip, and the light of its length: 0.1 m of 800 lm/m through 0.7', () => {
    expect(image.says).toContain('4000 K');
    expect(quantities).toEqual({ luminousFlux: { value: expect.closeTo(56, 9), unit: 'lm' } });
  });
});

it('shows heads of mounting fixings, not holes for cables', () => {
  const hole = (purpose: 'mounting' | 'cable') => [[{ centre: { x: 70, y: 130 }, diameter: 6, purpose }]];
  const png = (purpose: 'mounting' | 'cable', headDiameter: number) => outputsOf(litView, { ...inputs, holes: hole(purpose) }, { ...small, headDiameter }).image.png;
  const without = outputsOf(litView, inputs, small).image.png;
  expect([png('cable', 14) === without, png('mounting', 0) === without, png('mounting', 14) === without]).toEqual([true, true, false]);
});

it('says what is wrong, and when a picture had to be smaller', () => {
  expect(problemsOf(litView, { ...inputs, channel: { ...EXAMPLE_CHANNEL, region: { loops: [] } }, board: undefined }, small)).toMatchObject([{ place: 'channel' }]);
  expect(problemsOf(litView, inputs, { ...small, colourTemperature: 500 })).toMatchObject([{ place: 'colourTemperature', found: '500 K' }]);
  expect(outcomeOf(litView, { ...inputs, board: undefined }, small)).toMatchObject({ ok: true, cautions: [] });
});

it('asks often whether it is still wanted', () => {
  let asked = 0;
  const stop = () => {
    asked += 1;
    if (asked > 20) throw new Error('no longer wanted');
  };
  const params = Object.fromEntries(Object.entries(litView.params).map(([name, param]) => [name, param.default])) as Parameters<typeof litView.compute>[1];
  expect(() => litView.compute(inputs, { ...params, ...small }, { checkpoint: stop })).toThrow('no longer wanted');
});
