import { type Catalogue, makeCatalogue, type NodeDeclaration } from '../../runtime/index.ts';

/** Every file in nodes/ declares one node; the build gathers them, so that there is no list to keep. */
const FILES = import.meta.glob<NodeDeclaration>('../../../nodes/*.ts', { eager: true, import: 'default' });

export const catalogue: Catalogue = makeCatalogue(Object.values(FILES));
