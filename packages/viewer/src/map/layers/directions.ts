/** Screen directions on a map whose north is up. */

/** Degrees clockwise from north, square to the running direction, towards a side. */
export const away = (azimuthDeg: number, side: 'left' | 'right'): number =>
  (azimuthDeg + (side === 'right' ? 90 : 270)) % 360;

/** To hundredths, never −0. */
const tidy = (value: number): number => Math.round(value * 100) / 100 + 0;

/** East and south parts of a length in that direction, as text offsets count them. */
export function screenOffset(bearingDeg: number, length: number): [number, number] {
  const angle = (bearingDeg * Math.PI) / 180;
  return [tidy(Math.sin(angle) * length), tidy(-Math.cos(angle) * length)];
}

const ANCHORS = ['bottom', 'bottom-left', 'left', 'top-left', 'top', 'top-right', 'right', 'bottom-right'] as const;
export type Anchor = (typeof ANCHORS)[number];

/** The anchor by which a text lies in that direction from its point. */
export const anchorTowards = (bearingDeg: number): Anchor =>
  ANCHORS[Math.round((((bearingDeg % 360) + 360) % 360) / 45) % 8] ?? 'bottom';
