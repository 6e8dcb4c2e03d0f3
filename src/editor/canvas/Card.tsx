import { memo, useEffect, useRef } from 'react';
import { useEditor } from '../state/editor.ts';
import { type BenchCard, benchGraph, cardWidth } from './bench-graph.ts';
import { likelyHeight } from './card-layout.ts';
import { CardHead } from './CardHead.tsx';
import { CardOpen } from './CardOpen.tsx';
import { CardPicture } from './CardPicture.tsx';
import { CardPorts } from './CardPorts.tsx';
import { type CardState, progressOf, saysOf, shownPicture, shownReport, stateOf } from './card-state.ts';
import { focusCard } from './focus.ts';
import { measureCard } from './measure.ts';
import { bench, useBench } from './state.ts';
import { spokenCard } from './spoken.ts';
import { showOpened } from './zoom.ts';

/** One step with its picture. Draws itself again only when something of its own changes. */
export const Card = memo(function Card({ id }: { readonly id: string }) {
  const card = useEditor(({ history, shapes }) => benchGraph(history.document, shapes).cards.get(id));
  return card === undefined ? null : <KnownCard card={card} />;
});

function KnownCard({ card }: { readonly card: BenchCard }) {
  const { id } = card;
  const opened = useEditor((state) => state.opened.includes(id));
  const chosen = useEditor((state) => state.chosen.includes(id));
  const report = useEditor(({ reports }) => shownReport(card, reports));
  const picture = useEditor(({ reports }) => shownPicture(card, reports));
  const progress = useEditor((state) => progressOf(state, card.members));
  const focused = useBench((state) => state.focused === id);
  const place = useEditor(({ history }) => `${history.document.nodes.findIndex((node) => node.id === id) + 1} of ${history.document.nodes.length}`);
  const state = stateOf(card, report, progress !== undefined);
  const element = useRef<HTMLDivElement>(null);
  useEffect(() => (element.current === null ? undefined : measureCard(element.current, id, opened)), [id, opened]);
  useEffect(() => {
    if (bench.getState().wantsFocus === id) focusCard(id);
  }, [id]);
  useEffect(() => {
    if (!opened) return undefined;
    // Its size is known once it was drawn.
    const frame = requestAnimationFrame(() => showOpened(id));
    return () => cancelAnimationFrame(frame);
  }, [id, opened]);
  const says = saysOf(card, report);
  const notes = useBench((state) => state.notes);
  const note = useEditor(({ history }) => history.document.nodes.find((node) => node.id === id)?.note);
  const ports = Math.max(card.inputs.length, card.outputs.length);
  return (
    <div
      ref={element} role="group" aria-label={spokenCard(card, { place, says, state, opened, chosen })} aria-roledescription="step" tabIndex={focused ? 0 : -1}
      data-node={id} className={classes(card, state, { opened, chosen })} style={{ width: cardWidth(opened), minHeight: likelyHeight(ports, false) }}
    >
      <CardHead card={card} opened={opened} tabbable={focused} />
      <div className="bench-band">
        {state.sign !== '' && <span className="bench-state"><span aria-hidden="true">{state.sign}</span> {state.word}</span>}
        <p className="bench-says">{says}</p>
      </div>
      {progress !== undefined && <progress className="bench-progress" max={1} value={progress} aria-label={`${card.title}: computing`} />}
      {opened && <CardOpen card={card} tabbable={focused} />}
      <div className="bench-picture">{picture !== undefined && <CardPicture picture={picture} />}</div>
      {notes && !opened && note !== undefined && <p className="bench-note"><span className="visually-hidden">Note: </span>{note}</p>}
      <CardPorts side="input" ports={card.inputs} />
      <CardPorts side="output" ports={card.outputs} />
    </div>
  );
}

function classes(card: BenchCard, { mood }: CardState, { opened, chosen }: { readonly opened: boolean; readonly chosen: boolean }): string {
  const tall = Math.max(card.inputs.length, card.outputs.length) > 2;
  return ['bench-card', `bench-card-${mood}`, `bench-card-${card.kind}`, opened && 'bench-card-opened', chosen && 'bench-card-chosen', tall && 'bench-card-tall',
    card.inputs.length === 0 && 'bench-card-first', card.outputs.length === 0 && 'bench-card-last'].filter(Boolean).join(' ');
}
