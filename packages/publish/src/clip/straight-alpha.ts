/**
 * Pixels whose colours were multiplied by their alpha, as a rasteriser gives them, to colours as they are, as video and PNG
 * want them. In place.
 */
export function straightAlpha(pixels: Uint8Array): void {
  for (let index = 0; index < pixels.length; index += 4) {
    const alpha = pixels[index + 3]!;
    if (alpha === 0 || alpha === 255) continue;
    for (let channel = index; channel < index + 3; channel += 1)
      pixels[channel] = Math.min(255, Math.round((255 * pixels[channel]!) / alpha));
  }
}
