import { allCommands } from '../app/commands.ts';
import { Dialog } from '../look/Dialog.tsx';
import { GROUPS } from './find-commands.ts';
import { KeyWords } from './KeyWords.tsx';

/** Keys that belong to no command: the same all over the page. */
const EVERYWHERE: readonly (readonly [string, readonly string[]])[] = [
  ['To the next, to the one before', ['Tab', 'Shift+Tab']],
  ['Press a button, open a list', ['Enter', 'Space']],
  ['Move a line that divides the window', ['ArrowUp', 'ArrowDown', 'Home', 'End']],
  ['Leave a dialog, give up a gesture', ['Escape']],
];

/** Keys of the sheet that mean one thing or another by what is held there. */
const ON_SHEET: readonly (readonly [string, readonly string[]])[] = [
  ['Push the view; move what is held by 1 mm (Shift: 10 mm, Alt: 0.1 mm)', ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown']],
  ['By hand: take what the ring stands on; let go; end a line', ['Enter']],
  ['By hand: set a place of a line', ['Space']],
  ['By hand: take the last place back', ['Backspace']],
  ['By hand: give up what was begun, go back to the first way', ['Escape']],
];

/** Every key, under the same headings as the commands. */
export function KeyList({ onClose }: { readonly onClose: () => void }) {
  const groups = GROUPS.map((group) => ({ group, rows: allCommands.flatMap(({ label, group: of, keys }) => (of === group && keys ? [[label, keys] as const] : [])) }));
  return (
    <Dialog title="Keys" onClose={onClose} wide>
      <p className="help-intro">Keys of one character act while bench or sheet has the focus: click into it, or go there with the skip links at the head of the page.</p>
      {[{ group: 'Everywhere', rows: EVERYWHERE }, ...groups.map(({ group, rows }) => ({ group, rows: group === 'Sheet' ? [...rows, ...ON_SHEET] : rows }))].filter(({ rows }) => rows.length > 0).map(({ group, rows }) => (
        <section key={group}>
          <h3 className="help-heading">{group}</h3>
          <table className="table"><tbody>
            {rows.map(([label, keys]) => <tr key={label}><th scope="row" className="help-label">{label}</th><td><KeyWords keys={keys} /></td></tr>)}
          </tbody></table>
        </section>
      ))}
    </Dialog>
  );
}
