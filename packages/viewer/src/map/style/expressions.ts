/** Small words of the map's style language, and the fonts. */
import type { ExpressionSpecification } from 'maplibre-gl';

export const REGULAR = ['system-ui', 'sans-serif'];
/** A first name that no font has: the map reads the weight or slant from it, the next name is used. */
export const BOLD = ['Bold', 'system-ui', 'sans-serif'];
export const ITALIC = ['Italic', 'system-ui', 'sans-serif'];

export const get = (name: string): ExpressionSpecification => ['get', name];
export const is = (name: string, value: string | boolean | number): ExpressionSpecification => [
  '==',
  ['get', name],
  value,
];
export const pair = (name: string): ExpressionSpecification => ['array', 'number', 2, ['get', name]];
export const byZoom = (...stops: number[]): ExpressionSpecification =>
  ['interpolate', ['exponential', 1.6], ['zoom'], ...stops] as unknown as ExpressionSpecification;
