import { type KeyboardEvent, useEffect, useId, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useEditor } from '../state/editor.ts';
import { type Box, beside } from './beside.ts';
import { goToTourStep } from './state.ts';
import { type TourStep, tourSteps } from './tour-steps.ts';

/** A walk past the places of the page. The page stays usable beside it; it can be left at any time. */
export function Tour({ step }: { readonly step: number }) {
  const document = useEditor(({ history }) => history.document);
  const shapes = useEditor((state) => state.shapes);
  const steps = useMemo(() => tourSteps(document, shapes), [document, shapes]);
  const current = steps[Math.min(step, steps.length - 1)]!;
  return <Stop key={step} step={current} at={Math.min(step, steps.length - 1)} count={steps.length} />;
}

interface StopProps {
  readonly step: TourStep;
  readonly at: number;
  readonly count: number;
}

function Stop({ step, at, count }: StopProps) {
  const name = useId();
  const card = useRef<HTMLDivElement>(null);
  const { target, place } = useWhere(card, step.at);
  const before = useReturn(card);
  const leave = () => {
    goToTourStep(undefined);
    before();
  };
  const last = at === count - 1;
  return (
    <>
      {target && <div className="help-ring no-print" style={{ left: target.left, top: target.top, width: target.width, height: target.height }} />}
      <div ref={card} className="help-tour no-print" role="dialog" aria-labelledby={name} aria-describedby={`${name}-says`} tabIndex={-1} style={place} onKeyDown={(event) => onEscape(event, leave)}>
        <h2 id={name} className="help-tour-title">{step.title}</h2>
        <p id={`${name}-says`}>{step.says}</p>
        {step.tries && <p><button type="button" className="button" onClick={step.tries.run}>{step.tries.label}</button></p>}
        <div className="help-tour-foot">
          <span className="help-tour-count">Stop {at + 1} of {count}</span>
          {!last && <button type="button" className="button-quiet" onClick={leave}>Leave the tour</button>}
          <button type="button" className="button" aria-disabled={at === 0} onClick={at === 0 ? undefined : () => goToTourStep(at - 1)}>Back</button>
          <button type="button" className="button-first" onClick={last ? leave : () => goToTourStep(at + 1)}>{last ? 'Done' : 'Next'}</button>
        </div>
      </div>
    </>
  );
}

function onEscape(event: KeyboardEvent, leave: () => void): void {
  if (event.key !== 'Escape') return;
  event.preventDefault();
  leave();
}

/** Takes the focus for each stop; what it returns gives it back to the page. */
function useReturn(card: { readonly current: HTMLElement | null }): () => void {
  useEffect(() => card.current?.focus({ preventScroll: true }), [card]);
  return () => document.querySelector<HTMLElement>('[data-room=bench]')?.focus({ preventScroll: true });
}

const LOOK_AGAIN = 300;

interface Where {
  readonly target: Box | undefined;
  readonly place: { readonly left: number; readonly top: number };
}

/** Where the first of some elements is that can be seen, and the card beside it. The bench moves under the tour: it looks again a few times a second. */
function useWhere(card: { readonly current: HTMLElement | null }, selectors: readonly string[]): Where {
  const [where, setWhere] = useState<Where>({ target: undefined, place: { left: 8, top: 8 } });
  useLayoutEffect(() => {
    const look = () => {
      const target = seen(selectors);
      const extent = card.current!.getBoundingClientRect();
      const next = { target, place: beside(target ?? middle(), extent, { width: innerWidth, height: innerHeight }) };
      setWhere((last) => (JSON.stringify(last) === JSON.stringify(next) ? last : next));
    };
    look();
    const timer = setInterval(look, LOOK_AGAIN);
    window.addEventListener('resize', look);
    return () => {
      clearInterval(timer);
      window.removeEventListener('resize', look);
    };
  }, [card, selectors]);
  return where;
}

const middle = (): Box => ({ left: innerWidth / 2, top: innerHeight / 2, width: 0, height: 0 });

/** The part of an element that lies in the window. */
function seen(selectors: readonly string[]): Box | undefined {
  for (const selector of selectors) {
    const element = document.querySelector(selector);
    const { left = 0, top = 0, right = 0, bottom = 0 } = element?.getBoundingClientRect() ?? {};
    const box = { left: Math.max(0, left), top: Math.max(0, top), width: Math.min(innerWidth, right) - Math.max(0, left), height: Math.min(innerHeight, bottom) - Math.max(0, top) };
    if (box.width > 4 && box.height > 4) return box;
  }
  return undefined;
}
