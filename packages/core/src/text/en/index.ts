import type { IndexText } from '../listsText.ts';

export const index: IndexText = {
  title: 'All papers',
  about: 'Print at 100 %, with the printer’s margins set to “none”: each paper has its own.',
  report: 'Reviewer’s report',
};
