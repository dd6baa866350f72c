/** Frases en español sobre lo que pide el día de un puesto: personas, mesas, tiempo para servir, bebidas. */
import type { RacedayParams } from '../../params/raceday.ts';
import { humanised, thingName } from '../../planThing.ts';
import type { TextsOf } from '../../sentence.ts';
import { minutesText } from '../../spans.ts';
import { planThings } from '../planThings.ts';

const named = (keys: string): string => thingName({ keys, numbers: [] }, planThings, humanised(keys));

export const crew: Pick<
  TextsOf<RacedayParams>,
  'tables-room' | 'crew-many' | 'pour-late' | 'drinks-few' | 'rule-unused'
> = {
  'tables-room': ({ wanted, tables, length, room, pourers, stations }, say) => [
    `${say.count(wanted)} mesas de bebida ocuparían ${say.length(length)}${stations === undefined ? '' : ` en ${say.station(stations[0]!)}; ${stations.length === 2 ? 'otro puesto está igual' : `otros ${say.count(stations.length - 1)} puestos están igual`}`}.`,
    tables < wanted
      ? `Hay sitio para ${say.length(room)}; se prevén ${say.count(tables)}${
          pourers === null
            ? ''
            : `, que ${pourers === 1 ? 'repone 1 persona' : `reponen ${say.count(pourers)} personas`}`
        }.`
      : `Hay sitio para ${say.length(room)}.`,
    'Prevea una segunda fila de mesas, o pida a la autoridad de la vía mesas a ambos lados.',
  ],
  'crew-many': ({ crew: people, arrivals, most }, say) => [
    `Un equipo de ${say.count(people)} para ${say.count(arrivals)} llegadas es mucho.`,
    `Lo habitual serían ${say.count(most)} como mucho.`,
    'Revise las reglas del equipo y cuántos corredores se esperan.',
  ],
  'pour-late': ({ cups, people, takes, most }, say) => [
    `${people === 1 ? '1 persona tarda' : `${say.count(people)} personas tardan`} ${minutesText(takes)} en servir ${say.count(cups)} vasos antes del primer corredor.`,
    `Debería llevar ${minutesText(most)} como mucho.`,
    'Añada personas, o sirva menos vasos de antemano.',
  ],
  'drinks-few': ({ stations, ordered, least, apart }, say) => [
    `${say.all(stations.map((id) => say.station(id)))} ${
      stations.length === 1 ? 'tiene' : 'tienen'
    } apenas ${say.found(Number(ordered.toFixed(1)))} bebidas por corredor.`,
    `Una guía de puestos pide al menos ${say.count(least)} donde los puestos distan ${say.far(apart)}.`,
    'Pida más, o revise las cantidades.',
  ],
  'rule-unused': ({ rules, because }, say) => [
    `${because === 'bottles' ? 'Aquí se llenan botellas' : 'Las cajas se cuentan por los vasos del día'}, así que ${
      rules.length === 1 ? 'una regla no tiene' : 'algunas reglas no tienen'
    } efecto: ${say.all(rules.map(named))}.`,
    null,
    because === 'bottles'
      ? 'Quite la regla, o entregue vasos.'
      : 'Quite la regla, o dé a los puestos un número de cajas.',
  ],
};
