/** Collects bytes, most significant byte first. */
export class ByteWriter {
  private bytes = new Uint8Array(1024);
  length = 0;

  put(data: Uint8Array): void {
    this.room(data.length);
    this.bytes.set(data, this.length);
    this.length += data.length;
  }

  u8(value: number): void {
    this.room(1);
    this.bytes[this.length++] = value;
  }

  u16(value: number): void {
    this.u8(value >> 8);
    this.u8(value);
  }

  u32(value: number): void {
    this.u16(value >>> 16);
    this.u16(value);
  }

  /** Fills up with zeros to a multiple of four bytes. */
  pad(): void {
    while (this.length % 4 !== 0) this.u8(0);
  }

  written(): Uint8Array {
    return this.bytes.subarray(0, this.length);
  }

  private room(more: number): void {
    if (this.length + more <= this.bytes.length) return;
    const larger = new Uint8Array(Math.max(2 * this.bytes.length, this.length + more));
    larger.set(this.bytes);
    this.bytes = larger;
  }
}
