/** What can lie under the course. */
export type Background =
  | { readonly kind: 'plan' }
  | { readonly kind: 'paper' }
  /** `address` of a style (JSON) or of pictures with {z}, {x} and {y}; `credit`: what its owner asks to be shown. */
  | {
      readonly kind: 'style' | 'raster';
      readonly address: string;
      readonly credit: string;
      /** Other hosts that the style asks, of which the person was told and which they have allowed. */
      readonly hosts?: readonly string[];
    }
  | { readonly kind: 'tiles'; readonly file: File };

export const PLAN_BACKGROUND: Background = { kind: 'plan' };
