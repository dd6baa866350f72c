/** A length: laid out on the ground (m, yd), or with `long` along a course (km, mi). */
import type { JSX } from 'preact';
import { useStore } from '../../../state/store/store.ts';
import { LENGTH, unitFor } from './quantity.ts';
import { QuantityField, type QuantityProps } from './QuantityField.tsx';

interface Props extends QuantityProps {
  readonly long?: boolean | undefined;
}

export const LengthField = (field: Props): JSX.Element => (
  <QuantityField
    field={field}
    kind={LENGTH}
    unit={unitFor(field.long === true ? 'long' : 'short', useStore().units.value)}
  />
);
