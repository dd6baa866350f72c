/**
 * Imported first: unasked, zod tries at its first schema whether it may compile code, which the page's
 * policy forbids and the browser would log.
 */
import { config } from 'zod/v4/core';

config({ jitless: true });
