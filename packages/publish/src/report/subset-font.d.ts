declare module 'subset-font' {
  /** The font with no more signs than the text has. */
  export default function subsetFont(
    font: Uint8Array,
    text: string,
    options: { targetFormat: 'woff2' },
  ): Promise<Buffer>;
}
