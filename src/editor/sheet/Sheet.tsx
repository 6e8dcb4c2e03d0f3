import { useEffect, useMemo } from 'react';
import { useEditor } from '../state/editor.ts';
import { Empty } from './Empty.tsx';
import { Stage } from './Stage.tsx';
import { SheetFoot } from './SheetFoot.tsx';
import { SheetHead } from './SheetHead.tsx';
import { Lines } from './Lines.tsx';
import { followAround } from './around.ts';
import { followImages } from './images.ts';
import { followPictures } from './camera.ts';
import { doubtsOf } from './doubts.ts';
import { followGround } from './ground.ts';
import { followHand } from './hand/follow.ts';
import { useSheet } from './store.ts';
import { layersOf } from './shapes.ts';
import { Ways } from './Ways.tsx';
import './sheet.css';

/** The sheet: a large, true picture of one node's values. */
export function Sheet() {
  const picture = useEditor((state) => state.picture);
  useEffect(followPictures, []);
  useEffect(followGround, []);
  useEffect(followAround, []);
  useEffect(() => followImages(), []);
  useEffect(followHand, []);
  const drawn = picture === undefined || layersOf(picture).length > 0;
  const inWords = useSheet((state) => state.inWords);
  const doubts = useMemo(() => doubtsOf(picture, new Set()), [picture]);
  const worded = picture !== undefined && picture.outputs.lines.length + doubts.length > 0;
  const written = worded && (inWords || !drawn);
  return (
    <section className="sheet" aria-label="Sheet">
      <SheetHead drawn={drawn} worded={worded} />
      <div className="sheet-body" data-drawn={drawn} data-written={written}>
        {drawn && <Stage />}
        {!written && (!drawn || !picture) && <Empty />}
        {written && <Lines node={picture.node} lines={picture.outputs.lines} doubts={doubts} />}
      </div>
      {drawn && <Ways />}
      {drawn && <SheetFoot />}
    </section>
  );
}
