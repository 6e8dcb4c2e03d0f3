import type { PictureItem } from '../../values/picture.ts';
import { pixelAddress } from '../look/PixelImage.tsx';
import { type EditorState, editor } from '../state/editor.ts';
import { layersOf } from './shapes.ts';
import { sheet } from './store.ts';

type Decode = (address: string) => Promise<CanvasImageSource>;

/** Decodes the pictures of pixels among what is shown; until then their places stay empty. Returns how to stop. */
export function followImages(decode: Decode = decodedImage): () => void {
  const follow = ({ picture }: EditorState) => {
    const items = picture ? layersOf(picture).flatMap((layer) => layer.items.filter(({ image }) => image)) : [];
    if (items.length > 0) void fetchAll(items, decode, () => editor.getState().picture === picture);
    else if (sheet.getState().images.size > 0) sheet.setState({ images: new Map() });
  };
  follow(editor.getState());
  return editor.subscribe((state, before) => {
    if (state.picture !== before.picture) follow(state);
  });
}

/** One that cannot be decoded is left out: what else is shown does not hang on it. */
async function fetchAll(items: readonly PictureItem[], decode: Decode, stillWanted: () => boolean): Promise<void> {
  const images = new Map<PictureItem, CanvasImageSource>();
  for (const item of items) {
    const known = sheet.getState().images.get(item) ?? (await decode(pixelAddress(item.image!.png)).catch(() => undefined));
    if (known) images.set(item, known);
  }
  if (stillWanted()) sheet.setState({ images });
}

async function decodedImage(address: string): Promise<CanvasImageSource> {
  const image = new Image();
  image.src = address;
  await image.decode();
  return image;
}
