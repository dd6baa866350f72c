/** The palette as the style sheet has it now, light or dark; the map has no colours of its own. */
const NAMES = [
  'sheet',
  'ink',
  'soft',
  'line',
  'water',
  'land',
  'shore',
  'park',
  'beach',
  'shallow',
  'contour',
  'building',
  'road',
  'road-case',
  'place',
  'pick',
  'on-pick',
  'bad',
  'warn',
  'crowd0',
  'crowd1',
  'crowd2',
  'crowd3',
] as const;

export type Palette = Readonly<Record<(typeof NAMES)[number], string>>;

export function readPalette(root: Element): Palette {
  const styles = getComputedStyle(root);
  return Object.fromEntries(NAMES.map((name) => [name, styles.getPropertyValue(`--${name}`).trim()])) as Palette;
}
