/** Whom a crew calls when something happens. */
import type { Contact } from '../text/params/reviewAbsence.ts';
import { type Check, COMMON_PRACTICE, check } from './check.ts';
import { saysNothing } from '../plan/placeholder.ts';

const CONTACTS: readonly Contact[] = ['emergency', 'raceControl', 'radioChannel'];

export const noContacts: Check = check(
  { code: 'no-contacts', severity: 'warning', source: COMMON_PRACTICE },
  ({ plan: { contacts } }) => {
    const missing = CONTACTS.filter((key) => saysNothing(contacts[key]));
    return missing.length === 0
      ? []
      : [{ params: { missing }, where: { path: '/contacts' }, measured: missing.length, limit: 0 }];
  },
);
