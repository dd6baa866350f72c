/** Said wherever something is printed that is to be built on a road. */
export const CAUTION = 'A planning aid: local codes, the road authority, the police and licensed practitioners decide.';
