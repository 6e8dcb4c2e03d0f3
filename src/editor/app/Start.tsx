import { useEffect, useState } from 'react';
import { openFirst } from '../files/start.ts';
import { startWorker } from '../worker/client.ts';
import { App } from './App.tsx';
import { Notices } from './Notices.tsx';

type Beginning = { readonly state: 'starting' } | { readonly state: 'ready' } | { readonly state: 'stopped'; readonly says: string };

/** Starts what computes, opens the first document, and shows the page; or says why that is not possible. */
export function Start() {
  const [beginning, setBeginning] = useState<Beginning>({ state: 'starting' });
  useEffect(() => {
    void begin().then(setBeginning);
  }, []);
  if (beginning.state === 'ready') return <App />;
  if (beginning.state === 'starting') return <><p className="app-loading" role="status">Getting the bench ready…</p><Notices /></>;
  return (
    <main className="app-loading" role="alert">
      <h1>Groovewright could not start</h1>
      <p>{beginning.says}</p>
      <p><button type="button" className="button" onClick={() => location.reload()}>Load the page again</button></p>
    </main>
  );
}

let begun: Promise<Beginning> | undefined;

/** Once per page, however often it is asked for. */
const begin = (): Promise<Beginning> => (begun ??= started());

async function started(): Promise<Beginning> {
  const missing = missingAbilities();
  if (missing.length > 0) return { state: 'stopped', says: `This browser lacks ${missing.join(' and ')}. Use a current version of it, or another browser.` };
  try {
    await startWorker();
    await openFirst();
    return { state: 'ready' };
  } catch (fault) {
    return { state: 'stopped', says: `What computes did not start: ${fault instanceof Error ? fault.message : 'no reason given'}. Your documents are untouched. Load the page again; if it stops once more, the files of the page may be incomplete: install it anew.` };
  }
}

/** What the page cannot do without and this browser does not have, in words. */
function missingAbilities(): readonly string[] {
  const needed: readonly (readonly [string, () => boolean])[] = [
    ['workers, which compute beside the page', () => typeof Worker === 'function'],
    ['dialogs', () => typeof HTMLDialogElement === 'function' && 'showModal' in HTMLDialogElement.prototype],
    ['colours that follow the theme', () => CSS.supports('color: light-dark(Canvas, CanvasText)')],
  ];
  return needed.filter(([, has]) => !has()).map(([name]) => name);
}
