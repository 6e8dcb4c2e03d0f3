import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import type { Picture, PictureBox } from '../../values/picture.ts';
import { titleAt } from '../model/graph.ts';
import { PixelImage } from '../look/PixelImage.tsx';
import { useEditor } from '../state/editor.ts';
import type { NodePicture, PlacedCheck } from '../worker/protocol.ts';
import { followPrinting } from './print.ts';
import { printScale } from './scale.ts';
import { useFiles } from './state.ts';
import { measured, spaced } from './words.ts';
import './print.css';

/** What is printed in place of the page: the picture of the sheet to scale, every check, the figures. */
export function PrintView() {
  useEffect(followPrinting, []);
  const printing = useFiles((state) => state.printing);
  return printing ? createPortal(<Print />, globalThis.document.body) : null;
}

function Print() {
  const { title, notes } = useEditor(({ history }) => history.document);
  const picture = useEditor((state) => state.picture);
  const outcome = useEditor((state) => state.outcome);
  return (
    <div className="print">
      <h1>{title}</h1>
      {notes !== '' && <p>{notes}</p>}
      {picture?.outputs.box !== undefined && <Drawing picture={picture} box={picture.outputs.box} />}
      {outcome === undefined
        ? <p>The checks were still being computed when this was printed.</p>
        : <><Checks checks={outcome.checks} /><Figures quantities={outcome.quantities} /></>}
      <p className="print-caution">Read every program, set the zero, and let the first run go above the material. The instructions of machine, cutter and sheet come first.</p>
    </div>
  );
}

function Drawing({ picture: { inputs, outputs }, box }: { readonly picture: NodePicture; readonly box: PictureBox }) {
  const [width, height] = [box.maxX - box.minX, box.maxY - box.minY];
  const scale = printScale(box);
  const says = scale === undefined ? 'Not to scale.' : `Scale 1 : ${String(scale)}, where the printer does not fit the page to the paper.`;
  const size = scale === undefined ? { width: '180mm' } : { width: `${String(width / scale)}mm`, height: `${String(height / scale)}mm` };
  return (
    <figure className="print-drawing">
      <svg viewBox={`${String(box.minX)} ${String(-box.maxY)} ${String(width)} ${String(height)}`} {...size} role="img" aria-label="The sheet">
        <g transform="scale(1 -1)">
          <Layers layers={inputs} faint />
          <Layers layers={outputs.layers} />
        </g>
      </svg>
      <figcaption>{`${width.toFixed(0)} × ${height.toFixed(0)} mm. ${says}`}</figcaption>
    </figure>
  );
}

function Layers({ layers, faint = false }: { readonly layers: Picture['layers']; readonly faint?: boolean }) {
  return layers.map(({ kind, name, items }, at) => (
    <g key={`${String(at)} ${name}`} className={`print-layer print-${kind}${faint ? ' print-faint' : ''}`}>
      {items.map(({ image }, i) => image && <PixelImage key={`image ${String(i)}`} {...image} />)}
      {items.map(({ d, fillRule }, i) => <path key={i} d={d} fillRule={fillRule ?? 'evenodd'} vectorEffect="non-scaling-stroke" />)}
    </g>
  ));
}

const STATUS_WORDS = { pass: 'in order', caution: 'caution', fail: 'failed' } as const;

function Checks({ checks }: { readonly checks: readonly PlacedCheck[] }) {
  const shapes = useEditor((state) => state.shapes);
  const document = useEditor(({ history }) => history.document);
  return (
    <table className="print-table">
      <caption>Checks</caption>
      <thead><tr><th scope="col">State</th><th scope="col">Value, limit, what to do</th><th scope="col">Step</th></tr></thead>
      <tbody>{checks.map(({ status, says, node }, i) => <tr key={`${node} ${String(i)}`}><td>{STATUS_WORDS[status]}</td><td>{says}</td><td>{titleAt(shapes, document, node)}</td></tr>)}</tbody>
    </table>
  );
}

function Figures({ quantities }: { readonly quantities: Readonly<Record<string, { readonly value: number; readonly unit: string }>> }) {
  return (
    <table className="print-table">
      <caption>Figures</caption>
      <tbody>{Object.entries(quantities).map(([name, { value, unit }]) => <tr key={name}><th scope="row">{spaced(name)}</th><td>{measured(value, unit)}</td></tr>)}</tbody>
    </table>
  );
}
