/** Lo que pide el tiempo previsto. */
import type { RacedayParams } from '../../params/raceday.ts';
import type { TextsOf } from '../../sentence.ts';
import { wordOf } from '../../some.ts';
import { temperatureText, windText } from '../../weatherText.ts';
import { weather as words } from '../weather.ts';

const DO = {
  white: 'Tenga ropa seca y mantas en los puestos y en la meta.',
  green: 'No hace falta nada más que lo previsto.',
  yellow: 'Tenga sombra y esponjas a mano, y un segundo pedido de bebida.',
  red: 'Pida hielo, esponjas, sombra y una segunda entrega de bebida, y diga antes de la salida que se corra más despacio.',
  black: 'Acuerde ya con la dirección médica quién para la carrera y cómo se enteran puestos y corredores.',
} as const;

export const weather: Pick<TextsOf<RacedayParams>, 'weather-level' | 'weather-wind'> = {
  'weather-level': ({ level, at, celsius, by }, say) => [
    `${wordOf(words.measured, by)} ${temperatureText(celsius, say.units)} previsto a las ${say.clock(at)}: nivel ${wordOf(words.levels, level)} para carreras en ruta.`,
    'La dirección médica decide lo que sigue, hasta parar la carrera.',
    wordOf(DO, level),
  ],
  'weather-wind': ({ at, kmh }, say) => [
    `Se espera viento de ${windText(kmh, say.units)} a las ${say.clock(at)}.`,
    'Los vasos servidos deben estar en una sola capa, con pesos encima.',
    'Lleve pesos para vasos y láminas, y ataduras para los carteles.',
  ],
};
