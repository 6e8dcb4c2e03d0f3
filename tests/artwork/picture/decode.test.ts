import { encode } from 'fast-png';
import jpeg from 'jpeg-js';
import { zlibSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { bytesOfBase64, decodePicture, PICTURE_LIMITS } from '../../../src/artwork/index.ts';

/** Linear light of a code value, from IEC 61966-2-1 as it is printed there. */
const linear = (code: number): number => (code <= 0.04045 ? code / 12.92 : ((code + 0.055) / 1.055) ** 2.4);
const luma = ([r, g, b]: readonly number[]): number => 0.299 * r! + 0.587 * g! + 0.114 * b!;

function lightOf(bytes: Uint8Array): number[] {
  const reading = decodePicture(bytes);
  if (!reading.ok) throw new Error(reading.problems[0].found);
  return [...reading.picture.light];
}
function refusal(bytes: Uint8Array) {
  const reading = decodePicture(bytes);
  if (reading.ok) throw new Error('expected a refusal');
  return reading.problems[0];
}
function near(found: readonly number[], wanted: readonly number[], within = 1e-3): void {
  expect(found).toHaveLength(wanted.length);
  found.forEach((value, i) => { expect(Math.abs(value - wanted[i]!)).toBeLessThan(within); });
}

const CRC = Array.from({ length: 256 }, (_, n) => Array.from({ length: 8 }).reduce<number>((c) => (c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1), n));
const crc = (bytes: Uint8Array): number => (bytes.reduce((c, byte) => CRC[(c ^ byte) & 255]! ^ (c >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;

/** A chunk as ISO/IEC 15948, 5.3 lays it out, with the check sum of its annex D. */
function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc(body));
  return Buffer.concat([length, body, sum]);
}
const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
function header(columns: number, rows: number, depth: number, colour: number, interlace = 0): Buffer {
  const data = Buffer.alloc(13);
  data.writeUInt32BE(columns, 0);
  data.writeUInt32BE(rows, 4);
  data.set([depth, colour, 0, 0, interlace], 8);
  return chunk('IHDR', data);
}
const handMade = (head: Buffer, packed: readonly number[], ...before: Buffer[]): Buffer =>
  Buffer.concat([SIGNATURE, head, ...before, chunk('IDAT', zlibSync(Uint8Array.from(packed))), chunk('IEND', new Uint8Array())]);

describe('a PNG picture', () => {
  it('is read as linear light, whatever its channels and depth', () => {
    const colours = [[0, 0, 0], [255, 255, 255], [200, 30, 90], [10, 220, 40], [128, 128, 128], [1, 2, 3]];
    const wanted = colours.map((colour) => linear(luma(colour) / 255));
    near(lightOf(encode({ width: 3, height: 2, channels: 3, depth: 8, data: Uint8Array.from(colours.flat()) })), wanted);
    near(lightOf(encode({ width: 3, height: 2, channels: 3, depth: 16, data: Uint16Array.from(colours.flat(), (value) => value * 257) })), wanted);
    near(lightOf(encode({ width: 3, height: 2, channels: 1, depth: 8, data: Uint8Array.from(colours, luma) })), wanted, 0.006);
    near(lightOf(encode({ width: 3, height: 2, channels: 1, depth: 16, data: Uint16Array.from(colours, (colour) => Math.round(257 * luma(colour))) })), wanted);
  });

  it('lies on white where it is see-through', () => {
    near(lightOf(encode({ width: 2, height: 1, channels: 4, depth: 8, data: Uint8Array.of(0, 0, 0, 0, 0, 0, 0, 51) })), [1, 0.8]);
    near(lightOf(encode({ width: 2, height: 1, channels: 2, depth: 8, data: Uint8Array.of(255, 51, 0, 255) })), [1, 0]);
    // One grey that counts as clear (11.3.2.1).
    near(lightOf(handMade(header(2, 1, 8, 0), [0, 7, 8], chunk('tRNS', Uint8Array.of(0, 7)))), [1, linear(8 / 255)]);
  });

  it('may have a palette, with clear colours, and several pixels to the byte', () => {
    const palette = [chunk('PLTE', Uint8Array.of(0, 0, 0, 255, 255, 255, 188, 188, 188)), chunk('tRNS', Uint8Array.of(255, 255, 127))];
    // Two bits each, five pixels to the row: 0 1 2 1 0, then 2 2 2 2 1.
    near(lightOf(handMade(header(5, 2, 2, 3), [0, 0b00011001, 0b00000000, 0, 0b10101010, 0b01000000], ...palette)),
      [0, 1, 2, 1, 0, 2, 2, 2, 2, 1].map((i) => [0, 1, linear(188 / 255) * (127 / 255) + 128 / 255][i]!));
    near(lightOf(handMade(header(10, 1, 1, 0), [0, 0b10110000, 0b01000000])), [1, 0, 1, 1, 0, 0, 0, 0, 0, 1]);
    expect(refusal(handMade(header(1, 1, 8, 3), [0, 9], ...palette)).found).toContain('palette');
  });

  it('may be interlaced', () => {
    const data = Uint8Array.from({ length: 11 * 13 }, (_, i) => (i * 37) % 256);
    const picture = { width: 11, height: 13, channels: 1, depth: 8 as const, data };
    near(lightOf(encode(picture, { interlace: 'Adam7' })), [...data].map((value) => linear(value / 255)));
    // Under eight bits the decoder would garble it: told, not shown.
    expect(refusal(handMade(header(8, 8, 1, 0, 1), [0, 0])).advice).toContain('without interlacing');
  });

  it('is refused with one clear line when it is damaged', () => {
    const good = Buffer.from(encode({ width: 40, height: 40, channels: 1, depth: 8, data: Uint8Array.from({ length: 1600 }, (_, i) => (i * i) % 251) }));
    expect(refusal(good.subarray(0, 20)).found).toBe('a file that ends before its header');
    expect(refusal(good.subarray(0, good.length - 30)).found).toContain('end too early');
    const bent = Buffer.from(good);
    bent[good.length - 20]! ^= 0xff;
    expect(refusal(bent).expected).toBe('a whole PNG picture');
    // Half the rows are there.
    expect(refusal(handMade(header(4, 4, 8, 0), [0, 1, 2, 3, 4, 0, 1, 2, 3, 4])).found).toBe('only 50 % of its pixels');
    expect(refusal(handMade(header(4, 4, 9, 0), [0])).found).toContain('9 bits');
    expect(refusal(handMade(header(0, 0, 8, 0), [0])).found).toBe('0 x 0 pixels');
  });

  it('is not unpacked when its header promises too much, nor beyond what it promises', () => {
    expect(refusal(handMade(header(20_000, 20_000, 8, 0), [0]))).toMatchObject({ expected: `at most ${PICTURE_LIMITS.megapixels} million pixels`, found: '20000 x 20000 pixels' });
    expect(refusal(handMade(header(6000, 6000, 16, 6), [0])).expected).toContain('MiB of pixels');
    // Six million bytes of nothing in six thousand.
    const bomb = Buffer.concat([SIGNATURE, header(4, 4, 8, 0), chunk('IDAT', zlibSync(new Uint8Array(6e6))), chunk('IEND', new Uint8Array())]);
    expect(refusal(bomb).found).toContain('more pixels than the 4 x 4');
    // A profile that would unpack to as much is never looked at.
    const profile = chunk('iCCP', Buffer.concat([Buffer.from('a\0\0', 'latin1'), Buffer.from('no profile at all')]));
    near(lightOf(handMade(header(1, 1, 8, 0), [0, 255], profile)), [1]);
  });

  it('tells its resolution where it is stated in metres', () => {
    const stated = (unit: number) => {
      const data = Buffer.alloc(9);
      data.writeUInt32BE(5906, 0);
      data.writeUInt32BE(11_811, 4);
      data[8] = unit;
      const reading = decodePicture(handMade(header(1, 1, 8, 0), [0, 0], chunk('pHYs', data)));
      return reading.ok ? reading.picture.resolution : undefined;
    };
    expect(stated(1)).toEqual({ across: 5.906, down: 11.811 });
    expect(stated(0)).toBeUndefined();
  });
});

describe('a JPEG picture', () => {
  /** 32 x 16 pixels: a dark block in the upper left corner, a grey one in the upper right corner. */
  const marked = (): Buffer => {
    const data = new Uint8Array(4 * 32 * 16).fill(255);
    for (let y = 0; y < 8; y++) for (let x = 0; x < 32; x++) if (x < 8 || x >= 24) data.fill(x < 8 ? 0 : 128, 4 * (y * 32 + x), 4 * (y * 32 + x) + 3);
    return Buffer.from(jpeg.encode({ width: 32, height: 16, data }, 95).data);
  };
  /** The picture with an Exif segment (TIFF 6.0, section 2) that names an orientation. */
  const oriented = (orientation: number, little: boolean): Buffer => {
    const tiff = Buffer.alloc(26);
    tiff.write(little ? 'II' : 'MM', 'latin1');
    const put = (value: number, at: number, bytes: number) => (little ? tiff.writeUIntLE(value, at, bytes) : tiff.writeUIntBE(value, at, bytes));
    [[42, 2, 2], [8, 4, 4], [1, 8, 2], [0x0112, 10, 2], [3, 12, 2], [1, 14, 4], [orientation, 18, 2]].forEach(([value, at, bytes]) => put(value!, at!, bytes!));
    const body = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
    const plain = marked();
    return Buffer.concat([plain.subarray(0, 2), Buffer.from([0xff, 0xe1, 0, body.length + 2]), body, plain.subarray(2)]);
  };
  const corners = (bytes: Uint8Array): string => {
    const reading = decodePicture(bytes);
    if (!reading.ok) throw new Error(reading.problems[0].found);
    const { columns, rows, light } = reading.picture;
    const at = (x: number, y: number) => { const value = light[y * columns + x]!; return value < 0.1 ? 'dark' : value < 0.5 ? 'grey' : 'white'; };
    return `${columns} x ${rows}: ${at(2, 2)} ${at(columns - 3, 2)} ${at(2, rows - 3)} ${at(columns - 3, rows - 3)}`;
  };

  it('is turned upright: where row 0 and column 0 are to be seen, by Exif 2.3, tag 0x0112', () => {
    const wanted = [
      '32 x 16: dark grey white white', '32 x 16: grey dark white white', '32 x 16: white white grey dark', '32 x 16: white white dark grey',
      '16 x 32: dark white grey white', '16 x 32: white dark white grey', '16 x 32: white grey white dark', '16 x 32: grey white dark white',
    ];
    expect(wanted.map((_, i) => corners(oriented(i + 1, i % 2 === 0)))).toEqual(wanted);
    expect([corners(marked()), corners(oriented(9, true))]).toEqual([wanted[0], wanted[0]]);
  });

  it('may be progressive, with coarser colour', () => {
    const light = lightOf(bytesOfBase64(PROGRESSIVE));
    expect(light).toHaveLength(256);
    near(light, Array.from({ length: 256 }, (_, i) => (i % 16 < 8 ? 0 : 1)), 0.02);
  });

  it('is refused with one clear line when it is damaged, for printing, or too large', () => {
    const good = marked();
    for (const length of [3, 40, 300, good.length - 60]) expect(refusal(good.subarray(0, length))).toMatchObject({ expected: 'a whole JPEG picture', advice: 'The file is damaged: scan or save it again.' });
    const frame = good.indexOf(Buffer.from([0xff, 0xc0]));
    const changed = (at: number, ...bytes: number[]) => { const copy = Buffer.from(good); copy.set(bytes, frame + at); return copy; };
    expect(refusal(changed(5, 0x4e, 0x20, 0x4e, 0x20)).found).toBe('20000 x 20000 pixels');
    expect(refusal(changed(5, 0, 0, 0, 0)).found).toBe('32 x 0 pixels'.replace('32', '0'));
    expect(refusal(changed(9, 4)).found).toContain('4 channels');
    expect(refusal(changed(1, 0xc9)).found).toContain('process 9');
  });
});

describe('any other file', () => {
  it('is named for what it is, whatever its name says', () => {
    const named = (text: string) => refusal(Buffer.from(text, 'latin1')).found;
    expect([named('GIF89a...'), named('RIFF\x10\0\0\0WEBPVP8 '), named('%PDF-1.7'), named('II*\0....'), named('BM......'), named(''), named('hello')])
      .toEqual(['a GIF picture', 'a WebP picture', 'a PDF document', 'a TIFF picture', 'a BMP picture', 'an empty file', 'something else']);
    expect(named('\x89PNG\n\x1a\n')).toContain('line ends');
  });

  it('is not looked into when it is too large', () => {
    expect(refusal(new Uint8Array(PICTURE_LIMITS.fileMiB * 2 ** 20 + 1))).toMatchObject({ expected: `at most ${PICTURE_LIMITS.fileMiB} MiB` });
  });
});

it('base64 gives back the bytes that Node.js put in', () => {
  for (const length of [0, 1, 2, 3, 4, 255, 256, 257]) {
    const bytes = Uint8Array.from({ length }, (_, i) => (i * 91 + length) % 256);
    expect([...bytesOfBase64(Buffer.from(bytes).toString('base64'))]).toEqual([...bytes]);
  }
});

/** Sixteen pixels square, the left half black, made by another encoder: progressive, with colour at half the size. */
const PROGRESSIVE = '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAYEBQYFBAYGBQYHBwYIChAKCgkJChQODwwQFxQYGBcUFhYaHSUfGhsjHBYWICwgIyYnKSopGR8tMC0oMCUoKSj/wgALCAAQABABASIA/8QAFQABAQAAAAAAAAAAAAAAAAAACAf/2gAIAQEAAAABlKqKqq//xAAUEAEAAAAAAAAAAAAAAAAAAAAg/9oACAEBAAEFAh//xAAUEAEAAAAAAAAAAAAAAAAAAAAg/9oACAEBAAY/Ah//xAAUEAEAAAAAAAAAAAAAAAAAAAAg/9oACAEBAAE/IR//2gAIAQEAAAAQ/wD/xAAUEAEAAAAAAAAAAAAAAAAAAAAg/9oACAEBAAE/EB//2Q==';
