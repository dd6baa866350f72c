/** A mass, kg or lb. */
import type { JSX } from 'preact';
import { useStore } from '../../../state/store/store.ts';
import { MASS, unitFor } from './quantity.ts';
import { QuantityField, type QuantityProps } from './QuantityField.tsx';

export const MassField = (field: QuantityProps): JSX.Element => (
  <QuantityField field={field} kind={MASS} unit={unitFor('load', useStore().units.value)} />
);
