import type { SuppliesText } from '../listsText.ts';

export const supplies: SuppliesText = {
  title: 'Supply list',
  totals: 'All stations, to order',
  each: 'Each station',
  item: 'Item',
  packs: 'Packs',
  need: 'Needed',
  pack: 'A pack is',
  none: 'No race of the plan has waves, so nobody knows who arrives when and nothing can be ordered from it yet.',
  defaultsTitle: 'Defaults in use',
  defaultsAbout:
    'The plan says nothing else of these, or the same. None is measured at this race: count what is used, and plan the next day with that.',
  changedTitle: 'Set by this plan',
  changedAbout: 'The plan says its own in place of the usual value.',
  stationsTitle: 'Set for single stations',
  stationsAbout: 'These stations have supply or crew rules of their own:',
  what: 'What',
  value: 'In use',
  usual: 'Usual',
  source: 'Kind of source',
  inPlan: 'In the plan',
  yes: 'set',
  phrase: (english) => english,
};
