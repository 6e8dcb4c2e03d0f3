import type { PortTypes, Problem } from '../../runtime/index.ts';
import { type Player, makePlayer } from '../../values/playback/player.ts';
import { carriedAbove } from './above.ts';
import type { Desk } from './desk.ts';

type SetUps = PortTypes['set-ups'];
type Stock = PortTypes['stock'];

/** Who plays a step's programs, or why nobody can. */
export type FoundPlayer = { readonly ok: true; readonly player: Player } | { readonly ok: false; readonly problem: Problem };

/** Finds who plays the programs of a step. */
export type Players = (node: string) => FoundPlayer;

/** Keeps the player of the programs asked for last, as one question follows another about the same ones. */
export function makePlayers(desk: Desk): Players {
  let last: { readonly setups: SetUps; readonly stock: Stock | undefined; readonly player: Player } | undefined;
  return (node) => {
    const setups = setUpsAt(desk, node);
    if (setups === undefined) return { ok: false, problem: nothingToPlay(node) };
    const stock = carriedAbove(desk, node, 'stock')?.value as Stock | undefined;
    if (last?.setups !== setups || last.stock !== stock) last = { setups, stock, player: makePlayer(setups, stock) };
    return { ok: true, player: last.player };
  };
}

/** The programs that leave a step, or else those that reach it. */
function setUpsAt(desk: Desk, node: string): SetUps | undefined {
  return [...desk.outputs(node), ...desk.inputs(node)].find(({ type }) => type === 'set-ups')?.value as SetUps | undefined;
}

function nothingToPlay(node: string): Problem {
  return { place: node, expected: 'a step with programs', found: 'none', advice: 'Show a step that writes or proves programs, and wait until it is computed.' };
}
