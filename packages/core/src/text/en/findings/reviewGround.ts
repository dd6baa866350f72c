/** What the checks say of the ground, as a map knows it. */
import type { GroundParams, OnStretch, StretchOf } from '../../params/reviewGround.ts';
import type { Say } from '../../say.ts';
import { some } from '../../some.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { STANDING, areMany, begin } from '../nouns.ts';

/** "by the map of 2026-10-02". */
const byMap = (map: string | null): string => (map === null ? 'by the map' : `by the map of ${map}`);

const SURFACES: Readonly<Record<string, string>> = {
  cobblestone: 'cobbles',
  sett: 'setts',
  unhewn_cobblestone: 'rough cobbles',
  pebblestone: 'pebbles',
  grass_paver: 'grass pavers',
  fine_gravel: 'fine gravel',
};
const surfaceWord = (surface: string): string => SURFACES[surface] ?? surface.replaceAll('_', ' ');

const MOST = 3;
const more = (say: Say) => (count: number) => `${say.count(count)} more`;
const places = (measures: readonly number[], say: Say): string => some(measures.map(say.far), say, more(say), MOST);
const stretchText = ({ from, to }: StretchOf, say: Say): string => `${say.far(from)} to ${say.far(to)}`;

/** "The sign and the water tables stand". */
const stand = (items: OnStretch['items'], say: Say): string =>
  `${begin(say.all(items.map((kind) => STANDING[kind])))} ${areMany(items) ? 'stand' : 'stands'}`;
const them = (items: OnStretch['items']): string => (areMany(items) ? 'them' : 'it');
const named = (what: string, name: string | null): string => (name === null ? what : `${what} ${name}`);

/** What stands there, what should be, and that it be moved. */
const on = ({ items, map }: OnStretch, where: string, should: string, say: Say): Sentence => [
  `${stand(items, say)} ${where}, ${byMap(map)}.`,
  should,
  `Move the station along the course, or place ${them(items)} elsewhere by hand.`,
];

