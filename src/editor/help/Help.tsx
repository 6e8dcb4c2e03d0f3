import { useEffect } from 'react';
import { remember, remembered } from '../app/storage.ts';
import { present } from '../state/editor.ts';
import { Cautions } from './Cautions.tsx';
import { CommandList } from './CommandList.tsx';
import { KeyList } from './KeyList.tsx';
import { Tour } from './Tour.tsx';
import { goToTourStep, openHelp, useHelp } from './state.ts';
import './help.css';

const KEY = 'groovewright.tour';
const close = (): void => openHelp(undefined);

/** The tour, the list of keys and commands. */
export function Help() {
  const open = useHelp((state) => state.open);
  const tour = useHelp((state) => state.tour);
  useFirstTour();
  return (
    <>
      {open === 'commands' && <CommandList onClose={close} />}
      {open === 'keys' && <KeyList onClose={close} />}
      {open === 'cautions' && <Cautions onClose={close} />}
      {tour !== undefined && <Tour step={tour} />}
    </>
  );
}

/** On the first visit, if there is something to walk past, the tour begins by itself; never again after that. */
function useFirstTour(): void {
  useEffect(() => {
    if (remembered(KEY) !== null || present().nodes.length === 0) return;
    remember(KEY, 'seen');
    goToTourStep(0);
  }, []);
}
