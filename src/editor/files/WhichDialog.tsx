import type { FileValue } from '../../runtime/index.ts';
import { Dialog } from '../look/Dialog.tsx';
import { type FilePlace, setFile } from './artwork.ts';
import { closeDialog } from './state.ts';

/** Asks which of several steps is to take a file. */
export function WhichDialog({ file, places }: { readonly file: FileValue; readonly places: readonly FilePlace[] }) {
  const take = (place: FilePlace) => () => {
    closeDialog();
    setFile(file, place);
  };
  return (
    <Dialog title={`Which step takes ${file.name}?`} onClose={closeDialog}>
      <ul className="files-items">
        {places.map((place) => (
          <li key={`${place.node}.${place.param}`}>
            <button type="button" className="button" onClick={take(place)}>{place.step}</button>
            <p>{`${place.label} (step ${place.node})`}</p>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
