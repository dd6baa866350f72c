/** Which Halfcup this is: told by `halfcup --version`, on every paper and in every review. `scripts/release.mjs version` writes it from package.json. */
export const VERSION: string = '0.1.0';

/** As papers and documents name what made them: "Halfcup 0.1.0". */
export const MADE_BY: string = `Halfcup ${VERSION}`;
