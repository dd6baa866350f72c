import type { IndexText } from '../listsText.ts';

export const index: IndexText = {
  title: 'All papers',
  about: 'Print each with the margins of the paper itself (no margins of the printer’s own), at 100 %.',
  report: 'Reviewer’s report',
};
