import { DamageDialog, RefusedDialog } from './DamageDialogs.tsx';
import { OpenDialog } from './OpenDialog.tsx';
import { ProgramsDialog } from './ProgramsDialog.tsx';
import { Results } from './Results.tsx';
import { UnsavedDialog } from './UnsavedDialog.tsx';
import { WhichDialog } from './WhichDialog.tsx';
import { useFiles } from './state.ts';

/** The one dialog about files that is open, if any. */
export function FileDialogs() {
  const dialog = useFiles((state) => state.dialog);
  switch (dialog?.kind) {
    case undefined: return null;
    case 'unsaved': return <UnsavedDialog next={dialog.next} />;
    case 'refused': return <RefusedDialog {...dialog} />;
    case 'damage': return <DamageDialog />;
    case 'open': return <OpenDialog first={dialog.first} />;
    case 'programs': return <ProgramsDialog />;
    case 'results': return <Results />;
    case 'which': return <WhichDialog file={dialog.file} places={dialog.places} />;
  }
}
