import { choose, editor, show } from '../state/editor.ts';
import { arrange, layout } from '../app/layout.ts';
import { type Finding, placeText } from './findings.ts';

/** Brings what a finding is about into view: its place on the sheet where it has one, its card otherwise. */
export function lookAt(finding: Finding): void {
  if (finding.at === undefined) lookAtCard(finding);
  else lookAtPlace(finding, finding.at);
}

/** The whole sign is shown, for the place may lie where the node's own picture has nothing. */
function lookAtPlace({ node = '', status, subject, says }: Finding, at: readonly [number, number]): void {
  if (layout.getState().rooms === 'bench') arrange({ rooms: 'both' });
  show(undefined);
  editor.setState({ spot: { at, says: `${subject}: ${says}`, status: status === 'waiting' ? 'fail' : status, node } });
}

/** Choosing a card is enough for the bench to bring it into view. */
export function lookAtCard({ node }: Finding): void {
  if (node === undefined) return;
  if (layout.getState().rooms === 'sheet') arrange({ rooms: 'both' });
  choose([node]);
}

/** Whether there is anything to look at. */
export const canLookAt = ({ node, at }: Finding): boolean => node !== undefined || at !== undefined;

/** Where a finding is, in words: "at x 412.3, y 88 mm · Groove". */
export const whereText = ({ at, title }: Finding): string => [at && placeText(at), title].filter(Boolean).join(' · ');
