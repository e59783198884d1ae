import type { StillDescription } from '@pullbook/charts';

/** A mark without a size of its own is painted this wide before it is made smaller, px. */
const WIDEST = 1024;

/**
 * The shop's mark as something that a canvas pastes, decoded once. Only a page can read every kind (a worker reads no SVG), so
 * that it is made here and handed on. One that cannot be read is not there: the name stands without it.
 */
export async function markPictures(stills: readonly StillDescription[]): Promise<Map<string, ImageBitmap>> {
  const marks = new Map(
    stills.flatMap(({ signature }) =>
      signature?.mark ? [[signature.mark.address, signature.mark] as const] : [],
    ),
  );
  const pictures = new Map<string, ImageBitmap>();
  for (const [address, { width, height }] of marks) {
    const image = new Image();
    image.src = address;
    const isRead = await image.decode().then(
      () => true,
      () => false,
    );
    if (!isRead) continue;
    const canvas = document.createElement('canvas');
    canvas.width = WIDEST;
    canvas.height = Math.max(1, Math.round((WIDEST * height) / width));
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    pictures.set(address, await createImageBitmap(canvas));
  }
  return pictures;
}
