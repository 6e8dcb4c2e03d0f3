import type { PointsParam } from '../../runtime/index.ts';
import { ListAsText } from './ListAsText.tsx';
import { type Points, pointsText, readPoints } from './points-text.ts';

interface AsTextProps {
  readonly param: PointsParam;
  readonly value: Points;
  readonly label: string;
  readonly onEdit: (points: Points) => void;
  readonly onClose: () => void;
}

/** The whole list as a text that can be pasted into. */
export function PointsAsText({ param, value, label, onEdit, onClose }: AsTextProps) {
  return (
    <ListAsText
      says={`${label}: a line for each point, x,y in mm`} things="points" text={pointsText(value)}
      read={(text) => readPoints(param, text)} onTake={(points) => onEdit(points as Points)} onClose={onClose}
    />
  );
}
