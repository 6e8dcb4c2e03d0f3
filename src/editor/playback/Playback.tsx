/** Plays the programs of the node shown back, move by move. */
export function Playback() {
  return null;
}
