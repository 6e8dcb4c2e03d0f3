import { type GetSchemes, NodeEditor } from 'rete';
import { type Area2D, AreaPlugin } from 'rete-area-plugin';
import { bench, viewport } from './state.ts';
import type { Standing } from './sync.ts';

type Schemes = GetSchemes<{ readonly id: string }, { readonly id: string; readonly source: string; readonly target: string }>;
type Signal = { readonly type: string; readonly data?: unknown };

export const LEAST_ZOOM = 0.08;
const MOST_ZOOM = 3;
/** Below this zoom the words on a card are too small to read, and its title takes their room. */
const FAR = 0.55;

/**
 * rete's graph and the area it lies on. Only a view: what it holds is put there by `follow.ts`, and its own gestures are
 * switched off, since they know neither keys nor touch nor refusals. Elements it makes are filled by React portals.
 */
export class BenchView {
  readonly graph = new NodeEditor<Schemes>();
  readonly area: AreaPlugin<Schemes>;
  readonly #container: HTMLElement;

  constructor(container: HTMLElement) {
    this.#container = container;
    this.area = new AreaPlugin<Schemes>(container);
    this.area.area.setDragHandler(null);
    this.area.area.setZoomHandler(null);
    this.area.addPipe((signal) => {
      this.#heed(signal as Area2D<Schemes> | Signal);
      return signal;
    });
    this.graph.use(this.area);
    bench.setState({ under: this.#layer('bench-under'), over: this.#layer('bench-over') });
    this.measure();
  }

  #layer(name: string): HTMLElement {
    const element = document.createElement('div');
    element.className = name;
    this.area.area.content.add(element);
    return element;
  }

  /** Reads the size of the bench anew; called when it may have changed. */
  measure(): void {
    const { clientWidth: width, clientHeight: height } = this.#container;
    viewport.setState({ width, height });
  }

  #heed(signal: Area2D<Schemes> | Signal): void {
    if (signal.type === 'translated' || signal.type === 'zoomed') this.#tellTransform();
    if (signal.type === 'render') this.#hold(signal as Extract<Area2D<Schemes>, { type: 'render' }>);
  }

  #tellTransform(): void {
    const { x, y, k } = this.area.area.transform;
    viewport.setState({ x, y, k });
    const far = k < FAR;
    if (bench.getState().far !== far) bench.setState({ far });
  }

  #hold({ data: { type, payload, element } }: Extract<Area2D<Schemes>, { type: 'render' }>): void {
    if (type === 'node') {
      this.#held.cards.set(payload.id, element);
      element.classList.add('bench-place');
    } else {
      this.#held.wires.set(payload.id, element);
      element.classList.add('bench-lane');
    }
  }

  readonly #held = { cards: new Map<string, HTMLElement>(), wires: new Map<string, HTMLElement>() };

  /** Hands what stands on the bench to React, all at once. */
  publish(): void {
    bench.setState({ cards: new Map(this.#held.cards), wires: new Map(this.#held.wires) });
  }

  async addCard(id: string, x: number, y: number): Promise<void> {
    await this.graph.addNode({ id });
    const view = this.area.nodeViews.get(id);
    view?.dragHandler.destroy();
    await view?.translate(x, y);
  }

  /** Moves a card on the bench, not in the document. */
  place(id: string, x: number, y: number): void {
    void this.area.nodeViews.get(id)?.translate(x, y);
  }

  async removeCard(id: string): Promise<void> {
    this.#held.cards.delete(id);
    await this.graph.removeNode(id);
  }

  async addWire(id: string, source: string, target: string): Promise<void> {
    await this.graph.addConnection({ id, source, target });
    const element = this.#held.wires.get(id);
    // Wires lie below the cards.
    if (element !== undefined) await this.area.area.content.reorder(element, this.area.area.content.holder.firstChild);
  }

  async removeWire(id: string): Promise<void> {
    this.#held.wires.delete(id);
    await this.graph.removeConnection(id);
  }

  has(id: string): boolean {
    return this.area.nodeViews.has(id);
  }

  standing(): Standing {
    return {
      cards: new Map([...this.area.nodeViews].map(([id, { position }]) => [id, position])),
      wires: new Map(this.graph.getConnections().map((wire) => [wire.id, wire])),
    };
  }

  panTo(x: number, y: number): void {
    void this.area.area.translate(x, y);
  }

  panBy(dx: number, dy: number): void {
    const { x, y } = this.area.area.transform;
    this.panTo(x + dx, y + dy);
  }

  /** Zooms to `k` pixels per unit; the place at `at`, in pixels of the bench, stays where it is. */
  zoomTo(k: number, at: readonly [number, number] = this.#middle()): void {
    const { x, y, k: before } = this.area.area.transform;
    const after = this.limited(k);
    this.show(at[0] - ((at[0] - x) * after) / before, at[1] - ((at[1] - y) * after) / before, after);
  }

  /** Pixels per bench unit. */
  get zoom(): number {
    return this.area.area.transform.k;
  }

  /** Where the bench's origin lies, in pixels from its window's corner. */
  get origin(): { readonly x: number; readonly y: number } {
    return this.area.area.transform;
  }

  limited(k: number): number {
    return Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, k));
  }

  /** Sets the whole transform at once. */
  show(x: number, y: number, k: number): void {
    void this.area.area.zoom(k, 0, 0).then(() => this.area.area.translate(x, y));
  }

  #middle(): readonly [number, number] {
    const { width, height } = viewport.getState();
    return [width / 2, height / 2];
  }

  /** The place on the bench below a place of the window. */
  spotAt(clientX: number, clientY: number): readonly [number, number] {
    const { left, top } = this.#container.getBoundingClientRect();
    const { x, y, k } = this.area.area.transform;
    return [(clientX - left - x) / k, (clientY - top - y) / k];
  }

  destroy(): void {
    bench.setState({ cards: new Map(), wires: new Map(), under: undefined, over: undefined });
    this.area.destroy();
    this.area.area.content.holder.remove();
  }
}
