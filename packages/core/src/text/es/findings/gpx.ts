/** Lectura de GPX: qué se encontró, qué se esperaba y qué hacer. */
import type { BadNumber, GpxParams, LineName, Repeats, XmlFault } from '../../params/gpx.ts';
import type { Say } from '../../say.ts';
import type { Sentence, TextsOf } from '../../sentence.ts';
import { limits } from './limits.ts';

/** A text for one finding, and for how many more there are of its kind. */
const counted =
  <P extends object>(one: (params: P, say: Say) => Sentence) =>
  (params: P | Repeats, say: Say): Sentence =>
    'more' in params
      ? [`No se muestran otros ${say.count(params.more)} casos iguales; hay ${say.count(params.all)} en total.`]
      : one(params, say);

/** `what` is feminine: "la latitud". */
const badNumber = (what: string, { found, fault }: BadNumber, say: Say): string => {
  const said = `${what} es ${say.quote(found)}`;
  if (fault === 'empty') return `${what} está vacía.`;
  if (fault === 'mark') return `${what} es una marca de «no es un número».`;
  if (fault === 'comma') return `${said}, con coma decimal.`;
  return fault === 'large' ? `${said}, que es demasiado grande.` : `${said}.`;
};

const decimalPoint = ({ fault }: BadNumber): string | null => (fault === 'comma' ? 'Escriba un punto decimal.' : null);

const axis = (word: 'latitud' | 'longitud', most: number): TextsOf<GpxParams>['gpx-latitude'] =>
  counted((params, say) => {
    if (params.fault === 'missing')
      return [
        `Este punto no tiene ${word}.`,
        'Un punto debe tener lat y lon en grados decimales.',
        'Añádala o borre el punto.',
      ];
    if (params.fault !== 'range')
      return [badNumber(`La ${word}`, params, say), `Debe ser un número de -${most} a ${most}.`, decimalPoint(params)];
    const range = [`La ${word} es ${params.found}.`, `Debe estar entre -${most} y ${most}.`] as const;
    if (params.hint === 'swapped')
      return [...range, 'Latitud y longitud parecen cambiadas: intercambie lat y lon en todo el archivo.'];
    return params.hint === 'wrapped'
      ? [...range, `Reste 360 a las longitudes de más de 180; aquí resulta ${params.instead}.`]
      : [...range, 'Corríjala o borre el punto.'];
  });

export const XML: { readonly [fault in XmlFault]: (name: string) => Sentence } = {
  entity: () => ['Un & no empieza ninguna de &amp; &lt; &gt; &quot; &apos;.', null, 'Escriba un & suelto como &amp;.'],
  numberedCharacter: () => [
    'XML no permite este carácter numerado (&#…;).',
    null,
    'Bórrelo o escriba el carácter mismo.',
  ],
  noValue: () => ['Un atributo no tiene valor.', 'Debe ser nombre="valor".'],
  unquoted: () => ['El valor de un atributo va sin comillas.', 'Debe ser nombre="valor".'],
  duplicate: (name) => [`La etiqueta tiene dos veces el atributo ${name}.`, null, 'Borre uno.'],
  noSpace: () => ['Faltan espacios entre dos atributos.', null, 'Ponga un espacio.'],
  secondRoot: () => [
    'Tras el final de <gpx> hay otro elemento exterior.',
    'Parecen varios archivos unidos en uno.',
    'Entregue cada uno por separado.',
  ],
  lateDeclaration: () => [
    'La línea <?xml …?> no está al principio del archivo.',
    'Deben ser los primeros caracteres.',
    'Borre lo que hay delante.',
  ],
  textOutside: () => ['Hay texto fuera del elemento exterior.', null, 'Bórrelo.'],
  unmatched: (name) => [`La etiqueta </${name}> no cierra nada: no hay ningún <${name}> abierto.`, null, 'Bórrelo.'],
  crossed: (name) => [
    `Se cierra otra etiqueta donde debe estar </${name}>.`,
    'Cada elemento debe cerrarse antes que el que lo rodea.',
    `Añada </${name}> delante.`,
  ],
  comment: () => ['Un comentario contiene --, que XML no permite.', null, 'Borre el comentario.'],
  bracketsInText: () => ['El texto contiene ]]>, que XML no permite.', null, 'Escríbalo como ]]&gt;.'],
  brokenTag: () => ['Una etiqueta está rota.', null, 'Escriba un < suelto en el texto como &lt;.'],
  attributeName: () => ['Un carácter no puede estar en el nombre de un atributo.'],
  character: () => ['XML no permite aquí este carácter: uno de control, o un < entre comillas.'],
  doctype: () => ['Hay un <!DOCTYPE> repetido o tardío, que GPX no necesita.', null, 'Bórrelo.'],
  declaration: () => ['La línea <?xml …?> está mal formada.', 'Debe ser <?xml version="1.0" encoding="UTF-8"?>.'],
  instruction: () => ['Una instrucción de proceso (<? … ?>) está rota.', null, 'Bórrela.'],
  other: () => ['Aquí el texto no es XML bien formado.', null, 'Exporte otra vez el recorrido como GPX.'],
};

const WITHOUT_NAME = { track: 'un track sin nombre', route: 'una ruta sin nombre' } as const;

