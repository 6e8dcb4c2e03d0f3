import { BrokenFont, cutShort } from './broken.ts';

/** Reads numbers, most significant byte first, from one place of some bytes to the next. Reading beyond the end throws BrokenFont. */
export class ByteReader {
  private at = 0;
  private readonly bytes: Uint8Array;
  private readonly what: string;

  /** `what` is what a fault is told of: “the header”, “table “glyf””. */
  constructor(bytes: Uint8Array, what: string) {
    this.bytes = bytes;
    this.what = what;
  }

  take(count: number): Uint8Array {
    const from = this.at;
    this.at += count;
    if (this.at > this.bytes.length) throw this.tooShort();
    return this.bytes.subarray(from, this.at);
  }

  private tooShort(): BrokenFont {
    return cutShort(`${this.what} ends after ${this.bytes.length} bytes`);
  }

  /** A reader of the next `count` bytes, which this one passes over. */
  part(count: number): ByteReader {
    return new ByteReader(this.take(count), this.what);
  }

  u8(): number {
    const byte = this.bytes[this.at++];
    if (byte === undefined) throw this.tooShort();
    return byte;
  }

  u16(): number {
    return (this.u8() << 8) | this.u8();
  }

  i16(): number {
    return (this.u16() << 16) >> 16;
  }

  u32(): number {
    return this.u16() * 0x10000 + this.u16();
  }

  tag(): string {
    return String.fromCharCode(...this.take(4));
  }

  /** A number in one to five bytes of seven bits each (W3C, WOFF File Format 2.0, section 4.1, UIntBase128). */
  base128(): number {
    let value = 0;
    for (let i = 0; i < 5; i++) {
      const byte = this.u8();
      value = value * 128 + (byte & 127);
      if (byte < 128 && value < 2 ** 32) return value;
    }
    throw new BrokenFont('numbers below 2^32', `a larger one in ${this.what}`);
  }

  /** A number in one to three bytes (W3C, WOFF File Format 2.0, section 6.1.1, 255UInt16). */
  short255(): number {
    const code = this.u8();
    if (code === 253) return this.u16();
    if (code === 254) return 506 + this.u8();
    return code === 255 ? 253 + this.u8() : code;
  }
}
