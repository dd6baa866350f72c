/** Lo mismo de lo que un plan guarda del año de la carrera: tiempo, personas y precios. */
import type { ThingNames } from '../planThing.ts';

export const yearThings: ThingNames = {
  weather: 'la lista de horas de tiempo',
  'weather[]': 'la hora n.º {1} del tiempo',
  'weather[].at': 'la hora del tiempo n.º {1}',
  'weather[].wbgtC': 'la temperatura de globo y bulbo húmedo n.º {1}',
  'weather[].airC': 'la temperatura del aire n.º {1}',
  'weather[].humidity': 'la humedad n.º {1}',
  'weather[].windKmh': 'el viento n.º {1}',
  people: 'la lista de personas',
  'people.crew': 'la lista del equipo',
  'people.crew[]': 'la persona n.º {1} del equipo',
  'people.crew[].name': 'el nombre de la persona n.º {1}',
  'people.crew[].station': 'el puesto de la persona n.º {1}',
  'people.crew[].role': 'la tarea de la persona n.º {1}',
  'people.crew[].from': 'la hora de llegada de la persona n.º {1}',
  'people.crew[].until': 'la hora de salida de la persona n.º {1}',
  'people.crew[].phone': 'el teléfono de la persona n.º {1}',
  prices: 'la lista de precios',
  'prices.currency': 'la moneda',
  'prices.items': 'el conjunto de precios',
  'prices.items[]': 'el precio n.º {1}',
  'prices.items[].kind': 'el material del precio n.º {1}',
  'prices.items[].price': 'el importe del precio n.º {1}',
  'prices.items[].sold': 'los paquetes que se venden juntos al precio n.º {1}',
  'prices.items[].leadDays': 'los días de entrega del precio n.º {1}',
};