export const ground: TextsOf<GroundParams> = {
  'ground-missing': ({ file }, say) => [
    `The plan names the map ${say.quote(file)}, which is missing or cannot be read.`,
    'Streets, junctions, hydrants and houses are not checked without it.',
    'Put the file beside the plan, or make it again from a street map.',
  ],
  'ground-silent': ({ map, lacks }) => [
    `The map${map === null ? '' : ` of ${map}`} shows no ${lacks.join(' and no ')} beside the courses; that does not mean that there are none.`,
    `${lacks.includes('buildings') ? 'Whether houses hide a sign' : 'Whether hydrants stay free'}${lacks.length > 1 ? ' and whether hydrants stay free' : ''} could not be judged.`,
    'Check on the ground.',
  ],
  'map-old': ({ map, age, most }, say) =>
    map === null || age === null
      ? [
          'The map does not say of which day it is.',
          null,
          'Make it again from a new extract, and check streets on the ground.',
        ]
      : [
          `The map is of ${map}, ${say.count(Math.floor(age))} years before the race.`,
          `It should be at most ${say.count(most)} years old: streets change.`,
          'Make it again from a new extract.',
        ],
  'off-map': ({ course, stretches, share, most, map }, say) =>
    most
      ? [
          `${say.percent(share)} of ${say.course(course)} follows no street, ${byMap(map)}.`,
          'The map seems to be of another place, or to end too early.',
          'Make it again from an extract that holds the whole course.',
        ]
      : [
          `${say.course(course)} follows no street ${byMap(map)} at ${some(
            stretches.map((one) => stretchText(one, say)),
            say,
            more(say),
            MOST,
          )}.`,
          'There the map lacks a path, or the line strays from its road.',
          'Check the line there; by the map nothing is judged there.',
        ],
  'item-in-mouth': (params, say) =>
    on(
      params,
      `in the mouth of ${params.name ?? 'a side street'}`,
      'It should stay free: ambulances and residents come out of it, and the closing crew stands there.',
      say,
    ),
  'item-on-bridge': (params, say) =>
    on(params, `on ${named('a bridge', params.name)}`, 'Bridges are narrow, windy and without a way aside.', say),
  'item-in-tunnel': (params, say) =>
    on(
      params,
      `in ${named('a tunnel', params.name)}`,
      'It is dark there, radios fail, and there is no way aside.',
      say,
    ),
  'item-on-steps': (params, say) =>
    on(params, 'on steps', 'Nobody can drink on steps, nor carry tables over them.', say),
  'item-on-level-crossing': (params, say) =>
    on(
      params,
      'on or beside a level crossing',
      `Nothing should stand within ${say.length(params.room)} of the rails; the railway decides.`,
      say,
    ),
  'item-at-stop': (params, say) =>
    on(
      params,
      `at ${named(params.stop === 'bus' ? 'the bus stop' : 'the tram stop', params.name)}`,
      'Passengers wait and get off there, unless it is closed for the race.',
      say,
    ),
  'item-on-crossing': (params, say) =>
    on(params, 'on a pedestrian crossing', 'People cross there, and kerbs are lowered for wheelchairs.', say),
  'hydrant-blocked': ({ items, measured, limit, map }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `${stand(items, say)} ${away} along the kerb from a hydrant, ${byMap(map)}.`,
      `At least ${least} should stay free on its side; the fire marshal decides.`,
      'Move the station along the course, or ask the fire marshal.',
    ];
  },
  'fire-station-blocked': ({ items, name, measured, limit, map }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `${stand(items, say)} ${away} along the road from ${name ?? 'a fire station'}, ${byMap(map)}.`,
      `At least ${least} of the road should stay free on both sides, so that engines can turn out; the fire marshal decides.`,
      'Move the station, or agree with the fire station.',
    ];
  },
  'hospital-blocked': ({ items, name, of, measured, limit, map }, say) => {
    const { measured: away, limit: least } = say.compare(measured, limit);
    return [
      `${stand(items, say)} ${away} along the road from ${name ?? (of === 'hospital' ? 'a hospital' : 'an ambulance station')}, ${byMap(map)}.`,
      `At least ${least} of the road should stay free, as ambulances come and go.`,
      `Move the station, or agree with the ${of === 'hospital' ? 'hospital' : 'ambulance station'}.`,
    ];
  },
  'gate-on-course': ({ measures, map }, say) => [
    `${measures.length === 1 ? 'A gate or bollard stands' : 'Gates or bollards stand'} on the course at ${places(measures, say)}, ${byMap(map)}.`,
    'It should be open, taken out, or marked and padded before the first runner.',
    'Find out who has the key, and put it on the list of race morning.',
  ],
  'steps-with-wheels': ({ races, measures, map }, say) => [
    `${say.all(races.map(say.race))}, on wheels, ${races.length === 1 ? 'comes' : 'come'} to steps at ${places(measures, say)}, ${byMap(map)}.`,
    'A course for wheels should have none.',
    'Lead wheels another way, or correct the line.',
  ],
  'rough-surface': ({ course, races, stretches, map }, say) => {
    const list = some(
      stretches.map((one) => `${surfaceWord(one.surface)} at ${stretchText(one, say)}`),
      say,
      more(say),
      MOST,
    );
    return races.length > 0
      ? [
          `${say.all(races.map(say.race))}, on wheels, ${races.length === 1 ? 'comes' : 'come'} to ${list}, ${byMap(map)}.`,
          'Wheels should find a hard and even road.',
          'Look at it with somebody who races on wheels, and lead them another way where they say so.',
        ]
      : [`${say.course(course)} has ${list}, ${byMap(map)}.`, null, 'Look there for where runners stumble in the wet.'];
  },
  'width-from-map': ({ stations, map }, say) => [
    `No road width in the plan, but ${byMap(map)}: ${some(
      stations.map(({ station, width }) => `${say.station(station)} about ${say.length(width)}`),
      say,
      more(say),
      MOST,
    )}.`,
    'That is only about right.',
    'Measure the roads, and enter their widths.',
  ],
  'narrow-by-map': ({ measured, limit, road, map }, say) => {
    const { measured: clear, limit: least } = say.compare(Math.max(measured, 0), limit);
    return [
      `The road is about ${say.length(road)} wide, ${byMap(map)}: beside tables and hand-out crew about ${clear} would stay clear.`,
      `At least ${least} should stay clear.`,
      'Measure the road and enter its width, or move the station to a wider one.',
    ];
  },
  'sign-unseen': ({ within, map }, say) => [
    `A building hides the sign from ${say.length(within)} before it, ${byMap(map)}.`,
    `Runners should see it from ${say.length(within)}.`,
    'Move the sign or the station, and look at it on the ground: the map has outlines only.',
  ],
  'tables-unseen': ({ distance, map }, say) => [
    `A building hides the tables from the sign, ${say.length(distance)} before them, ${byMap(map)}.`,
    null,
    'Tell runners on the sign what is round the corner, or move the station.',
  ],
};
