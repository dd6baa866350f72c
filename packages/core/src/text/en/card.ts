import type { CardText } from '../cardText.ts';

export const card: CardText = {
  title: 'Volunteer card',
  where: 'Where',
  when: 'When',
  untilReleased: 'until your captain releases you',
  captain: 'Captain',
  bringTitle: 'Bring and wear',
  bring: [
    'Clothes for all weathers, closed shoes, sun cream.',
    'Your own food and drink for the whole shift.',
    'You cannot leave while the road is closed.',
  ],
  cupTitle: 'Hold the cup',
  rim: 'By the rim, two fingers',
  palm: 'On the open palm',
  handTitle: 'Hand out',
  callOut: (served) => `Call out what you hold, and its flavour: ${served.map((one) => `“${one}!”`).join(', ')}`,
  hand: [
    'Arm out, still, at the runner’s chest height. Let go as they take it.',
    'Do not step out into the road. Let runners come to you.',
  ],
  fallTitle: 'If someone falls',
  fall: [
    'Life in danger: call the local emergency number first, then tell your captain.',
    'Stay with the person. Do only what you are trained for.',
    'Hands-only CPR is worth learning before race day, from a licensed instructor.',
  ],
  ride: 'A runner who asks for a ride: tell your captain.',
  or: 'or',
};
