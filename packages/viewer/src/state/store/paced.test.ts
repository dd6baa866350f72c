import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { paced } from './paced.ts';

describe('a paced value', () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] }));
  afterEach(() => void vi.useRealTimers());

  it('follows at once after a rest, then at its pace, and ends at the last value', () => {
    const source = signal<number | null>(0);
    const slow = paced(source, 250);
    vi.advanceTimersByTime(1000);
    source.value = 1;
    expect(slow.value).toBe(1);
    for (let k = 2; k <= 20; k++) {
      vi.advanceTimersByTime(10);
      source.value = k;
    }
    expect(slow.value).toBe(1);
    vi.advanceTimersByTime(60);
    expect(slow.value).toBe(20);
    source.value = 21;
    expect(slow.value).toBe(20);
    vi.advanceTimersByTime(250);
    expect(slow.value).toBe(21);
  });

  it('is switched on and off at once, and no late change switches it on again', () => {
    const source = signal<number | null>(null);
    const slow = paced(source, 250);
    source.value = 1;
    expect(slow.value).toBe(1);
    source.value = 2;
    source.value = null;
    expect(slow.value).toBeNull();
    vi.advanceTimersByTime(1000);
    expect(slow.value).toBeNull();
  });

  it('follows less often where the browser draws slowly, and at its pace again when it no longer does', () => {
    let took = 200;
    const source = signal<number | null>(0);
    const slow = paced(source, 250, (done) => done(took));
    vi.advanceTimersByTime(1000);
    source.value = 1;
    expect(slow.value).toBe(1);
    source.value = 2;
    vi.advanceTimersByTime(900);
    expect(slow.value).toBe(1);
    took = 16;
    vi.advanceTimersByTime(100);
    expect(slow.value).toBe(2);
    source.value = 3;
    vi.advanceTimersByTime(250);
    expect(slow.value).toBe(3);
  });
});
