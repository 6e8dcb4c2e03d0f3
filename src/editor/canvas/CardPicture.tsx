import { memo } from 'react';
import { PixelImage } from '../look/PixelImage.tsx';
import type { Picture, PictureBox, PictureLayer } from '../../values/index.ts';

/** A small picture at true proportion: drawn where there is a shape, in lines of text where there is none. */
export const CardPicture = memo(function CardPicture({ picture }: { readonly picture: Picture }) {
  if (picture.box !== undefined && picture.layers.length > 0) return <Drawn layers={picture.layers} box={picture.box} />;
  return (
    <div className="bench-lines" aria-hidden="true">
      {picture.lines.slice(0, MOST_LINES).map((line, i) => <div key={i}>{line}</div>)}
    </div>
  );
});

const MOST_LINES = 5;

function Drawn({ layers, box }: { readonly layers: readonly PictureLayer[]; readonly box: PictureBox }) {
  return (
    <svg className="bench-drawing" viewBox={viewBoxOf(box)} aria-hidden="true" focusable="false">
      <g transform="scale(1 -1)">
        {layers.flatMap(({ items }) => items).map(({ image }, i) => image && <PixelImage key={`image ${String(i)}`} {...image} />)}
        {layers.map((layer, i) => <path key={i} className={`bench-layer bench-layer-${layer.kind}`} d={layer.items.map(({ d }) => d).join('')} />)}
      </g>
    </svg>
  );
}

/** A little larger than the box, so that lines on its rim are seen whole; never empty, even around a single spot. */
function viewBoxOf({ minX, minY, maxX, maxY }: PictureBox): string {
  const rim = Math.max(maxX - minX, maxY - minY, 1) * 0.02;
  return [minX - rim, -maxY - rim, maxX - minX + 2 * rim, maxY - minY + 2 * rim].map((n) => Number(n.toPrecision(7))).join(' ');
}
