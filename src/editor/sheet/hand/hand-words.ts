import { plain } from '../tape.ts';
import { shapeOf } from '../shapes.ts';
import { canEnd } from './picking.ts';
import { trackOf, wayTo } from './along.ts';
import { type Target, nextKind } from './targets.ts';
import { type Way, drags, isOpen, kindOfPlace } from './ways.ts';

/** What a person does next, in a sentence: by pointer, with the keys that do the same. */
export function nextWords(way: Way, picked: readonly Target[]): string {
  if (isOpen(way)) return openWords(way, picked);
  if (drags(way)) return picked.length === 0 ? `Drag a place of ${ONE[kindOfPlace(way, 0)]}. By keys: N, Enter, arrows, Enter.` : 'Click where it should be.';
  const kind = nextKind(way, picked);
  if (picked.length > 0) return `Now ${NEXT[kind]}; Escape gives it up.`;
  const pulled = way.most === 1 ? `Click ${ONE[kind]}` : `Pull from ${FROM[kind]}, or click one after the other`;
  return `${pulled}. By keys: N, arrows, Enter.`;
}

function openWords(way: Way, picked: readonly Target[]): string {
  if (picked.length === 0) return 'Click place after place. By keys: N, arrows, Space; Enter ends.';
  return canEnd(way, picked)
    ? `${picked.length} places. Enter or a second click on the last ends it; Backspace takes the last back, Escape all.`
    : `${picked.length} of at least ${way.least} places. Backspace takes the last back, Escape gives it up.`;
}

const ONE = { stroke: 'a stroke', piece: 'a piece of a stroke', end: 'a free end', junction: 'a junction', arm: 'an arm', anywhere: 'a place' } as const;
const FROM = { ...ONE, end: 'one free end to another', junction: 'one arm of a junction to another', arm: 'one arm to another', stroke: 'one stroke to another', piece: 'one piece to another', anywhere: 'one place to another' } as const;
const NEXT = { ...ONE, end: 'the other end', arm: 'an arm of this junction', anywhere: 'the place it goes to' } as const;

/** A target in words, with its number of how many there are. */
export function targetWords({ map, strokes }: Way, target: Target): string {
  const place = `x ${plain(target.at.x, 2)}, y ${plain(target.at.y, 2)} mm`;
  switch (target.kind) {
    case 'anywhere': return place;
    case 'end': return `Free end ${target.end + 1} of ${map.ends.length}: ${place}`;
    case 'stroke': return `Stroke ${target.stroke + 1} of ${strokes.length}, ${alongWords(strokes[target.stroke], target)}: ${place}`;
    case 'junction': return `Junction ${target.junction + 1} of ${map.junctions.length}, of ${map.junctions[target.junction]?.arms.length ?? 0} arms: ${place}`;
    case 'arm': {
      const junction = map.junctions[target.junction];
      return `Arm ${target.arm + 1} of ${junction?.arms.length ?? 0}, along stroke ${(junction?.arms[target.arm]?.stroke ?? 0) + 1}${mateWords(junction, target.arm)}: ${place}`;
    }
  }
}

function alongWords(item: Way['strokes'][number] | undefined, { at }: Target): string {
  const track = item && trackOf(shapeOf(item));
  return track ? `${plain(wayTo(track, at), 1)} of ${plain(track.length, 1)} mm along` : '';
}

function mateWords(junction: Way['map']['junctions'][number] | undefined, arm: number): string {
  const pair = junction?.pairs.find((both) => both.includes(arm));
  return pair ? `, goes on as arm ${(pair[0] === arm ? pair[1] : pair[0]) + 1}` : ', ends here';
}
