import type { CardText } from '../cardText.ts';

export const card: CardText = {
  title: 'Tarjeta del voluntario',
  where: 'Dónde',
  code: 'mapa por el código',
  when: 'Llegue',
  until: (packed) => `no se vaya hasta que le libere su responsable${packed === null ? '' : ` (hacia las ${packed})`}`,
  captain: 'Responsable',
  tables: 'Mesas',
  roles: {
    setUp: {
      title: 'Montar y servir',
      stand: 'Detrás de las mesas (negro), no en la calle.',
      job: [
        'Ponga las mesas donde diga su responsable.',
        'Solo vasos limpios. Garrafas cerradas hasta usarlas.',
        'Viento: una capa, sin láminas, con peso encima.',
      ],
    },
    cups: {
      title: 'Entregar vasos',
      stand: 'Delante de las mesas (negro), no en la calle.',
      job: [
        'Lleve una sola bebida y anúnciela.',
        'Mire a los corredores. Fuera de la calle: ellos vienen.',
        'Otro vaso de la mesa de atrás. Ninguno dos veces.',
        'Cae un vaso: déjelo a quien limpia.',
      ],
    },
    gel: {
      title: 'Entregar geles',
      stand: 'Delante de la mesa de gel (negro), no en la calle.',
      job: [
        'Lleve un solo sabor y anúncielo. No salga a la calle.',
        'Entréguelo cerrado: lo abre el corredor.',
        'Preguntan qué lleva: enseñe el envase, no adivine.',
        'Se acaba un sabor: avise a su responsable.',
      ],
    },
    refill: {
      title: 'Servir y reponer',
      stand: 'Detrás de las mesas (negro), no en la calle.',
      job: [
        'Llene desde atrás, empuje los vasos adelante.',
        'Solo vasos limpios. Nunca llene un vaso usado.',
        'Cada media hora: diga cuántas garrafas llenas hay.',
        'Queda poco: avise enseguida a su responsable.',
      ],
    },
    taps: {
      title: 'Llenar botellas',
      stand: 'Detrás de las mesas (negro), no en la calle.',
      job: [
        'Grifo abierto sobre la botella; no toque su boca.',
        'Cambie la garrafa antes de que se vacíe. Sin vasos.',
        'Cada media hora: diga cuántas garrafas llenas hay.',
        'Queda poco: avise enseguida a su responsable.',
      ],
    },
    clean: {
      title: 'Limpiar',
      stand: 'Pasadas las mesas (negro), no en la calle.',
      job: [
        'De cara a los corredores. Salga si no viene nadie.',
        'Carril y sumideros sin vasos.',
        'Vidrio, agujas, sangre: no toque, avise.',
        'Al quedar libre: mesas plegadas junto a los montones.',
      ],
    },
  },
  pictures: {
    carry: 'Cada mesa, entre dos.',
    gloves: 'Manos lavadas y guantes.',
    stack: 'Mesa llena: una lámina y otra capa.',
    jugs: 'Las garrafas, de una en una.',
    taps: 'Los corredores acercan su botella.',
    rim: 'El vaso, por el borde, con dos dedos,',
    palm: 'o sobre la palma abierta.',
    reach: 'Brazo quieto. Suelte al tomarlo.',
    packet: 'Por abajo, lado de abrir arriba.',
    call: 'Anuncie:',
    rake: 'Rastrille los vasos a un lado.',
    bag: 'Caja llena: ate la bolsa y ponga otra.',
    piles: 'Al quedar libre: dos montones donde estaba el material.',
  },
  half: (percent) => `Vasos ${percent === null ? 'a medias' : `al ${percent} %`}, no más.`,
  jobTitle: 'Su tarea',
  pour: 'Antes del primer corredor:',
  apart: (length) => `Sepárense unos ${length}.`,
  calls: ['«¡', '!»'],
  handing: 'Quien entrega vasos: delante de las mesas, no en la calle, brazo extendido, por el borde o en la palma.',
  handingGel: 'Quien entrega geles: delante de la mesa, no en la calle, brazo extendido.',
  callOut: 'Anuncie:',
  trash: 'Basura: en las cajas. Bolsas llenas: atadas, en el montón de bolsas; su responsable le dice.',
  before:
    'Traiga calzado cerrado, abrigo, crema solar, comida y bebida. Ningún coche sale con la calle cerrada. Aprenda antes la reanimación solo con las manos, con un instructor habilitado.',
  happensTitle: 'Si pasa algo',
  life: {
    what: 'Caído, no responde, no respira bien, dolor de pecho, sangra mucho, confuso: vida en peligro.',
    call: 'Llame primero:',
    say: 'Diga:',
    next: 'Después avise a su responsable. Vaya solo con la calle libre; quédese con la persona; haga solo lo que sabe.',
    radio: 'Por radio, si la tiene: solo dorsal y lugar, nunca nombre ni estado.',
  },
  happens: [
    ['Golpe, corte, calambre, mareo:', 'siéntelo aparte y avise.'],
    ['Quiere que lo lleven:', 'espera aquí al coche escoba; avise con el dorsal.'],
    [
      'Truenos:',
      'todos ya a un edificio o coche cerrado, también corredores. Se vuelve cuando lo diga su responsable.',
    ],
  ],
};
