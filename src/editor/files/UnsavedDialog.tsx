import { Dialog } from '../look/Dialog.tsx';
import { editor, present } from '../state/editor.ts';
import { remember } from './recent.ts';
import { save } from './save.ts';
import { closeDialog } from './state.ts';

/** What is to become of unsaved work before another document takes its place. */
export function UnsavedDialog({ next }: { readonly next: () => void | Promise<void> }) {
  const goOn = () => {
    closeDialog();
    void next();
  };
  const saveFirst = async () => { if (await save()) goOn(); };
  const leave = () => {
    void remember(present(), editor.getState().file, true);
    goOn();
  };
  return (
    <Dialog title="Unsaved work" onClose={closeDialog}>
      <p>{`“${present().title}” has changes that are in no file. Opened without saving, they stay for a while under Open, “Recent”, in this browser only.`}</p>
      <div className="dialog-foot">
        <button type="button" className="button" onClick={closeDialog}>Stay</button>
        <button type="button" className="button" onClick={leave}>Open without saving</button>
        <button type="button" className="button-first" data-first onClick={() => void saveFirst()}>Save</button>
      </div>
    </Dialog>
  );
}
