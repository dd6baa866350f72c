/** The role cards of a station's volunteers, as a language fills them in. */

/** What one role's card says. */
export interface RoleText {
  readonly title: string;
  /** Under the picture of where one stands. */
  readonly stand: string;
  readonly job: readonly string[];
}

/** Words under the pictures. */
export interface PictureWords {
  readonly carry: string;
  readonly gloves: string;
  readonly stack: string;
  readonly jugs: string;
  readonly taps: string;
  readonly rim: string;
  readonly palm: string;
  readonly reach: string;
  readonly packet: string;
  readonly call: string;
  readonly rake: string;
  readonly bag: string;
  readonly piles: string;
}

/** A line that begins with what has happened. */
export type Happening = readonly [what: string, todo: string];

export interface CardText {
  readonly title: string;
  readonly where: string;
  /** That the code beside it is the place for a map. */
  readonly code: string;
  readonly when: string;
  /** `packed`: about when all is packed, as a clock time. */
  readonly until: (packed: string | null) => string;
  readonly captain: string;
  /** Written on the drawing of the tables. */
  readonly tables: string;
  readonly roles: Readonly<Record<'setUp' | 'cups' | 'gel' | 'refill' | 'taps' | 'clean', RoleText>>;
  readonly pictures: PictureWords;
  /** How full a cup is; `percent`: whole, `null` for half. */
  readonly half: (percent: string | null) => string;
  readonly jobTitle: string;
  /** Before the first runner; the amounts follow. */
  readonly pour: string;
  /** `length`: between two hands. */
  readonly apart: (length: string) => string;
  /** How a call is quoted. */
  readonly calls: readonly [open: string, close: string];
  readonly handing: string;
  readonly handingGel: string;
  readonly callOut: string;
  readonly trash: string;
  readonly before: string;
  readonly happensTitle: string;
  readonly life: {
    readonly what: string;
    readonly call: string;
    readonly say: string;
    readonly next: string;
    readonly radio: string;
  };
  readonly happens: readonly Happening[];
}
