/** What all machines must agree on: where Redis is, and the names of what they keep there. */
import { createHash } from 'node:crypto';
import { Redis } from 'ioredis';

export const QUEUE = 'halfcup-reviews';
/** A hash of GPX texts by their SHA-256: a course that many plans share is sent once. */
export const FILES = 'halfcup-files';
/** A hash of finished reviews by the key of their plan. */
export const RESULTS = 'halfcup-results';

const url = process.env['REDIS_URL'] ?? 'redis://127.0.0.1:6379';
/** For BullMQ, which opens its own connections. */
export const connection = { url };
export const openRedis = () => new Redis(url);

/** SHA-256 of a text, hexadecimal. */
export const sha256 = (text) => createHash('sha256').update(text).digest('hex');
