import { type DragEvent, type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import type { FileParam, FileValue, Problem } from '../../runtime/index.ts';
import { type FieldProps, sentence } from './field.ts';
import { type FieldIds, FieldFrame } from './FieldFrame.tsx';
import { bytesOfValue, readFileFor, sizeOf, sizeText } from './file-reading.ts';

type FileProps = FieldProps<FileParam> & { readonly value: FileValue | null };

/** A file that the document keeps a copy of: chosen, or dropped onto the field. */
export function FileField(props: FileProps) {
  const { param, value, label } = props;
  const { take, refusal, reading } = useTaking(props);
  const [over, setOver] = useState(false);
  const drag = (active: boolean) => (event: DragEvent) => {
    if (!event.dataTransfer.types.includes('Files')) return;
    event.preventDefault();
    event.stopPropagation();
    setOver(active);
  };
  const drop = (event: DragEvent) => {
    drag(false)(event);
    take([...event.dataTransfer.files]);
  };
  return (
    <FieldFrame {...props} single={false} rule={`A file ending in ${param.accept.join(' or ')}. The document keeps a copy of it.`} refusal={refusal}>
      {(ids) => (
        <div className="form-file" data-over={over} onDragEnter={drag(true)} onDragOver={drag(true)} onDragLeave={drag(false)} onDrop={drop}>
          <p className="form-file-name">{reading ?? (value === null ? `No file yet. Choose one, or drop it here.` : <Kept value={value} />)}</p>
          <Chooser param={param} label={label} ids={ids} replaces={value !== null} onChoose={take} />
          {value !== null && <button type="button" className="button-quiet" aria-label={`Take out ${value.name}`} onClick={() => props.onEdit(null)}>Take out</button>}
          {value !== null && <button type="button" className="button-quiet" aria-label={`Save a copy of ${value.name}`} onClick={() => saveCopy(value)}>Save a copy</button>}
        </div>
      )}
    </FieldFrame>
  );
}

function Kept({ value }: { readonly value: FileValue }) {
  const size = useMemo(() => sizeOf(value), [value]);
  return <><strong>{value.name}</strong>{` ${sizeText(size)}`}</>;
}

/** Reads the newest chosen file, unless the field is gone by then. */
function useTaking({ param, onEdit }: FileProps): { take: (files: readonly File[]) => void; refusal: ReactNode; reading: string | undefined } {
  const newest = useRef<File | undefined>(undefined);
  const [problem, setProblem] = useState<Problem>();
  const [reading, setReading] = useState<string>();
  useEffect(() => () => {
    newest.current = undefined;
  }, []);
  const take = async (files: readonly File[]) => {
    const [file] = files;
    if (file === undefined) return;
    if (files.length > 1) return setProblem({ expected: 'one file', found: `${files.length} files`, advice: 'Drop them one at a time.' });
    newest.current = file;
    setReading(`Reading ${file.name}…`);
    const outcome = await readFileFor(param, file);
    if (newest.current !== file) return;
    setReading(undefined);
    setProblem(outcome.ok ? undefined : outcome.problem);
    if (outcome.ok) onEdit(outcome.value);
  };
  return { take: (files) => void take(files), refusal: problem && <p role="alert">{sentence(problem)}</p>, reading };
}

interface ChooserProps {
  readonly param: FileParam;
  readonly label: string;
  readonly ids: FieldIds;
  readonly replaces: boolean;
  readonly onChoose: (files: readonly File[]) => void;
}

function Chooser({ param, label, ids, replaces, onChoose }: ChooserProps) {
  const input = useRef<HTMLInputElement>(null);
  const says = replaces ? 'Replace…' : `Choose a ${label.toLowerCase()}…`;
  return (
    <>
      <button type="button" className="button" aria-label={replaces ? `Replace ${label}…` : says} aria-describedby={ids.describedBy} onClick={() => input.current?.click()}>{says}</button>
      <input
        ref={input} type="file" hidden accept={param.accept.join(',')} aria-label={label}
        onChange={({ target }) => {
          onChoose([...(target.files ?? [])]);
          // So that the same file, changed meanwhile, can be chosen again.
          target.value = '';
        }}
      />
    </>
  );
}

/** Hands the kept file over as a download. */
function saveCopy(value: FileValue): void {
  const address = URL.createObjectURL(new Blob([bytesOfValue(value)], { type: 'application/octet-stream' }));
  const link = Object.assign(document.createElement('a'), { href: address, download: value.name });
  link.click();
  // The download has begun by the next task; until then the address must hold.
  setTimeout(() => URL.revokeObjectURL(address), 0);
}
