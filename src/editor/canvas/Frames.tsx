import { useState } from 'react';
import type { NodeGroup } from '../../runtime/index.ts';
import { around } from '../model/boxes.ts';
import { renameGroup, setCollapsed, ungroup } from '../model/groups.ts';
import { edit, editor, useEditor } from '../state/editor.ts';
import { chooseCards, presentCards } from './actions.ts';
import { useLie } from './lie.ts';

/** Room between a group's cards and its frame: also for the words on their edges and for its title. */
const RIM = { side: 64, top: 52, bottom: 20 };

/** A frame around the cards of each group that is not folded. */
export function Frames() {
  const groups = useEditor(({ history }) => history.document.groups);
  return <>{groups.filter(({ collapsed, nodes }) => !collapsed && nodes.length > 0).map((group) => <Frame key={group.id} group={group} />)}</>;
}

function Frame({ group }: { readonly group: NodeGroup }) {
  const text = useLie(({ boxes }) => {
    const box = around(group.nodes.flatMap((id) => boxes.get(id) ?? []));
    return box === undefined ? '' : [box.x - RIM.side, box.y - RIM.top, box.width + 2 * RIM.side, box.height + RIM.top + RIM.bottom].join(' ');
  });
  if (text === '') return null;
  const [x, y, width, height] = text.split(' ').map(Number);
  const fold = () => {
    edit('fold a group', setCollapsed(group.id, true));
    presentCards([group.id]);
  };
  return (
    <div className="bench-frame" role="group" aria-label={`Group ${group.title}, ${group.nodes.length} steps`} data-frame={group.id} style={{ transform: `translate(${x}px, ${y}px)`, width, height }}>
      <div className="bench-frame-head">
        <FrameTitle key={group.title} group={group} />
        <button type="button" className="bench-toggle" onClick={() => chooseCards(group.nodes.filter((id) => editor.getState().history.document.nodes.some((node) => node.id === id)))}>Choose all</button>
        <button type="button" className="bench-toggle" onClick={fold}>Fold</button>
        <button type="button" className="bench-toggle" onClick={() => edit('take a group apart', ungroup(group.id))}>Take apart</button>
      </div>
    </div>
  );
}

function FrameTitle({ group }: { readonly group: NodeGroup }) {
  const [title, setTitle] = useState(group.title);
  const commit = () => {
    if (title.trim() === '') setTitle(group.title);
    else if (title.trim() !== group.title) edit('rename a group', renameGroup(group.id, title));
  };
  return (
    <input
      className="bench-frame-title" aria-label="Title of the group" value={title} maxLength={80} onChange={({ currentTarget: { value } }) => setTitle(value)}
      onBlur={commit} onKeyDown={({ key, currentTarget }) => key === 'Enter' && currentTarget.blur()}
    />
  );
}
