/** Sizes of a card in bench units. Ports sit at fixed heights, so that wires need no measuring of the page. */
export const CARD = {
  width: 208,
  openedWidth: 344,
  /** Middle of the first port, and the distance from port to port: words 24 high with 4 between. */
  firstPort: 54,
  pitch: 28,
  /** Least height of a folded card: title, one or two lines, picture. */
  height: 196,
} as const;

export const portHeight = (index: number): number => CARD.firstPort + CARD.pitch * index;

/** A card's height before the page has measured it. */
export function likelyHeight(ports: number, opened: boolean): number {
  return Math.max(opened ? 360 : CARD.height, portHeight(ports) - CARD.pitch / 2 + 10);
}
