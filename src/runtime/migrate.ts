import { GRAPH_VERSION } from './document.ts';

type Raw = Readonly<Record<string, unknown>>;
type Step = (document: Raw) => Raw;

/**
 * What turns a document of version n, at index n, into one of version n + 1. A step works on unchecked data: what it does
 * not understand it leaves as it is, for the check of the newest version to refuse.
 */
const STEPS: readonly Step[] = [wiresFromConnections];

/** Brings a document of an older version to the present one. `version` must be a whole number from 0 to the present one. */
export function migrate(document: Raw, version: number): Raw {
  const migrated = STEPS.slice(version).reduce((older, step) => step(older), document);
  return { ...migrated, version: GRAPH_VERSION };
}

/** Version 0 had `connections` as lists of from node, from port, to node, to port, and no groups. */
function wiresFromConnections(document: Raw): Raw {
  const { connections, ...rest } = document;
  if (!Array.isArray(connections) || Object.hasOwn(document, 'wires')) return document;
  return { groups: [], ...rest, wires: connections.map(wireFromConnection) };
}

function wireFromConnection(connection: unknown): unknown {
  if (!Array.isArray(connection) || connection.length !== 4 || !connection.every((part) => typeof part === 'string')) return connection;
  const [fromNode, fromPort, toNode, toPort] = connection as string[];
  return { from: `${fromNode}.${fromPort}`, to: `${toNode}.${toPort}` };
}
