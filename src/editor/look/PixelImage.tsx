import type { PictureItem } from '../../values/picture.ts';

/** A PNG within a drawing in mm, y up: turned over once more, so that it stands upright. */
export function PixelImage({ png, box: { minX, minY, maxX, maxY } }: NonNullable<PictureItem['image']>) {
  return <image href={pixelAddress(png)} x={minX} y={-maxY} width={maxX - minX} height={maxY - minY} transform="scale(1 -1)" preserveAspectRatio="none" />;
}

export const pixelAddress = (png: string): string => `data:image/png;base64,${png}`;
