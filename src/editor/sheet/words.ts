import type { PictureLayer } from '../../values/picture.ts';
import type { NodePicture } from '../worker/protocol.ts';
import { type Alone, capital, layersSeen, lyingWords, partsSeen } from './set-ups.ts';
import { layersOf } from './shapes.ts';

/** Names of the layers there are to be seen, each once, in the order they are drawn. */
export const layerNames = (picture: NodePicture, ground: readonly PictureLayer[], around: readonly PictureLayer[] = [], alone?: Alone): string[] =>
  [...new Set(layersSeen([...ground, ...layersOf(picture), ...(alone ? around : [])], alone).map(({ name }) => name))];

/** The picture in words, for those who do not see it: the node's own sentence, then its layers with their counts. */
export function pictureWords(title: string, says: string | undefined, picture: NodePicture | undefined, alone?: Alone): string {
  if (!picture) return `${title}: nothing to show yet.`;
  const seen = (layers: readonly PictureLayer[]) => (alone ? partsSeen(layers, alone, ['common', 'own']) : layers).map(layerWords);
  const [leaving, before] = [seen(picture.outputs.layers), seen(picture.inputs)];
  const earlier = alone ? partsSeen(layersOf(picture), alone, ['earlier']).map(layerWords) : [];
  const parts = [
    ...(says ? [says] : []),
    ...(alone ? [`${capital(alone.setUp.name)} alone. ${lyingWords(alone).slice(0, -1)}`] : []),
    ...(leaving.length > 0 ? [`Drawn: ${leaving.join('; ')}`] : []),
    ...(earlier.length > 0 ? [`Faint, of earlier set-ups: ${earlier.join('; ')}`] : []),
    ...(before.length > 0 ? [`Faint beneath: ${before.join('; ')}`] : []),
  ];
  return `${title}: ${parts.join('. ') || 'nothing drawn'}.`;
}

function layerWords({ name, items }: PictureLayer): string {
  return items.length === 1 ? name : `${name}, ${items.length}`;
}
