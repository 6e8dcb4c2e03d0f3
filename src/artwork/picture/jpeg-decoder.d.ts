/** The decoder alone, without the encoder, which asks for a global of Node.js. */
declare module 'jpeg-js/lib/decoder.js' {
  interface DecoderOptions {
    readonly useTArray: true;
    readonly formatAsRGBA?: boolean;
    /** False: a fault in the data throws. */
    readonly tolerantDecoding?: boolean;
    readonly maxResolutionInMP?: number;
    readonly maxMemoryUsageInMB?: number;
  }
  export default function decode(bytes: Uint8Array, options: DecoderOptions): { readonly width: number; readonly height: number; readonly data: Uint8Array };
}
