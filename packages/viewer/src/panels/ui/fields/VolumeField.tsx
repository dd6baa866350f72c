/** A volume: of a jug (l, gal), or with `small` of a cup (ml, fl oz). */
import type { JSX } from 'preact';
import { useStore } from '../../../state/store/store.ts';
import { unitFor, VOLUME } from './quantity.ts';
import { QuantityField, type QuantityProps } from './QuantityField.tsx';

interface Props extends QuantityProps {
  readonly small?: boolean | undefined;
}

export const VolumeField = (field: Props): JSX.Element => (
  <QuantityField
    field={field}
    kind={VOLUME}
    unit={unitFor(field.small === true ? 'small' : 'large', useStore().units.value)}
  />
);
