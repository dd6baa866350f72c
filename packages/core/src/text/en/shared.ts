import type { SharedText } from '../listsText.ts';

export const shared: SharedText = {
  title: 'The whole plan',
  arrivals: 'Arrivals',
  open: 'Serves',
  found: 'What the review found',
  none: 'No problems found.',
  what: 'Severity',
  finding: 'Finding',
  waived: 'waived',
  severity: { error: 'Error', warning: 'Warning', note: 'Note' },
};
