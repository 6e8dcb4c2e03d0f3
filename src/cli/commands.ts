export interface OptionUse {
  readonly name: string;
  /** What stands for its value in the help; a switch has none. */
  readonly value?: string;
  readonly multiple?: true;
  readonly required?: true;
  readonly doc: string;
}

export interface OperandUse {
  readonly name: string;
  readonly optional?: true;
  readonly doc: string;
}

/** A command's arguments, said once: they are read and explained from here. */
export interface CommandUse {
  readonly name: string;
  readonly summary: string;
  readonly operands: readonly OperandUse[];
  readonly options: readonly OptionUse[];
  /** Paragraphs of the command's help. */
  readonly notes: readonly string[];
  readonly examples: readonly string[];
}

const GRAPH: OperandUse = { name: 'GRAPH', doc: 'a saved graph (JSON)' };
const JSON_OPTION: OptionUse = { name: 'json', doc: 'print the result as JSON instead of text' };
const DRAFT: OptionUse = { name: 'draft', doc: 'write programs even when a check failed; their first comment says that they are drafts' };

const STATUS = 'Exit status: 0 when all is done and no check failed; 1 when a check failed (everything is written but the '
  + 'programs, unless --draft is given); 2 when the call, the graph or an input is wrong (one line each, nothing is written).';
const WHOLE = 'DIR must be absent or empty. It is written whole or not at all.';

const RUN: CommandUse = {
  name: 'run',
  summary: 'evaluate a graph and write its results',
  operands: [GRAPH],
  options: [
    { name: 'set', value: 'NAME=VALUE', multiple: true, doc: 'give an exposed input a value; NAME=@FILE for an input that takes a file' },
    { name: 'out', value: 'DIR', doc: 'where to write the results; without it the checks are shown and nothing is written' },
    DRAFT,
    { ...JSON_OPTION, doc: 'print the report as JSON instead of text' },
  ],
  notes: [
    'Numbers are in the unit that "groovewright inputs GRAPH" shows; lengths may also be given as 10mm or 0.5in. A file may be at most 32 MiB.',
    WHOLE,
    STATUS,
  ],
  examples: [
    'groovewright run graphs/drawn-strokes.json --set artwork=@drawing.svg --set channelWidth=10 --out results',
  ],
};

const INPUTS: CommandUse = {
  name: 'inputs',
  summary: "list a graph's exposed inputs: name, type, unit, value, limits",
  operands: [GRAPH],
  options: [JSON_OPTION],
  notes: [],
  examples: ['groovewright inputs graphs/drawn-strokes.json'],
};

const NODES: CommandUse = {
  name: 'nodes',
  summary: 'list the kinds of node, or explain one',
  operands: [{ name: 'NAME', optional: true, doc: 'the node to explain; without it all are listed' }],
  options: [JSON_OPTION],
  notes: [],
  examples: ['groovewright nodes', 'groovewright nodes fit-to-width'],
};

const BATCH: CommandUse = {
  name: 'batch',
  summary: 'run a graph once for each row of a table, on all cores',
  operands: [GRAPH, { name: 'ROWS.csv', doc: 'a table, its columns named as the exposed inputs' }],
  options: [{ name: 'out', value: 'DIR', required: true, doc: 'where to write the results' }, DRAFT,
    { ...JSON_OPTION, doc: 'print the summary as JSON instead of text' }],
  notes: [
    'The table is comma-separated UTF-8 text, quoted as RFC 4180 says, with a first row of column names. An empty cell leaves the '
      + "graph's own value. A cell for a file reads @FILE, looked for from the table's own folder.",
    "Each row gets a folder named by its number and first cell, and a line in summary.csv. A wrong row fails alone: its line and "
      + 'reason are told, the other rows are written, and the exit status is 2. If no row could be run, nothing is written.',
    WHOLE,
    STATUS,
  ],
  examples: ['groovewright batch graphs/drawn-strokes.json rows.csv --out results'],
};

const COMPARE: CommandUse = {
  name: 'compare',
  summary: 'tell what two versions of a graph have otherwise',
  operands: [{ name: 'FROM', doc: 'the older version (JSON)' }, { name: 'TO', doc: 'the newer one' }],
  options: [{ ...JSON_OPTION, doc: 'print the changes as JSON instead of text' }],
  notes: [
    'Both are run with the values they hold; nothing is written. Told are nodes, values, wires, exposed inputs, groups and notes that differ, then checks, quantities and '
      + 'programs whose figures differ, side by side. Where a node lies on the canvas does not count.',
    'Exit status: 0 when both could be run, whether they differ or not; 2 when a graph is wrong.',
  ],
  examples: ['groovewright compare sign-spring.json sign-autumn.json'],
};

const HELP: CommandUse = {
  name: 'help',
  summary: 'explain a command',
  operands: [{ name: 'COMMAND', optional: true, doc: 'the command to explain' }],
  options: [],
  notes: [],
  examples: ['groovewright help run'],
};

export const COMMANDS: readonly CommandUse[] = [RUN, INPUTS, NODES, BATCH, COMPARE, HELP];
