import { entry, heading } from '../blocks.ts';
import type { Block } from '../flow.ts';
import { counted, numbered } from '../words.ts';
import { holdDownsIn, pinsIn, supportsIn } from './set-up-drawing.ts';
import type { Turn, Work } from './work.ts';

/** What to look at before the first program of a set-up, each with a box to tick. */
export function beforeStart(work: Work, turn: Turn): Block[] {
  return [heading('Before you start'), ...[...laying(work, turn), ...holding(work, turn), ...zeroing(work, turn), ...running(turn)].map((text) => entry('box', text, { size: 8.5 }))];
}

function laying(work: Work, { place, before }: Turn): string[] {
  const supports = supportsIn(work, place).length, pins = pinsIn(work, place).map((pin) => pin + 1);
  const all = work.registration?.pins.length ?? 0;
  const out = Array.from({ length: all }, (_, i) => i + 1).filter((pin) => !pins.includes(pin));
  return [
    before ? 'Spindle off. Hold-downs of the set-up before are off.' : 'Spindle off.',
    `Bed and sheet swept: no chips between them${pins.length > 0 ? ' or in holes' : ''}.`,
    ...(!before && all > 0 ? ['The holes for the pins are made in the spoilboard (programs/spoilboard-pins.ngc).'] : []),
    ...(supports > 0 ? [`${counted(supports, 'support')} ${supports === 1 ? 'stands' : 'stand'} beside the bed, as high as the spoilboard, before the sheet ${before ? 'is moved' : 'is laid on'}.`] : []),
    ...(out.length > 0 ? [`${numbered('Pin', out)} ${out.length === 1 ? 'is' : 'are'} out of the spoilboard.`] : []),
    ...(pins.length > 0 ? [`The sheet sits on ${numbered('pin', pins)} without force or rocking.`] : []),
    ...(before && pins.length === 0 ? ['No pins are planned: measure the move at both ends of the sheet. A seam is no better than this.'] : []),
  ];
}

function holding(work: Work, { place }: Turn): string[] {
  const downs = holdDownsIn(work, place);
  const kinds = [...new Set(work.holding.areas.map(({ kind }) => kind))];
  return [
    ...(downs.length > 0 ? [`${counted(downs.length, downs[0]!.kind)} as in the table; nothing else in the cutter's way.`] : []),
    ...kinds.map((kind) => (kind === 'tape' ? 'Tape under the whole board, pressed down.' : 'Vacuum is on and holds the whole board.')),
    ...(downs.length === 0 && kinds.length === 0 ? ['The sheet is held so that it cannot shift or lift; nothing stands in the cutter\'s way.'] : []),
  ];
}

function zeroing(work: Work, { before, setup: { programs } }: Turn): string[] {
  const several = work.tiling.tiles.length > 1;
  return [
    before ? 'X0 Y0 is unchanged: do not set it again.' : `X0 Y0 is set at the sheet's lower left corner${several ? '; it stays there for all set-ups' : ''}.`,
    `Cutter${programs[0] ? ` “${programs[0].cutter.name}”` : ''} is in; Z0 is set on the sheet's top face${programs.length > 1 ? ', and again after each change of cutter' : ''}.`,
  ];
}

const running = ({ setup: { programs } }: Turn): string[] => [
  `Dry run of ${programs.length > 1 ? 'the first program' : 'the program'} above the sheet with the spindle off: it keeps within the travel and clear of all that stands there.`,
  'Extraction runs. Eye and hearing protection on; no gloves, loose sleeves or hair near the spindle. Emergency stop within reach.',
];
