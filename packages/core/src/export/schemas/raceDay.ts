/** JSON Schema of what `halfcup raceday --json` prints. */
import { WEATHER_LEVELS } from '../../kinds.ts';
import { findings } from './finding.ts';
import { DRAFT, type JsonSchema, count, listOf, number, orNull, position, record, side, text } from './shared.ts';

const clock: JsonSchema = {
  type: 'string',
  pattern: '^-?\\d{2,}:[0-5]\\d:[0-5]\\d$',
  description: 'HH:MM:SS, local; hours may pass 24.',
};
const minute: JsonSchema = { type: 'string', pattern: '^-?\\d{2,}:[0-5]\\d$' };
const amount: JsonSchema = { type: 'number', minimum: 0 };
const quantiles = { first: clock, p10: clock, p50: clock, p90: clock, last: clock };
const orNone = Object.fromEntries(Object.keys(quantiles).map((key) => [key, orNull(clock)]));
const packs = listOf(record({ item: text, need: amount, pack: amount, count }));
const prePour = record(
  { cups: count, share: amount, massCurve: amount, floor: amount, room: orNull(count) },
  { tables: count, layers: amount, pourers: count, cupsPerLayer: count },
);

const station: JsonSchema = record({
  id: text,
  arrivals: count,
  races: listOf(
    record(
      { race: text, arrivals: count, ...quantiles },
      { sinceDrink: amount, take: record({ water: amount, sportsDrink: amount, gel: amount, litres: amount }) },
    ),
  ),
  ...orNone,
  perMinute: listOf({
    type: 'array',
    prefixItems: [minute, { type: 'object', additionalProperties: count }],
    minItems: 2,
    maxItems: 2,
  }),
  peak: orNull(record({ count, at: clock })),
  crewAt: orNull(clock),
  openFrom: orNull(clock),
  openUntil: orNull(clock),
  packedAt: orNull(clock),
  jugsLeft: listOf(record({ at: minute }, { water: count, sportsDrink: count })),
  cups: record({ water: count, sportsDrink: count }),
  gels: count,
  prePour: record({}, { water: prePour, sportsDrink: prePour }),
  volume: record({ water: amount, sportsDrink: amount }),
  tables: record({ gel: count, sportsDrink: count, water: count }),
  packs,
  shortage: orNull(record({ drink: { enum: ['water', 'sportsDrink'] }, at: clock, seen: orNull(clock) })),
  handOut: { enum: ['cups', 'bottles'] },
  ordered: record({ water: count, sportsDrink: count }),
  crew: record(
    { handOut: count, pour: count, gel: count, clean: count, captain: count, total: count },
    { hours: amount, shifts: count },
  ),
});

const stop: JsonSchema = record(
  {
    station: text,
    arrive: clock,
    leave: clock,
    at: orNull(position),
    side,
    load: listOf(record({ item: text, count: amount, kg: amount })),
  },
  { measure: number },
);

/** JSON Schema (draft 2020-12) of what `halfcup raceday --json` prints: `RaceDayDocument`. Objects may gain keys in later versions. */
export const raceDaySchema: JsonSchema = {
  $schema: DRAFT,
  title: 'Race day',
  ...record(
    {
      stations: listOf(station),
      totals: record({ packs, crew: count }),
      runs: listOf(record({ vehicle: text, kind: { enum: ['drop', 'collect'] }, stops: listOf(stop), kg: amount })),
      findings,
    },
    {
      resupply: listOf(
        record(
          {
            station: text,
            drink: { enum: ['water', 'sportsDrink'] },
            takes: amount,
            called: orNull(clock),
            arrives: orNull(clock),
            runsOut: clock,
            inTime: { type: 'boolean' },
          },
          { vehicle: text },
        ),
      ),
      weather: listOf(
        record(
          { at: clock, level: orNull({ enum: [...WEATHER_LEVELS] }) },
          { wbgtC: number, airC: number, humidity: amount, windKmh: amount },
        ),
      ),
      fitted: listOf(record({ race: text, csv: text, splits: listOf(text), runners: count })),
    },
  ),
};
