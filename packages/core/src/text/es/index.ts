import type { IndexText } from '../listsText.ts';

export const index: IndexText = {
  title: 'Todas las hojas',
  about: 'Imprima al 100 % y con los márgenes de la impresora en «ninguno»: cada hoja lleva los suyos.',
  report: 'Informe de revisión',
};
