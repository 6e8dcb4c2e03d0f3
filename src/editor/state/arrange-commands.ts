import { type Alignment, align, cardsOf } from '../model/arrange.ts';
import type { Command } from './commands.ts';
import { edit, editor, present } from './editor.ts';
import { called, refusalOfEmpty, refusalOfFewer } from './step-words.ts';
import { surroundings } from './step-surroundings.ts';

const WAYS: readonly (readonly [how: Alignment, label: string])[] = [
  ['left', 'Line up left edges'], ['centre', 'Line up centres, one above another'], ['right', 'Line up right edges'],
  ['top', 'Line up top edges'], ['middle', 'Line up middles, side by side'], ['bottom', 'Line up bottom edges'],
  ['spread-x', 'Space evenly from left to right'], ['spread-y', 'Space evenly from top to bottom'],
];

/** Spacing needs two that stay and one between them. */
const leastFor = (how: Alignment): number => (how === 'spread-x' || how === 'spread-y' ? 3 : 2);

const chosenCards = () => cardsOf(present(), editor.getState().chosen);

async function layOutCards(): Promise<void> {
  const { layOut } = await import('../model/layout.ts');
  const { shapes, history: { document } } = editor.getState();
  const some = chosenCards().length > 1 ? chosenCards() : [];
  edit(`lay out ${some.length > 0 ? called(some) : 'all steps'}`, layOut(document, shapes, surroundings().sizes(), some));
}

/** Lining up and laying out. */
export const arrangeCommands: readonly Command[] = [
  ...WAYS.map(([how, label]): Command => ({
    id: `align-${how}`, label, group: 'Steps', refusal: () => (chosenCards().length < leastFor(how) ? refusalOfFewer(leastFor(how)) ?? `Choose ${leastFor(how)} or more cards on the bench first.` : undefined),
    run: () => edit(label.charAt(0).toLowerCase() + label.slice(1), align(present(), editor.getState().chosen, how, surroundings().sizes())),
  })),
  {
    id: 'lay-out', label: 'Lay out all steps', group: 'Steps', keys: ['Mod+Shift+L'], refusal: refusalOfEmpty, run: layOutCards,
    labelNow: () => (chosenCards().length > 1 ? `Lay out ${called(chosenCards())}` : 'Lay out all steps'),
  },
];
