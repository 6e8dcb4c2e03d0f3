import type { DecodedPng } from 'fast-png';
import { channelsOf, type PngHeader } from './png-chunks.ts';
import { lightOf, luma } from './tone.ts';

/** Code value (0 to 1) and cover (0 to 1) of one pixel. */
type Pixel = (index: number, column: number, row: number) => number;

/** Light of every pixel, laid over white where it is see-through; undefined when a pixel names a colour the palette lacks. */
export function samplesOf(png: DecodedPng, header: PngHeader): Float32Array | undefined {
  const { width, height } = png;
  const pixel = header.colour === 3 ? palettePixel(png) : directPixel(png, header);
  const light = new Float32Array(width * height);
  for (let row = 0, i = 0; row < height; row++) {
    for (let column = 0; column < width; column++, i++) {
      const value = pixel(i, column, row);
      if (Number.isNaN(value)) return undefined;
      light[i] = value;
    }
  }
  return light;
}

const over = (light: number, cover: number): number => light * cover + 1 - cover;

function palettePixel({ palette = [], data, depth, width }: DecodedPng): Pixel {
  const lights = Float32Array.from({ length: 256 }, (_, i) => {
    const [red, green, blue, alpha = 255] = palette[i] ?? [];
    return red === undefined || green === undefined || blue === undefined ? NaN : over(lightOf(luma(red, green, blue) / 255), alpha / 255);
  });
  const at = reader(data, depth, width, 1);
  return (index, column, row) => lights[at(index, column, row)]!;
}

function directPixel({ data, depth, width, transparency }: DecodedPng, header: PngHeader): Pixel {
  const channels = channelsOf(header);
  const most = 2 ** depth - 1;
  const at = reader(data, depth, width, channels);
  const key = transparency;
  switch (channels) {
    case 1: return (i, column, row) => {
      const grey = at(i, column, row);
      return key?.[0] === grey ? 1 : lightOf(grey / most);
    };
    case 2: return (i) => over(lightOf(data[2 * i]! / most), data[2 * i + 1]! / most);
    case 3: return (i) => {
      const [red, green, blue] = [data[3 * i]!, data[3 * i + 1]!, data[3 * i + 2]!];
      return key !== undefined && key[0] === red && key[1] === green && key[2] === blue ? 1 : lightOf(luma(red, green, blue) / most);
    };
    default: return (i) => over(lightOf(luma(data[4 * i]!, data[4 * i + 1]!, data[4 * i + 2]!) / most), data[4 * i + 3]! / most);
  }
}

/** Single samples; under 8 bits several share a byte, the first in its highest bits, and each row begins a byte. */
function reader(data: DecodedPng['data'], depth: number, width: number, channels: number): Pixel {
  if (depth >= 8) return (index) => data[index * channels]!;
  const rowBytes = Math.ceil((width * depth) / 8);
  const mask = 2 ** depth - 1;
  return (_, column, row) => (data[row * rowBytes + ((column * depth) >> 3)]! >> (8 - depth - ((column * depth) & 7))) & mask;
}
