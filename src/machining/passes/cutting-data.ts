import { type Cutter } from '../job/cutter.ts';
import { chipThinningFactor } from '../job/feeds.ts';

/** The feeds of one cutter's passes, mm/min. */
export interface CuttingFeeds {
  readonly cut: number;
  readonly plunge: number;
  /** Along a ramp. */
  readonly ramp: number;
  /** Along a wall where only the finishing allowance is left. */
  readonly finish: number;
}

/** A thin chip lets the feed rise, but long thin cutters chatter before theory says so; common practice, no source. */
const GREATEST_RAISE = 1.5;

/**
 * Feeds for full cuts and for a finishing cut `engagement` mm wide. The finishing feed keeps the chip as thick as in
 * a full cut (feed over the chip thinning factor), at most half as much again, and never above `greatestFeed`.
 * On a ramp the feed is lowered until its downward share is at most the plunge feed.
 */
export function cuttingFeeds(cutter: Cutter, engagement: number, greatestFeed: number): CuttingFeeds {
  const cut = Math.min(cutter.feedRate, greatestFeed);
  const plunge = Math.min(cutter.plungeFeed, greatestFeed);
  const ramp = Math.min(cut, plunge / Math.sin((cutter.rampAngle * Math.PI) / 180));
  const factor = engagement > 0 ? chipThinningFactor(Math.min(engagement, cutter.diameter), cutter.diameter) : 1;
  const finish = Math.min(cutter.feedRate * Math.min(1 / factor, GREATEST_RAISE), greatestFeed);
  return { cut, plunge, ramp, finish };
}
