import type { YearText } from '../yearText.ts';

export const year: YearText = {
  station: 'station',
  name: 'name',
  left: {
    waterFull: 'water jugs full',
    waterEmpty: 'water jugs empty',
    sportsDrinkFull: 'sports drink jugs full',
    sportsDrinkEmpty: 'sports drink jugs empty',
    cupPacks: 'packs of cups left',
    cupsLoose: 'loose cups left',
    gelBoxes: 'boxes of gels left',
    gelsLoose: 'loose gels left',
  },
  roster: {
    role: 'role',
    from: 'from',
    until: 'until',
    phone: 'phone',
    title: 'Sign-in and sign-out',
    about:
      'Sign in when you come and out when you leave, so that the captain knows who is there. Keep this sheet at the station; hand it in after the race.',
    columns: ['Name', 'Role', 'Hours', 'In', 'Out', 'Signature'],
    needs: (crew, from, until, shifts) =>
      `Crew of ${crew} from ${from} to about ${until}${shifts > 1 ? `, in ${shifts} shifts` : ''}.`,
    missing: (count) => `${count} still to be found.`,
    ends: (time) =>
      `Nobody leaves before race control has released the station (about ${time}) and the place is clean.`,
    sum: 'Signed in, in all:',
  },
  sent: 'Sent',
  to: 'to',
  learning: {
    title: 'What the day teaches',
    about:
      'What was used, from what was left at the stations, beside what the plan expected. The rates are a proposal for the next race.',
    how: 'A rate is scaled by all that was used over all that was expected, so a busy station weighs more than a quiet one. ± is the standard error over the stations; the range is from the lowest station to the highest.',
    kindsTitle: 'Used and expected',
    kinds: ['What', ' Used', ' Expected', ' Used / expected', ' Lowest to highest', 'Counted at'],
    ratesTitle: 'Rates for the next race',
    rates: ['Who', 'What', ' A head, this plan', ' A head, next', ' Lowest to highest'],
    divisions: { run: 'Runners', walk: 'Walkers', wheels: 'Wheelchair racers' },
    stationsTitle: 'Each station',
    stations: ['Station', 'What', ' Used', ' Expected', ' Used / expected'],
    oneStation: 'one station: no spread',
    heat: (heat) => `Learnt for ${heat} weather; a hotter day takes more.`,
    heats: { cool: 'cool', warm: 'warm', hot: 'hot' },
    form: 'Left after the race',
    formAbout: 'Count when the last runner is through, before packing. A jug that is open counts half.',
  },
};
