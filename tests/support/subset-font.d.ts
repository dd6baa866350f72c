declare module 'subset-font' {
  /** The part of a font that the text needs, in the format that the font has. */
  export default function subsetFont(font: Uint8Array, text: string): Promise<Uint8Array>;
}
