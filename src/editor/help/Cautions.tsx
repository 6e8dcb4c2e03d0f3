import { Dialog } from '../look/Dialog.tsx';

const CAUTIONS: readonly (readonly [string, string])[] = [
  ['The first run goes through the air', 'A program is proved here against the drawing, not against your machine. Run it first with Z set well above the sheet and a hand at the stop, and see that its travel and its clamps keep clear of one another.'],
  ['The sheet lies still', 'Clamp it flat, clamps outside of what the programs reach, and clamp what is cut out too, or leave tabs. A loose piece is thrown.'],
  ['The sheet is heavy', 'Its weight is among the figures of the job. Two people lift a large one; edges are sharp once cut.'],
  ['Cutter and speeds', 'Compare diameter, length and speeds with the set-up’s first comments. Change a cutter only with the spindle stopped and isolated, then set Z again.'],
  ['Eyes, ears, lungs', 'Wear eye and ear protection, extract chips and dust. Cast sheet smells when it melts instead of being cut: stop then, lower the speed or raise the feed. It burns: never leave the machine alone.'],
  ['Current', 'A strip is fed at low voltage from a supply with a fuse of its own. What is wired to the mains is the work of a qualified person.'],
  ['Where it hangs', 'Weight, wind and what lies below decide how a sign is fixed. Local codes, and the people licensed under them, have the last word.'],
];

/** What to heed where a cut, a sheet or a supply can hurt someone. */
export function Cautions({ onClose }: { readonly onClose: () => void }) {
  return (
    <Dialog title="Before you cut" onClose={onClose}>
      <dl className="help-cautions">
        {CAUTIONS.map(([about, says]) => <div key={about}><dt><span className="is-caution" aria-hidden="true">! </span>{about}</dt><dd>{says}</dd></div>)}
      </dl>
    </Dialog>
  );
}
