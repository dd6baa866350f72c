/** The same of what a plan holds of the year around the race: its weather, people and prices. */
import type { ThingNames } from '../planThing.ts';

export const yearThings: ThingNames = {
  weather: 'list of hours of weather',
  'weather[]': 'hour no. {1} of the weather',
  'weather[].at': 'time of weather no. {1}',
  'weather[].wbgtC': 'wet-bulb globe temperature of weather no. {1}',
  'weather[].airC': 'air temperature of weather no. {1}',
  'weather[].humidity': 'humidity of weather no. {1}',
  'weather[].windKmh': 'wind of weather no. {1}',
  people: 'list of people',
  'people.crew': 'roster',
  'people.crew[]': 'person no. {1} of the roster',
  'people.crew[].name': 'name of person no. {1}',
  'people.crew[].station': 'station of person no. {1}',
  'people.crew[].role': 'role of person no. {1}',
  'people.crew[].from': 'time at which person no. {1} comes',
  'people.crew[].until': 'time at which person no. {1} leaves',
  'people.crew[].phone': 'telephone of person no. {1}',
  prices: 'list of prices',
  'prices.currency': 'currency',
  'prices.items': 'set of prices',
  'prices.items[]': 'price no. {1}',
  'prices.items[].kind': 'supply of price no. {1}',
  'prices.items[].price': 'amount of price no. {1}',
  'prices.items[].sold': 'number of packs sold together at price no. {1}',
  'prices.items[].leadDays': 'days of delivery of price no. {1}',
};
