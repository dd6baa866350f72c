/** The volunteer card, as a language fills it in. */

/** The volunteer card. */
export interface CardText {
  readonly title: string;
  readonly where: string;
  readonly when: string;
  readonly untilReleased: string;
  readonly captain: string;
  readonly bringTitle: string;
  readonly bring: readonly string[];
  readonly cupTitle: string;
  readonly rim: string;
  readonly palm: string;
  readonly handTitle: string;
  readonly callOut: (served: readonly string[]) => string;
  readonly hand: readonly string[];
  readonly fallTitle: string;
  readonly fall: readonly string[];
  readonly ride: string;
  readonly or: string;
}
