import { type ReportText, aheadOfUtc } from '../reportText.ts';

const many = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

export const report: ReportText = {
  title: 'Safety review of water and aid stations',
  documentTitle: (plan) => `Review of ${plan}`,
  noName: 'Unnamed plan',
  facts: {
    raceDay: 'Race day',
    races: 'Races',
    road: 'Roads',
    stations: 'Stations',
    contacts: 'On the day',
    made: 'Report made',
  },
  race: ({ length, starts, entrants, cutoff }) =>
    [
      length,
      starts.length === 0 ? 'start times not stated' : `starts ${listed(starts)}`,
      ...(entrants === null ? [] : [`${entrants} entrants`]),
      ...(cutoff === null ? [] : [`finish closes ${cutoff}`]),
    ].join(', '),
  road: (closes, reopens) => `first closed at ${closes}, last open again at ${reopens}; by station overleaf`,
  stationCount: (all, medical) =>
    `${all}; ${medical.length === 0 ? 'no medical point' : `medical point${medical.length === 1 ? '' : 's'} at ${listed(medical)}`}`,
  local: (ahead) => `local time, ${aheadOfUtc(ahead)}`,
  contacts: { emergency: 'emergency', raceControl: 'race control', radioChannel: 'radio' },
  notStated: 'not stated',
  madeBy: (date, program, revision) =>
    `${date}, by ${program}, of ${revision === null ? 'a plan without a revision' : `revision ${revision}`}`,
  result: ({ error, warning, note, waived, cannotTell, notRun }) =>
    [
      `${many(error, 'error')}, ${many(warning, 'warning')}, ${many(note, 'note')}; ${waived} waived`,
      ...(cannotTell > 0 ? [`${cannotTell} of them unclear`] : []),
      ...(notRun > 0 ? [`${many(notRun, 'check')} could not run`] : []),
    ].join('; '),
  verdict: ({ error, warning }) =>
    error > 0
      ? `Not ready to sign: ${many(error, 'error')} must be corrected, or accepted by a named person.`
      : warning > 0
        ? `No errors. ${many(warning, 'warning')} need${warning === 1 ? 's' : ''} your judgement.`
        : 'No errors and no warnings.',
  decide: {
    title: 'What you are asked to decide',
    closures: 'May the roads close and reopen at the times in the table overleaf?',
    noClosures: 'When may the roads close and reopen? The plan does not say.',
    findings: (count) =>
      `May ${count === 1 ? 'this finding' : `these ${count} findings`} stand, or must the plan change?`,
    more: (count) => `and ${count} more, below`,
    waived: (count) => `Do you accept the ${count === 1 ? 'finding' : `${count} findings`} that others have waived?`,
    notRun: (count) =>
      `May ${count === 1 ? 'the point' : `the ${count} points`} that could not be checked stay open? See “What could not be checked”.`,
  },
  foot: (mark) => `Plan ${mark} · void once the plan or a file changes`,
  page: 'Page',
  of: 'of',
  walkIt: 'A check that finds nothing does not make a place safe: go and walk it.',
  scope: 'It covers water and aid stations, not the start and finish, junctions, diversions or spectators.',
  stations: {
    title: 'Stations',
    about:
      'In the order of the plan; sides as runners see them. “Road closed” is read from the plan’s times along the course, at the station.',
    sheets: 'Stations with findings, or that differ from the plan’s practice',
    sideWords: (side, computed) =>
      side === null
        ? `Side of the tables not declared; ${computed === null ? 'the position does not tell it either' : `by the position: ${computed}`}`
        : computed === null
          ? `Tables on the ${side}, as declared; the position does not bear it out, so check on site`
          : `Tables on the ${side}, as declared${computed === side ? '' : `; by the position: ${computed}`}`,
    again: 'and again',
    crew: (from) => `crew from ${from}`,
    open: (from, until) => `open ${from} to ${until}`,
    road: (closes, reopens) => `road closed ${closes} to ${reopens}`,
    runners: (first, last, count) => `${count} runners from ${first} to ${last}`,
    busiest: (count, at) => `${count} in the busiest minute, at ${at}`,
    passings: (count) => `${count} passings`,
    walked: (by, date) => `Walked by ${by}${date === '' ? '' : `, ${date}`}`,
    notWalked: 'Not walked yet',
    captain: (name) => `Captain: ${name}`,
    points: 'Points',
    noFindings: 'none',
    below: 'details below',
    departs: 'Differs from the plan’s practice',
    reason: 'Reason given',
    station: 'Station',
    at: 'Course distance',
    side: 'Side',
    runnersHead: 'Runners',
    roadHead: 'Road closed',
    found: 'Findings',
    where: 'Where',
    when: 'When',
  },
  files: {
    title: 'What was reviewed',
    about: 'This report covers exactly these files.',
    void: 'It is void once any of them changes: review again.',
    plan: 'The plan',
    file: 'File',
    sha256: 'SHA-256',
  },
  findings: {
    title: 'Findings beyond those at stations',
    severity: { error: 'Error', warning: 'Warning', note: 'Note' },
    none: 'None.',
    cannotTell: 'unclear',
    built: 'as built',
    waivedBy: 'Waived by',
    measured: 'measured',
    limit: 'limit',
  },
  placed: {
    title: 'As built',
    about:
      'Positions recorded on the ground, compared with the plan. A distance is OK or out of place only where its margin leaves no doubt.',
    verdict: { holds: 'OK', fails: 'out of place', 'cannot tell': 'unclear' },
    firstEnd: 'first end',
    lastEnd: 'last end',
    downstream: (length) => `${length} forward, the way runners go`,
    upstream: (length) => `${length} back, towards the runners`,
    at: 'At',
    item: 'Item',
    verdictHead: 'Verdict',
    distance: 'Distance',
    limits: 'Limits',
    move: 'Move',
    builtAbout:
      'Each station by the first of its tables that was recorded. Every check ran again where the stations stand; what it adds is listed at the station.',
    offCourse: 'off the course',
    nothingNew: 'nothing',
    planned: 'Planned at',
    recorded: 'Recorded at',
    apart: 'Apart',
    changes: 'What changes',
  },
  checks: {
    notRunTitle: 'What could not be checked',
    notRunAbout: 'The plan lacks what these checks need, or they stayed unclear in places. They have not passed.',
    allRan: 'Every check that applies could run.',
    notChecked: 'Not checked',
    notApplicable: 'Do not apply here',
    alsoPassed: (count) => `and ${many(count, 'check')} of files and data.`,
    passedTitle: (count) => `Checks passed (${count})`,
    passedAbout: 'Common practice, where no source is named. A check that finds nothing is no permission.',
    foundNothing: 'found nothing',
    found: (count) => `${count} found`,
    undecided: (count) => `${count} unclear`,
    unclearAt: (count) => `unclear in ${many(count, 'place')}`,
  },
  courses: {
    title: 'Courses',
    about:
      'Distances are measured along the line on the WGS 84 ellipsoid, ignoring slope, and stretched to the stated length and marks. A line in a file does not certify a course: only a measurement on the road does.',
    drawn: {
      centre: 'along the centre of the road',
      shortest: 'along the shortest route a runner can take',
      recorded: 'a recorded track',
    },
    parts: 'parts of other courses',
    inPlan: 'in the plan',
    noCertificate: 'none given',
    course: 'Course',
    how: 'How it is drawn',
    line: 'Line',
    stated: 'Stated',
    inUse: 'In use',
    certificate: 'Certificate',
  },
  practice: {
    title: 'The practice in force',
    about:
      'Common practice where no source is named. One published guide (Western Province Athletics, 2019, read) asks for stations at most 5 km apart, the last box at least 200 m past the tables, and at least 3 drinks a runner at each.',
    ofPlan: (usual) => `usual: ${usual}`,
    noReason: 'no reason given',
    differs: (rule, own, plan) => `${rule}: ${own} (the plan: ${plan})`,
    byHand: (item) => `${item} placed by hand`,
    fixed: 'its place is fixed',
    rules: {
      signAhead: 'Sign before the first table',
      signTolerance: 'Tolerance of that distance',
      gelAhead: 'End of the gel tables before the drink tables',
      tableLength: 'Length of a table',
      tableGap: 'Gap between sports drink and water',
      trashFrom: 'Trash drop after the last table, from',
      trashTo: 'Trash drop after the last table, to',
      boxEvery: 'A trash box at least every',
      kerb: 'Offset of items where the plan gives no width',
      setback: 'Setback from the edge of the road',
      clearWidth: 'Clear width for runners',
      snapRadius: 'Farthest a pin may be from the course',
      pinR95: 'Position error of pins, 95 % radius',
      courseR95: 'Position error of lines, 95 % radius',
      sideConfidence: 'A side is taken as clear from',
      maxSpacing: 'Longest distance without a station',
      minSpacing: 'Shortest distance between stations',
      maxGrade: 'Steepest grade at tables',
      bendClear: 'Tables clear of bends by',
      firstAfter: 'First station past the start by',
      lastBefore: 'Last station before the finish by',
      placedWithin: 'Stations as built, within their plan by',
    },
  },
  signatures: {
    title: 'Signatures',
    about:
      'A signature confirms that this report was read, with what it leaves open. It is no permit and closes no road.',
    offices: ['Event director', 'Safety reviewer', 'Police', 'Fire service', 'Medical', 'Road authority'],
    agreed: 'Agreed',
    conditions: 'On conditions',
    office: 'Office',
    name: 'Name',
    signature: 'Signature',
    date: 'Date',
  },
};
