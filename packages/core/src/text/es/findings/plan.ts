import { byProblem } from '../../byProblem.ts';
import type { JsonExpected, PlanParams } from '../../params/plan.ts';
import type { Say } from '../../say.ts';
import type { TextsOf } from '../../sentence.ts';
import { isStated, suggested } from '../planValues.ts';
import { list } from './list.ts';
import { planReference, planValue } from './planFaults.ts';
import { planSources } from './planSources.ts';
import { setUpTexts, startPlaces, startWaypoint } from './planStart.ts';

type JsonText = readonly [should: (say: Say) => string, action?: string];

const EXPECTED: Readonly<Record<JsonExpected, JsonText>> = {
  value: [() => 'Debe haber un valor: un texto entre comillas dobles, un número, true, false, una lista o un objeto.'],
  number: [() => 'Debe haber un número como 12 o 0.5.'],
  key: [() => 'Debe haber una clave entre comillas dobles.'],
  colon: [() => 'Debe haber dos puntos después de la clave.'],
  comma: [() => 'Debe haber una coma entre las entradas.'],
  brace: [({ quote }) => `Debe cerrarse con ${quote('}')}.`],
  bracket: [({ quote }) => `Debe cerrarse con ${quote(']')}.`],
  end: [() => 'No debe haber nada después del final del plan.', 'Bórrelo.'],
  noComment: [() => 'Un plan no lleva comentarios.', 'Bórrelo, o escríbalo como nota de un puesto.'],
  quote: [() => 'Un texto debe acabar con comillas dobles en su misma línea.'],
  digits: [() => 'Debe ir seguido de cifras.'],
  unicode: [() => 'Debe haber \\u con cuatro cifras hexadecimales.'],
  escape: [() => 'Después de una barra invertida debe ir " \\ / b f n r t o u.'],
  noControl: [() => 'Un texto no debe tener caracteres de control.', 'Escríbalo como \\n o \\t.'],
  noComma: [() => 'No debe haber coma después de la última entrada.', 'Borre la coma.'],
};

const upTo = (current: number): string => (current === 1 ? '1' : `de 1 a ${current}`);

export const plan: TextsOf<PlanParams> = {
  ...planSources,
  ...list,
  'plan-value': planValue,
  'plan-key': byProblem({
    fixedId: () => ['Una variante no puede cambiar el identificador de un puesto.', null, 'Borre el identificador.'],
    unknown: ({ key }, say) => [
      `Entrada desconocida ${say.found(key.word)}.`,
      null,
      suggested(key, 'Aquí se admiten', 'Aquí no hay entradas.', say),
    ],
  }),
  'plan-reference': planReference,
  'plan-version': byProblem({
    noPlan: ({ found, version }, say) => [
      `El archivo contiene ${say.found(found)}, no un plan.`,
      `Un plan es un objeto entre llaves con el formato ${say.quote('halfcup-plan')} y la versión ${version}.`,
    ],
    format: ({ found }, say) => [
      isStated(found) ? `El formato del plan es ${say.found(found)}.` : 'Falta el formato del plan.',
      `Debe ser ${say.quote('halfcup-plan')}.`,
    ],
    version: ({ found, current }, say) => [
      isStated(found) ? `La versión del formato es ${say.found(found)}.` : 'Falta la versión del formato.',
      `Debe ser un número entero, ${upTo(current)}.`,
    ],
    later: ({ found, current }, say) => [
      `La versión del formato es ${say.found(found)}, posterior a las que conoce este programa.`,
      `Debe ser ${upTo(current)}.`,
      'Actualice Halfcup para leer este plan.',
    ],
  }),
  'plan-not-json': byProblem({
    empty: () => ['El archivo está vacío.', 'Debe ser un plan.'],
    markup: () => [
      'Este es un archivo GPX o HTML, no un plan, que es JSON.',
      null,
      'Indique el plan, no el recorrido.',
    ],
    deep: ({ most }, say) => [
      `Hay más de ${say.count(most)} niveles de corchetes o llaves.`,
      'Ningún plan necesita tantos.',
    ],
    half: ({ found }, say) => [`${say.quote(found)} es medio carácter.`, null, 'Escriba el carácter entero.'],
    cutOff: ({ expected }, say) => [
      'El archivo acaba antes de tiempo.',
      EXPECTED[expected][0](say),
      'Puede estar cortado.',
    ],
    found: ({ found, expected }, say) => {
      const [should, action] = EXPECTED[expected];
      return [`Aquí sobra ${say.found(found)}.`, should(say), action ?? null];
    },
  }),
  'plan-duplicate-key': byProblem({
    twice: ({ key }, say) => [
      `La entrada ${say.found(key)} aparece aquí por segunda vez.`,
      null,
      'Borre una de las dos.',
    ],
    hidden: ({ key }, say) => [`Un plan no tiene la entrada ${say.found(key)}.`, null, 'Bórrela.'],
  }),
  'plan-variant': ({ variant }, say) => [
    `No hay ninguna variante ${say.found(variant.word)}.`,
    null,
    suggested(variant, 'Variantes de este plan', 'Este plan no tiene variantes.', say),
  ],
  'start-places': startPlaces,
  'start-waypoint': startWaypoint,
  ...setUpTexts,
};
