/** Said wherever something is printed that is to be built on a road. */
export { CAUTION } from '../src/text/caution.ts';
