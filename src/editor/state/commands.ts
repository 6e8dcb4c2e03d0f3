/** Something a person can do by its name or its keys. Every action of the page that is no dragging is one of these. */
export interface Command {
  readonly id: string;
  /** What it does, as a button or a line in the list of commands says it. */
  readonly label: string;
  /** The label as the state stands now, where that says more: "Undo: move 2 steps". */
  readonly labelNow?: () => string;
  /** Heading in the list of commands. */
  readonly group: 'Document' | 'Edit' | 'Steps' | 'Sheet' | 'View' | 'Help';
  /** Keys as `Mod+Shift+Z`: Mod is Control, or Command where that is usual. Single letters act only on bench and sheet, never in a field. */
  readonly keys?: readonly string[];
  /** Why it cannot be done now; undefined when it can. */
  readonly refusal?: () => string | undefined;
  readonly run: () => void | Promise<void>;
}
