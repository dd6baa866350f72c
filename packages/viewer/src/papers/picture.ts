/** A station's drawing as an image that a page can show; loaded only when a station is looked at. */
import type { Analysis, StationLayout } from '@halfcup/core';
import { type DrawingSize, stationDrawing } from '@halfcup/core/papers';
import type { Units } from '@halfcup/core/plan';

export interface Picture {
  /** A data URL. */
  readonly src: string;
  /** CSS pixels at full size. */
  readonly width: number;
  readonly height: number;
}

/** CSS pixels in a millimetre (CSS Values 4, 6.2: 96 in an inch). */
const PIXELS = 96 / 25.4;

/** A station as one of its directions meets it. */
export function pictureOf(
  analysis: Analysis,
  station: StationLayout,
  direction: number,
  units: Units,
  size: DrawingSize,
): Picture {
  const { svg, width, height } = stationDrawing(analysis, station, {
    size,
    look: 'colour',
    language: 'en',
    units,
    direction,
  });
  return {
    src: `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`,
    width: Math.round(width * PIXELS),
    height: Math.round(height * PIXELS),
  };
}
