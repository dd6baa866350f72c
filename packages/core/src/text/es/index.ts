import type { IndexText } from '../listsText.ts';

export const index: IndexText = {
  title: 'Todas las hojas',
  about: 'Imprima cada una con sus propios márgenes (sin márgenes de la impresora), al 100 %.',
  report: 'Informe de revisión',
};
