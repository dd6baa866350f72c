import type { SuppliesText } from '../listsText.ts';

export const supplies: SuppliesText = {
  title: 'Supply list',
  totals: 'To order, all stations',
  each: 'Each station',
  item: 'Item',
  packs: 'Packs',
  need: 'Needed',
  pack: 'A pack is',
  none: 'No race in the plan has start waves yet, so arrivals are unknown and quantities cannot be worked out.',
  defaultsTitle: 'Defaults in use',
  defaultsAbout:
    'Values that the plan has not changed. None was measured at this race: count what is used, and use that to plan the next race day.',
  changedTitle: 'Set by this plan',
  changedAbout: 'Values that the plan sets instead of the usual ones.',
  stationsTitle: 'Set for single stations',
  stationsAbout: 'These stations have their own values for:',
  what: 'What',
  value: 'In use',
  usual: 'Usual',
  source: 'Source',
  yes: 'set',
  bySplits: (race, splits, runners) =>
    `${race}: as ${runners} past finishers slowed, by their splits (${splits.join(', ')})`,
  resupply: {
    title: 'Second delivery',
    about:
      'If runners drink half as much again (an assumption): the half hour at which fewer jugs are left than there should be, when a delivery called then arrives, and when the drink runs out.',
    drink: 'Drink',
    called: 'Seen and called',
    arrives: 'Arrives',
    runsOut: 'Runs out',
    inTime: 'In time',
    yes: 'yes',
    no: 'NO: send more from the start',
    never: 'not seen before',
  },
  phrase: (english) => english,
};
