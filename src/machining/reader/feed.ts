import { type Codes } from './codes.ts';
import { type State } from './state.ts';
import { refuse, type Refusal } from './types.ts';

/** The feed in mm/min of a move this long: the one in force, or length over the time that this line's F gives. */
export function feedFor(length: number, { values }: Codes, state: State): number | Refusal {
  if (state.feedMode === 'inverse-time' && !values.has('F')) {
    return refuse('an F word on every feed move in inverse time', 'none', 'Give F as 1 over the minutes of this move.');
  }
  if (state.feed === undefined || state.feed === 0) return refuse('a feed above 0 before feeding', state.feed === 0 ? 'F0' : 'no F word', 'Give a feed with F.');
  return state.feedMode === 'inverse-time' ? length * state.feed : state.feed;
}
