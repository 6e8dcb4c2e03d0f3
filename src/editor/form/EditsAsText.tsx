import type { Edit, EditsParam } from '../../runtime/index.ts';
import { ListAsText } from './ListAsText.tsx';
import { editsLines, readEdits } from './edits-text.ts';

interface AsTextProps {
  readonly param: EditsParam;
  readonly value: readonly Edit[];
  readonly label: string;
  readonly onEdit: (edits: readonly Edit[]) => void;
  readonly onClose: () => void;
}

/** The whole list as a text that can be pasted into. */
export function EditsAsText({ param, value, label, onEdit, onClose }: AsTextProps) {
  const acts = Object.keys(param.acts).join(', ');
  return (
    <ListAsText
      says={`${label}: a line for each, what is done (${acts}) and its places as x,y, fractions of the longer side`} things="edits" text={editsLines(value)}
      read={(text) => readEdits(param, text)} onTake={(edits) => onEdit(edits as readonly Edit[])} onClose={onClose}
    />
  );
}
