import { tenths } from '../words.ts';
import type { NumberedHole } from './job.ts';
import { OVERLAP } from './tiles.ts';

/** What a template says of itself, and of its holes. */
export interface Wording {
  readonly title: string;
  /** From which side it is seen. */
  readonly seen: string;
  /** What one of its holes is called. */
  readonly hole: string;
  /** The word beside a hole's number. */
  readonly mark: string;
  readonly use: string;
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
  readonly cables: string;
  readonly shape: (hole: Pick<NumberedHole, 'diameter' | 'slot'>) => string;
}

const TAPING = [
  'Print at 100 % on paper of this size, without fitting to the page. Measure both rulers here and the one on every page: exactly 100 mm. If not, the holes will not fit.',
  `Cut every page along its frame on the left, where it has a neighbour there, and at the top likewise. Pages overlap by ${OVERLAP} mm.`,
  'Lay each page over its neighbour on the left and above: its cut edge on the dotted line, the arms of register marks with the same number in one line. Tape them together flat.',
];

/** A template that is held to the wall. */
export const WALL: Wording = {
  title: 'Wall template', seen: 'seen from the front', hole: 'mounting hole', mark: 'hole', use: 'Putting it up',
  steps: [
    ...TAPING,
    'Hold the template at its place, arrows upward, and bring the level lines level with a spirit level.',
    'Check two holes far apart with a tape against the list of holes. Mark each hole through the paper at the middle of its cross.',
  ],
  cautions: [
    'Find out what lies in the wall before drilling: cables, pipes, reinforcement. Use a detector, and switch off circuits that may run there.',
    'Choose fixings for this kind of wall and for the board\'s weight, and drill to their diameter and depth, not to the board\'s holes. If in doubt ask somebody who knows the building.',
    'A slot in the board is marked at its middle: its screw sits there, so that the board can grow and shrink. Leave screws in slots a little loose.',
    'Mains is the work of a licensed person. Wear eye protection; stand safely.',
  ],
  cables: 'Drill the wall there only where a cable goes into it.',
  shape: ({ diameter, slot }) => (slot ? `slot ${tenths(diameter)} x ${tenths(diameter + slot.length)} in the board` : `ø ${tenths(diameter)} in the board`),
};

/** A mirrored template that is taped to the back of the board, whose sockets are `depth` mm deep and must leave `floor` mm. */
export const backWording = (depth: number, floor: number): Wording => ({
  title: 'Back template', seen: 'seen from behind', hole: 'socket', mark: 'socket', use: 'Making the sockets',
  steps: [
    ...TAPING,
    'Lay the board on its face, on something soft and flat, and tape the template to its back: the outline on the board\'s edge all round, arrows towards its top.',
    'Check two sockets far apart with a tape against the list. Punch no mark into acrylic: drill a shallow start at the middle of each cross.',
    `Set a depth stop to ${tenths(depth)} mm and drill every socket square to the board with a flat-bottomed cutter or a drill for plastics. Try it on an offcut of the same sheet first.`,
    `Measure the first socket and the sheet beside it: at least ${tenths(floor)} mm must be left in front of it.`,
  ],
  cautions: [
    'The sockets do not go through the face and are in no program. A drill for metal grabs and breaks through: take one for plastics, little by little, and clear the chips.',
    'Clamp the board; wear eye protection. Cables and strip are laid after the sockets are made.',
    'A stand-off glued or screwed into a shallow socket may pull out. Try one on an offcut with several times the load it will carry, and hang nothing above people that is held by glue alone.',
    'What holds the sign to the wall is decided by local code and by people licensed under it.',
  ],
  cables: 'They are there already.',
  shape: ({ diameter }) => `ø ${tenths(diameter)}, ${tenths(depth)} deep`,
});
