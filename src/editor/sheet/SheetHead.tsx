import { editor, show, useEditor } from '../state/editor.ts';
import { toggleTool } from './commands.ts';
import { fitTo, zoom } from './camera.ts';
import { SetUps } from './SetUps.tsx';
import { pin } from './pin.ts';
import { sheet, useSheet } from './store.ts';
import { isStale, shownTitle, shownWords } from './title.ts';

/** What is shown, and how it is looked at. */
export function SheetHead({ drawn, worded }: { readonly drawn: boolean; readonly worded: boolean }) {
  return (
    <header className="sheet-head">
      <Shown />
      {drawn && <SetUps />}
      {drawn && <ViewButtons />}
      {drawn && worded && <WordsButton />}
      <ShownButtons />
    </header>
  );
}

function Shown() {
  const title = useEditor(shownTitle);
  const says = useEditor((state) => shownWords(state).says);
  const failed = useEditor(({ picture, reports }) => picture !== undefined && reports.get(picture.node)?.state === 'failed');
  const stale = useEditor(isStale);
  return (
    <h2 className="sheet-title" data-stale={stale}>
      <span>{title ?? 'The sheet'}</span>
      {says !== undefined && <small title={says} className={failed ? 'is-failed' : undefined}>{failed && '✕ '}{says}</small>}
      {stale && <small className="sheet-stale">computing …</small>}
    </h2>
  );
}

function ShownButtons() {
  const pinned = useEditor((state) => state.pinned);
  const whole = useEditor((state) => state.shown === undefined);
  const nothing = useEditor((state) => state.picture === undefined);
  return (
    <div className="button-row">
      <button type="button" className="button" aria-pressed={whole} onClick={() => { pin(false); show(undefined); }}>Whole sign</button>
      <button type="button" className="button" aria-pressed={pinned} disabled={nothing} onClick={() => pin(!editor.getState().pinned)}>{pinned ? 'Pinned' : 'Pin'}</button>
    </div>
  );
}

function WordsButton() {
  const inWords = useSheet((state) => state.inWords);
  return <button type="button" className="button" aria-pressed={inWords} onClick={() => sheet.setState({ inWords: !inWords })}>In words</button>;
}

function ViewButtons() {
  const fitted = useSheet((state) => state.fitted);
  const order = useSheet((state) => state.order);
  const tool = useSheet((state) => state.tool);
  return (
    <div className="button-row" role="toolbar" aria-label="View of the sheet">
      <button type="button" className="button" aria-pressed={tool === 'tape'} onClick={() => toggleTool('tape')}>Tape</button>
      <button type="button" className="button" aria-pressed={order} onClick={() => sheet.setState({ order: !order })}>Order and direction</button>
      <span className="button-set" role="group" aria-label="Zoom">
        <button type="button" className="button" aria-label="Farther away" onClick={() => zoom(1 / 1.25)}>−</button>
        <button type="button" className="button" aria-pressed={fitted === 'sheet'} onClick={() => fitTo('sheet')}>Whole sheet</button>
        <button type="button" className="button" aria-pressed={fitted === 'all'} onClick={() => fitTo('all')}>All of it</button>
        <button type="button" className="button" aria-label="Nearer" onClick={() => zoom(1.25)}>+</button>
      </span>
    </div>
  );
}
