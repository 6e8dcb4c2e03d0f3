import type { PictureLayer } from '../../values/picture.ts';
import type { NodePicture } from '../worker/protocol.ts';
import { layersOf } from './shapes.ts';

/** Names of the layers there are, each once, in the order they are drawn. */
export const layerNames = (picture: NodePicture, ground: readonly PictureLayer[]): string[] =>
  [...new Set([...ground, ...layersOf(picture)].map(({ name }) => name))];

/** The picture in words, for those who do not see it: the node's own sentence, then its layers with their counts. */
export function pictureWords(title: string, says: string | undefined, picture: NodePicture | undefined): string {
  if (!picture) return `${title}: nothing to show yet.`;
  const leaving = picture.outputs.layers.map(layerWords);
  const before = picture.inputs.map(layerWords);
  const parts = [
    ...(says ? [says] : []),
    ...(leaving.length > 0 ? [`Drawn: ${leaving.join('; ')}`] : []),
    ...(before.length > 0 ? [`Faint beneath: ${before.join('; ')}`] : []),
  ];
  return `${title}: ${parts.join('. ') || 'nothing drawn'}.`;
}

function layerWords({ name, items }: PictureLayer): string {
  return items.length === 1 ? name : `${name}, ${items.length}`;
}