/** "0: «Entera», 1: una ruta sin nombre y 3 más". */
function listed(lines: readonly LineName[], count: number, say: Say): string {
  const names = lines.map(({ kind, name }, k) => `${k}: ${name === null ? WITHOUT_NAME[kind] : say.quote(name)}`);
  return `${names.join(', ')}${count > lines.length ? ` y ${say.count(count - lines.length)} más` : ''}`;
}

export const gpx: TextsOf<GpxParams> = {
  ...limits,
  'gpx-empty': () => [
    'El archivo está vacío.',
    'Debe ser un archivo GPX con un track, una ruta o waypoints.',
    'Expórtelo otra vez.',
  ],
  'gpx-truncated': (params) => {
    const where =
      'element' in params
        ? `antes de que se cierre <${params.element}>`
        : params.inside === 'start'
          ? 'antes de que empiece <gpx>'
          : 'dentro de una etiqueta o un comentario';
    return [`El archivo termina ${where}: está cortado.`, null, 'Descárguelo o expórtelo otra vez.'];
  },
  'gpx-binary': ({ kind }) =>
    kind === 'compressed'
      ? [
          'Este es un archivo comprimido (ZIP o gzip).',
          'Debe ser el texto de un archivo GPX.',
          'Descomprímalo y entregue el archivo .gpx de dentro.',
        ]
      : kind === 'nul'
        ? [
            'El archivo tiene un byte NUL: es binario o no se escribió hasta el final.',
            null,
            'Expórtelo otra vez como GPX.',
          ]
        : ['El archivo contiene datos binarios, no texto.', null, 'Exporte el recorrido como GPX, que es texto XML.'],
  'gpx-encoding': (params, say) => {
    if (params.problem === 'invalid')
      return [
        `El byte ${params.byte} no es ${params.encoding} válido.`,
        null,
        'Guarde el archivo como UTF-8 o indique su codificación en la primera línea, como encoding="ISO-8859-1".',
      ];
    const encoding = say.quote(params.encoding);
    return params.problem === 'notUtf16'
      ? [
          `La primera línea da la codificación ${encoding}, pero el archivo no está en UTF-16.`,
          null,
          'Guárdelo como UTF-8 y escriba allí encoding="UTF-8".',
        ]
      : [
          `El archivo está en la codificación ${encoding}, que no se puede leer.`,
          'Debe ser UTF-8, UTF-16, US-ASCII, ISO-8859 o windows-125x.',
          'Guárdelo como UTF-8 y escriba encoding="UTF-8" en la primera línea.',
        ];
  },
  'gpx-not-xml': (params, say) =>
    params.kind === 'html'
      ? [
          'Esto es una página web (HTML), no un archivo GPX.',
          'La descarga pudo llevar a una página de acceso o de error.',
          'Abra la dirección en un navegador y guarde el archivo GPX mismo.',
        ]
      : [
          `El archivo empieza por ${say.quote(params.found)}, que ${params.kind === 'json' ? 'es JSON y no XML' : 'no es XML'}.`,
          'Un archivo GPX empieza por <?xml o <gpx.',
          'Exporte el recorrido como GPX.',
        ],
  'gpx-not-gpx': ({ root }) => [
    `El elemento exterior es <${root}>.`,
    'Debe ser <gpx>.',
    'Exporte el recorrido como GPX 1.1.',
  ],
  'gpx-doctype': () => [
    'El archivo tiene un <!DOCTYPE>, que GPX no necesita.',
    'Se rechaza porque las entidades declaradas en él pueden llenar la memoria.',
    'Bórrelo.',
  ],
  'gpx-malformed': ({ fault, name }) => XML[fault](name),
  'gpx-latitude': axis('latitud', 90),
  'gpx-longitude': axis('longitud', 180),
  'gpx-elevation': counted((params, say) => [
    badNumber('La elevación', params, say),
    'Debe ser un número de metros, como 123.4.',
    decimalPoint(params) ?? 'El punto se conserva sin ella.',
  ]),
  'gpx-hdop': counted((params, say) => [
    badNumber('La dilución de precisión (hdop)', params, say),
    'Debe ser un número, como 1.5.',
    decimalPoint(params) ?? 'El punto se conserva sin ella.',
  ]),
  'gpx-misplaced': counted(({ element, home }) => [
    `Este <${element}> se deja fuera con todo lo que contiene.`,
    `Debe estar directamente dentro de <${home}>.`,
    'Muévalo allí.',
  ]),
  'track-unknown': (params, say) => {
    const file = params.file ?? 'El archivo';
    if (params.problem === 'none')
      return [`${file} no tiene ningún track ni ruta con puntos.`, 'Debe tener uno que sea el recorrido.'];
    const track = say.quote(params.track);
    if (params.problem === 'empty')
      return [`El track o ruta ${track} de ${params.file ?? 'el archivo'} no tiene puntos.`];
    const lines = listed(params.lines, params.count, say);
    if (params.problem === 'ambiguous')
      return [
        `${file} tiene ${params.same} tracks o rutas con el nombre ${track}.`,
        null,
        `Elija por número: ${lines}.`,
      ];
    return params.count === 0
      ? [`${file} no tiene el track o ruta ${track}, ni ningún otro.`]
      : [`${file} no tiene el track o ruta ${track}.`, null, `Elija uno de estos: ${lines}.`];
  },
  'track-chosen': ({ lines, count, taken }, say) => [
    `El archivo tiene ${say.count(count)} tracks y rutas: ${listed(lines, count, say)}.`,
    `Se toma el número ${taken} como recorrido.`,
    'Si no es el correcto, elija otro.',
  ],
};
