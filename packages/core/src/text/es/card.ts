import type { CardText } from '../cardText.ts';

export const card: CardText = {
  title: 'Tarjeta del voluntario',
  where: 'Dónde',
  when: 'Cuándo',
  untilReleased: 'hasta que le libere su responsable',
  captain: 'Responsable',
  bringTitle: 'Traer y vestir',
  bring: [
    'Ropa para cualquier tiempo, calzado cerrado, crema solar.',
    'Su propia comida y bebida para todo el turno.',
    'No podrá irse mientras la calle esté cerrada.',
  ],
  cupTitle: 'Sujetar el vaso',
  rim: 'Por el borde, con dos dedos',
  palm: 'Sobre la palma abierta',
  handTitle: 'Entregar',
  callOut: (served) => `Anuncie lo que lleva y su sabor: ${served.map((one) => `«¡${one}!»`).join(', ')}`,
  hand: [
    'Brazo extendido y quieto, a la altura del pecho. Suelte cuando lo tomen.',
    'No pise la calzada. Deje que vengan los corredores.',
  ],
  fallTitle: 'Si alguien cae',
  fall: [
    'Vida en peligro: llame primero al número local de emergencias y después avise a su responsable.',
    'Quédese con la persona. Haga solo aquello para lo que tiene formación.',
    'Conviene aprender la reanimación solo con las manos antes de la carrera, con un instructor habilitado.',
  ],
  ride: 'Si un corredor pide que le lleven: avise a su responsable.',
  or: 'o',
};
